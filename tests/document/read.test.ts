import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import {
  describeProblem,
  keyName,
  keysAt,
  placeOf,
  readDocument,
  type SourceDocument,
  valueAt,
  withValue,
} from '../../src/document/index.ts';
import { MOST_CHARACTERS, MOST_DEPTH, MOST_VALUES } from '../../src/document/read.ts';
import { runs } from '../support/runs.ts';

const read = (text: string): SourceDocument => {
  const reading = readDocument(text, 'f.yaml');
  if (!reading.ok) throw new Error(reading.problems.map(describeProblem).join('\n'));
  return reading.document;
};

const complaints = (text: string): string[] => {
  const reading = readDocument(text, 'f.yaml');
  return reading.ok ? [] : reading.problems.map(describeProblem);
};

describe('readDocument', () => {
  test('reads YAML and JSON alike', () => {
    const value = { a: [1, '5 1/2', null, true], b: { c: 'x' } };
    for (const text of [JSON.stringify(value), stringify(value), 'a: [1, 5 1/2, ~, true]\nb: {c: x}\n'])
      expect(JSON.parse(JSON.stringify(read(text).value))).toEqual(value);
  });

  test('a fraction stays the text that was written, and yes and no are words', () => {
    expect(read('[1/4, 5 1/2, 60 1/8, yes, no, 2024-01-01, 010]').value).toEqual([
      '1/4',
      '5 1/2',
      '60 1/8',
      'yes',
      'no',
      '2024-01-01',
      10,
    ]);
  });

  test('knows where keys and values stand, counted from 1', () => {
    const document = read('title: A\nlayout:\n  border:\n    width: 6\n    inner: [60, 72]\n');
    const at = (path: (string | number)[], what?: 'key' | 'value') => {
      const { line, column } = placeOf(document, path, what);
      return [line, column];
    };
    expect(at(['title'])).toEqual([1, 8]);
    expect(at(['title'], 'key')).toEqual([1, 1]);
    expect(at(['layout', 'border', 'width'])).toEqual([4, 12]);
    expect(at(['layout', 'border', 'inner', 1])).toEqual([5, 17]);
    // What is not written stands at the key of what it is missing from.
    expect(at(['layout', 'border', 'from'])).toEqual([3, 3]);
    expect(at(['nowhere'])).toEqual([1, 1]);
    expect(placeOf(document, []).file).toBe('f.yaml');
  });

  test('places survive line endings of other systems and a byte order mark', () => {
    const document = read('\ufeffa: 1\r\nb:\r\n  c: 2\r\n');
    expect(placeOf(document, ['b', 'c'])).toEqual({ file: 'f.yaml', line: 3, column: 6 });
  });

  test('a key with a point in it is not two keys', () => {
    const document = read('"a.b": 1\na:\n  b: 2\n');
    expect(placeOf(document, ['a.b']).line).toBe(1);
    expect(placeOf(document, ['a', 'b']).line).toBe(3);
    expect(keyName(['edge', 2, 'arc'])).toBe('edge.3.arc');
  });

  test('every value of a random JSON document is found where it stands', () => {
    const value = fc.object({
      maxDepth: 4,
      key: fc.stringMatching(/^[a-z]{1,6}$/),
      values: [fc.stringMatching(/^[a-z0-9 /.]{0,9}$/), fc.integer(), fc.boolean()],
    });
    fc.assert(
      fc.property(value, (whole) => {
        const text = JSON.stringify(whole, null, 2);
        const document = read(text);
        const lines = text.split('\n');
        const look = (inner: unknown, path: (string | number)[]): void => {
          expect(JSON.stringify(valueAt(document, path))).toBe(JSON.stringify(inner));
          const { line, column } = placeOf(document, path);
          const there = lines[line! - 1]!.slice(column! - 1);
          if (typeof inner !== 'object' || inner === null) {
            expect(there.startsWith(JSON.stringify(inner))).toBe(true);
            return;
          }
          expect(there.startsWith(Array.isArray(inner) ? '[' : '{')).toBe(true);
          for (const [key, v] of Object.entries(inner))
            look(v, [...path, Array.isArray(inner) ? Number(key) : key]);
        };
        look(whole, []);
      }),
      runs(200, 1),
    );
  });

  test('the names of built-in things are keys like any other', () => {
    const { value } = read('__proto__: { hurt: true }\nconstructor: 1\n');
    expect(Object.keys(value as object)).toEqual(['__proto__', 'constructor']);
    expect(Object.hasOwn(Object.prototype, 'hurt')).toBe(false);
    expect(Object.getPrototypeOf(value)).toBeNull();
    expect(valueAt(read('a: 1'), ['toString'])).toBeUndefined();
  });

  test('an anchor can be used again', () => {
    expect(JSON.stringify(read('a: &m { inner: 1 }\nb: *m\nc: [*m]').value)).toBe(
      '{"a":{"inner":1},"b":{"inner":1},"c":[{"inner":1}]}',
    );
  });
});

/** Word for word: what people get wrong in writing, and the one line that they get to read. */
const SYNTAX: readonly (readonly [string, string])[] = [
  ['', 'f.yaml: the file is empty'],
  ['# only a remark\n', 'f.yaml: the file is empty'],
  ['a: 1\n\tb: 2\n', 'f.yaml:2:1: a tab at the start of a line; indent with spaces'],
  ['a: "open\nb: 1\n', 'f.yaml:1:4: a quotation mark is opened here and never closed'],
  ["a: 1\nb: 'open\n", 'f.yaml:2:4: a quotation mark is opened here and never closed'],
  ['title: Guild: raffle\n', 'f.yaml:1:8: two keys on one line; a text with a colon in it needs quotes'],
  ['a: 1\nwidth 6\n', 'f.yaml:2:1: a colon and a value are missing after this key'],
  ['a: 1\nwidth:6\n', 'f.yaml:2:1: a space is needed after the colon'],
  ['a:\n  b: 1\n c: 2\n', 'f.yaml:3:1: this line is not indented like the lines it belongs to'],
  [
    'a: { b: [1, 2] c: 3 }\n',
    'f.yaml:1:16: the value ends before this; a comma is missing, or quotes round the whole value',
  ],
  [
    'a: "5" in\n',
    'f.yaml:1:8: the value ends before this; a comma is missing, or quotes round the whole value',
  ],
  ['{"a": 1 "b": 2}', 'f.yaml:1:7: a comma is missing between two values in brackets'],
  ['  a: 1\nb: 2\n', 'f.yaml:2:1: this line is not indented like the lines it belongs to'],
  [
    'a: [1, 2\nb: 3\n',
    'f.yaml:2:1: a bracket is opened and never closed, or its end stands at the wrong indent',
  ],
  [
    'a: { b: #123456, c: white }\nd: 3\n',
    'f.yaml:2:1: a bracket is opened and never closed, or its end stands at the wrong indent; what follows a # is a remark: put the colour in quotes',
  ],
  ['a: - b\n', 'f.yaml:1:4: a list cannot begin here; put its first - on a line of its own'],
  ['a: [1,, 2]\n', 'f.yaml:1:7: a comma too many'],
  ['a: @b\n', 'f.yaml:1:4: a value cannot begin with this sign; put the value in quotes'],
  ['a: "C:\\quilts"\n', 'f.yaml:1:7: a backslash in double quotes; use single quotes, or / in a path'],
  ['a: !inch 5\n', 'f.yaml:1:4: a word that begins with ! has no meaning here; put the value in quotes'],
  ['a: *b\n', 'f.yaml:1:4: nothing above is marked &b'],
  ['a: &a [*a]\n', 'f.yaml:1:8: a value that contains itself'],
  ['a: 1\n---\nb: 2\n', 'f.yaml:2:1: a second document begins here; keep one to a file'],
  ['a: 1\na: 2\n', 'f.yaml:2:1: a: the key "a" is written twice; the first one is on line 1'],
  ['{"a": 1, "a": 2}', 'f.yaml:1:10: a: the key "a" is written twice; the first one is on line 1'],
  ['[1, 2]: x\n', 'f.yaml:1:1: a key must be a word'],
  ['a: \u0000\n', 'f.yaml: this is not a text file; expected YAML or JSON'],
  [
    `a: ${'x'.repeat(MOST_CHARACTERS)}`,
    `f.yaml: the file is too large to be a plan or a template; found ${MOST_CHARACTERS + 3} characters; expected at most ${MOST_CHARACTERS}`,
  ],
];

describe('mistakes in writing', () => {
  test.each(SYNTAX)('%j', (text, line) => {
    expect(complaints(text)).toEqual([line]);
  });

  test('the table above ran whole', () => {
    expect(SYNTAX).toHaveLength(28);
  });

  // The types of YAML 1.1 that its version 1.2 leaves out (yaml.org/type): none is a value of a plan.
  test.each([
    'a: !!set { b }\n',
    'a: !!omap [ b: 1 ]\n',
    'a: !!pairs [ b: 1 ]\n',
    'a: !!binary aGVsbG8=\n',
    'a: !!timestamp 2001-12-14\n',
    '%YAML 1.1\n---\na: !!set { b }\n',
  ])('kinds of values that YAML has given up have no meaning: %j', (text) => {
    const line = text.startsWith('%') ? 3 : 1;
    expect(complaints(text)).toEqual([
      `f.yaml:${line}:4: a word that begins with ! has no meaning here; put the value in quotes`,
    ]);
  });

  test('every key that is written twice has its own line', () => {
    expect(complaints('a: 1\na: 2\nb: 1\nb: 3\n')).toHaveLength(2);
  });
});

describe('texts that mean harm', () => {
  const nested = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth);
  const blocks = (depth: number): string =>
    Array.from({ length: depth }, (_, i) => `${' '.repeat(i)}a:\n`).join('');

  test.each([
    ['brackets without end', '['.repeat(150_000)],
    ['brackets that close again', nested(90_000)],
    ['groups in groups', '{a: '.repeat(50_000)],
    ['lists in lists on one line', '- '.repeat(100_000)],
    ['keys that are groups', '? '.repeat(100_000)],
    ['ever deeper indentation', blocks(600)],
    ['one level more than is read', nested(MOST_DEPTH + 2)],
    ['one block more than is read', blocks(MOST_DEPTH + 2)],
  ])('%s are too deep', (_, text) => {
    const reading = readDocument(text, 'f.yaml');
    expect(reading).toMatchObject({ ok: false, problems: [{ message: 'nested too deeply' }] });
  });

  test('as deep as is allowed is read', () => {
    expect(readDocument(nested(MOST_DEPTH), 'f').ok).toBe(true);
  });

  test('aliases that explode stop at the number of values', () => {
    const bomb = ['a0: &a0 [x, x, x, x, x, x, x, x, x, x]'];
    for (let i = 1; i < 9; i++)
      bomb.push(`a${i}: &a${i} [${Array.from({ length: 10 }, () => `*a${i - 1}`).join(', ')}]`);
    expect(complaints(bomb.join('\n'))).toHaveLength(1);
    expect(complaints(bomb.join('\n'))[0]).toContain('too many values');
    expect(complaints(`[${'1,'.repeat(MOST_VALUES)}]`)[0]).toContain('too many values');
  });

  test.each([
    ['commas', `[${','.repeat(60_000)}`],
    ['closing brackets', ']'.repeat(60_000)],
    ['tags', '!a '.repeat(20_000)],
    ['directives', '%a\n'.repeat(20_000)],
    ['many keys', Array.from({ length: 18_000 }, (_, i) => `k${i}: 1\n`).join('')],
  ])('%s are dealt with in seconds', (_, text) => {
    const start = performance.now();
    readDocument(text, 'f');
    // Measured at 0.1 to 1 s, growing evenly with the text; the bound only has to catch what never ends.
    expect(performance.now() - start).toBeLessThan(20_000);
  });

  test('any text is a document or at least one line, and never throws', () => {
    const scraps = fc.constantFrom(
      ...[
        'a',
        ': ',
        ':',
        '\n',
        '  ',
        '- ',
        '[',
        ']',
        '{',
        '}',
        ',',
        '"',
        "'",
        '#',
        '&a ',
        '*a',
        '!t ',
        '|',
        '>',
        '?',
      ],
      ...['%', '@', '---\n', '...\n', '\t', '\r', '\\', '1/2', '~', '<<: ', '\ufeff'],
    );
    fc.assert(
      fc.property(fc.array(scraps, { maxLength: 40 }), (parts) => {
        const reading = readDocument(parts.join(''), 'f');
        if (reading.ok) return;
        expect(reading.problems.length).toBeGreaterThan(0);
        for (const p of reading.problems) expect(describeProblem(p)).toMatch(/^f[^\n]+$/);
      }),
      runs(3000, 2),
    );
  });
});

describe('a decimal comma where YAML takes it for the next value', () => {
  const COMMA = 'a comma in a number; write a decimal point';

  test.each([
    ['{ length: 91,5 cm, width: 5 }', [`f.yaml:1:11: length: ${COMMA}: 91.5; found "91,5 cm"`]],
    ['{ length: 91,5, width: 5 }', [`f.yaml:1:11: length: ${COMMA}: 91.5; found "91,5"`]],
    ['{ width: 5, length: 91,5cm }', [`f.yaml:1:21: length: ${COMMA}: 91.5; found "91,5cm"`]],
    [
      '{ length: 91,5 cm, width: 12,5 cm }',
      [
        `f.yaml:1:11: length: ${COMMA}: 91.5; found "91,5 cm"`,
        `f.yaml:1:27: width: ${COMMA}: 12.5; found "12,5 cm"`,
      ],
    ],
    [
      'a: { b: [2, 1,5 mm] }',
      [`f.yaml:1:13: a.b.2: ${COMMA}: 1.5; found "1,5 mm"; for two lengths put a space after the comma`],
    ],
  ])('%s', (text, told) => {
    expect(complaints(text)).toEqual(told);
  });

  test.each(['[1,5]', '[1/4,1/8]', '[1, 5 cm]', '{ a: 1, b: 5 }', '[0,0]', '["1","5 cm"]', '{ a: 1,5b: 2 }'])(
    '%s is none',
    (text) => {
      expect(complaints(text)).toEqual([]);
    },
  );
});

describe('names that look like numbers', () => {
  const named = (text: string) => {
    const reading = readDocument(text, 'f.yaml');
    if (!reading.ok) throw new Error('Not read');
    return keysAt(reading.document, ['parts']);
  };

  test.each([
    ['parts: { 007: 1, 1.10: 1, 0x1F: 1, "08": 1, 5e3: 1, true: 1, ~x: 1 }', '007 1.10 0x1F 08 5e3 true ~x'],
    ['parts:\n  10: 1\n  2: 1\n  b: 1\n  1: 1\n', '10 2 b 1'],
    ['parts: &a { 3: 1, 1: 1 }\nothers: *a\n', '3 1'],
  ])('stay as they are written, and where: %s', (text, names) => {
    expect(named(text)).toEqual(names.split(' '));
  });

  test('are no duplicates of the number that they look like', () => {
    expect(named('parts: { 007: 1, 7: 1 }')).toEqual(['007', '7']);
    expect(complaints('parts: { 7: 1, "7": 1 }')).toEqual([
      'f.yaml:1:16: parts.7: the key "7" is written twice; the first one is on line 1',
    ]);
  });

  test('are found by an edit', () => {
    expect(withValue('parts: { 007: { at: 1 }, 7: { at: 2 } }', ['parts', '007', 'at'], 3)).toBe(
      'parts: { 007: { at: 3 }, 7: { at: 2 } }',
    );
  });
});

describe('numbers under keys that hold words', () => {
  const TEXTS = new Set(['title', 'names']);

  test('keep their digits, alone and in lists, and behind an alias', () => {
    const written = 'title: 007\nnames: [1.10, &a 0x1F, *a, 5e3, "1.0"]\nsize: 1.10\nsizes: [007]\n';
    const reading = readDocument(written, 'f.yaml', TEXTS);
    expect(reading.ok && JSON.parse(JSON.stringify(reading.document.value))).toEqual({
      title: '007',
      names: ['1.10', '0x1F', '0x1F', '5e3', '1.0'],
      size: 1.1,
      sizes: [7],
    });
  });

  test('are what was written, whatever number it is', () => {
    const number = fc.oneof(
      fc.stringMatching(/^[0-9]{1,9}$/),
      fc.stringMatching(/^[0-9]{1,5}\.[0-9]{1,5}$/),
      fc.stringMatching(/^[1-9]e[0-9]{1,2}$/),
    );
    fc.assert(
      fc.property(number, (text) => {
        const reading = readDocument(`title: ${text}`, 'f.yaml', TEXTS);
        expect(reading.ok && valueAt(reading.document, ['title'])).toBe(text);
      }),
      runs(300, 42),
    );
  });
});
