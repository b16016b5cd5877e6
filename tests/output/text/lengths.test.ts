/** Lengths in tables: columns that agree with each other, and small distances fine enough to be told apart. */

import { describe, expect, it } from 'vitest';
import {
  CM_TENTH,
  formatLength,
  INCH_SIXTEENTH,
  MM_HALF,
  MM_TENTH,
  MM_WHOLE,
} from '../../../src/length/index.ts';
import { printedSpread, rangeWords, smallLength } from '../../../src/output/text/index.ts';

/** mm */
const INCH = 25.4;

describe('a range of lengths', () => {
  it('says each length as the drawing rounds it, also where a tie lies between two that are nearly the same', () => {
    // 2 29/32 in lies halfway between 2 7/8 and 2 15/16.
    const near = [2.905 * INCH, 2.909 * INCH];
    expect(near.map((mm) => formatLength(mm, INCH_SIXTEENTH))).toEqual(['2 7/8 in', '2 15/16 in']);
    expect(rangeWords(near, INCH_SIXTEENTH)).toBe('2 7/8 to 2 15/16');
    expect(printedSpread(near, INCH_SIXTEENTH)).toBeCloseTo(INCH / 16, 9);
    expect(rangeWords([2.909 * INCH, 2.95 * INCH], INCH_SIXTEENTH)).toBe('2 15/16');
  });

  it('differs by what it prints', () => {
    const apart = [2.89 * INCH, 2.95 * INCH];
    expect(rangeWords(apart, INCH_SIXTEENTH)).toBe('2 7/8 to 2 15/16');
    expect(printedSpread(apart, INCH_SIXTEENTH)).toBeCloseTo(INCH / 16, 9);
  });
});

describe('a small distance', () => {
  it.each([
    [INCH_SIXTEENTH, '11/32 in'],
    [MM_WHOLE, '8.5 mm'],
    [MM_HALF, '8.5 mm'],
    [MM_TENTH, '8.7 mm'],
    [CM_TENTH, '0.85 cm'],
  ] as const)('is told finer than others', (style, text) => {
    // 11/32 in is 8.73 mm.
    expect(smallLength((11 / 32) * INCH, style)).toBe(text);
  });
});
