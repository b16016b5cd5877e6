/**
 * Prints lengths for people: inches as reduced fractions (`5 1/2 in`, `3/8 in`, `0 in`), millimetres and
 * centimetres as short decimals (`12.5 mm`, `12 mm`).
 *
 * Rounding: to the nearest step, ties away from zero, the same on both sides of zero. A value within
 * TIE_NOISE of a tie counts as one, because 17/32 in reached by arithmetic may be a hair less than 17/32 in.
 * Decimals are written as ASME Y14.5, 1.6.1, has them: a zero before the point, none after the last digit.
 */

import type { Units } from './read.ts';
import { MM_PER_INCH } from './read.ts';

/** How a length is printed: inches to 1/denominator, or mm or cm to a step (the step is always in mm). */
export type LengthStyle =
  | { readonly unit: 'in'; readonly denominator: 8 | 16 | 32 | 64 }
  | { readonly unit: 'mm' | 'cm'; readonly step: 1 | 0.5 | 0.1 };

export const INCH_EIGHTH: LengthStyle = { unit: 'in', denominator: 8 };
export const INCH_SIXTEENTH: LengthStyle = { unit: 'in', denominator: 16 };
export const INCH_THIRTYSECOND: LengthStyle = { unit: 'in', denominator: 32 };
export const INCH_SIXTYFOURTH: LengthStyle = { unit: 'in', denominator: 64 };
export const MM_WHOLE: LengthStyle = { unit: 'mm', step: 1 };
export const MM_HALF: LengthStyle = { unit: 'mm', step: 0.5 };
export const MM_TENTH: LengthStyle = { unit: 'mm', step: 0.1 };
/** Centimetres to the millimetre: `14.2 cm`. */
export const CM_TENTH: LengthStyle = { unit: 'cm', step: 1 };

/** As a ruler is read where her units are these. */
export const AS_READ: Readonly<Record<Units, LengthStyle>> = {
  in: INCH_SIXTEENTH,
  cm: CM_TENTH,
  mm: MM_TENTH,
};

/** Of two with the same step, the one that is meant where only the step is known stands first. */
export const LENGTH_STYLES: readonly LengthStyle[] = [
  INCH_EIGHTH,
  INCH_SIXTEENTH,
  INCH_THIRTYSECOND,
  INCH_SIXTYFOURTH,
  MM_WHOLE,
  MM_HALF,
  MM_TENTH,
  CM_TENTH,
];

/** The step between two printed lengths, mm. */
export const stepOf = (style: LengthStyle): number =>
  style.unit === 'in' ? MM_PER_INCH / style.denominator : style.step;

/** A length (mm) rounded to what the style can print, mm. Throws when it is not a number that can be printed. */
export const roundLength = (mm: number, style: LengthStyle): number => {
  const steps = countSteps(mm, style);
  // Multiplied before divided, so that whole inches come out as exact multiples of 25.4.
  const size =
    style.unit === 'in' ? (steps * MM_PER_INCH) / style.denominator : steps / Math.round(1 / style.step);
  return mm < 0 ? -size || 0 : size;
};

/** A length (mm) in words: `5 1/2 in`, `12.5 mm`. Throws when it is not a number that can be printed. */
export const formatLength = (mm: number, style: LengthStyle): string => {
  const steps = countSteps(mm, style);
  const sign = mm < 0 && steps > 0 ? '-' : '';
  if (style.unit === 'in') return `${sign}${mixedNumber(steps, style.denominator)} in`;
  // A step is a whole number of tenths of a millimetre, so digits are moved, not divided.
  const tenths = steps * Math.round(style.step * 10);
  return `${sign}${shortDecimal(tenths, style.unit === 'mm' ? 1 : 2)} ${style.unit}`;
};

/**
 * A length (mm) that is what it is, such as a foot's or a template's, to a hundredth of a millimetre: rounded as marks
 * are it would be that of another foot. Inches are said where 1/64 serves; a foot of 6 mm is called that.
 */
export const exactLength = (mm: number, { unit }: LengthStyle): string => {
  if (unit === 'in' && Math.abs(roundLength(mm, INCH_SIXTYFOURTH) - mm) < HUNDREDTH / 2)
    return formatLength(mm, INCH_SIXTYFOURTH);
  const hundredths = Math.round(mm / HUNDREDTH);
  // Of something small nobody reads the third decimal of a centimetre: a foot of 1/4 in is 6.35 mm.
  const isFine = mm < SMALL && hundredths % 10 !== 0;
  return unit === 'cm' && !isFine ? `${shortDecimal(hundredths, 3)} cm` : `${shortDecimal(hundredths, 2)} mm`;
};
const HUNDREDTH = 0.01;
/** mm */
const SMALL = 100;

/** In steps. A thousand times what adding up a border's lengths can lose, and far below what anyone can see. */
const TIE_NOISE = 1e-9;

/** The longest length that is printed, mm: a thousand kilometres. Beyond it something has gone wrong. */
const LONGEST = 1e9;

/** The size of a length in whole steps of the style, rounded as the file's head says. */
const countSteps = (mm: number, style: LengthStyle): number => {
  const size = Math.abs(mm);
  if (!(size <= LONGEST)) throw new Error(`A length of ${mm} mm cannot be printed`);
  const steps = style.unit === 'in' ? (size * style.denominator) / MM_PER_INCH : size / style.step;
  return Math.floor(steps + 0.5 + TIE_NOISE);
};

const mixedNumber = (parts: number, denominator: number): string => {
  const whole = Math.floor(parts / denominator);
  let top = parts % denominator;
  let bottom = denominator;
  // Denominators are powers of two: halving reduces fully, in at most six rounds.
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  if (top === 0) return `${whole}`;
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
};

/** A whole number with its point moved `places` to the left, without trailing zeros. */
const shortDecimal = (units: number, places: number): string => {
  const digits = `${units}`.padStart(places + 1, '0');
  const decimals = digits.slice(-places).replace(/0+$/, '');
  return decimals === '' ? digits.slice(0, -places) : `${digits.slice(0, -places)}.${decimals}`;
};
