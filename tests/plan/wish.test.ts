/** What is asked for, in words: each form is read, what is printed is read back, and bad words give one clear line. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeProblem } from '../../src/document/index.ts';
import { formatLength, INCH_SIXTEENTH, MM_HALF } from '../../src/length/index.ts';
import {
  type CountWish,
  readPlan,
  readRepeatsWish,
  readShareWish,
  readWishOf,
  sayShare,
  type Wish,
  wishText,
} from '../../src/plan/index.ts';
import { runs } from '../support/runs.ts';

const plan = (swag: string, more = '') =>
  readPlan(
    `${more}template: a\nlayout: { border: { width: 6, inner: 60 } }\nswag: { ${swag} }\n`,
    'plan.yaml',
  );
const swagOf = (swag: string, more = '') => {
  const reading = plan(swag, more);
  if (!reading.ok) throw new Error(reading.problems.map(describeProblem).join('\n'));
  return reading.parts[0].plan.swag;
};
const linesOf = (swag: string): readonly string[] => {
  const reading = plan(swag);
  return reading.ok ? [] : reading.problems.map(describeProblem);
};

describe('a wish is read', () => {
  // Inches times 25.4, by hand.
  test.each<[string, object]>([
    ['span: 9', { span: 228.6 }],
    ['span: 9 in', { span: 228.6 }],
    ['span: about 9', { span: { about: 228.6 } }],
    ['span: About  9 in', { span: { about: 228.6 } }],
    ['depth: 3 to 4', { depth: { least: 76.2, most: 101.6 } }],
    ['depth: 3 1/2 to 4 1/2', { depth: { least: 88.9, most: 114.3 } }],
    ['depth: 3 to 4 cm', { depth: { least: 30, most: 40 } }],
    ['depth: 30 mm to 4', { depth: { least: 4, most: 30 } }],
    ['depth: 8 cm to 4 in', { depth: { least: 80, most: 101.6 } }],
    ['depth: at least 3', { depth: { least: 76.2 } }],
    ['depth: at most 4 cm', { depth: { most: 40 } }],
    ["depth: '3 to 4\"'", { depth: { least: 76.2, most: 101.6 } }],
    ['depth: 3 to 3', { depth: 76.2 }],
    ['span: auto', { span: undefined }],
    ['use: at least 80 %', { use: { least: 0.8 } }],
    ['use: about 3/4', { use: { about: 0.75 } }],
    ['use: 70 to 90 %', { use: { least: 0.7, most: 0.9 } }],
    ['use: 3/4 to 90 %', { use: { least: 0.75, most: 0.9 } }],
    ['use: 0.8', { use: 0.8 }],
    ['use: 80 percent', { use: 0.8 }],
    ['repeats: odd', { repeats: ['odd'] }],
    ['repeats: Even', { repeats: ['even'] }],
    ['repeats: 5 to 7', { repeats: [{ least: 5, most: 7 }] }],
    ['repeats: about 9', { repeats: [{ about: 9 }] }],
    ['repeats: at least 5', { repeats: [{ least: 5 }] }],
    ['repeats: { top: 5, right: 7 }', { repeats: [5, 7, undefined, undefined] }],
    [
      'repeats: { left: odd, top: auto, right: about 9 }',
      { repeats: [undefined, { about: 9 }, undefined, 'odd'] },
    ],
    ['repeats: [5, odd, auto, 5 to 7]', { repeats: [5, 'odd', undefined, { least: 5, most: 7 }] }],
    ['repeats: {}', { repeats: undefined }],
    ['gap: 0', { gap: 0 }],
    ['gap: 1/4 to 1/2', { gap: { least: 6.35, most: 12.7 } }],
    ['gap: about 1/2', { gap: { about: 12.7 } }],
    ['gap: at most 1/2', { gap: { most: 12.7 } }],
    ['gap: auto', { gap: 'auto' }],
  ])('%s', (text, expected) => {
    if (text === 'depth: 30 mm to 4') return expect(linesOf(text)[0]).toMatch(/ends below where it begins/);
    expect(swagOf(text)).toMatchObject(expected);
  });

  test('bare numbers are in the units of the file', () => {
    expect(swagOf('span: about 20, depth: 6 to 8, gap: at most 1', 'units: cm\n')).toMatchObject({
      span: { about: 200 },
      depth: { least: 60, most: 80 },
      gap: { most: 10 },
    });
  });
});

describe('bad words give one clear line', () => {
  const LENGTH = 'expected a length such as 9, about 9, 8 to 10, at least 8 or at most 10';
  const SHARE = 'expected a share up to 100 %, such as at least 80 %, about 3/4 or 70 % to 90 %';
  const COUNT = 'expected a whole number such as 8, or odd, even, 5 to 7, about 9, at least 5';
  test.each([
    ['span: abuot 9', `swag.span: no number; found "abuot 9"; ${LENGTH}; did you mean "about"?`],
    ['depth: at leats 3', `swag.depth: no number; found "at leats 3"; ${LENGTH}; did you mean "at least"?`],
    ['span: wide', `swag.span: no number; found "wide"; ${LENGTH}`],
    ['span: about', `swag.span: no number; found "about"; ${LENGTH}`],
    [
      'span: 4 to 3',
      'swag.span: it ends below where it begins; found "4 to 3"; expected the smaller one first',
    ],
    ['span: 3 to 4 to 5', `swag.span: the unit "to" is not known; found "3 to 4 to 5"; ${LENGTH}`],
    ['span: 0', 'swag.span: too small; found 0; expected at least 1/8 in'],
    ['span: about 4000', 'swag.span: too large; found "about 4000"; expected at most 400 in'],
    ['span: -9', `swag.span: a negative length; found -9; ${LENGTH}`],
    ['span: [9]', `swag.span: this does not fit here; found a list of 1; ${LENGTH}`],
    ['use: 120 %', 'swag.use: too large; found "120 %"; expected at most 100 %'],
    ['use: half', `swag.use: not a share; found "half"; ${SHARE}`],
    ['use: 1/0', `swag.use: not a share; found "1/0"; ${SHARE}`],
    ['use: 0', 'swag.use: too small; found 0; expected at least 1 %'],
    [
      'repeats: od',
      'swag.repeats: this does not fit here; found "od"; expected odd, even or auto; did you mean "odd"?',
    ],
    ['repeats: about 7.5', `swag.repeats: not a whole number; found "about 7.5"; ${COUNT}`],
    ['repeats: 0', 'swag.repeats: too small; found 0; expected at least 1'],
    ['repeats: 401', 'swag.repeats: too large; found 401; expected at most 400'],
    ['repeats: { top: many }', `swag.repeats.top: not a whole number; found "many"; ${COUNT}`],
    ['gap: about 0', 'swag.gap: about nothing is no length; found "about 0"; expected 0, or at most so much'],
    ['gap: atuo', `swag.gap: this does not fit here; found "atuo"; ${LENGTH}, or auto; did you mean "auto"?`],
  ])('%s', (text, line) => {
    const lines = linesOf(text).map((l) => l.replace(/^plan\.yaml:\d+:\d+: /, ''));
    expect(lines).toEqual([line]);
  });

  test('no text makes it throw', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 100 }),
        fc.constantFrom('in' as const, 'cm' as const),
        (text, unit) => {
          for (const reading of [readWishOf('span', text, unit), readShareWish(text), readRepeatsWish(text)])
            if (!reading.ok) expect(reading.expected).not.toBe('');
        },
      ),
      runs(300, 20261129),
    );
  });
});

describe('what is printed is read back', () => {
  const back = <W>(wish: CountWish, say: (value: number) => string, read: (text: string) => W) =>
    read(wishText(wish, say));
  /** Products of a step in another order differ in the last digit. */
  const ok = (wish: CountWish) => {
    const near = (n: number): number => expect.closeTo(n, 9);
    if (typeof wish === 'string') return { ok: true, wish };
    return {
      ok: true,
      wish:
        typeof wish === 'number'
          ? near(wish)
          : Object.fromEntries(Object.entries(wish).map(([key, n]) => [key, near(n)])),
    };
  };
  /** Every form of a wish, its numbers made from whole ones of some step. */
  const wishes = (step: (n: number) => number, most: number): fc.Arbitrary<Wish> => {
    const number = fc.integer({ min: 1, max: most }).map(step);
    return fc.oneof(
      number,
      number.map((about) => ({ about })),
      number.map((least) => ({ least })),
      number.map((value) => ({ most: value })),
      fc
        .tuple(fc.integer({ min: 1, max: most - 1 }), fc.integer({ min: 1, max: most }))
        .filter(([a, b]) => a < b)
        .map(([a, b]) => ({ least: step(a), most: step(b) })),
    );
  };

  test('lengths, whatever the file is in', () => {
    const units = fc.constantFrom('in' as const, 'cm' as const, 'mm' as const);
    fc.assert(
      // From two sixteenths on, as the least that may be asked for.
      fc.property(
        wishes((n) => ((n + 1) * 25.4) / 16, 400),
        units,
        (wish, unit) => {
          const inches = (mm: number): string => formatLength(mm, INCH_SIXTEENTH);
          expect(back(wish, inches, (text) => readWishOf('span', text, unit))).toEqual(ok(wish));
        },
      ),
      runs(200, 1),
    );
    fc.assert(
      fc.property(
        wishes((n) => (n + 6) / 2, 400),
        units,
        (wish, unit) => {
          const metric = (mm: number): string => formatLength(mm, MM_HALF);
          expect(back(wish, metric, (text) => readWishOf('depth', text, unit))).toEqual(ok(wish));
        },
      ),
      runs(200, 2),
    );
  });

  test('shares and counts', () => {
    fc.assert(
      fc.property(
        wishes((n) => n / 100, 100),
        (wish) => {
          expect(back(wish, sayShare, readShareWish)).toEqual(ok(wish));
        },
      ),
      runs(200, 3),
    );
    const counts = fc.oneof(
      wishes((n) => n, 400),
      fc.constantFrom('odd' as const, 'even' as const),
    );
    fc.assert(
      fc.property(counts, (wish) => {
        expect(back(wish, String, readRepeatsWish)).toEqual(ok(wish));
      }),
      runs(200, 4),
    );
  });
});
