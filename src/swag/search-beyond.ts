/**
 * A second row over every way to make the first: of all half swags that keep to the first row's marks and apart from
 * it, the one that costs least by the very cost that ranks. Rows cost what they cost each on average.
 *
 * Method. On given marks a half swag is told by a few numbers, and so is what it costs: all are told first, and then laid
 * in the order of their costs, until one keeps apart from the first row and none that is left can cost less.
 */

import type { Path } from '../geometry/index.ts';
import type { FurtherRow } from '../plan/index.ts';
import type { Answer } from './answers.ts';
import type { CorneredField, Field } from './field.ts';
import { cornerSwag, type Fit } from './fit.ts';
import { hasLeftOut, isLeftOut, withoutFlat } from './flat.ts';
import { followerOf } from './followed.ts';
import { FIT_NOISE, type Misfit } from './misfit.ts';
import { withRoomForNecks } from './neck.ts';
import { crownPose, depthFor, riseFor } from './pose.ts';
import { type BeyondRules, cornerHalfSpans, cornerReach, fieldBeyond, rowBeyond } from './row-beyond.ts';
import { type Costing, type Score, scoreOf, worthOf } from './score.ts';
import { gapFor, type Seat, type SeatRules } from './seat.ts';
import type { Way } from './setting.ts';
import { endAngle, offSquare } from './smooth.ts';
import { isWithin, limitsOf, type Window, windowsOf } from './windows.ts';

/** What came nearest to a row beyond the first, on the marks of one of its fits. */
export interface RowMiss {
  readonly way: Way;
  readonly misfit: Misfit;
}

interface Ranked {
  readonly field: Field;
  readonly fit: Fit;
  readonly score: Score;
  readonly answers: readonly Answer[];
}

interface BeyondFound {
  readonly results: readonly Ranked[];
  /** Only where nothing fits. */
  readonly miss: RowMiss | undefined;
  readonly tried: number;
}

/** `gap` is what the plan says of it, `outward` how far (mm) channels reach beyond the row; nothing is asked of its depth. */
export const searchBeyond = (
  firsts: readonly Ranked[],
  ways: readonly Way[],
  row: FurtherRow,
  { gap, outward, mayBeFlat }: Pick<SeatRules, 'gap' | 'mayBeFlat'> & { readonly outward: number },
): BeyondFound => {
  const grounds = new Map<Field, Ground>();
  const groundOf = (field: Field): Ground => {
    const known = grounds.get(field);
    if (known) return known;
    const beyond = fieldBeyond(field, row.at);
    const rules = { room: beyond.room - outward, gap, at: row.at, apart: row.apart, mayBeFlat };
    const ground = {
      field,
      beyond,
      rules,
      outward,
      ways: ways.map((way) => candidateOf(way, beyond, rules, worthOf(way, field, outward))),
      numbers: new Map<number, number>(),
    };
    grounds.set(field, ground);
    return ground;
  };
  const results = firsts.flatMap((first): readonly Ranked[] => {
    const best = bestBeyond(first, groundOf(first.field));
    return best ? [best] : [];
  });
  const tried = firsts.length * ways.length;
  if (results.length > 0) return { results, miss: undefined, tried };
  return { results, miss: nearestOf(firsts, groundOf), tried };
};

interface Ground {
  readonly field: Field;
  /** The same as the row beyond sees it. */
  readonly beyond: Field;
  readonly rules: BeyondRules;
  readonly outward: number;
  readonly ways: readonly Candidate[];
  /** Half spans that were asked for, each with its number. */
  readonly numbers: Map<number, number>;
}

/** A way, and how it lies on marks that are so far (mm) apart; undefined where it cannot. */
interface Candidate {
  readonly way: Way;
  readonly costing: Costing;
  /** A half span by its number among those that were asked for; undefined, too, where it is surely less deep than `least` mm. */
  readonly onSide: (number: number, halfSpan: number, least: number) => Lying | undefined;
  /** At a corner, its crown on a mitre that passes its start line so far (mm) from its start: one, two or none. */
  readonly onCorner: (reach: number) => readonly Lying[];
}

/** What of a pose keeps it from a place, or costs. In mm and radians, from the start mark. */
interface Lying {
  readonly tilt: number;
  readonly halfSpan: number;
  readonly depth: number;
  readonly top: number;
  readonly bulge: number;
  /** By how much it falls off from square to its mirror. */
  readonly point: number;
}

const candidateOf = (way: Way, field: Field, rules: SeatRules, costing: Costing): Candidate => ({
  way,
  costing,
  onSide: way.tilt !== undefined && way.laid ? followed(way, way.tilt, way.laid, rules) : risen(way, rules),
  onCorner: field.corners === 'turn' && way.tilt === undefined ? risenAtCorner(way, field, rules) : () => [],
});

/** With its crown on the centre line. Its depth is told first: most are less deep than the row below, and end there. */
const risen = (way: Way, rules: SeatRules): Candidate['onSide'] => {
  const { shape } = way;
  const windows = withoutFlat(windowsOf(limitsOf(shape, rules.room), Math.PI / 2), rules);
  const known: (Lying | undefined)[] = [];
  return (number, h, least) => {
    if (!(h < shape.chord && depthFor(shape, h) >= least)) return undefined;
    known[number] ??= risenIn(way, windows, h);
    return known[number];
  };
};

const risenIn = ({ shape }: Way, windows: readonly Window[], h: number): Lying | undefined => {
  const pose = h < shape.chord && isWithin(windows, riseFor(shape, h)) ? crownPose(shape, h) : undefined;
  return pose && { ...pose, point: offSquare(endAngle(shape) + pose.tilt) };
};

const risenAtCorner = (way: Way, field: CorneredField, rules: SeatRules): Candidate['onCorner'] => {
  const { shape } = way;
  const all = windowsOf(limitsOf(shape, rules.room), field.mitre);
  const windows = withoutFlat(withRoomForNecks(all, shape, field.mitre), rules);
  return (reach) => cornerHalfSpans(shape.chord, reach, field).flatMap((h) => risenIn(way, windows, h) ?? []);
};

/** At a given tilt: the edge is followed to the centre line. */
const followed = (way: Way, tilt: number, laid: Path, rules: SeatRules): Candidate['onSide'] => {
  const { shape, mayStopSooner } = way;
  const whole = shape.chord * Math.cos(shape.chordAngle + tilt);
  const follow = followerOf(laid);
  const lying = (h: number): Lying | undefined => {
    const f = mayStopSooner || Math.abs(h - whole) < SAME_SPAN ? follow(h) : undefined;
    if (!f || !(f.depth > 0) || f.dip > FIT_NOISE || f.top > rules.room + FIT_NOISE) return undefined;
    if (isLeftOut({ depth: f.depth, span: 2 * h }, rules)) return undefined;
    return { ...f, tilt, halfSpan: h, point: offSquare(f.heading) };
  };
  const known: (Lying | undefined | typeof NOT_THERE)[] = [];
  return (number, h) => {
    known[number] ??= lying(h) ?? NOT_THERE;
    return known[number] || undefined;
  };
};

const NOT_THERE = 0;

/** A half span that is given is met by luck: nearer than this (mm) is near enough to be looked at. */
const SAME_SPAN = 0.01;

/** A candidate on the marks of a fit, and what it costs there: at least what it does on the first side, or on all. */
interface OnMarks {
  readonly index: number;
  readonly candidate: Candidate;
  readonly lyings: readonly Lying[];
  readonly cost: number;
  readonly isAll: boolean;
}

/** How deep (mm) a half is at least that keeps off the one below it. */
const leastDepth = (below: Seat, { rules: { at, apart } }: Ground): number =>
  below.depth + apart - at - FIT_NOISE;

/** Whether a half keeps off the one below it, as far as that can be told before it is laid. */
const keepsOff = (lying: Lying, below: Seat, ground: Ground): boolean => {
  const { at, apart, gap } = ground.rules;
  return (
    lying.depth >= leastDepth(below, ground) &&
    (at === 0 || at + lying.top - below.pose.top >= apart - FIT_NOISE) &&
    gapFor(lying, gap) <= below.gap + FIT_NOISE
  );
};

/** What a half costs by on a side, raised to the first row's start line. */
const lyingOn = (
  { tilt, depth, top, halfSpan, point }: Lying,
  { repeats, seat: { gap } }: Fit['sides'][number],
  { rules: { at } }: Ground,
): Parameters<Costing['measureLying']>[0] => ({
  repeats,
  top: top + at,
  tilt,
  point,
  gap,
  depth,
  span: 2 * halfSpan,
});

/** How a candidate lies on all sides of a fit; undefined where it cannot, or does not keep off. */
const lieOn = (
  { onSide }: Candidate,
  { sides }: Fit,
  numbers: readonly number[],
  ground: Ground,
): readonly Lying[] | undefined => {
  const lyings: Lying[] = [];
  for (let i = 0; i < sides.length; i++) {
    const below = sides[i]!.seat;
    const lying = onSide(numbers[i]!, below.pose.halfSpan, leastDepth(below, ground));
    if (!lying || !keepsOff(lying, below, ground)) return undefined;
    lyings.push(lying);
  }
  return lyings;
};

/** What a candidate costs on the first sides of a fit, so many of them. */
const sumOn = (
  { candidate: { costing }, lyings }: Pick<OnMarks, 'candidate' | 'lyings'>,
  { sides }: Fit,
  ground: Ground,
  most: number,
): ReturnType<Costing['add']> => {
  let sum: ReturnType<Costing['add']> | undefined;
  for (let i = 0; i < most; i++)
    sum = costing.addMeasured(sum, i, costing.measureLying(lyingOn(lyings[i]!, sides[i]!, ground)));
  return sum!;
};

/** What it costs on all sides and the corner; undefined where it cannot be made there. At a corner a given tilt is not looked at yet. */
const costOnAll = (one: OnMarks, fit: Fit, ground: Ground): number | undefined => {
  const { way, costing, onCorner } = one.candidate;
  const { beyond } = ground;
  const corner = cornerSwag(fit);
  const ofSides = sumOn(one, fit, ground, fit.sides.length);
  if (!corner || beyond.corners === 'none' || way.tilt !== undefined) return costing.cost(ofSides);
  const both = onCorner(cornerReach(corner.toCorner, beyond)).filter((lying) =>
    keepsOff(lying, corner.seat, ground),
  );
  const costs = both.map(({ tilt, depth, top, halfSpan }) => {
    const pose = { tilt, top: top + ground.rules.at };
    return costing.cost(costing.addCorner(ofSides, { pose, depth, span: 2 * halfSpan }));
  });
  return costs.length === 0 ? undefined : Math.min(...costs);
};

const byCost = (a: OnMarks, b: OnMarks): number => a.cost - b.cost || a.index - b.index;

const bestBeyond = (first: Ranked, ground: Ground): Ranked | undefined => {
  const { numbers } = ground;
  const { fit } = first;
  const asked = fit.sides.map(({ seat: { pose } }) => {
    if (!numbers.has(pose.halfSpan)) numbers.set(pose.halfSpan, numbers.size);
    return numbers.get(pose.halfSpan)!;
  });
  // All that a side costs at least is told at once, and what all cost only of those that come to be next.
  const queue: OnMarks[] = [];
  ground.ways.forEach((candidate, index) => {
    const lyings = lieOn(candidate, fit, asked, ground);
    if (!lyings) return;
    const cost = candidate.costing.cost(sumOn({ candidate, lyings }, fit, ground, 1));
    queue.push({ index, candidate, lyings, cost, isAll: false });
  });
  queue.sort(byCost);
  let best: Ranked | undefined;
  for (let next = 0; next < queue.length; next++) {
    const one = queue[next]!;
    if (best && (first.score.cost + one.cost) / 2 >= best.score.cost) break;
    if (!one.isAll) {
      const cost = costOnAll(one, fit, ground);
      if (cost !== undefined) putInOrder(queue, next + 1, { ...one, cost, isAll: true });
      continue;
    }
    const laid = rowBeyond(one.candidate.way, fit, ground.beyond, ground.rules);
    if (!laid.ok || hasLeftOut(laid.value, ground.rules)) continue;
    const both = withBeyond(first, laid.value, ground);
    if (!best || both.score.cost < best.score.cost) best = both;
  }
  return best;
};

/** Puts one into a queue that is in order from a place on. */
const putInOrder = (queue: OnMarks[], from: number, one: OnMarks): void => {
  let [low, high] = [from, queue.length];
  while (low < high) {
    const mid = (low + high) >> 1;
    if (byCost(queue[mid]!, one) < 0) low = mid + 1;
    else high = mid;
  }
  queue.splice(low, 0, one);
};

const withBeyond = (first: Ranked, fit: Fit, { field, beyond, rules: { at }, outward }: Ground): Ranked => {
  const score = scoreOf(raised(fit, at), field, outward);
  return {
    ...first,
    fit: { ...first.fit, beyond: { field: beyond, fit } },
    score: {
      spread: Math.max(first.score.spread, score.spread),
      use: score.use,
      gap: first.score.gap,
      cost: (first.score.cost + score.cost) / 2,
    },
  };
};

/** As the first row's start line sees it: what it uses of the border is all that lies below it. */
const raised = (fit: Fit, at: number): Fit => {
  const up = <S extends { readonly seat: Fit['sides'][number]['seat'] }>(side: S): S => ({
    ...side,
    seat: { ...side.seat, pose: { ...side.seat.pose, top: side.seat.pose.top + at } },
  });
  const corner = cornerSwag(fit);
  return { ...fit, sides: fit.sides.map(up), corner: corner ? up(corner) : fit.corner };
};

/** What stands in a row's way, and not only in the way of one half swag: a margin, or the first row. */
const IN_THE_WAY: readonly Misfit['kind'][] = ['too-deep', 'rows-near'];

/** Of two misses the one that tells more of what to change, and else the one by less. */
const tellsMore = (a: Misfit, b: Misfit): boolean => {
  const [one, other] = [a, b].map(({ kind }) => IN_THE_WAY.includes(kind));
  return one === other ? a.by < b.by : one === true;
};

/** Over the best ways to make the first row, the way that misses by least, and rather a margin or the first row than itself. */
const nearestOf = (firsts: readonly Ranked[], groundOf: (field: Field) => Ground): RowMiss | undefined => {
  let nearest: RowMiss | undefined;
  for (const { field, fit } of firsts.slice(0, LOOKED_AT)) {
    const ground = groundOf(field);
    for (const { way } of ground.ways) {
      const laid = rowBeyond(way, fit, ground.beyond, ground.rules);
      if (laid.ok || (nearest && !tellsMore(laid.misfit, nearest.misfit))) continue;
      nearest = { way, misfit: laid.misfit };
    }
  }
  return nearest;
};

/** Ways to make the first row over which a near miss is looked for. */
const LOOKED_AT = 12;
