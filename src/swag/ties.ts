/**
 * Which of two designs that cost the same comes first. It must not hang on which side is called top: so it goes by
 * sums over all sides, in which no side is the first.
 */

import type { Fit } from './fit.ts';

/** Costs are told to this: what differs by less differs by rounding only, and is a tie. */
const COST_STEP = 1e9;

export const settledCost = (cost: number): number => Math.round(cost * COST_STEP) / COST_STEP;

/** A side of a design: how many swags, and how deep (mm). */
export interface Tied {
  readonly repeats: number;
  readonly depth: number;
}

export const tiedOf = ({ sides }: Pick<Fit, 'sides'>): readonly Tied[] =>
  sides.map(({ repeats, seat }) => ({ repeats, depth: seat.depth }));

/** Negative where `a` comes before `b`: fewer and more even counts first, then shallower and more even depths. */
export const byEvenness = (a: readonly Tied[], b: readonly Tied[]): number =>
  squares(a, 'repeats') - squares(b, 'repeats') || settledCost(squares(a, 'depth') - squares(b, 'depth'));

const squares = (sides: readonly Tied[], of: keyof Tied): number =>
  sides.reduce((sum, side) => sum + side[of] * side[of], 0);

/** A fit that a search has found, and what it costs. */
export interface Kept {
  readonly fit: Fit;
  readonly cost: number;
}

export const cheaper = (a: Kept | undefined, b: Kept | undefined): Kept | undefined =>
  a && b ? ((b.cost - a.cost || byEvenness(tiedOf(b.fit), tiedOf(a.fit))) < 0 ? b : a) : (a ?? b);
