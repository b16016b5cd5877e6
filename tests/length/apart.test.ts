/** What was found and its limit never read alike. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  INCH_SIXTEENTH,
  INCH_SIXTYFOURTH,
  LENGTH_STYLES,
  lengthsApart,
  MM_TENTH,
  numberApart,
} from '../../src/length/index.ts';

describe('a length and the limit that it passes', () => {
  it('are said in the style where that tells them apart', () => {
    expect(lengthsApart(25.4 / 32, 25.4 / 64, INCH_SIXTYFOURTH)).toEqual(['1/32 in', '1/64 in']);
    expect(lengthsApart(3100, 3048, MM_TENTH)).toEqual(['3100 mm', '3048 mm']);
  });

  it('are said finer, or in words, where they would read alike', () => {
    // 1/64 in is 0.396875 mm.
    expect(lengthsApart(0.42, 25.4 / 64, INCH_SIXTYFOURTH)).toEqual([
      'a little more than 1/64 in',
      '1/64 in',
    ]);
    expect(lengthsApart(25.39, 25.4, INCH_SIXTEENTH)).toEqual(['a little less than 1 in', '1 in']);
    // 120 1/50 in lies nearest to 120 in in 1/16 in and in 1/32, and to 120 1/64 in 1/64.
    expect(lengthsApart(120.02 * 25.4, 120 * 25.4, INCH_SIXTEENTH)).toEqual(['120 1/32 in', '120 in']);
    expect(lengthsApart(9.96, 10, MM_TENTH)).toEqual(['9.96 mm', '10 mm (10.00 mm)']);
  });

  it('never read alike, whatever they are', () => {
    const mm = fc.double({ min: 0, max: 4000, noNaN: true });
    const by = fc.double({ min: 1e-8, max: 1, noNaN: true });
    fc.assert(
      fc.property(mm, by, fc.constantFrom(...LENGTH_STYLES), (limit, more, style) => {
        const [found, said] = lengthsApart(limit + more, limit, style);
        expect(found).not.toBe(said);
      }),
    );
  });

  it('have no more digits than it takes, and none where they are one figure', () => {
    expect(lengthsApart(9 * 25.4, 9 * 25.4, INCH_SIXTEENTH)).toEqual(['9 in', '9 in']);
    expect(numberApart(1.00049, 1, 1)).toBe('1.0005');
    expect(numberApart(50.3, 50, 0)).toBe('50.3');
    expect(numberApart(72, 50, 0)).toBe('72');
  });
});
