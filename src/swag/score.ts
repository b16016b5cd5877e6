/**
 * Which fit looks best? Four things count, in this order of weight, and each is told to the person with its
 * figure: how alike the depths are, how well the depth uses the border, how small the gaps are, and how plain
 * the setting is. Swags that are very small against the foot come after others. Every part is a cost from 0 (perfect) upward; the weights are judgement, not measurement
 * (common practice, no source).
 */

import type { Field } from './field.ts';
import { cornerSwag, depthsOf, type Fit, spansOf } from './fit.ts';
import { FIT_NOISE } from './misfit.ts';
import type { Seat } from './seat.ts';
import { leanOf, type Way } from './setting.ts';
import { settledCost } from './ties.ts';

export interface Score {
  /** Difference in depth between sides and corner, mm. */
  readonly spread: number;
  /** The share of the border's room that stitching and channels reach, 0 to 1. */
  readonly use: number;
  /** The widest gap, mm. */
  readonly gap: number;
  /** The sum of the weighted parts: less is better. */
  readonly cost: number;
}

/** A difference of a twentieth of the depth is about where an eye sees it along a border (common practice, no source). */
const VISIBLE_SPREAD = 0.05;
const SPREAD_WEIGHT = 1;
const USE_WEIGHT = 1;
const GAP_WEIGHT = 2;
/** Any gap, however small, breaks the line: at each join the thread is tied off and started again. */
const BROKEN_LINE = 0.08;
/** A swag across the corner finishes a border; runs that only end there leave its square bare. */
const BARE_CORNER = 0.1;
/** Turning the template away from its own long axis: a lean of 45° costs as much as an unused third of the border. */
const LEAN_WEIGHT = 0.33;
/** A drape is wider than deep; outside these bounds of depth over span it looks like a wave or a spike. */
const FLAT_DRAPE = 0.12;
const STEEP_DRAPE = 0.55;
const DRAPE_WEIGHT = 2;
/**
 * Swags this many clearances wide and deep, or less, are small against the foot: its own width, twice the clearance,
 * is then a quarter of the swag's, and the needle turns at every inch. Common practice, no source.
 */
const SMALL_SWAG = { span: 8, depth: 2 };
/** A swag of nothing costs as much as a border left empty. */
const SMALL_WEIGHT = 1;
/** Small preferences between otherwise equal ways. */
const LATER_START = 0.02;
const EARLIER_END = 0.04;
const CROWN_FIRST = 0.06;
const OUTSIDE = 0.05;
const ETCHED_LINE = 0.03;
const GUIDE_LINE = 0.05;

export const scoreOf = (fit: Fit, field: Field, outward: number): Score => {
  const { add, cost } = worthOf(fit.way, field, outward);
  let sum: Figures | undefined;
  for (const { seat } of fit.sides) sum = add(sum, seat);
  const { gap } = sum!;
  // The corner's gaps are those of its sides, and its span is told along two of them.
  const { narrowest } = sum!;
  const corner = cornerSwag(fit);
  if (corner) sum = { ...add(sum, { ...corner.seat, gap: 0 }), narrowest };
  const all = sum!;
  return {
    spread: all.deepest - all.shallowest,
    use: Math.min(1, useOf(all.top, field, outward)),
    gap,
    cost: cost(all),
  };
};

/** What the cost of a fit goes by: of all its sides and corners the worst of each. Lengths in mm. */
interface Figures {
  readonly top: number;
  readonly lean: number;
  readonly drape: number;
  readonly gap: number;
  readonly gapShare: number;
  readonly shallowest: number;
  readonly deepest: number;
  readonly narrowest: number;
}

/** How a search sums up the sides of a fit, and what they cost. */
export interface Costing {
  readonly add: (sum: Figures | undefined, seat: Seat) => Figures;
  readonly cost: (sum: Figures) => number;
  /**
   * What a fit costs at least that has these sides, whatever further ones turn out to be: every part but how it uses
   * the border only grows with a further side. With the sums that `open` further ones make, no more of it is used.
   */
  readonly atLeast: (sum: Figures, open: readonly Figures[] | undefined) => number;
}

export const worthOf = (way: Way, field: Field, outward: number): Costing => {
  const base = plainness(way) + shapeCost(field);
  const { clearance } = way.shape.stitching.stitched;
  const lasting = (f: Figures): number => {
    const lean = f.lean / (Math.PI / 4);
    return (
      GAP_WEIGHT * f.gapShare +
      (f.gap > FIT_NOISE ? BROKEN_LINE : 0) +
      LEAN_WEIGHT * lean * lean +
      DRAPE_WEIGHT * f.drape +
      SMALL_WEIGHT * smallness(f.narrowest, f.shallowest, clearance) +
      base
    );
  };
  const unused = (top: number): number => USE_WEIGHT * (1 - Math.min(1, useOf(top, field, outward)));
  return {
    add: (sum, { pose, gap, span, depth, centre, mirror }) => {
      // Halfway between the mirrors of a bent run it runs square to the middle of the two.
      const level = centre ? (mirror - Math.PI / 2) / 2 : 0;
      const lean = Math.abs(leanOf(pose.tilt - level));
      const drape = offDrape(depth / span);
      const gapShare = gap / span;
      if (!sum)
        return {
          top: pose.top,
          lean,
          drape,
          gap,
          gapShare,
          shallowest: depth,
          deepest: depth,
          narrowest: span,
        };
      return {
        top: Math.max(sum.top, pose.top),
        lean: Math.max(sum.lean, lean),
        drape: Math.max(sum.drape, drape),
        gap: Math.max(sum.gap, gap),
        gapShare: Math.max(sum.gapShare, gapShare),
        shallowest: Math.min(sum.shallowest, depth),
        deepest: Math.max(sum.deepest, depth),
        narrowest: Math.min(sum.narrowest, span),
      };
    },
    cost: (f) => settledCost(spreadCost(f.shallowest, f.deepest) + unused(f.top) + lasting(f)),
    atLeast: (f, open) => {
      let top = open ? f.top : Number.POSITIVE_INFINITY;
      for (const other of open ?? []) if (other.top > top) top = other.top;
      return settledCost(spreadCost(f.shallowest, f.deepest) + unused(top) + lasting(f));
    },
  };
};

/** What depths cost that go from `least` to `most` (mm), as a share of the deepest. */
export const spreadCost = (least: number, most: number): number => SPREAD_WEIGHT * sightOf(1 - least / most);

/** Of a band that is made to fit its swags, what they use of its limit, where there is one. */
export const useOf = (top: number, { room, around }: Field, outward: number): number => {
  if (around.kind !== 'motif') return top / Math.max(room, outward) + outward / room;
  const { clear, within, farthest, away } = around;
  return Number.isFinite(within) ? (farthest + away - clear) / (within - clear) : 1;
};

/** A frame much narrower than its motif is a string round it, and one much wider drowns it: shares of its radius. */
const NARROW_FRAME = 0.2;
const WIDE_FRAME = 0.5;
const PROPORTION_WEIGHT = 1;
/** Three swags make a triangle, four a square: from six on a frame looks round. The cost of each that is missing. */
const ROUND_COUNT = 6;
const TOO_FEW_WEIGHT = 0.12;

/** What a band costs whatever lies on it: bare corners, too few swags round a motif, and a size that does not suit it. */
const shapeCost = ({ corners, around }: Field): number => {
  const bare = corners === 'meet' || corners === 'open' ? BARE_CORNER : 0;
  if (around.kind !== 'motif') return bare;
  const { count, clear, within, farthest } = around;
  const band = (farthest - clear) / clear;
  const proportion = Math.max(0, band / WIDE_FRAME - 1, NARROW_FRAME / Math.max(band, NARROW_FRAME / 10) - 1);
  const size = Number.isFinite(within) ? 0 : PROPORTION_WEIGHT * proportion;
  return bare + size + TOO_FEW_WEIGHT * Math.max(0, ROUND_COUNT - count);
};

/**
 * What a difference in depth, as a share of the depth, does to an eye: 1 where it begins to be seen. Half of that
 * is hardly seen at all, so below it the cost falls with the square; above, it grows evenly.
 */
const sightOf = (share: number): number => {
  const seen = share / VISIBLE_SPREAD;
  return seen < 1 ? seen * seen : 2 * seen - 1;
};

/** How much smaller a fit's smallest swag is than one that suits the foot: 0 where it is not, 1 for nothing. */
export const smallnessOf = (fit: Fit): number => {
  const { clearance } = fit.way.shape.stitching.stitched;
  return smallness(Math.min(...spansOf(fit)), Math.min(...depthsOf(fit)), clearance);
};

const smallness = (span: number, depth: number, clearance: number): number =>
  Math.max(0, 1 - span / (SMALL_SWAG.span * clearance), 1 - depth / (SMALL_SWAG.depth * clearance));

const offDrape = (ratio: number): number =>
  Math.max(0, ratio / STEEP_DRAPE - 1, FLAT_DRAPE / Math.max(ratio, FLAT_DRAPE / 10) - 1);

const plainness = ({ shape, setting }: Way): number => {
  const { sections } = shape.stitching;
  const start = (shape.from.section ?? 1) - 1;
  const end = sections.length - (shape.to.section ?? sections.length);
  return (
    LATER_START * start +
    EARLIER_END * end +
    (shape.direction === 'crown-first' ? CROWN_FIRST : 0) +
    (shape.side === 'outside' ? OUTSIDE : 0) +
    (setting.kind === 'alignment-line' ? ETCHED_LINE : setting.kind === 'flat-on-guide' ? GUIDE_LINE : 0)
  );
};
