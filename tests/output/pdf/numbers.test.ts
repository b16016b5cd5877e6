import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pdfNumber, pointsOf } from '../../../src/output/pdf/numbers.ts';
import { runs } from '../../support/runs.ts';

describe('numbers in a page', () => {
  it('are plain decimals in thousandths', () => {
    expect([0.1 + 0.2, 200.00000000000003, 1 / 3, 12, -0.0004, -0, 5e-324, 1e6].map(pdfNumber)).toEqual([
      '0.3',
      '200',
      '0.333',
      '12',
      '0',
      '0',
      '0',
      '1000000',
    ]);
  });

  it('are never anything but digits, a point and a minus, and within half a thousandth', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), (value) => {
        const text = pdfNumber(value);
        expect(text).toMatch(/^(0|-?(?!0(\.0*)?$)\d+(\.\d{1,3})?)$/);
        expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(0.0005 + Math.abs(value) * 1e-15);
      }),
      runs(2000, 3),
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e21])('are not %s', (value) => {
    expect(() => pdfNumber(value)).toThrow(/number/);
  });

  it('give page sizes to a thousandth of a point', () => {
    // 72/25.4 points a millimetre (ISO 32000-1, 8.3.2.3): A4 is 595.2755906 × 841.8897638 pt.
    expect([215.9, 279.4, 210, 297].map(pointsOf)).toEqual([612, 792, 595.276, 841.89]);
  });
});
