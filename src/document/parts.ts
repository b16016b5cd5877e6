/** Parts that the schemas of all files are made of: lengths, titles, names. */

import * as z from 'zod';
import {
  type AllowedSign,
  formatLength,
  INCH_SIXTYFOURTH,
  type LengthStyle,
  MM_TENTH,
  readLength,
  UNITS,
  type Units,
} from '../length/index.ts';
import { refuse } from './check.ts';
import { describeValue } from './describe.ts';
import { oneLine } from './problem.ts';
import { type SourceDocument, valueAt } from './read.ts';

/** Both in mm, both allowed themselves. A limit is there because what lies beyond is a slip, and says which. */
export interface LengthLimits {
  readonly least?: number;
  readonly most?: number;
  readonly sign?: AllowedSign;
  /** For editors that complete and explain keys. */
  readonly description?: string;
}

/** Limits are stated in the file's own units. */
const STYLES: Readonly<Record<Units, LengthStyle>> = {
  in: INCH_SIXTYFOURTH,
  cm: { unit: 'cm', step: 0.1 },
  mm: MM_TENTH,
};

/** A length in any unit, bare numbers in the file's; becomes mm. */
export const lengthOf = (unit: Units, limits: LengthLimits = {}) => {
  const { least, most, description } = limits;
  const sign = limits.sign ?? (least !== undefined && least > 0 ? 'positive' : 'zero-or-more');
  const nonsense = readLength('', unit, sign);
  const expected = nonsense.ok ? '' : nonsense.expected;
  return z
    .union([z.string(), z.number()], { error: expected })
    .meta({ ...(description !== undefined && { description }), examples: EXAMPLES[unit] })
    .transform((written, context): number => {
      const read = readLength(written, unit, sign);
      if (!read.ok) {
        const { code, reason, found, expected } = read;
        return refuse(context, written, { code, message: reason, found, expected });
      }
      const found = describeValue(written);
      const text = (mm: number): string => formatLength(mm, STYLES[unit]);
      if (least !== undefined && !(read.mm >= least - NOISE))
        return refuse(context, written, {
          code: 'too-small',
          message: 'too small',
          found,
          expected: `at least ${text(least)}`,
        });
      if (most !== undefined && !(read.mm <= most + NOISE))
        return refuse(context, written, {
          code: 'too-large',
          message: 'too large',
          found,
          expected: `at most ${text(most)}`,
        });
      return read.mm;
    });
};

/** A limit of 1/64 in must let 1/64 in pass, whichever unit it was written in (mm). */
const NOISE = 1e-9;

const EXAMPLES: Readonly<Record<Units, string[]>> = {
  in: ['5 1/2', '140 mm'],
  cm: ['14', '5 1/2 in'],
  mm: ['140', '5 1/2 in'],
};

/** A list, where a single entry may be written without brackets. */
export const listOrOne = <T extends z.ZodType>(entry: T, most: number, expected: string, least = 0) =>
  z
    .union([z.array(entry).min(least).max(most), entry], { error: expected })
    .transform((value): readonly z.output<T>[] => (Array.isArray(value) ? value : [value as z.output<T>]));

/** Printed in headings and on every sheet. */
export const MOST_TITLE = 120;
export const titleText = (): z.ZodType<string> =>
  z
    .union([z.string().trim().min(1).max(MOST_TITLE), z.number()], {
      error: `a text of at most ${MOST_TITLE} characters`,
    })
    .transform((value) => oneLine(String(value)));

/** A name that can be said in one breath, and written beside a mark. */
export const MOST_NAME = 40;
export const nameText = (): z.ZodType<string> =>
  z
    .union([z.string().trim().min(1).max(MOST_NAME), z.number()], {
      error: `a name of at most ${MOST_NAME} characters`,
    })
    .transform((value) => oneLine(String(value)));

/** Read before all else, because every bare number depends on it. What is wrong with it the schema says. */
export const unitsOf = (document: SourceDocument): Units => {
  const written = valueAt(document, ['units']);
  return UNITS.find((u) => u === written) ?? 'in';
};

/**
 * A file's name without folders and ending: what a template is called, and a plan without a title. It is printed, so
 * what would steer a terminal is taken out of it.
 */
export const baseName = (fileName: string): string => {
  const base = fileName.split(/[\\/]/).at(-1) ?? fileName;
  return oneLine(base.replace(/\.(ya?ml|json)$/i, '') || base);
};

/** A schema for each unit, made when it is first asked for: making one takes longer than most files do. */
export const perUnit = <T>(make: (unit: Units) => T): ((unit: Units) => T) => {
  const made = new Map<Units, T>();
  return (unit) => {
    const known = made.get(unit) ?? make(unit);
    made.set(unit, known);
    return known;
  };
};
