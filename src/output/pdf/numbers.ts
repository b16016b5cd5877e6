/** Numbers as PDF wants them: plain decimals. The only way a number gets into a page. */

import { MM_PER_INCH } from '../../length/index.ts';

/** 1/72 in is PDF's unit (ISO 32000-1, 8.3.2.3); no page here changes it. */
export const POINTS_PER_MM = 72 / MM_PER_INCH;

/** 0.001 pt is 0.35 µm: finer than any printer, and what every stated exactness counts on. */
const DECIMALS = 1000;

/** Beyond this a real may not be read back in thousandths (doubles carry 15 digits), nor does paper reach so far. */
const LARGEST = 1e9;

/** What stands behind a whole number for each count of thousandths: '', '.001', '.002', … '.01', … '.999'. */
const FRACTIONS: readonly string[] = Array.from({ length: DECIMALS }, (_, n) =>
  n === 0 ? '' : `.${String(n).padStart(3, '0').replace(/0+$/, '')}`,
);

/**
 * A number in thousandths, without an exponent and without −0. Throws for what is not finite: a page with NaN in
 * it opens in some viewers and prints something else. Put together from whole numbers: a page of curves is mostly
 * numbers, and the shortest digits of a double take five times as long to find.
 */
export const pdfNumber = (value: number): string => {
  if (!(Math.abs(value) <= LARGEST)) throw new Error(`A page was given the number ${value}.`);
  const thousandths = Math.round(value * DECIMALS);
  const size = Math.abs(thousandths);
  const whole = Math.floor(size / DECIMALS);
  const digits = whole + FRACTIONS[size - whole * DECIMALS]!;
  return thousandths < 0 ? `-${digits}` : digits;
};

/** A length in mm rounded to thousandths of a point, for page boxes. */
export const pointsOf = (mm: number): number => Math.round(mm * POINTS_PER_MM * DECIMALS) / DECIMALS;
