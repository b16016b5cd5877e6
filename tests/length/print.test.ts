import fc from 'fast-check';
import { Fraction } from 'fraction.js';
import { describe, expect, test } from 'vitest';
import {
  CM_TENTH,
  exactLength,
  formatLength,
  INCH_EIGHTH,
  INCH_SIXTEENTH,
  INCH_SIXTYFOURTH,
  INCH_THIRTYSECOND,
  type LengthStyle,
  MM_HALF,
  MM_PER_INCH,
  MM_TENTH,
  MM_WHOLE,
  readLength,
  roundLength,
  stepOf,
} from '../../src/length/index.ts';
import { LENGTH_STYLES } from '../../src/length/print.ts';
import { runs } from '../support/runs.ts';

const inches = (n: number): number => n * MM_PER_INCH;

/**
 * The rule "multiply by the denominator, round, reduce" and the case 0.123 in = 8/64 = 1/8 in are from the
 * decimal-to-fraction chart at machinecalcs.com. The ties follow this project's own rule, away from zero on
 * both sides: the carries 0.999 → 1 and 5.9999 → 6 and the two ties 31/32 and 1/32 hold under it.
 */
const PRINTED: readonly (readonly [number, LengthStyle, string])[] = [
  [inches(0.123), INCH_SIXTYFOURTH, '1/8 in'],
  [inches(0.999), INCH_SIXTEENTH, '1 in'],
  [inches(31 / 32), INCH_SIXTEENTH, '1 in'],
  [inches(1 / 32), INCH_SIXTEENTH, '1/16 in'],
  [inches(-1 / 32), INCH_SIXTEENTH, '-1/16 in'],
  [inches(-31 / 32), INCH_SIXTEENTH, '-1 in'],
  [inches(5.9999), INCH_THIRTYSECOND, '6 in'],
  [inches(5 + 63 / 64), INCH_SIXTEENTH, '6 in'],
  [inches(0.0625), INCH_SIXTEENTH, '1/16 in'],
  [inches(5.5), INCH_SIXTEENTH, '5 1/2 in'],
  [inches(5.5), INCH_THIRTYSECOND, '5 1/2 in'],
  [inches(3 / 8), INCH_EIGHTH, '3/8 in'],
  [inches(17 / 32), INCH_THIRTYSECOND, '17/32 in'],
  // The same 17/32 in, reached by a multiplication in doubles that falls short of 13.49375.
  [13.493749999999999, INCH_THIRTYSECOND, '17/32 in'],
  // 17/32 in is a tie between 8/16 and 9/16 in, also when it comes out a hair short.
  [13.493749999999999, INCH_SIXTEENTH, '9/16 in'],
  [13.49375, INCH_SIXTEENTH, '9/16 in'],
  [0, INCH_SIXTEENTH, '0 in'],
  [-0, INCH_SIXTEENTH, '0 in'],
  [-0.01, INCH_SIXTEENTH, '0 in'],
  [0.01, INCH_SIXTEENTH, '0 in'],
  [inches(-0.25), INCH_SIXTEENTH, '-1/4 in'],
  [inches(-5.25), INCH_SIXTEENTH, '-5 1/4 in'],
  [inches(1200), INCH_SIXTEENTH, '1200 in'],
  [12.5, MM_HALF, '12.5 mm'],
  [12.25, MM_HALF, '12.5 mm'],
  [-12.25, MM_HALF, '-12.5 mm'],
  [12.249, MM_HALF, '12 mm'],
  [12, MM_HALF, '12 mm'],
  [0.5, MM_HALF, '0.5 mm'],
  [-0.2, MM_HALF, '0 mm'],
  [12.34, MM_TENTH, '12.3 mm'],
  [0.05, MM_TENTH, '0.1 mm'],
  [0.3, MM_TENTH, '0.3 mm'],
  [100, MM_TENTH, '100 mm'],
  [-1.5, MM_WHOLE, '-2 mm'],
  [2.5, MM_WHOLE, '3 mm'],
  [142, CM_TENTH, '14.2 cm'],
  [140, CM_TENTH, '14 cm'],
  [4, CM_TENTH, '0.4 cm'],
  [12.5, { unit: 'cm', step: 0.5 }, '1.25 cm'],
];

describe('formatLength', () => {
  test.each(PRINTED)('%d mm as %o is %s', (mm, style, text) => {
    expect(formatLength(mm, style)).toBe(text);
  });

  test('the table above ran whole', () => {
    expect(PRINTED).toHaveLength(40);
  });

  test('what is no length is never printed', () => {
    for (const mm of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e300]) {
      expect(() => formatLength(mm, INCH_SIXTEENTH)).toThrow('cannot be printed');
      expect(() => roundLength(mm, MM_HALF)).toThrow('cannot be printed');
    }
  });

  test('the largest rounding errors are half a step', () => {
    // To 1/16 in 0.79375 mm, to 1/32 in 0.396875 mm, to 1/8 in 1.5875 mm: half of 25.4 mm over the denominator.
    expect(stepOf(INCH_SIXTEENTH) / 2).toBeCloseTo(0.79375, 12);
    expect(stepOf(INCH_THIRTYSECOND) / 2).toBeCloseTo(0.396875, 12);
    expect(stepOf(INCH_EIGHTH) / 2).toBeCloseTo(1.5875, 12);
    expect(stepOf(MM_HALF)).toBe(0.5);
  });

  const styles = fc.constantFrom(...LENGTH_STYLES);
  const lengths = fc.oneof(
    fc.double({ min: -5000, max: 5000, noNaN: true }),
    // Nearly a step, and nearly a tie between two steps.
    fc
      .tuple(fc.integer({ min: -9999, max: 9999 }), fc.constantFrom(0, 1e-13, -1e-13, 1e-6, -1e-6))
      .map(([steps, noise]) => (steps * MM_PER_INCH) / 128 + noise),
  );

  test('rounds to the nearest step, the same on both sides of zero', () => {
    fc.assert(
      fc.property(lengths, styles, (mm, style) => {
        const rounded = roundLength(mm, style);
        expect(Math.abs(rounded - mm)).toBeLessThanOrEqual(stepOf(style) / 2 + 1e-7);
        expect(roundLength(-mm, style) + rounded).toBe(0);
        expect(roundLength(rounded, style)).toBe(rounded);
        expect(Object.is(rounded, -0)).toBe(false);
      }),
      runs(2000, 1),
    );
  });

  test('what is printed reads back as what was rounded, and is reduced', () => {
    fc.assert(
      fc.property(lengths, styles, (mm, style) => {
        const text = formatLength(mm, style);
        const read = readLength(text, 'mm', 'any');
        expect(read.ok && Math.abs(read.mm - roundLength(mm, style))).toBeLessThan(1e-9);
        expect(text).not.toMatch(/^-0(?![.\d])|^-?0 \d|\.0|[^.]\b0\d/);
        const fraction = /(\d+)\/(\d+)/.exec(text);
        if (fraction) expect(new Fraction(fraction[0]).toFraction()).toBe(fraction[0]);
      }),
      runs(2000, 2),
    );
  });
});

test.each([
  [6.35, MM_HALF, '6.35 mm'],
  [6.35, CM_TENTH, '6.35 mm'],
  [6, CM_TENTH, '0.6 cm'],
  [6.5, CM_TENTH, '0.65 cm'],
  [1502.45, CM_TENTH, '150.245 cm'],
  [6.35, INCH_SIXTEENTH, '1/4 in'],
  // 17/64 in is 6.746875 mm.
  [6.746875, INCH_SIXTEENTH, '17/64 in'],
  // 15/64 in is 5.953 mm, and so a foot of 6 mm has no such name.
  [6, INCH_SIXTEENTH, '6 mm'],
  [3, MM_WHOLE, '3 mm'],
])('%f mm is called what it is: %j', (mm, style, text) => {
  expect(exactLength(mm, style)).toBe(text);
});
