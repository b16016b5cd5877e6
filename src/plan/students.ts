/** The table of a class: who sews, and how large each one's piece is. A spreadsheet's text (CSV), or YAML. */

import Papa from 'papaparse';
import {
  describeValue,
  nearestOf,
  oneLine,
  type Place,
  type Problem,
  placeOf,
  plural,
  quoted,
  readDocument,
  series,
  valueAt,
} from '../document/index.ts';

/** Lengths stay as they were written: the plan that they are put into says what is wrong with them. */
export interface Student {
  readonly name: string;
  readonly length: string | number;
  /** As wide as the plan's strip where it is undefined. */
  readonly width: string | number | undefined;
  readonly place: Place;
}

interface ClassReading {
  readonly students: readonly Student[];
  /** One for each entry that is not understood; the others are there. */
  readonly problems: readonly Problem[];
}

/** A class fills a hall at most; more is the wrong file. */
export const MOST_STUDENTS = 60;

/** A name stands on each sheet. */
const MOST_LETTERS = 60;

const KEYS = ['name', 'length', 'width'] as const;
type Key = (typeof KEYS)[number];

interface Entry {
  readonly values: ReadonlyMap<string, unknown>;
  readonly place: Place;
}

type Entries =
  | { readonly ok: true; readonly entries: readonly Entry[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Never throws: what is wrong with the file as a whole leaves no students. */
export const readStudents = (text: string, fileName: string): ClassReading => {
  const read = /\.ya?ml$/i.test(fileName) ? entriesOfYaml(text, fileName) : entriesOfCsv(text, fileName);
  if (!read.ok) return { students: [], problems: read.problems };
  const { entries } = read;
  if (entries.length === 0 || entries.length > MOST_STUDENTS)
    return {
      students: [],
      problems: [
        {
          code: 'not-a-class',
          message: 'this is no table of a class',
          place: { file: fileName },
          found: plural(entries.length, 'student'),
          expected: `1 to ${MOST_STUDENTS}, each with a name and a length`,
        },
      ],
    };
  const students: Student[] = [];
  const problems: Problem[] = [];
  const seen = new Set<string>();
  for (const entry of entries) {
    const found = studentOf(entry, seen);
    if ('problem' in found) problems.push(found.problem);
    else students.push(found.student);
  }
  return { students, problems };
};

type Found = { readonly student: Student } | { readonly problem: Problem };

const studentOf = ({ values, place }: Entry, seen: Set<string>): Found => {
  const name = oneLine(String(values.get('name') ?? '')).trim();
  const wrong = (problem: Omit<Problem, 'place'>): Found => ({ problem: { ...problem, place } });
  const [unknown] = unknownKeys([...values.keys()], place);
  if (unknown) return { problem: unknown };
  if (name === '')
    return wrong({ code: 'missing', key: 'name', message: 'missing', expected: 'the student’s name' });
  if ([...name].length > MOST_LETTERS)
    return wrong({
      code: 'too-long',
      key: 'name',
      message: 'too long',
      found: quoted(name),
      expected: `at most ${MOST_LETTERS} letters`,
    });
  if (seen.has(name))
    return wrong({
      code: 'twice',
      key: 'name',
      message: 'this name is there twice',
      found: quoted(name),
      hint: 'give each student a name of her own, such as with an initial',
    });
  seen.add(name);
  const sizes: Partial<Record<Key, string | number>> = {};
  for (const key of ['length', 'width'] as const) {
    const written = values.get(key) ?? '';
    if (written === '') continue;
    if (typeof written !== 'string' && typeof written !== 'number')
      return wrong({
        code: 'not-a-length',
        key,
        message: `${name}: this is no length`,
        found: describeValue(written),
      });
    sizes[key] = written;
  }
  const { length, width } = sizes;
  if (length === undefined)
    return wrong({
      code: 'missing',
      key: 'length',
      message: `${name}: missing`,
      expected: 'the length of the piece, such as 36',
    });
  return { student: { name, length, width, place } };
};

/** What else is written is a slip, or something that nothing would be done with. */
const unknownKeys = (keys: readonly string[], place: Place): readonly Problem[] =>
  keys
    .filter((key) => !KEYS.some((known) => known === key))
    .map((key) => {
      const near = nearestOf(key, KEYS);
      return {
        code: 'unknown-key',
        message: `${quoted(key)} is not known here`,
        place,
        expected: `${series(KEYS)}`,
        ...(near !== undefined && { hint: `did you mean ${near}?` }),
      };
    });

/** The first line names the columns. Commas, semicolons and tabs are told apart by the parser. */
const entriesOfCsv = (text: string, fileName: string): Entries => {
  const { data, errors } = Papa.parse<string[]>(text.trimEnd());
  const open = errors.find(({ type }) => type === 'Quotes');
  if (open)
    return {
      ok: false,
      problems: [
        {
          code: 'open-quotes',
          message: 'a quotation mark is opened and not closed',
          place: { file: fileName, line: (open.row ?? 0) + 1 },
          hint: 'close it, or leave it out',
        },
      ],
    };
  const [head = [], ...rows] = data;
  const keys = head.map((cell) => cell.replace('\uFEFF', '').trim().toLowerCase());
  const place = { file: fileName, line: 1 };
  const problems = unknownKeys(keys, place);
  if (problems.length > 0) return { ok: false, problems };
  const lacking = (['name', 'length'] as const).filter((key) => !keys.includes(key));
  if (lacking.length > 0)
    return {
      ok: false,
      problems: [
        {
          code: 'missing',
          message: `the first line names no column ${series(lacking.map(quoted))}`,
          place,
          expected: 'name,length,width',
        },
      ],
    };
  const entries = rows.flatMap((cells, i): Entry[] => {
    if (cells.every((cell) => cell.trim() === '')) return [];
    return [
      {
        values: new Map(keys.map((key, k) => [key, (cells[k] ?? '').trim()])),
        place: { file: fileName, line: i + 2 },
      },
    ];
  });
  return { ok: true, entries };
};

const entriesOfYaml = (text: string, fileName: string): Entries => {
  const reading = readDocument(text, fileName, new Set(['name', ...KEYS]));
  if (!reading.ok) return reading;
  const { document } = reading;
  const list = valueAt(document, ['students']);
  if (!Array.isArray(list))
    return {
      ok: false,
      problems: [
        {
          code: 'missing',
          message: 'there is no list of students',
          place: { file: fileName },
          expected: 'students: with an entry such as - { name: Ada, length: 36, width: 6 } for each',
        },
      ],
    };
  const entries = list.map((entry: unknown, i): Entry => {
    const isGroup = typeof entry === 'object' && entry !== null;
    return {
      values: new Map(Object.entries(isGroup ? entry : {})),
      place: placeOf(document, ['students', i]),
    };
  });
  return { ok: true, entries };
};
