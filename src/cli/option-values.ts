/** What people write after an option, read into values; or wrong use, in one line that says what is right. */

import { nearestOf, quoted } from '../document/index.ts';
import type { Point } from '../geometry/index.ts';
import { readLength, type Units } from '../length/index.ts';
import { wrongValue } from './wrong-use.ts';

/** One of the words that an option takes, in any case. */
export const readWord = <T extends string>(option: string, text: string, words: readonly T[]): T => {
  const word = words.find((w) => w === text.toLowerCase());
  if (word !== undefined) return word;
  const near = nearestOf(text, words);
  throw wrongValue(option, 'not known', {
    found: quoted(text),
    expected: words.length > 1 ? `one of ${words.join(', ')}` : words.join(''),
    ...(near === undefined ? {} : { hint: `did you mean ${quoted(near)}?` }),
  });
};

/** A length in mm; a bare number is in `units`. */
export const readLengthOption = (
  option: string,
  text: string,
  units: Units,
  sign: 'positive' | 'zero-or-more' = 'zero-or-more',
): number => {
  const reading = readLength(text, units, sign);
  if (reading.ok) return reading.mm;
  throw wrongValue(option, reading.reason, { found: reading.found, expected: reading.expected });
};

const PAIR = /^(-?\d{1,6}(?:\.\d{1,6})?)\s*,\s*(-?\d{1,6}(?:\.\d{1,6})?)$/;

/** A place as x,y; undefined where it is no such pair. */
export const readPair = (text: string): Point | undefined => {
  const pair = PAIR.exec(text.trim());
  return pair ? { x: Number(pair[1]), y: Number(pair[2]) } : undefined;
};

export interface FourSides {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** One length for all sides, or four with commas between: top, right, bottom, left. */
export const readSides = (option: string, text: string, units: Units): FourSides => {
  const lengths = text.split(',').map((part) => part.trim());
  if (lengths.length !== 1 && lengths.length !== 4)
    throw wrongValue(option, 'not one length, and not four', {
      found: quoted(text),
      expected: 'a length such as 1/2, or top,right,bottom,left such as 1/2,1/2,3/4,1/2',
    });
  const mm = lengths.map((length) => readLengthOption(option, length, units));
  return { top: mm[0]!, right: mm[1] ?? mm[0]!, bottom: mm[2] ?? mm[0]!, left: mm[3] ?? mm[0]! };
};

/** A whole number within limits. */
export const readWhole = (option: string, text: string, least: number, most: number): number => {
  const value = /^\d{1,9}$/.test(text.trim()) ? Number(text) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw wrongValue(option, 'not a number that can be used', {
    found: quoted(text),
    expected: `a whole number from ${least} to ${most}`,
  });
};
