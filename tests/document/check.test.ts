import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as z from 'zod';
import { describeValue } from '../../src/document/describe.ts';
import {
  checkDocument,
  describeProblem,
  group,
  lengthOf,
  listOrOne,
  nearestOf,
  readDocument,
  refuse,
} from '../../src/document/index.ts';
import { runs } from '../support/runs.ts';

const schema = group({
  width: lengthOf('in', { least: 25.4, most: 254 }),
  count: z.int().min(1).max(9).optional(),
  mode: z.enum(['turn', 'meet', 'open']).optional(),
  words: listOrOne(z.string(), 3, 'a word or a list of words').optional(),
  inner: group(
    { top: lengthOf('in'), left: lengthOf('in') },
    'a group such as { top: 1, left: 2 }',
  ).optional(),
  margin: z
    .union([lengthOf('in'), group({ inner: lengthOf('in'), outer: lengthOf('in') })], {
      error: 'a length, or { inner: 1/2, outer: 1/4 }',
    })
    .optional(),
  yes: z.boolean().optional(),
  even: z
    .int()
    .superRefine((n, context) => {
      if (n % 2 !== 0) refuse(context, n, { message: 'odd', found: String(n), expected: 'an even number' });
    })
    .optional(),
});

const lines = (text: string, homes?: ReadonlyMap<string, string>): string[] => {
  const reading = readDocument(text, 'f.yaml');
  if (!reading.ok) throw new Error('the text itself is wrong');
  const checked = checkDocument(reading.document, schema, homes);
  return checked.ok ? [] : checked.problems.map(describeProblem);
};

const LENGTH = 'expected a length above zero, such as 5 1/2 or 140 mm';

const CASES: readonly (readonly [string, readonly string[]])[] = [
  ['width: 6', []],
  ['wdith: 6', ['f.yaml:1:1: the key "wdith" is not known here; did you mean "width"?']],
  ['Width: 6', ['f.yaml:1:1: the key "Width" is not known here; did you mean "width"?']],
  ['count: 3', [`f.yaml:1:1: the key "width" is missing; ${LENGTH}`]],
  ['width:', [`f.yaml:1:7: width: no value is written; ${LENGTH}`]],
  ['width: [6]', [`f.yaml:1:8: width: this does not fit here; found a list of 1; ${LENGTH}`]],
  ['width: {a: 1, b: 2}', [`f.yaml:1:8: width: this does not fit here; found the keys a and b; ${LENGTH}`]],
  ['width: true', [`f.yaml:1:8: width: this does not fit here; found true; ${LENGTH}`]],
  ['width: 20', ['f.yaml:1:8: width: too large; found 20; expected at most 10 in']],
  ['width: 5 mm', ['f.yaml:1:8: width: too small; found "5 mm"; expected at least 1 in']],
  ['width: 6\ncount: 2.5', ['f.yaml:2:8: count: this does not fit here; found 2.5; expected a whole number']],
  ['width: 6\ncount: 12', ['f.yaml:2:8: count: too large; found 12; expected at most 9']],
  ['width: 6\ncount: "2"', ['f.yaml:2:8: count: this does not fit here; found "2"; expected a number']],
  [
    'width: 6\nmode: tunr',
    [
      'f.yaml:2:7: mode: this does not fit here; found "tunr"; expected turn, meet or open; did you mean "turn"?',
    ],
  ],
  [
    'width: 6\nmode: round',
    ['f.yaml:2:7: mode: this does not fit here; found "round"; expected turn, meet or open'],
  ],
  [
    'width: 6\nyes: maybe',
    ['f.yaml:2:6: yes: this does not fit here; found "maybe"; expected true or false'],
  ],
  [
    'width: 6\nwords: [a, b, c, d]',
    ['f.yaml:2:8: words: too many; found a list of 4; expected at most 3 entries'],
  ],
  [
    'width: 6\nwords: {}',
    ['f.yaml:2:8: words: this does not fit here; found an empty group; expected a word or a list of words'],
  ],
  [
    'width: 6\ninner: 60',
    ['f.yaml:2:8: inner: this does not fit here; found 60; expected a group such as { top: 1, left: 2 }'],
  ],
  [
    'width: 6\ninner: top:60',
    [
      'f.yaml:2:8: inner: this does not fit here; found "top:60"; expected a group such as { top: 1, left: 2 }; a space is needed after the colon',
    ],
  ],
  [
    'width: 6\ninner: {}',
    ['f.yaml:2:1: inner: the keys "top" and "left" are missing; expected a length such as 5 1/2 or 140 mm'],
  ],
  [
    'width: 6\nmargin: { inner: wide, outer: 1 }',
    ['f.yaml:2:18: margin.inner: no number; found "wide"; expected a length such as 5 1/2 or 140 mm'],
  ],
  [
    'width: 6\nmargin: true',
    [
      'f.yaml:2:9: margin: this does not fit here; found true; expected a length, or { inner: 1/2, outer: 1/4 }',
    ],
  ],
  ['width: 6\neven: 3', ['f.yaml:2:7: even: odd; found 3; expected an even number']],
  [
    'nonsense: 1\nwidth: 1/0\ncount: x',
    [
      'f.yaml:1:1: the key "nonsense" is not known here; known keys: width, count, mode, words, inner, margin, yes and even',
      'f.yaml:2:8: width: a fraction with a zero below the line; found "1/0"; expected a length above zero, such as 5 1/2 or 140 mm',
      'f.yaml:3:8: count: this does not fit here; found "x"; expected a number',
    ],
  ],
  ['[1, 2]', ['f.yaml:1:1: this does not fit here; found a list of 2; expected a group of keys']],
];

describe('checkDocument', () => {
  test.each(CASES)('%j', (text, expected) => {
    expect(lines(text)).toEqual(expected);
  });

  test('the table above ran whole', () => {
    expect(CASES).toHaveLength(26);
  });

  test('a key that belongs elsewhere is sent there', () => {
    expect(lines('width: 6\nclearance: 1', new Map([['clearance', 'under foot']]))).toEqual([
      'f.yaml:2:1: the key "clearance" is not known here; it belongs under foot',
    ]);
  });

  test('and one that is nearly it, too', () => {
    expect(lines('width: 6\nclearence: 1', new Map([['clearance', 'under foot']]))).toEqual([
      'f.yaml:2:1: the key "clearence" is not known here; did you mean "clearance"? It belongs under foot',
    ]);
  });

  test('a long list of mistakes is cut short, and counted', () => {
    const many = Array.from({ length: 50 }, (_, i) => `unknown${i}: 1`).join('\n');
    const found = lines(`width: 6\n${many}`);
    expect(found).toHaveLength(21);
    expect(found.at(-1)).toBe('f.yaml: and 30 more');
  });

  test('lengths become mm', () => {
    const reading = readDocument('width: 5 1/2\nmargin: {inner: 1/4, outer: 6 mm}\nwords: one', 'f');
    const checked = reading.ok && checkDocument(reading.document, schema);
    expect(checked).toEqual({
      ok: true,
      value: { width: 139.7, margin: { inner: 6.35, outer: 6 }, words: ['one'] },
    });
  });

  test('whatever stands there, no line shows a program thing', () => {
    const keys = fc.constantFrom('width', 'count', 'mode', 'words', 'inner', 'margin', 'yes', 'even', 'x');
    const value = fc.letrec((tie) => ({
      any: fc.oneof(
        { maxDepth: 3 },
        fc.constantFrom<unknown>(null, true, 3, -1, 1e300, '', 'wide', '5 1/2', 'turn', 'auto'),
        fc.array(tie('any'), { maxLength: 3 }),
        fc.dictionary(keys, tie('any'), { maxKeys: 3 }),
      ),
    })).any;
    fc.assert(
      fc.property(fc.dictionary(keys, value, { minKeys: 1, maxKeys: 6 }), (whole) => {
        for (const line of lines(JSON.stringify(whole))) {
          expect(line).not.toMatch(/\[object|undefined|Invalid|Unrecognized|another value|\n/);
          expect(line).toMatch(/^f\.yaml:1:\d+: /);
          expect(line.length).toBeLessThan(300);
        }
      }),
      runs(1000, 1),
    );
  });
});

describe('words for values', () => {
  test.each([
    [null, 'nothing'],
    [undefined, 'nothing'],
    ['wide', '"wide"'],
    ['a\nb', '"a b"'],
    ['x'.repeat(100), `"${'x'.repeat(40)}…"`],
    [12.5, '12.5'],
    [Number.NaN, 'NaN'],
    [false, 'false'],
    [[], 'an empty list'],
    [[1, 2, 3], 'a list of 3'],
    [{}, 'an empty group'],
    [{ to: 1 }, 'the key to'],
    [{ to: 1, rise: 2 }, 'the keys to and rise'],
    [{ a: 1, b: 1, c: 1, d: 1, e: 1 }, 'the keys a, b, c and d'],
  ])('%j is %s', (value, words) => {
    expect(describeValue(value)).toBe(words);
  });

  test.each([
    ['widht', 'width'],
    ['channel_lines', 'channelLines'],
    ['chanelLines', 'channelLines'],
    ['trun', 'turn'],
    ['ot', undefined],
    ['length', undefined],
    ['thing', undefined],
    ['width'.repeat(100), undefined],
  ])('%s is meant as %s', (written, meant) => {
    expect(nearestOf(written, ['width', 'channelLines', 'turn', 'to'])).toBe(meant);
  });
});
