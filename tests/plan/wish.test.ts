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

  // What people type beside the words of the README, and what they mean by it.
  test.each<[string, readonly string[]]>([
    ['9', ['nine', '= 9', 'exactly 9', '9 exactly', '9 inches wide', '9 in deep', '9"']],
    ['about 9', ['~9', '~ 9', '≈ 9', 'around 9', 'roughly nine', 'approx 9', 'approx. 9', 'approximately 9']],
    ['about 9', ['ca. 9', 'ca 9', 'c. 9', 'circa 9', '9ish', '9-ish', '9 or so', 'about 9 or so', 'some 9']],
    [
      'at least 9',
      ['>= 9', '>=9', '≥ 9', '9 or more', '9+', '9 and up', 'min 9', 'minimum 9', 'no less than 9'],
    ],
    ['at least 9', ['not less than 9', '9 or wider', '9 at least', '9 minimum', 'at the least 9']],
    ['at most 9', ['<= 9', '≤ 9', '9 or less', 'up to 9', 'max 9', 'max. 9', 'no more than 9', '9 at most']],
    [
      '8 to 9',
      ['8-9', '8 - 9', '8 – 9', '8–9', '8—9', '8..9', '8…9', 'between 8 and 9', 'from 8 to 9', '8 or 9'],
    ],
    ['8 to 9', ['8 in - 9 in', '8 to 9 inches', 'eight to nine']],
    ['9 1/2', ['9-1/2', '9½', '9 and a half', 'nine and a half']],
    ['9 1/2 to 10', ['9 1/2-10', '9-1/2 - 10', '9½–10']],
    ['9 to 10 1/2', ['9-10 1/2', '9 – 10½', 'between 9 and 10 and a half']],
    ['1/2', ['half', 'half an inch', 'a half inch', '.5']],
    ['12', ['a foot', '1 foot', 'twelve']],
  ])('as %s: %j', (plain, ways) => {
    const read = (text: string) => {
      const reading = readWishOf('span', text, 'in');
      return reading.ok ? reading.wish : `${text}: ${reading.reason}`;
    };
    for (const text of ways) expect(read(text), text).toEqual(read(plain));
  });

  test.each<[string, readonly string[]]>([
    ['7', ['7 swags', '7 repeats', 'seven', '7 each', '7 per side', '7 on each side', 'seven swags']],
    ['odd', ['an odd number', 'odd number', 'uneven', 'Odd', 'an odd number of swags']],
    ['5 to 7', ['5-7', '5 – 7 swags', 'between 5 and 7', 'five to seven']],
    ['5 to 6', ['5 or 6', '5-6']],
    ['at least 7', ['7 or more', '7 swags or more', '>= 7', '7+']],
  ])('counts as %s: %j', (plain, ways) => {
    for (const text of ways) expect(readRepeatsWish(text), text).toEqual(readRepeatsWish(plain));
  });

  test.each<[string, readonly string[]]>([
    ['75 %', ['three quarters', '3/4', '75%', '75', '.75']],
    ['50 %', ['half', 'a half', '1/2', 'half of the border']],
    ['100 %', ['all', 'full', 'all of it']],
    ['at least 80 %', ['80 percent or more', '>= 80 %', '80%+', 'min. 80 %']],
    ['75 to 90 %', ['75-90%', '75 – 90 %']],
  ])('shares as %s: %j', (plain, ways) => {
    for (const text of ways) expect(readShareWish(text), text).toEqual(readShareWish(plain));
  });

  test('so much more or less is a range', () => {
    const ends = { least: expect.closeTo(8 * 25.4, 9), most: expect.closeTo(9 * 25.4, 9) };
    for (const text of ['8 1/2 +/- 1/2', '8½ ± ½', '8.5 +- .5'])
      expect(readWishOf('span', text, 'in'), text).toEqual({ ok: true, wish: ends });
    expect(readRepeatsWish('1 ± 1')).toMatchObject({ ok: false, reason: 'too small' });
  });

  test('no gap is a gap of nothing', () => {
    for (const text of ['touching', 'none', 'no gap', '0'])
      expect(readWishOf('gap', text, 'in')).toEqual({ ok: true, wish: 0 });
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
    [
      'span: about',
      `swag.span: no number stands beside “about”; found "about"; ${LENGTH}; for example about 9`,
    ],
    [
      'span: at least',
      `swag.span: no number stands beside “at least”; found "at least"; ${LENGTH}; for example at least 9`,
    ],
    [
      'span: 8 to',
      `swag.span: nothing stands after “to”; found "8 to"; ${LENGTH}; for example 8 to 10, or at least 8`,
    ],
    [
      'span: to 10',
      `swag.span: nothing stands before “to”; found "to 10"; ${LENGTH}; for example at most 10`,
    ],
    [
      'span: over 9',
      `swag.span: a bound that is not reached itself; found "over 9"; ${LENGTH}; write at least 9`,
    ],
    ['span: "< 9"', `swag.span: a bound that is not reached itself; found "< 9"; ${LENGTH}; write at most 9`],
    [
      'span: 9 or 12',
      `swag.span: one or the other is not asked for; found "9 or 12"; ${LENGTH}; for example 9 to 12`,
    ],
    [
      'span: 7 swags',
      `swag.span: so many swags are no length; found "7 swags"; ${LENGTH}; how many is asked for by repeats`,
    ],
    ['span: any', `swag.span: no number; found "any"; ${LENGTH}; auto leaves it open`],
    ["span: '9,5'", `swag.span: a comma in a number; write a decimal point: 9.5; found "9,5"; ${LENGTH}`],
    ['span: 9 - 1/2', `swag.span: not one number with one unit; found "9 - 1/2"; ${LENGTH}`],
    ["span: ''", `swag.span: nothing is written; found ""; ${LENGTH}`],
    [
      'span: 4 to 3',
      'swag.span: it ends below where it begins; found "4 to 3"; expected the smaller one first',
    ],
    [
      'span: 3 to 4 to 5',
      `swag.span: more than two ends; found "3 to 4 to 5"; ${LENGTH}; for example 8 to 10`,
    ],
    ['span: 0', 'swag.span: too small; found 0; expected at least 1/8 in'],
    ['span: about 4000', 'swag.span: too large; found "about 4000"; expected at most 400 in'],
    ['span: -9', `swag.span: a negative length; found -9; ${LENGTH}`],
    ['span: [9]', `swag.span: this does not fit here; found a list of 1; ${LENGTH}`],
    ['use: 120 %', 'swag.use: too large; found "120 %"; expected at most 100 %'],
    ['use: plenty', `swag.use: not a share; found "plenty"; ${SHARE}`],
    [
      'use: 3 in',
      `swag.use: a length is no share; found "3 in"; ${SHARE}; how deep a swag is, is asked for by depth`,
    ],
    ['use: 1/0', `swag.use: not a share; found "1/0"; ${SHARE}`],
    ['use: 0', 'swag.use: too small; found 0; expected at least 1 %'],
    [
      'repeats: od',
      `swag.repeats: this does not fit here; found "od"; ${COUNT}; or auto; did you mean "odd"?`,
    ],
    [
      'repeats: 9 in',
      `swag.repeats: a length is not how many; found "9 in"; ${COUNT}; how wide a swag is, is asked for by span`,
    ],
    ['repeats: [5, ~, 5, 7]', `swag.repeats.2: no value is written; ${COUNT}; or auto`],
    ['repeats: [5, banana, 5, 7]', `swag.repeats.2: not a whole number; found "banana"; ${COUNT}`],
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

  test.each(['constructor', '__proto__', 'tostring', 'valueof'])('“%s” is no name of anything', (text) => {
    for (const reading of [readWishOf('span', text, 'in'), readShareWish(text), readRepeatsWish(text)])
      expect(reading.ok).toBe(false);
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
