/**
 * How well the swags of a fit meet what is asked of them (asked.ts).
 *
 * A range holds for every side, and of depth and use for the corners too. What is asked about ranks by the side that is
 * farthest from it, before all else by which fits are ranked.
 */

import { missOf, onlyRanks, type Wishes, type WishKey } from './asked.ts';
import type { Field } from './field.ts';
import { cornerSwag, type Fit, type SideFit } from './fit.ts';
import { useOf } from './score.ts';

/** A figure of a side, or of a corner where it has one of its own. */
type Figures = Readonly<Partial<Record<WishKey, number>>>;

/** Where swags are measured. */
interface Band {
  readonly field: Field;
  /** mm that outward channels reach beyond the stitching. */
  readonly outward: number;
}

/** What is asked of the swags of a band. */
export interface Measuring extends Band {
  readonly wishes: Wishes;
}

type Side = Pick<SideFit, 'repeats' | 'seat'>;

/** The share of a band that stitching uses which reaches so far (mm) from its start line. */
export const useOfTop = (top: number, { field, outward }: Band): number =>
  Math.min(1, useOf(top, field, outward));

const figuresOf = ({ repeats, seat }: Side, to: Band): Figures => ({
  span: seat.span,
  depth: seat.depth,
  use: useOfTop(seat.pose.top, to),
  repeats,
  gap: seat.gap,
});

/** Of a corner only these are its own: its gaps are those of its sides, and round it its span is told along two of them. */
const cornerFigures = (seat: Side['seat'], to: Band): Figures => ({
  depth: seat.depth,
  use: useOfTop(seat.pose.top, to),
  ...(to.field.corners === 'across' && { span: seat.span }),
});

/** What is measured on every side, by its place, and on the corners. */
export const figuresOfFit = (
  fit: Pick<Fit, 'sides' | 'corner'>,
  to: Band,
): readonly { readonly i: number | undefined; readonly figures: Figures }[] => {
  const corner = cornerSwag(fit);
  return [
    ...fit.sides.map((side, i) => ({ i, figures: figuresOf(side, to) })),
    ...(corner ? [{ i: undefined, figures: cornerFigures(corner.seat, to) }] : []),
  ];
};

/** How far from each wish the worst of some sides and corners is. */
export type Missed = readonly number[];

const addMisses = (
  before: Missed | undefined,
  { asked }: Wishes,
  i: number | undefined,
  figures: Figures,
): Missed =>
  asked.map((one, k) => {
    const value = one.on === undefined || one.on === i ? figures[one.key] : undefined;
    return Math.max(before?.[k] ?? 0, value === undefined ? 0 : missOf(one, value));
  });

/** How far a fit is from each wish. */
export const missedBy = (fit: Pick<Fit, 'sides' | 'corner'>, to: Measuring): Missed =>
  figuresOfFit(fit, to).reduce<Missed>(
    (missed, { i, figures }) => addMisses(missed, to.wishes, i, figures),
    [],
  );

export const missedBySide = (before: Missed | undefined, i: number, side: Side, to: Measuring): Missed =>
  addMisses(before, to.wishes, i, figuresOf(side, to));

/** What being off by the whole of what is asked costs: a thousandth of it outweighs all else. */
export const WISH_WEIGHT = 1e5;

/** What it costs to be so far from the wishes. */
export const missCost = (missed: Missed): number => {
  let sum = 0;
  for (const miss of missed) sum += miss;
  return WISH_WEIGHT * sum;
};

/** Whether a range that binds is missed. */
export const breaksRange = ({ asked, ranges }: Wishes, missed: Missed): boolean =>
  ranges === 'bind' && missed.some((miss, k) => miss > 0 && !onlyRanks(asked[k]!));
