/** What she measured on her last print, as she typed it: along the paper's short and its long edge. */

import { readLength, type Units } from '../../length/index.ts';
import { CHECK_SIDE, type PerEdge } from '../../pagination/index.ts';
import { measuredWords } from '../words/words.ts';

export interface Typed {
  readonly short: string;
  readonly long: string;
}

/** What a browser remembers of it. */
export interface KeptMeasured {
  readonly typed: Typed;
  /** Kept before as across and up a sheet that may have lain either way: she is told, and nothing is corrected by it. */
  readonly unclear?: string;
}

/** `before` is what was kept while the page asked for across and up. Two equal figures are the same for either edge. */
export const keptMeasured = (now: string | null, before: string | null): KeptMeasured => {
  if (now !== null) return { typed: typedFrom(now) };
  const { short: across, long: up } = typedFrom(before ?? '');
  if (across === up) return { typed: { short: across, long: up } };
  return { typed: NOTHING, unclear: measuredWords.before({ across, up }) };
};

export const measuredText = ({ short, long }: Typed): string => `${short}|${long}`;

const NOTHING: Typed = { short: '', long: '' };

const typedFrom = (text: string): Typed => {
  const [short = '', long = ''] = text.split('|');
  return { short: short.trim(), long: long.trim() };
};

/** More is a viewer that scales, which is to be switched off and not measured away: as the command has it. */
const MOST_ERROR = 0.1;

/** Measured over true, of the check square; a bare number is in her units. */
export const factorOf = (text: string, units: Units): number | undefined => {
  const read = readLength(text, units, 'positive');
  const factor = read.ok ? read.mm / CHECK_SIDE : Number.NaN;
  return Math.abs(factor - 1) <= MOST_ERROR ? factor : undefined;
};

/** A field that is left empty stands for a side that is right. */
export const factorsOf = ({ short, long }: Typed, units: Units): PerEdge | undefined | 'wrong' => {
  if (short.trim() === '' && long.trim() === '') return undefined;
  const a = short.trim() === '' ? 1 : factorOf(short, units);
  const b = long.trim() === '' ? 1 : factorOf(long, units);
  return a === undefined || b === undefined ? 'wrong' : { short: a, long: b };
};
