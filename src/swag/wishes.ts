/**
 * How well the swags of a fit meet what is asked of them (asked.ts).
 *
 * A range holds for every side, and of depth and use for the corners too. What is asked about ranks by the side that is
 * farthest from it, before all else by which fits are ranked.
 */

import { type Asked, missOf, onlyRanks, type Wishes, type WishKey } from './asked.ts';
import type { Field } from './field.ts';
import { cornerSwag, type Fit, kindsIn, type SideFit } from './fit.ts';
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
export const figuresOfFit = (fit: Fit, to: Band): readonly Measured[] =>
  kindsIn(fit).flatMap((kind, of) => {
    const corner = cornerSwag(kind);
    return [
      ...kind.sides.map((side, i) => ({ i, of, figures: figuresOf(side, to) })),
      ...(corner ? [{ i: undefined, of, figures: cornerFigures(corner.seat, to) }] : []),
    ];
  });

/** The figures of a kind on a side, both by their places; a corner has no place. */
interface Measured {
  readonly i: number | undefined;
  readonly of: number;
  readonly figures: Figures;
}

/** Whether something is asked of them. */
export const isOf = ({ on, of }: Pick<Asked, 'on' | 'of'>, measured: Pick<Measured, 'i' | 'of'>): boolean =>
  (on === undefined || on === measured.i) && (of === undefined || of === measured.of);

/** What is asked of a kind, by its place, as if all swags were of it. */
export const ofKind = ({ asked, ranges }: Wishes, kind: number): Wishes => ({
  ranges,
  asked: asked.flatMap((one) => (one.of === undefined || one.of === kind ? [{ ...one, of: undefined }] : [])),
});

/** How far from each wish the worst of some sides and corners is. */
export type Missed = readonly number[];

const missesOf = (
  { asked }: Wishes,
  { figures, ...place }: Omit<Measured, 'of'> & { readonly of?: number },
): Missed =>
  asked.map((one) => {
    const value = isOf(one, { of: 0, ...place }) ? figures[one.key] : undefined;
    return value === undefined ? 0 : missOf(one, value);
  });

/** Of two the farther from each wish. */
export const worseOf = (a: Missed, b: Missed): Missed => a.map((miss, k) => Math.max(miss, b[k]!));

/** How far a fit is from each wish. */
export const missedBy = (fit: Fit, to: Measuring): Missed =>
  figuresOfFit(fit, to)
    .map((measured) => missesOf(to.wishes, measured))
    .reduce(worseOf);

export const missedBySide = (i: number, side: Side, to: Measuring): Missed =>
  missesOf(to.wishes, { i, figures: figuresOf(side, to) });

/** What being off by the whole of what is asked costs: a thousandth of it outweighs all else. */
export const WISH_WEIGHT = 1e5;

/** What it costs to be so far from the wishes. */
export const missCost = (missed: Missed): number => {
  let sum = 0;
  for (const miss of missed) sum += miss;
  return WISH_WEIGHT * sum;
};

/** How far from the wishes all in all may be where that is to cost no more. */
export const missWithin = (cost: number): number => cost / WISH_WEIGHT;

/** What it costs in itself to have so many swags on a side. */
export const countCost = (wishes: Wishes, i: number, repeats: number): number =>
  missCost(missesOf(wishes, { i, figures: { repeats } }));

/** The same wishes but for those of how many swags there are. */
export const withoutCounts = ({ asked, ranges }: Wishes): Wishes => ({
  ranges,
  asked: asked.filter(({ key }) => key !== 'repeats'),
});

/** Whether a range that binds is missed. */
export const breaksRange = ({ asked, ranges }: Wishes, missed: Missed): boolean =>
  ranges === 'bind' && missed.some((miss, k) => miss > 0 && !onlyRanks(asked[k]!));
