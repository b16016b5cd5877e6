/**
 * What a way for the sides and another for the corners cost at least, before anything is laid.
 *
 * Method. Sides and corner cost at least what each costs by itself, and what they are made with on average. Over a short
 * stretch of the corner's rises, the longest side rises between two angles for a count, so what both cost there, by how
 * much their depths differ, and how far they are from what is asked, has a least that is soon told.
 */

import { isAbout } from '../plan/index.ts';
import { type Asked, boundsOf, missOf, type WishKey } from './asked.ts';
import { widestAsked } from './asked-rises.ts';
import { gapBefore, linesBeside } from './beside.ts';
import { layOf } from './corner.ts';
import type { CorneredField } from './field.ts';
import { crownPose, type Pose, reachAt } from './pose.ts';
import { type Rising, risingOnSides, risingOverCorners } from './rising.ts';
import { brokenCost, type Costing, differenceCost, useOf, worthOf } from './score.ts';
import { type SeatRules, straightSeat } from './seat.ts';
import type { Way } from './setting.ts';
import { reachOf, type Shape } from './shape.ts';
import { toStart } from './turns-ground.ts';
import { countCost, missCost } from './wishes.ts';

/** A way to make one of the two. */
export interface Candidate {
  readonly rising: Rising;
  /** What its poses cost by themselves, from the flattest to the steepest. */
  readonly stretches: readonly Stretch[];
  /** The least that one of them costs, without and with what is asked. */
  readonly plain: number;
  readonly least: number;
  /** What it costs in any case: for what it is made with, and for what the band is. */
  readonly made: number;
  /** What is asked of its span and depth. */
  readonly asked: readonly Asked[];
}

/** Rises from one to another (radians), and what they cost at least: by their looks, and beside what is asked of their use, and of all. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  /** How wide and how deep, mm. */
  readonly spans: Range;
  readonly depths: Range;
  readonly plain: number;
  readonly ofUse: number;
  readonly wished: number;
}

/** Those that can be laid at all. */
export const candidatesOf = (
  [sides, corners]: readonly [readonly Way[], readonly Way[]],
  field: CorneredField,
  rules: SeatRules,
  outward: number,
): readonly [sides: readonly Candidate[], corners: readonly Candidate[]] => {
  const asking = (...keys: readonly WishKey[]): readonly Asked[] =>
    (rules.wishes?.asked ?? []).filter(({ key, on }) => on === undefined && keys.includes(key));
  const made = (
    risings: readonly Rising[],
    asked: readonly Asked[],
    costOf: (worth: Costing, way: Way) => (pose: Pose) => number,
  ): readonly Candidate[] =>
    risings.flatMap((rising) => {
      if (rising.windows.length === 0) return [];
      const worth = worthOf(rising.way, field, outward);
      const costAt = costOf(worth, rising.way);
      const use = (top: number): number => Math.min(1, useOf(top, field, outward));
      const stretches = stretchesOf(rising, asked, use, (pose) => costAt(pose) - worth.base);
      const least = (of: (stretch: Stretch) => number): number => Math.min(...stretches.map(of));
      return {
        rising,
        stretches,
        asked: asked.filter(({ key }) => key !== 'use'),
        plain: least(({ plain }) => plain),
        least: least(({ plain, wished }) => plain + wished),
        made: worth.base,
      };
    });
  return [
    made(
      sides.map((way) => risingOnSides(way, field, rules, outward)),
      asking('span', 'depth', 'use'),
      ({ add, cost }, way) =>
        (pose) =>
          cost(add(undefined, 0, { repeats: 1, seat: straightSeat(way, way.shape, pose, 0) })),
    ),
    made(
      corners.map((way) => risingOverCorners(way, field, rules, outward)),
      field.corners === 'across' ? asking('span', 'depth', 'use') : asking('depth', 'use'),
      ({ leastOver }) => leastOver,
    ),
  ];
};

/** Of each window. */
const STRETCHES = 16;
/** Between the ends of a stretch a pose may cost so much less than at either. */
const SAMPLED = 0.02;

const stretchesOf = (
  { way: { shape }, windows }: Rising,
  asked: readonly Asked[],
  useOfReach: (top: number) => number,
  costAt: (pose: Pose) => number,
): readonly Stretch[] =>
  windows.flatMap((window) => {
    const rises = Array.from(
      { length: STRETCHES + 1 },
      (_, k) => window.from + (k / STRETCHES) * (window.to - window.from),
    );
    const costs = rises.map((rise) => {
      const pose = crownPose(shape, shape.chord * Math.cos(rise));
      return pose ? costAt(pose) : Number.POSITIVE_INFINITY;
    });
    const reach = reachOf(shape);
    return rises.slice(1).map((to, k): Stretch => {
      const from = rises[k]!;
      // What turns about its start rises or falls by no more than the way that its farthest point goes.
      const middle = (reachAt(shape, from) + reachAt(shape, to)) / 2;
      const by = (reach * (to - from)) / 2;
      const ofUse = wishCost(asked, 'use', [useOfReach(middle - by), useOfReach(middle + by)]);
      const [spans, depths] = [spansOf(shape, from, to), depthsOf(shape, from, to)];
      return {
        from,
        to,
        spans,
        depths,
        plain: Math.min(costs[k]!, costs[k + 1]!) - SAMPLED,
        ofUse,
        wished: ofUse + wishCost(asked, 'span', spans) + wishCost(asked, 'depth', depths),
      };
    });
  });

/** What the two cost at least: in all, and without what is asked. */
export const leastOfPair = (
  side: Candidate,
  corner: Candidate,
): { readonly least: number; readonly made: number } => {
  const made = (side.made + corner.made) / 2;
  return {
    least: Math.max(side.least, corner.least) + made,
    made: Math.max(side.plain, corner.plain) + made,
  };
};

/**
 * What a pair costs at least with so many swags on each side; of a side whose count is left open (0) nothing is said. It
 * may tell of anything above `than`, which must not grow from one time to the next, that it is beyond all bounds.
 *
 * For each stretch of the corner's rises and each side by itself; so what a side costs is worked out once for a count.
 */
export const leastWithCounts = (
  side: Candidate,
  corner: Candidate,
  field: CorneredField,
  rules: SeatRules,
): ((repeats: readonly number[], than: number) => number) => {
  const { wishes } = rules;
  const lay = layOf(field);
  const { shape } = side.rising.way;
  const { chord } = shape;
  const ofCorner = corner.rising.way.shape.chord;
  const made = (side.made + corner.made) / 2;
  const [narrow, wide] = gapsBetween(side, corner, field, rules);
  const asked = [...side.asked, ...(wishes?.asked.filter(({ key }) => key === 'gap') ?? [])];
  const within = (gap: number): number => Math.min(wide, Math.max(narrow, gap));
  const farthest = Math.atan2(lay.ofDepth, lay.ofSpan);
  const ends = corner.stretches.map(({ from, to }): Range => {
    const offsets = [from, to, Math.min(to, Math.max(from, farthest))].map((rise) =>
      toStart(lay, ofCorner, rise),
    );
    return [Math.min(...offsets), Math.max(...offsets)];
  });
  const leastOn = (i: number, repeats: number, than: number): readonly number[] => {
    const { length } = field.runs[i]!;
    const counted =
      made + (wishes ? countCost(wishes, i, repeats) : 0) + (narrow > 0 ? brokenCost(repeats) : 0);
    const riseWith = (offset: number, gap: number): number =>
      Math.acos(
        Math.min(1, Math.max(0, (length - 2 * offset - gap * (repeats + 1)) / (2 * repeats * chord))),
      );
    const gapWith = (offset: number, rise: number): number =>
      (length - 2 * offset - 2 * repeats * chord * Math.cos(rise)) / (repeats + 1);
    return corner.stretches.map((c, k) => {
      if (c.plain + c.wished + counted > than) return Number.POSITIVE_INFINITY;
      const [near, far] = ends[k]!;
      const [from, to] = [riseWith(near, narrow), riseWith(far, wide)];
      let found = Number.POSITIVE_INFINITY;
      for (const s of side.stretches) {
        if (s.to < from || s.from > to) continue;
        const plain = Math.max(s.plain, c.plain) + counted;
        if (plain + Math.max(s.wished, c.wished) > Math.min(found, than)) continue;
        const low = Math.max(s.from, from);
        const high = Math.min(s.to, to);
        const isWhole = low === s.from && high === s.to;
        const depths = isWhole ? s.depths : depthsOf(shape, low, high);
        const least = plain + spreadOf(depths, c.depths);
        if (asked.length === 0) {
          found = Math.min(found, least + Math.max(s.ofUse, c.wished));
          continue;
        }
        const spans = isWhole ? s.spans : spansOf(shape, low, high);
        const size = wishCost(asked, 'span', spans) + wishCost(asked, 'depth', depths);
        const gap = wishCost(asked, 'gap', [within(gapWith(far, low)), within(gapWith(near, high))]);
        found = Math.min(found, least + Math.max(c.wished, s.ofUse + size) + gap);
      }
      return found;
    });
  };
  const known = new Map<number, readonly number[]>();
  const knownOn = (i: number, repeats: number, than: number): readonly number[] => {
    const key = repeats * field.runs.length + i;
    const costs = known.get(key) ?? leastOn(i, repeats, than);
    known.set(key, costs);
    return costs;
  };
  return (repeats, than) => {
    const sides = repeats.flatMap((n, i) => (n > 0 ? [knownOn(i, n, than)] : []));
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k < corner.stretches.length; k++) {
      let most = 0;
      for (const costs of sides) most = Math.max(most, costs[k]!);
      least = Math.min(least, most);
    }
    return least;
  };
};

/** The gaps (mm) that there may be. */
const gapsBetween = (
  side: Candidate,
  corner: Candidate,
  field: CorneredField,
  rules: SeatRules,
): readonly [least: number, most: number] => {
  const fixed = rules.gap === 'auto' ? 0 : rules.gap;
  const bulging = [side, corner].flatMap(({ rising: { way, windows } }) =>
    linesBeside(field).map((line) => gapBefore(line, way.shape, windows.at(-1)!.to)),
  );
  const { way, windows } = side.rising;
  const asked = widestAsked(way.shape, windows, rules.wishes);
  const widest = asked === undefined ? 0 : Math.min(asked, rules.widestGap ?? 0);
  return [fixed, Math.max(fixed, widest, ...(rules.gap === 'auto' ? bulging : []))];
};

type Range = readonly [least: number, most: number];

/** What it costs at least that one depth lies between two figures (mm), and another between two others. */
const spreadOf = (a: Range, b: Range): number => {
  const [low, high] = a[0] > b[1] ? [b[1], a[0]] : [a[1], b[0]];
  return low < high ? differenceCost({ depth: low, span: 1 }, { depth: high, span: 1 }) : 0;
};

const spansOf = ({ chord }: Shape, low: number, high: number): Range => [
  2 * chord * Math.cos(high),
  2 * chord * Math.cos(low),
];

const depthsOf = ({ chord }: Shape, low: number, high: number): Range => [
  chord * Math.sin(low),
  chord * Math.sin(high),
];

/** How far figures are from what is asked of them, at the least. */
const wishCost = (asked: readonly Asked[], of: WishKey, [least, most]: Range): number => {
  let sum = 0;
  for (const one of asked) {
    if (one.key !== of) continue;
    const { wish } = one;
    const [low, high] = isAbout(wish) ? [wish.about, wish.about] : boundsOf(one);
    // What is asked may lie between the two.
    if (least > high) sum += missOf(one, least);
    else if (most < low) sum += missOf(one, most);
  }
  return missCost([sum]);
};
