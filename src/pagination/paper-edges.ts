/**
 * A printer pulls every sheet in the same way, whichever way its page is read: so what it does to lengths belongs to
 * the paper's short and its long edge, and not to across and up, which change places on a landscape page.
 */

import type { Orientation } from './margins.ts';

export type PaperEdge = 'short' | 'long';

/** What a check length of 1 measured on an uncorrected print, along the paper's short and along its long edge. */
export interface PerEdge {
  readonly short: number;
  readonly long: number;
}

/** One figure for lengths across a page as it is read, one for lengths up. */
export interface PerAxis {
  readonly x: number;
  readonly y: number;
}

export const UNMEASURED: PerEdge = { short: 1, long: 1 };

export const isCorrected = ({ short, long }: PerEdge): boolean => short !== 1 || long !== 1;

/** By what lengths in the file are multiplied: `short edge × 1.0101, long edge × 1.0000`. */
export const correctionWords = ({ short, long }: PerEdge): string =>
  `short edge × ${(1 / short).toFixed(4)}, long edge × ${(1 / long).toFixed(4)}`;

/**
 * A printer is seldom off by more than 2 or 3 in 100, and hardly ever by the same along both edges; a viewer that fits
 * the page to the paper takes 3 to 6 off both alike, or adds it. (From memory; no source.)
 */
const LEAST_SCALED = 0.03;
/** What two readings of one length may differ by: 1/32 in of the 2 in square. */
const ALIKE = 1 / 64;

/** What to say where the page was scaled as a whole, by a viewer: that is to be switched off, and not corrected. */
export const scaledWords = ({ short, long }: PerEdge): string | undefined => {
  const isFar = [short, long].every((factor) => Math.abs(factor - 1) > LEAST_SCALED - 1e-9);
  if (!isFar || Math.abs(short - long) > ALIKE + 1e-9) return undefined;
  const size = Math.round(50 * (short + long));
  return `both edges came out at about ${size} %: most likely the viewer fitted the page to the paper. Print at 100 % / actual size, and measure that print`;
};

/** Which edge of the paper runs across a page, and which up. */
export const edgesOf = (orientation: Orientation): { readonly x: PaperEdge; readonly y: PaperEdge } =>
  orientation === 'portrait' ? { x: 'short', y: 'long' } : { x: 'long', y: 'short' };

export const acrossAndUp = (measured: PerEdge, orientation: Orientation): PerAxis => {
  const edges = edgesOf(orientation);
  return { x: measured[edges.x], y: measured[edges.y] };
};

/** What lengths in a file are multiplied by, so that the printer's error cancels: 1/measured, across and up. */
export const factorsFor = (measured: PerEdge, orientation: Orientation): PerAxis => {
  const { x, y } = acrossAndUp(measured, orientation);
  return { x: 1 / x, y: 1 / y };
};
