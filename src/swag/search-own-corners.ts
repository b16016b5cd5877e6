/**
 * A swag of its own over each corner: for each way to make the sides' swags and each count of the longest side, the way
 * to make the corner's that costs least with it, by the very cost that ranks (turns.ts lays the two).
 *
 * Method. Sides and corner cost at least what each costs by itself, and what they are made with on average. Over a short
 * stretch of the corner's rises, the longest side rises between two angles for a count, so what both cost there, and by
 * how much their depths differ, has a least that is soon told. Only what may be among the best by that is laid.
 */

import { type Asked, missOf, type WishKey } from './asked.ts';
import { widestAsked } from './asked-rises.ts';
import { gapBefore, linesBeside } from './beside.ts';
import { layOf } from './corner.ts';
import type { Counts } from './counts.ts';
import type { CorneredField } from './field.ts';
import type { Fit } from './fit.ts';
import { crownPose, type Pose } from './pose.ts';
import { type Rising, risingOnSides, risingOverCorners } from './rising.ts';
import type { Tried } from './runs.ts';
import { type Costing, differenceCost, worthOf } from './score.ts';
import { type SeatRules, straightSeat } from './seat.ts';
import type { Way } from './setting.ts';
import { turnsByCrown } from './turns.ts';
import { toStart } from './turns-ground.ts';
import { wishedScore } from './wished.ts';
import { countCost, missCost } from './wishes.ts';

export const fitOwnCorners = (
  [sides, corners]: readonly [readonly Way[], readonly Way[]],
  field: CorneredField,
  rules: SeatRules,
  counts: readonly Counts[],
  outward: number,
): Tried => {
  const asking = (...keys: readonly WishKey[]): readonly Asked[] =>
    (rules.wishes?.asked ?? []).filter(({ key, on }) => on === undefined && keys.includes(key));
  const onSides = candidatesOf(
    sides.map((way) => risingOnSides(way, field, rules, outward)),
    field,
    outward,
    asking('span', 'depth'),
    ({ add, cost }, { way }) =>
      (pose) =>
        cost(add(undefined, 0, { repeats: 1, seat: straightSeat(way, way.shape, pose, 0) })),
  );
  const over = candidatesOf(
    corners.map((way) => risingOverCorners(way, field, rules, outward)),
    field,
    outward,
    field.corners === 'across' ? asking('span', 'depth') : asking('depth'),
    ({ leastOver }) => leastOver,
  );
  const longest = field.runs.reduce((at, { length }, i, all) => (length > all[at]!.length ? i : at), 0);
  const found: Found[] = [];
  let enough = Number.POSITIVE_INFINITY;
  let tried = 0;
  for (const side of onSides) {
    const best = new Map<number, Found>();
    const known = (repeats: number): number => Math.min(enough, best.get(repeats)?.cost ?? enough);
    for (const corner of over) {
      const pair = { side, corner };
      if (leastOfPair(pair) > enough) continue;
      const leastWith = leastWithCount(pair, field, rules, longest);
      const laid = turnsByCrown(side.rising, corner.rising, field, rules, counts, outward, (repeats) => {
        const than = known(repeats);
        return leastWith(repeats, than) > than ? undefined : than;
      });
      tried += laid.tried;
      for (const fit of laid.fits) {
        const score = wishedScore(fit, field, outward, rules.wishes);
        const { repeats } = fit.sides[longest]!;
        if (score && !(score.cost >= known(repeats))) best.set(repeats, { fit, cost: score.cost });
      }
    }
    found.push(...best.values());
    found.sort((a, b) => a.cost - b.cost);
    found.splice(MOST_FOUND);
    if (found.length === MOST_FOUND) enough = found.at(-1)!.cost;
  }
  return { fits: found.map(({ fit }) => fit), tried };
};

interface Found {
  readonly fit: Fit;
  readonly cost: number;
}

/** More than anyone looks through. */
const MOST_FOUND = 60;

/** A way to make one of the two. */
interface Candidate {
  readonly rising: Rising;
  /** What its poses cost by themselves, from the flattest to the steepest. */
  readonly stretches: readonly Stretch[];
  /** The least of them. */
  readonly least: number;
  /** What it costs in any case: for what it is made with, and for what the band is. */
  readonly made: number;
}

/** Rises from one to another (radians), and what they cost at least. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly cost: number;
}

interface Pair {
  readonly side: Candidate;
  readonly corner: Candidate;
}

/** Those that can be laid at all, the cheapest first. `costOf` tells what a way's poses cost. */
const candidatesOf = (
  risings: readonly Rising[],
  field: CorneredField,
  outward: number,
  asked: readonly Asked[],
  costOf: (worth: Costing, rising: Rising) => (pose: Pose) => number,
): readonly Candidate[] =>
  risings
    .filter(({ windows }) => windows.length > 0)
    .map((rising): Candidate => {
      const worth = worthOf(rising.way, field, outward);
      const costAt = costOf(worth, rising);
      const stretches = stretchesOf(rising, asked, (pose) => costAt(pose) - worth.base);
      return {
        rising,
        stretches,
        least: Math.min(...stretches.map(({ cost }) => cost)),
        made: worth.base,
      };
    })
    .sort((a, b) => a.least + a.made / 2 - b.least - b.made / 2);

/** Of each window. */
const STRETCHES = 16;
/** Between the ends of a stretch a pose may cost so much less than at either. */
const SAMPLED = 0.02;

const stretchesOf = (
  { way: { shape }, windows }: Rising,
  asked: readonly Asked[],
  costAt: (pose: Pose) => number,
): Stretch[] =>
  windows.flatMap((window) => {
    const rises = Array.from(
      { length: STRETCHES + 1 },
      (_, k) => window.from + (k / STRETCHES) * (window.to - window.from),
    );
    const costs = rises.map((rise) => {
      const pose = crownPose(shape, shape.chord * Math.cos(rise));
      return pose ? costAt(pose) : Number.POSITIVE_INFINITY;
    });
    return rises.slice(1).map((to, k): Stretch => {
      const from = rises[k]!;
      const wished = wishCost(asked, shape.chord, from, to);
      return { from, to, cost: Math.min(costs[k]!, costs[k + 1]!) + wished - SAMPLED };
    });
  });

const leastOfPair = ({ side, corner }: Pair): number =>
  Math.max(side.least, corner.least) + (side.made + corner.made) / 2;

/** What a pair costs at least with so many swags on the longest side; not looked for any more where it is above `than`. */
const leastWithCount = (
  { side, corner }: Pair,
  field: CorneredField,
  rules: SeatRules,
  longest: number,
): ((repeats: number, than: number) => number) => {
  const { wishes } = rules;
  const { length } = field.runs[longest]!;
  const lay = layOf(field);
  const { chord } = side.rising.way.shape;
  const ofCorner = corner.rising.way.shape.chord;
  const made = (side.made + corner.made) / 2;
  const [least, most] = gapsBetween({ side, corner }, field, rules);
  const riseWith = (repeats: number, offset: number, gap: number): number =>
    Math.acos(Math.min(1, (length - 2 * offset - gap * (repeats + 1)) / (2 * repeats * chord)));
  const farthest = Math.atan2(lay.ofDepth, lay.ofSpan);
  const offsetsIn = ({ from, to }: Stretch): readonly number[] =>
    [from, to, Math.min(to, Math.max(from, farthest))].map((rise) => toStart(lay, ofCorner, rise));
  return (repeats, than) => {
    const counted = made + (wishes ? countCost(wishes, longest, repeats) : 0);
    let found = Number.POSITIVE_INFINITY;
    for (const c of corner.stretches) {
      if (c.cost + counted >= Math.min(found, than)) continue;
      const offsets = offsetsIn(c);
      const depths = [ofCorner * Math.sin(c.from), ofCorner * Math.sin(c.to)] as const;
      const from = riseWith(repeats, Math.min(...offsets), least);
      const to = riseWith(repeats, Math.max(...offsets), most);
      for (const s of side.stretches) {
        if (s.to < from || s.from > to) continue;
        const both = Math.max(s.cost, c.cost) + counted;
        if (both >= found) continue;
        const [low, high] = [Math.max(s.from, from), Math.min(s.to, to)];
        const apart = spreadOf([chord * Math.sin(low), chord * Math.sin(high)], depths);
        found = Math.min(found, both + apart);
      }
    }
    return found;
  };
};

/** The gaps (mm) that there may be. */
const gapsBetween = (
  { side, corner }: Pair,
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

type Depths = readonly [least: number, most: number];

/** What it costs at least that one depth lies between two figures (mm), and another between two others. */
const spreadOf = (a: Depths, b: Depths): number => {
  const [low, high] = a[0] > b[1] ? [b[1], a[0]] : [a[1], b[0]];
  return low < high ? differenceCost({ depth: low, span: 1 }, { depth: high, span: 1 }) : 0;
};

/** How far some rises (radians) are from what is asked of span and depth, at the least. */
const wishCost = (asked: readonly Asked[], chord: number, low: number, high: number): number =>
  missCost(
    asked.map((one) => {
      const figures = [low, high].map((rise) =>
        one.key === 'span' ? 2 * chord * Math.cos(rise) : chord * Math.sin(rise),
      );
      const [least, most] = [Math.min(...figures), Math.max(...figures)];
      const { wish } = one;
      // What is asked about may lie between the two.
      const nearest =
        typeof wish === 'object' && 'about' in wish ? Math.min(most, Math.max(least, wish.about)) : least;
      return Math.min(missOf(one, nearest), missOf(one, most));
    }),
  );
