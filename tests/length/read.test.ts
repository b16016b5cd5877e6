import fc from 'fast-check';
import { Fraction } from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { MM_PER_INCH, readLength, type Units } from '../../src/length/index.ts';
import { MOST_LENGTH_CHARACTERS } from '../../src/length/read.ts';
import { runs } from '../support/runs.ts';

/**
 * Expected values are products by hand of a rational number of inches and the inch's definition, 25.4 mm
 * exactly; for the decimals of 1/64 to 17/32 in they agree with published inch tables (rebab.net for 1/64 to
 * 3/32 in).
 */
const READ: readonly (readonly [string, Units, number])[] = [
  ['5 1/2 in', 'in', 139.7],
  ['5-1/2"', 'in', 139.7],
  ['5½ in', 'in', 139.7],
  ['5½″', 'mm', 139.7],
  // The decimal marker is a point or a comma (SI brochure, 9th edition, 5.4.4; from memory).
  ['188,0', 'cm', 1880],
  ['143,5', 'mm', 143.5],
  ['5,5 cm', 'in', 55],
  ['1,25 m', 'in', 1250],
  ['0,75', 'cm', 7.5],
  ['5 ½”', 'in', 139.7],
  ['5-½', 'in', 139.7],
  ['5‑1/2 in', 'in', 139.7],
  ['5–1/2', 'in', 139.7],
  ['5\u00a01/2\u00a0in', 'in', 139.7],
  ['5\u20091⁄2 in', 'in', 139.7],
  ['  5   1/2   IN.  ', 'cm', 139.7],
  ['5 1/2 inches', 'in', 139.7],
  ['11/2', 'in', 139.7],
  ['0.5in', 'in', 12.7],
  ['.5 in', 'in', 12.7],
  ['5.', 'in', 127],
  ["5''", 'in', 127],
  ['1 inch', 'mm', 25.4],
  ['½', 'in', 12.7],
  ['⅛', 'in', 3.175],
  ['⅜', 'in', 9.525],
  ['⅞ in', 'in', 22.225],
  ['⅓ yd', 'in', 304.8],
  ['1/64', 'in', 0.396875],
  ['1/32', 'in', 0.79375],
  ['3/32', 'in', 2.38125],
  ['17/32', 'in', 13.49375],
  ['5/8', 'in', 15.875],
  ['1/4', 'mm', 0.25],
  ['1/4', 'cm', 2.5],
  ['14 cm', 'in', 140],
  ['14', 'cm', 140],
  ['140mm', 'in', 140],
  ['140 mm', 'in', 140],
  ['140 millimetres', 'in', 140],
  ['1.2 m', 'in', 1200],
  ['1 ft', 'in', 304.8],
  ['1 foot', 'in', 304.8],
  ['5\' 6"', 'in', 1676.4],
  ['5’6½”', 'in', 1689.1],
  ['5 ft 6 in', 'mm', 1676.4],
  ['2 yd', 'in', 1828.8],
  ['2 yards 1 ft 3 1/2 in', 'in', 2222.5],
  ['0', 'in', 0],
  ['-0', 'in', 0],
];

const REFUSED: readonly (readonly [string | number, string])[] = [
  ['', 'nothing is written'],
  ['   ', 'nothing is written'],
  ['5//2', 'not a number or a fraction'],
  ['1/0', 'a fraction with a zero below the line'],
  ['5 1/0 in', 'a fraction with a zero below the line'],
  ['NaN', 'no number'],
  [Number.NaN, 'no number'],
  [Number.POSITIVE_INFINITY, 'no number'],
  ['1e308', 'a power of ten'],
  [1e308, 'a power of ten'],
  [1e-7, 'a power of ten'],
  ['0x10', 'the unit "x" is not known'],
  ['5 oz', 'a weight, not a length'],
  ['2 kg', 'a weight, not a length'],
  ['45°', 'an angle, not a length'],
  ['50 %', 'a share, not a length'],
  ['12 pt', 'a unit of screens and type, not of cloth'],
  ['5 furlongs', 'the unit "furlongs" is not known'],
  ['5,5 in', 'a comma in a number; write a decimal point: 5.5'],
  ['1,500 mm', 'a comma in a number; write a decimal point'],
  ['5,5 cm 2', 'a comma in a number; write a decimal point: 5.5'],
  ['143,5', 'a comma in a number; write a decimal point: 143.5'],
  ['-,75 in', 'a comma in a number; write a decimal point: 0.75'],
  ['1,234.5', 'a comma in a number; write a decimal point'],
  ['1,000', 'a comma in a number; write a decimal point'],
  ['5 3/2', 'the fraction after a whole number must be less than one'],
  ['1.5/2', 'not a number or a fraction'],
  ['1/2/3', 'not a number or a fraction'],
  ['5..2', 'not a number or a fraction'],
  ['5 6', 'not one number with one unit'],
  ['5 - 1/2', 'not one number with one unit'],
  ['5 -1/2', 'not one number with one unit'],
  ['1½½', 'not one number with one unit'],
  ['5"6\'', 'not one number with one unit'],
  ['5 cm 2 mm', 'not one number with one unit'],
  ['5 in 3', 'not one number with one unit'],
  ['1 yd 1 ft 1 in 1', 'not one number with one unit'],
  ['in', 'no number'],
  ['wide', 'no number'],
  ['5 in wide', 'no number'],
  ['1234567890', 'too many digits'],
  ['٣', 'no number'],
  ['-1/4', 'a negative length'],
  ['−5 mm', 'a negative length'],
  [-2, 'a negative length'],
  ['9'.repeat(41), 'too long to be a length'],
];

describe('readLength', () => {
  test.each(READ)('%s in a file in %s is %d mm', (text, unit, mm) => {
    expect(readLength(text, unit)).toEqual({ ok: true, mm });
  });

  test.each(REFUSED)('%s is refused: %s', (text, reason) => {
    expect(readLength(text, 'in')).toMatchObject({ ok: false, reason });
  });

  test('the tables above ran whole', () => {
    expect([READ.length, REFUSED.length]).toEqual([50, 46]);
  });

  test('says what was found and what would be right, in the unit of the file', () => {
    expect(readLength('5//2', 'in')).toEqual({
      ok: false,
      code: 'not-a-length',
      reason: 'not a number or a fraction',
      found: '"5//2"',
      expected: 'a length such as 5 1/2 or 140 mm',
    });
    expect(readLength('wide', 'cm')).toMatchObject({ expected: 'a length such as 14 or 5 1/2 in' });
    expect(readLength('wide', 'mm')).toMatchObject({ expected: 'a length such as 140 or 5 1/2 in' });
  });

  test('a long text is shortened in the message', () => {
    const read = readLength('x'.repeat(5000), 'in');
    expect(read).toMatchObject({ reason: 'too long to be a length', found: `"${'x'.repeat(32)}…"` });
  });

  test('zero and negative lengths only where they make sense', () => {
    expect(readLength('0', 'in', 'positive')).toMatchObject({ ok: false, code: 'zero' });
    expect(readLength(0, 'mm', 'positive')).toMatchObject({ ok: false, code: 'zero', found: '0' });
    expect(readLength('-1/4', 'in', 'any')).toEqual({ ok: true, mm: -6.35 });
    expect(readLength('−5½ in', 'in', 'any')).toEqual({ ok: true, mm: -139.7 });
    expect(Object.is((readLength('-0', 'in', 'any') as { mm: number }).mm, 0)).toBe(true);
  });

  test('a number is read as it was written', () => {
    expect(readLength(5.1, 'in')).toEqual({ ok: true, mm: 129.54 });
    expect(readLength(0.1, 'cm')).toEqual({ ok: true, mm: 1 });
  });

  test('a number that a program wrote out in full is that number again', () => {
    expect(readLength('137.23456789012346', 'mm')).toEqual({ ok: true, mm: 137.23456789012346 });
    expect(readLength(0.1234567890123456, 'mm')).toEqual({ ok: true, mm: 0.1234567890123456 });
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), (mm) => {
        expect(readLength(mm, 'mm')).toEqual({ ok: true, mm });
        expect(readLength(`${mm} mm`, 'in')).toEqual({ ok: true, mm });
      }),
      runs(2000, 41),
    );
  });

  test('an inch is 25.4 mm', () => {
    expect(MM_PER_INCH).toBe(25.4);
  });

  test('any mixed number of inches is the double nearest to the exact rational', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: 400 }),
        fc.integer({ min: 1, max: 64 }),
        fc.nat({ max: 63 }),
        fc.constantFrom('in', ' in', '"', '″', ' inches', ''),
        (whole, bottom, n, unit) => {
          const top = n % bottom;
          // Exact in whole numbers below 2^53, so that one division rounds once.
          const tenths = (whole * bottom + top) * 254;
          expect(readLength(`${whole} ${top}/${bottom}${unit}`, 'in')).toEqual({
            ok: true,
            mm: tenths / (bottom * 10),
          });
        },
      ),
    );
  });

  test('decimals agree with exact rationals in every unit', () => {
    const size: Readonly<Record<Units, string>> = { in: '25.4', cm: '10', mm: '1' };
    fc.assert(
      fc.property(
        fc.nat({ max: 99999 }),
        fc.nat({ max: 9999 }),
        fc.constantFrom<Units>('in', 'cm', 'mm'),
        (whole, decimals, unit) => {
          const text = `${whole}.${String(decimals).padStart(4, '0')}`;
          const read = readLength(text, unit);
          expect(read).toEqual({ ok: true, mm: new Fraction(text).mul(size[unit]).valueOf() });
          expect(readLength(`${text} ${unit}`, 'mm')).toEqual(read);
        },
      ),
    );
  });

  test('any text gives a finite length or a reason, in bounded time', () => {
    const pieces = fc.constantFrom(
      '5',
      '1/2',
      '½',
      ' ',
      '-',
      '.',
      '"',
      "'",
      'in',
      'ft',
      ',',
      '/',
      'e',
      '0',
      '\u0000',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(pieces, { maxLength: 40 }).map((p) => p.join('')),
        ),
        (text) => {
          const read = readLength(text, 'in', 'any');
          if (read.ok) {
            expect(Number.isFinite(read.mm)).toBe(true);
            expect(text.length).toBeLessThanOrEqual(MOST_LENGTH_CHARACTERS);
          } else {
            expect(read.reason).not.toBe('');
            expect(read.found.length).toBeLessThan(40);
          }
        },
      ),
      runs(2000, 1),
    );
  });
});
