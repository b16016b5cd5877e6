/** Lengths of a plan in the units that she works in: shown so, and written so where that changes nothing. */

import {
  formatLength,
  INCH_SIXTEENTH,
  INCH_SIXTYFOURTH,
  type LengthStyle,
  MM_PER,
  MM_TENTH,
  readLength,
  type Units,
} from '../../length/index.ts';

/** Finer than a pencil line; a plan may hold more digits, such as those of what was inches. */
const ROUNDED: Readonly<Record<Units, LengthStyle>> = {
  in: INCH_SIXTEENTH,
  cm: { unit: 'cm', step: 0.1 },
  mm: MM_TENTH,
};

/** Decimals that are still read at a glance. */
const MOST_DECIMALS: Readonly<Record<Units, number>> = { in: 4, cm: 2, mm: 1 };

const mmOf = (text: string, units: Units): number | undefined => {
  const read = readLength(text, units, 'any');
  return read.ok ? read.mm : undefined;
};

const bare = (mm: number, style: LengthStyle): string => formatLength(mm, style).replace(/ \w+$/, '');

/**
 * The number that says just this length (mm) in these units: a fraction of an inch to the 64th, or a decimal.
 * Undefined where there is none as short as people write them, as for 14 cm in inches.
 */
export const exactly = (mm: number, units: Units): string | undefined => {
  // A 64th of an inch has seven decimals in cm.
  const decimal = (mm / MM_PER[units]).toFixed(units === 'in' ? 4 : 7).replace(/\.?0+$/, '');
  const tries = units === 'in' ? [bare(mm, INCH_SIXTYFOURTH), decimal] : [decimal];
  return tries.find((text) => mmOf(text, units) === mm);
};

export interface Shown {
  readonly text: string;
  /** What the plan says, where the text is rounded from a length in other units. */
  readonly exact?: string;
}

/** A length as the plan writes it, shown in these units without their name. What is no length is shown as it is. */
export const shownLength = (written: string, units: Units): Shown => {
  const mm = mmOf(written, units);
  if (mm === undefined) return { text: written };
  const saysUnit = (['in', 'cm', 'mm'] as const).every((other) => mmOf(written, other) === mm);
  if (!saysUnit || mm === 0) {
    const decimals = /\.(\d+)$/.exec(written.trim())?.[1]?.length ?? 0;
    return { text: decimals > MOST_DECIMALS[units] ? bare(mm, ROUNDED[units]) : written };
  }
  const text = exactly(mm, units);
  if (text !== undefined) return { text: shownLength(text, units).text };
  return { text: bare(mm, ROUNDED[units]), exact: written };
};
