/** The table of a class, as a spreadsheet writes it (CSV, RFC 4180) and as YAML; a mistake costs one student and no more. */

import { expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { MOST_STUDENTS, readStudents } from '../../src/plan/index.ts';

const named = (text: string, file = 'class.csv') =>
  readStudents(text, file).students.map(({ name, length, width }) => [name, length, width]);
const said = (text: string, file = 'class.csv') => readStudents(text, file).problems.map(describeProblem);

test.each([
  ['commas', 'name,length,width\nAda,36,6\nBerit,30 1/2,\n'],
  ['semicolons, as where a comma is the decimal mark', 'name;length;width\nAda;36;6\nBerit;30 1/2;\n'],
  ['tabs, as they are copied out of a spreadsheet', 'name\tlength\twidth\nAda\t36\t6\nBerit\t30 1/2\t\n'],
  [
    'the ends of lines and the mark at the start that some programs write',
    '\uFEFFName,Length,Width\r\nAda,36,6\r\n\r\nBerit,30 1/2,\r\n',
  ],
  ['another order, and quotation marks', 'width,name,length\n6,"Ada",36\n,Berit,"30 1/2"\n'],
])('reads %s', (_, text) => {
  expect(named(text)).toEqual([
    ['Ada', '36', '6'],
    ['Berit', '30 1/2', undefined],
  ]);
});

test('reads a list', () => {
  const text = 'students:\n  - { name: Ada, length: 36, width: 6 }\n  - { name: 007, length: 30 1/2 }\n';
  expect(named(text, 'class.yaml')).toEqual([
    ['Ada', '36', '6'],
    ['007', '30 1/2', undefined],
  ]);
});

test('each entry that is not understood is told with its line, and the others are there', () => {
  const text = 'name,length\nAda,36\nBerit,\n,30\nAda,20\nCarmen,25\n';
  expect(named(text).map(([name]) => name)).toEqual(['Ada', 'Carmen']);
  expect(said(text)).toEqual([
    'class.csv:3: length: Berit: missing; expected the length of the piece, such as 36',
    'class.csv:4: name: missing; expected the student’s name',
    'class.csv:5: name: this name is there twice; found "Ada"; give each student a name of her own, such as with an initial',
  ]);
  const list =
    'students:\n  - { name: Ada, lenght: 36 }\n  - { name: Berit, length: 30 }\n  - { name: Carmen, length: [1] }\n';
  expect(named(list, 'class.yaml').map(([name]) => name)).toEqual(['Berit']);
  expect(said(list, 'class.yaml')).toEqual([
    'class.yaml:2:5: "lenght" is not known here; expected name, length and width; did you mean length?',
    expect.stringMatching(/^class\.yaml:4:5: length: Carmen: this is no length; found /),
  ]);
});

test.each([
  ['another column', 'name,length,email\nAda,36,a\n', /^class\.csv:1: "email" is not known here/],
  ['no names', 'length\n36\n', /^class\.csv:1: the first line names no column "name"/],
  ['an open quotation mark', 'name,length\n"Ada,36\n', /^class\.csv:2: a quotation mark is not closed/],
  ['nobody', 'name,length\n', /no table of a class; found 0 students/],
  ['nothing', '', /^class\.csv:1: /],
  [
    'more than a hall holds',
    `name,length\n${Array.from({ length: MOST_STUDENTS + 1 }, (_, i) => `S${i},36`).join('\n')}`,
    new RegExp(`found ${MOST_STUDENTS + 1} students; expected 1 to ${MOST_STUDENTS}`),
  ],
])('a table with %s is refused as a whole', (_, text, words) => {
  expect(named(text)).toEqual([]);
  expect(said(text)).toEqual([expect.stringMatching(words)]);
});

test('nothing in a line is taken for what it is not', () => {
  // A decimal comma between commas makes two cells of one.
  expect(said('name,length,width\nAda,91,5 cm,5\nBerit,30,5,,\n')).toEqual([
    'class.csv:2: there are more cells than columns; found 4 cells under 3 columns; a length with a decimal comma stands in quotation marks, or between semicolons',
  ]);
  expect(said('name,length,length\nAda,36,12\n')).toEqual([
    'class.csv:1: the first line names the column "length" twice',
  ]);
  expect(named('\n\nname,length,width,\nAda,36,5,\n')).toEqual([['Ada', '36', '5']]);
  // A cell may hold the end of a line.
  expect(said('name,length\n"Ada\nBerit",36\nCarmen,\n')).toEqual([expect.stringMatching(/^class\.csv:4: /)]);
  const list = 'students:\n  - { name: { a: b }, length: 36 }\n  - Ada\n';
  expect(said(list, 'class.yaml')).toEqual([
    expect.stringMatching(/^class\.yaml:2:5: name: this is no name; found /),
    expect.stringMatching(/^class\.yaml:3:5: name: missing/),
  ]);
});

test('a list that is none is refused', () => {
  expect(said('name: Ada\n', 'class.yml')).toEqual([
    expect.stringMatching(/^class\.yml: there is no list of students; expected students: /),
  ]);
});
