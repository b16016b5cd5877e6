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
  /** Where more is written than there are columns for, what. */
  readonly tooMany?: string;
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

const studentOf = ({ values, place, tooMany }: Entry, seen: Set<string>): Found => {
  const wrong = (problem: Omit<Problem, 'place'>): Found => ({ problem: { ...problem, place } });
  if (tooMany !== undefined)
    return wrong({
      code: 'too-many-cells',
      message: 'there are more cells than columns',
      found: tooMany,
      hint: 'a length with a decimal comma stands in quotation marks, or between semicolons',
    });
  const [unknown] = unknownKeys([...values.keys()], place);
  if (unknown) return { problem: unknown };
  const written = values.get('name') ?? '';
  if (typeof written !== 'string' && typeof written !== 'number')
    return wrong({
      code: 'not-a-name',
      key: 'name',
      message: 'this is no name',
      found: describeValue(written),
    });
  const name = oneLine(String(written)).trim();
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
  const { data, errors } = Papa.parse<string[]>(text.replace('\uFEFF', '').trimEnd());
  const whole = (problem: Omit<Problem, 'place'>, line: number): Entries => ({
    ok: false,
    problems: [{ ...problem, place: { file: fileName, line } }],
  });
  const rows = withLines(data);
  const broken = errors.find(({ type }) => type === 'Quotes');
  if (broken)
    return whole(
      {
        code: 'open-quotes',
        message: 'a quotation mark is not closed, or is followed by more',
        hint: 'put both round the whole cell, or leave them out',
      },
      (broken.row === undefined ? undefined : lineOf(data, broken.row)) ?? 1,
    );
  const [head, ...others] = rows.filter(({ cells }) => cells.some((cell) => cell !== ''));
  const keys = withoutLast(head?.cells ?? []).map((cell) => cell.toLowerCase());
  const line = head?.line ?? 1;
  const [unknown] = unknownKeys(keys, { file: fileName, line });
  if (unknown) return { ok: false, problems: [unknown] };
  const twice = keys.find((key, i) => keys.indexOf(key) !== i);
  if (twice !== undefined)
    return whole({ code: 'twice', message: `the first line names the column ${quoted(twice)} twice` }, line);
  const lacking = (['name', 'length'] as const).filter((key) => !keys.includes(key));
  if (lacking.length > 0)
    return whole(
      {
        code: 'missing',
        message: `the first line names no column ${series(lacking.map(quoted))}`,
        expected: 'name,length,width',
      },
      line,
    );
  return {
    ok: true,
    entries: others.map(({ cells, line: at }): Entry => {
      const own = withoutLast(cells);
      return {
        values: new Map(keys.map((key, k) => [key, own[k] ?? ''])),
        place: { file: fileName, line: at },
        ...(own.length > keys.length && {
          tooMany: `${plural(own.length, 'cell')} under ${plural(keys.length, 'column')}`,
        }),
      };
    }),
  };
};

/** Spreadsheets end a line with as many commas as their widest has. */
const withoutLast = (cells: readonly string[]): readonly string[] =>
  cells.slice(0, cells.findLastIndex((cell) => cell !== '') + 1);

/** A cell may hold the end of a line, and then its row takes several. */
const lineOf = (data: readonly (readonly string[])[], row: number): number =>
  data.slice(0, row).reduce((sum, cells) => sum + linesOf(cells), 1);

const linesOf = (cells: readonly string[]): number => cells.join('').split(/\r\n|\n|\r/).length;

const withLines = (data: readonly (readonly string[])[]) => {
  let next = 1;
  return data.map((cells) => {
    const line = next;
    next += linesOf(cells);
    return { cells: cells.map((cell) => cell.trim()), line };
  });
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
    const isGroup = typeof entry === 'object' && entry !== null && !Array.isArray(entry);
    return {
      values: new Map(Object.entries(isGroup ? entry : {})),
      place: placeOf(document, ['students', i]),
    };
  });
  return { ok: true, entries };
};
