/** Colours as a person writes them, in whatever way, and what she is told of those that are none. */

import { describe, expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { colourFrom, readPlan } from '../../src/plan/index.ts';

const STRIP = 'template: baluster\nlayout: { strip: { length: 36, width: 5 } }\n';
const read = (colours: string) => readPlan(`${STRIP}${colours}\n`, 'plan.yaml');

const coloursOf = (text: string) => {
  const reading = read(text);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.parts[0].plan.colours;
};

test.each([
  ['colours: { fabric: "#F4efE6", thread: "#1b2a41" }', { fabric: '#f4efe6', thread: '#1b2a41' }],
  ['colours: { middle: f4efe6 }', { middle: '#f4efe6' }],
  // Digits alone are a number to YAML, with a power of ten in it at that.
  [
    'colours: { fabric: 123456, middle: "0033e1", thread: 000000 }',
    { fabric: '#123456', middle: '#0033e1', thread: '#000000' },
  ],
  ['', {}],
  ['colours: {}', {}],
])('%s', (text, colours) => {
  expect(coloursOf(text)).toEqual(colours);
});

const EXPECTED = 'expected six digits from 0 to f in quotes, such as "#f4efe6"';

test.each([
  [
    'colours: { fabric: navy }',
    `plan.yaml:3:20: colours.fabric: this is no colour; found "navy"; ${EXPECTED}`,
  ],
  [
    'colours: { thread: "#fff" }',
    `plan.yaml:3:20: colours.thread: this is no colour; found "#fff"; ${EXPECTED}`,
  ],
  [
    'colours: { thread: "#1b2a41ff" }',
    `plan.yaml:3:20: colours.thread: this is no colour; found "#1b2a41ff"; ${EXPECTED}`,
  ],
  // The # begins a remark.
  ['colours:\n  middle: #f4efe6', `plan.yaml:4:11: colours.middle: no value is written; ${EXPECTED}`],
  [
    'colours: { cloth: "#f4efe6" }',
    'plan.yaml:3:12: colours: the key "cloth" is not known here; known keys: fabric, middle and thread',
  ],
  [
    'colors: { fabric: "#f4efe6" }',
    'plan.yaml:3:1: the key "colors" is not known here; did you mean "colours"?',
  ],
])('%s: one clear line', (text, line) => {
  const reading = read(text);
  expect(reading.ok ? [] : reading.problems.map(describeProblem)).toEqual([line]);
});

describe('one text', () => {
  test('is a colour in small letters, or none', () => {
    expect(colourFrom(' #ABCDEF ')).toBe('#abcdef');
    for (const none of ['', '#', 'abcde', '#abcdeg', 'url(#a)', '#abc def', 'red;}'])
      expect(colourFrom(none)).toBeUndefined();
  });
});

test('colours are the whole quilt’s, at the top of its file', () => {
  const parts = 'parts: { a: { layout: { strip: { length: 36, width: 5 } } } }\n';
  const quilt = (more: string) => readPlan(`template: baluster\n${parts}${more}`, 'plan.yaml');
  const good = quilt('colours: { thread: "#abcdef" }\n');
  expect(good.ok && good.parts[0].plan.colours).toEqual({ thread: '#abcdef' });
  const bad = readPlan(
    'template: baluster\nparts:\n  a:\n    layout: { strip: { length: 36, width: 5 } }\n    colours: { thread: "#abcdef" }\n',
    'plan.yaml',
  );
  expect(bad.ok ? [] : bad.problems.map(describeProblem)).toEqual([
    'plan.yaml:5:5: parts.a: the key "colours" is not known here; it belongs at the top of the file, where it counts for all parts',
  ]);
});
