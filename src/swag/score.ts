/**
 * Which fit looks best? What counts is told one by one in weights.ts; here it is measured and added up. Every part
 * is a cost from 0 (nothing to wish for) upward, and goes by the worst of a fit's sides and corners.
 */

import { type Field, leavesSquare } from './field.ts';
import { cornerSwag, depthsOf, type Fit, kindsIn, ownCorner, type SideFit, spansOf } from './fit.ts';
import { FIT_NOISE } from './misfit.ts';
import type { Pose } from './pose.ts';
import type { Seat } from './seat.ts';
import { leanOf, type Way } from './setting.ts';
import { pointOf } from './smooth.ts';
import { settledCost } from './ties.ts';
import { DRAPE, ROUND, SEEN, SMALL, WEIGHTS } from './weights.ts';

export interface Score {
  /** Difference in depth between sides and corner, mm. */
  readonly spread: number;
  /** The share of the border's room that stitching and channels reach, where they reach least, 0 to 1; of two kinds the one that reaches farther. */
  readonly use: number;
  /** The widest gap, mm. */
  readonly gap: number;
  /** The sum of the weighted parts: less is better. */
  readonly cost: number;
}

export const scoreOf = (fit: Fit, field: Field, outward: number): Score => {
  const scores = kindsIn(fit).map((kind) => kindScore(kind, field, outward));
  const all = (of: keyof Score): readonly number[] => scores.map((score) => score[of]);
  return {
    spread: Math.max(...all('spread')),
    use: Math.max(...all('use')),
    gap: Math.max(...all('gap')),
    // Kinds cost what they cost each on average.
    cost: all('cost').reduce((sum, cost) => sum + cost, 0) / scores.length,
  };
};

const kindScore = (fit: Fit, field: Field, outward: number): Score => {
  const { add, addCorner, cost } = worthOf(fit.way, field, outward, ownCorner(fit));
  let sum: Figures | undefined;
  fit.sides.forEach((side, i) => {
    sum = add(sum, i, side);
  });
  const corner = cornerSwag(fit);
  const all = corner ? addCorner(sum!, corner.seat) : sum!;
  return {
    spread: all.deepest - all.shallowest,
    use: Math.min(1, useOf(all.top, field, outward)),
    gap: all.gap,
    cost: cost(all),
  };
};

/** What the cost of a fit goes by: of all its sides and corners the worst of each. Lengths in mm. */
interface Figures {
  readonly top: number;
  readonly lean: number;
  readonly offDrape: number;
  /** Radians by which a half falls off from the crown, where it comes there level 0. */
  readonly point: number;
  readonly gap: number;
  readonly gapShare: number;
  readonly shallowest: number;
  readonly deepest: number;
  readonly narrowest: number;
  readonly widest: number;
  /** How many swags in all. */
  readonly swags: number;
  /** How many pairs of opposite sides have not as many swags. */
  readonly lopsided: number;
  /** The side that was added last, with how many swags, and what there was before it. */
  readonly side: number;
  readonly repeats: number;
  readonly before: Figures | undefined;
}

/** What a side counts for by itself, however many it is summed up with. Lengths in mm. */
export interface SideFigures
  extends Pick<Figures, 'top' | 'lean' | 'offDrape' | 'point' | 'gap' | 'gapShare' | 'repeats'> {
  readonly depth: number;
  readonly span: number;
}

type Side = Pick<SideFit, 'repeats' | 'seat'>;

/** A half on a side as far as it counts: what is told of one before it is laid, too. mm and radians. */
type Lying = Pick<SideFigures, 'repeats' | 'top' | 'point' | 'gap' | 'depth' | 'span'> & {
  /** From the line that the swag's own middle runs square to. */
  readonly tilt: number;
};

/** How a search sums up the sides of a fit, and what they cost. */
export interface Costing {
  readonly add: (sum: Figures | undefined, i: number, side: Side) => Figures;
  /** The same in two steps, for a side that is summed up with many others. */
  readonly measure: (side: Side) => SideFigures;
  readonly measureLying: (lying: Lying) => SideFigures;
  readonly addMeasured: (sum: Figures | undefined, i: number, side: SideFigures) => Figures;
  /** What all cost for how they are made and what the band is, whatever their sizes. */
  readonly base: number;
  /** What a corner costs at least whose half lies so. */
  readonly leastOver: (pose: Pick<Pose, 'top' | 'tilt' | 'depth' | 'halfSpan'>) => number;
  /** What a side costs at least that is so large. */
  readonly leastAlone: (size: Size & Pick<SideFigures, 'top'>) => number;
  /** All corners at once, which are alike. */
  readonly addCorner: (
    sum: Figures,
    seat: Pick<Seat, 'span' | 'depth'> & { readonly pose: Pick<Pose, 'top' | 'tilt'> },
  ) => Figures;
  /** Of some sides it is what all cost at least: every part only grows with a further one. */
  readonly cost: (sum: Figures) => number;
}

/** `corner` is how the corner's swag is made, where that is not as on the sides. */
export const worthOf = (way: Way, field: Field, outward: number, corner = way): Costing => {
  // What both are made with costs what each does on average.
  const base = (plainness(way) + plainness(corner)) / 2 + shapeCost(field);
  const { clearance } = way.shape.stitching.stitched;
  const sides = field.runs.length;
  const leanCost = (lean: number): number => WEIGHTS.lean.weight * (lean / (Math.PI / 4)) ** 2;
  const lasting = (f: Figures): number => {
    return (
      gapsCost(f) +
      leanCost(f.lean) +
      f.offDrape +
      WEIGHTS.pointed.weight * (f.point / (Math.PI / 4)) ** 2 +
      narrowCost(f.narrowest, f.shallowest) +
      unlikeCost(f) +
      base
    );
  };
  const narrowCost = (span: number, depth: number): number =>
    WEIGHTS.narrow.weight * Math.max(0, 1 - span / field.room) +
    WEIGHTS.small.weight * smallness(span, depth, clearance);
  const unused = (top: number): number =>
    WEIGHTS.unused.weight * -Math.log2(Math.min(1, Math.max(LEAST_USE, useOf(top, field, outward))));
  const measure = ({ repeats, seat }: Side): SideFigures => {
    const { pose, gap, span, depth, centre, mirror } = seat;
    // Halfway between the mirrors of a bent run it runs square to the middle of the two.
    const level = centre ? (mirror - Math.PI / 2) / 2 : 0;
    return measureLying({
      repeats,
      top: pose.top,
      tilt: pose.tilt - level,
      point: pointOf(seat),
      gap,
      depth,
      span,
    });
  };
  const measureLying = ({ repeats, top, tilt, point, gap, depth, span }: Lying): SideFigures => ({
    repeats,
    top,
    lean: Math.abs(leanOf(tilt)),
    offDrape: drapeCost(depth / span),
    point,
    gap,
    gapShare: gap / span,
    depth,
    span,
  });
  const addMeasured = (sum: Figures | undefined, i: number, side: SideFigures): Figures => {
    const { repeats, top, lean, offDrape, point, gap, gapShare, depth, span } = side;
    if (!sum)
      return {
        top,
        lean,
        offDrape,
        point,
        gap,
        gapShare,
        shallowest: depth,
        deepest: depth,
        narrowest: span,
        widest: span,
        swags: repeats,
        lopsided: 0,
        side: i,
        repeats,
        before: undefined,
      };
    const opposite = sides === 4 ? countOf((i + 2) % 4, sum) : undefined;
    return {
      top: Math.min(sum.top, top),
      lean: Math.max(sum.lean, lean),
      offDrape: Math.max(sum.offDrape, offDrape),
      point: Math.max(sum.point, point),
      gap: Math.max(sum.gap, gap),
      gapShare: Math.max(sum.gapShare, gapShare),
      shallowest: Math.min(sum.shallowest, depth),
      deepest: Math.max(sum.deepest, depth),
      narrowest: Math.min(sum.narrowest, span),
      widest: Math.max(sum.widest, span),
      swags: sum.swags + repeats,
      lopsided: sum.lopsided + (opposite === undefined || opposite === repeats ? 0 : 1),
      side: i,
      repeats,
      before: sum,
    };
  };
  return {
    add: (sum, i, side) => addMeasured(sum, i, measure(side)),
    measure,
    measureLying,
    addMeasured,
    base,
    leastOver: ({ top, tilt, depth, halfSpan }) =>
      unused(top) + leanCost(leanOf(tilt)) + drapeCost(depth / (2 * halfSpan)) + base,
    leastAlone: ({ depth, span, top }) =>
      unused(top) + drapeCost(depth / span) + narrowCost(span, depth) + base,
    // The corner's gaps are those of its sides, and round it its span is told along two of them.
    addCorner: (sum, { pose, span, depth }) => ({
      // A corner's crown is on the mitre, where halves meet in a point in any case.
      ...sum,
      top: Math.min(sum.top, pose.top),
      lean: Math.max(sum.lean, Math.abs(leanOf(pose.tilt))),
      offDrape: Math.max(sum.offDrape, drapeCost(depth / span)),
      shallowest: Math.min(sum.shallowest, depth),
      deepest: Math.max(sum.deepest, depth),
      ...(field.corners === 'across' && {
        narrowest: Math.min(sum.narrowest, span),
        widest: Math.max(sum.widest, span),
      }),
      swags: sum.swags + sides,
    }),
    cost: (f) => settledCost(unused(f.top) + lasting(f)),
  };
};

/**
 * What the gaps and counts cost of swags that are so large: the widest gap (mm) and its share of the span there, the swags
 * of all sides, and of how many pairs of opposite sides the counts differ.
 */
export const gapsCost = ({
  gap,
  gapShare,
  swags,
  lopsided,
}: Pick<Figures, 'gap' | 'gapShare' | 'swags' | 'lopsided'>): number =>
  (gap > FIT_NOISE ? brokenCost(swags) : 0) +
  WEIGHTS.gap.weight * gapShare +
  WEIGHTS.lopsided.weight * lopsided;

/** What it costs that so many swags do not touch. */
export const brokenCost = (swags: number): number =>
  WEIGHTS.broken.weight + WEIGHTS.threadBreak.weight * swags;

const countOf = (side: number, sum: Figures): number | undefined => {
  for (let f: Figures | undefined = sum; f; f = f.before) if (f.side === side) return f.repeats;
  return undefined;
};

/** Less of a border than this is as good as none. */
const LEAST_USE = 1e-3;

const unlikeCost = ({
  shallowest,
  deepest,
  narrowest,
  widest,
}: Pick<Figures, 'shallowest' | 'deepest' | 'narrowest' | 'widest'>): number =>
  WEIGHTS.unlike.weight *
  Math.max(sightOf((1 - shallowest / deepest) / SEEN.depth), sightOf((1 - narrowest / widest) / SEEN.span));

/** How deep and how wide a swag is, mm. */
type Size = Pick<SideFigures, 'depth' | 'span'>;

/** What it costs that two sides differ. */
export const differenceCost = (a: Size, b: Size): number =>
  unlikeCost({
    shallowest: Math.min(a.depth, b.depth),
    deepest: Math.max(a.depth, b.depth),
    narrowest: Math.min(a.span, b.span),
    widest: Math.max(a.span, b.span),
  });

/** By how much depths of `most` mm at most may differ (mm) where that is to cost no more. */
export const spreadWithin = (cost: number, most: number): number =>
  most * SEEN.depth * seenBy(Math.max(0, cost) / WEIGHTS.unlike.weight);

/**
 * What a difference does to an eye: 1 where it begins to be seen. Half of that is hardly seen at all, so below it the
 * cost falls with the square; above, it grows evenly.
 */
const sightOf = (seen: number): number => (seen < 1 ? seen * seen : 2 * seen - 1);

/** The other way round. */
const seenBy = (sight: number): number => (sight < 1 ? Math.sqrt(sight) : (sight + 1) / 2);

/** Of a band that is made to fit its swags, what they use of its limit, where there is one. */
export const useOf = (top: number, { room, around }: Field, outward: number): number => {
  if (around.kind !== 'motif') return top / Math.max(room, outward) + outward / room;
  const { clear, within, farthest, away } = around;
  return Number.isFinite(within) ? (farthest + away - clear) / (within - clear) : 1;
};

/** What a band costs whatever lies on it: bare corners, too few or many swags round a motif, and a size that does not suit it. */
const shapeCost = ({ corners, around }: Field): number => {
  if (around.kind !== 'motif')
    return corners === 'meet'
      ? WEIGHTS.bareCorner.weight
      : leavesSquare({ corners })
        ? WEIGHTS.freeCorner.weight
        : 0;
  const { count, clear, within, farthest } = around;
  const band = (farthest - clear) / clear;
  const misproportion = Math.max(
    0,
    band / ROUND.widest - 1,
    ROUND.narrowest / Math.max(band, ROUND.narrowest / 10) - 1,
  );
  return (
    (Number.isFinite(within) ? 0 : WEIGHTS.frameSize.weight * misproportion) +
    WEIGHTS.fewRound.weight * Math.max(0, ROUND.fewest - count) +
    WEIGHTS.manyRound.weight * Math.max(0, count - ROUND.most)
  );
};

/** How much smaller a fit's smallest swag is than one that suits the foot: 0 where it is not, 1 for nothing. */
export const smallnessOf = (fit: Fit): number => {
  const { clearance } = fit.way.shape.stitching.stitched;
  return smallness(Math.min(...spansOf(fit)), Math.min(...depthsOf(fit)), clearance);
};

const smallness = (span: number, depth: number, clearance: number): number =>
  Math.max(0, 1 - span / (SMALL.span * clearance), 1 - depth / (SMALL.depth * clearance));

/** What depth over span costs. */
const drapeCost = (ratio: number): number => {
  const { flattest, steepest, spike } = DRAPE;
  return Math.max(
    0,
    WEIGHTS.steep.weight * (ratio / steepest - 1) + WEIGHTS.spiked.weight * Math.max(0, ratio / spike - 1),
    WEIGHTS.flat.weight * (flattest / Math.max(ratio, flattest / 10) - 1),
  );
};

/**
 * What a swag that rises by so much (radians), its ends on the mirrors, costs beyond a spike that an eye takes for a
 * line; 0 where it is none.
 */
export const needleCost = (rise: number): number =>
  rise > NEEDLE_RISE ? drapeCost(Math.tan(rise) / 2) - drapeCost(NEEDLE) : 0;

/** Depth over span: as much deeper than wide as what is flatter than a line would be wider than deep. */
const NEEDLE = 1 / DRAPE.line;
const NEEDLE_RISE = Math.atan(2 * NEEDLE);

const plainness = ({ shape, setting }: Way): number => {
  const { sections } = shape.stitching;
  const start = (shape.from.section ?? 1) - 1;
  const end = sections.length - (shape.to.section ?? sections.length);
  return (
    WEIGHTS.laterStart.weight * start +
    WEIGHTS.earlierEnd.weight * end +
    (shape.direction === 'crown-first' ? WEIGHTS.crownFirst.weight : 0) +
    (shape.side === 'outside' ? WEIGHTS.outside.weight : 0) +
    (setting.kind === 'alignment-line'
      ? WEIGHTS.etchedLine.weight
      : setting.kind === 'flat-on-guide'
        ? WEIGHTS.guideLine.weight
        : 0)
  );
};
