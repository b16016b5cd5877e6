/** For given counts, which corner makes the depths of a border most alike. */

import { besideNeighbour } from './beside.ts';
import { leansOver, overMitre } from './corner.ts';
import { leastIn } from './least.ts';
import { FIT_NOISE } from './misfit.ts';
import { crownPose } from './pose.ts';
import { needleCost } from './score.ts';
import { straightSeat } from './seat.ts';
import type { Way } from './setting.ts';
import { type Corner, type Ground, gapOnSide, halfSpanOnSide, riseOnSide, toStart } from './turns-ground.ts';
import { missedByCounts, missedByGaps, missedByRises } from './turns-wished.ts';
import { clip, isWithin, type Window } from './windows.ts';
import { missWithin, WISH_WEIGHT } from './wishes.ts';

/**
 * For given counts the corner that makes the depths most alike, and before that is nearest to what is asked; undefined
 * where none has its depths and what it misses within bounds.
 */
export const bestOf = (repeats: readonly number[], ground: Ground, within?: Within): Corner | undefined => {
  const valid = cornerRises(repeats, ground);
  if (valid.length === 0) return undefined;
  const missedAt = missesOf(repeats, ground);
  const weight = missWeight(ground);
  const always = ground.asked ? missedByCounts(repeats, gapOf(ground), ground.asked) : 0;
  const steps = missedAt ? 2 * GOLDEN_STEPS : GOLDEN_STEPS;
  const most = within && within.spread + weight * (within.missed - always);
  const best = leastIn(valid, blamesOf(repeats, ground, missedAt), { samples: SAMPLES, steps }, most);
  if (!best) return undefined;
  const { at: rise, value: blame } = best;
  const missed = missedAt?.(rise) ?? 0;
  return {
    repeats,
    rise,
    spread: blame - weight * missed,
    missed: missed + always,
    blame: blame + weight * always,
  };
};

/** How much the depths may differ (mm), and how far all may be from what is asked, as a share. */
export interface Within {
  readonly spread: number;
  readonly missed: number;
}

/** Of each stretch of rises. */
const SAMPLES = 10;

/**
 * Brings two samples' distance, a few degrees at most, below 1e-6 radians: depths change by less than 1e-3 mm. What is
 * asked weighs so much more that twice as many are taken for it.
 */
const GOLDEN_STEPS = 23;

/** What missing a wish by all of it is blamed with (mm), beside depths that differ by so much. */
const missWeight = ({ way }: Ground): number => WISH_WEIGHT * way.shape.chord;

/** For given counts, what a corner that rises by so much (radians) is blamed with (mm). */
const blamesOf = (
  repeats: readonly number[],
  ground: Ground,
  missedAt: ((rise: number) => number) | undefined,
): ((rise: number) => number) => {
  const spreadAt = spreadsOf(repeats, ground);
  const weight = missWeight(ground);
  const blamed = missedAt ? (rise: number) => spreadAt(rise) + weight * missedAt(rise) : spreadAt;
  return ground.keepsApart
    ? (rise) => (keepsApartAt(rise, repeats, ground) ? blamed(rise) : Number.POSITIVE_INFINITY)
    : blamed;
};

/** Whether all keep to their own cloth at the corners when a corner rises by so much (radians), and across them none runs doubled. */
const keepsApartAt = (rise: number, repeats: readonly number[], ground: Ground): boolean => {
  if (overAt(rise, repeats, ground) > FIT_NOISE) return false;
  const { way, over, field, lay } = ground;
  if (lay.kind !== 'across') return true;
  const standsBeside = (made: Way, halfSpan: number, gap: number): boolean => {
    const pose = crownPose(made.shape, halfSpan);
    return pose !== undefined && !besideNeighbour(straightSeat(made, made.shape, pose, gap), field);
  };
  const { chord } = over.shape;
  const offset = toStart(lay, chord, rise);
  return (
    standsBeside(over, chord * Math.cos(rise), ground.gap) &&
    repeats.every((n, i) => {
      const rest = field.runs[i]!.length - 2 * offset;
      return standsBeside(way, halfSpanOnSide(rest, n, ground), gapOnSide(rest, n, ground));
    })
  );
};

/** How far (mm) two sides that meet at a corner lean over the same cloth when it rises by so much (radians). */
const overAt = (rise: number, repeats: readonly number[], ground: Ground): number => {
  const { way, over, field, lay, gap } = ground;
  const { chordAngle, support } = way.shape;
  const offset = toStart(lay, over.shape.chord, rise);
  const rises = repeats.map((n, i) => riseOnSide(field.runs[i]!.length - 2 * offset, n, ground));
  if (lay.kind === 'across')
    return Math.max(...rises.map((side) => overMitre(way.shape, side, offset + gap, field)));
  const tops = rises.map((side) => support(Math.sin(side - chordAngle), Math.cos(side - chordAngle)));
  return leansOver(tops, offset, field);
};

/** The gap (mm) of all sides; undefined where swags that are not to be wider than asked may leave more. */
const gapOf = ({ gap, widestSpan, widestGap }: Ground): number | undefined =>
  widestSpan === undefined || widestGap === undefined ? gap : undefined;

/** For given counts, how far all is from what is asked when the corner rises by so much (radians); undefined where nothing is. */
const missesOf = (repeats: readonly number[], ground: Ground): ((rise: number) => number) | undefined => {
  const { way, over, field, lay, asked } = ground;
  if (!asked) return undefined;
  const missed = missedByRises(way.shape, over.shape, asked);
  const isOfGap = gapOf(ground) === undefined && asked.wishes.asked.some(({ key }) => key === 'gap');
  if (!missed && !isOfGap) return undefined;
  return (rise) => {
    const offset = toStart(lay, over.shape.chord, rise);
    const rests = field.runs.map(({ length }) => length - 2 * offset);
    const sides = repeats.map((n, i) => riseOnSide(rests[i]!, n, ground));
    const ofGap = isOfGap
      ? missedByGaps(
          repeats.map((n, i) => gapOnSide(rests[i]!, n, ground)),
          asked,
        )
      : 0;
    // A corner's span is not among what is asked: drawn out to a spike, hardly wider than the thread, it would let the
    // sides come nearer, and cost more than that is worth.
    return (missed?.(rise, sides) ?? 0) + ofGap + missWithin(needleCost(rise));
  };
};

/** For given counts, how much (mm) the depths of the corner and the sides differ when the corner rises by so much (radians). */
const spreadsOf = (repeats: readonly number[], ground: Ground): ((rise: number) => number) => {
  const { way, over, field, lay, windows } = ground;
  const { chord } = way.shape;
  const ofCorner = over.shape.chord;
  const { runs } = field;
  const { ofSpan, ofDepth } = lay;
  // Several windows for the sides are rare; then what lies between them is ruled out sample by sample.
  const manyWindows = windows.sides.length > 1;
  return (rise) => {
    const depth = ofCorner * Math.sin(rise);
    const offset = ofSpan * ofCorner * Math.cos(rise) + ofDepth * depth;
    let low = depth;
    let high = depth;
    for (let i = 0; i < repeats.length; i++) {
      const h = halfSpanOnSide(runs[i]!.length - 2 * offset, repeats[i]!, ground);
      if (manyWindows && !isWithin(windows.sides, Math.acos(Math.min(1, h / chord))))
        return Number.POSITIVE_INFINITY;
      const d = Math.sqrt(Math.max(0, chord * chord - h * h));
      if (d < low) low = d;
      if (d > high) high = d;
    }
    return high - low;
  };
};

/** The corner's rises at which the corner and all sides are valid. */
const cornerRises = (
  repeats: readonly number[],
  { way, over, field, lay, gap, windows, widestSpan, widestGap }: Ground,
): readonly Window[] => {
  if (windows.sides.length === 0 || windows.corners.length === 0) return [];
  const { chord } = way.shape;
  const widest = chord * Math.cos(windows.sides[0]!.from);
  const narrowest = chord * Math.cos(windows.sides.at(-1)!.to);
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  for (let i = 0; i < repeats.length; i++) {
    const { length } = field.runs[i]!;
    const most = widestSpan === undefined ? gap : Math.max(gap, widestGap ?? gap);
    low = Math.max(low, (length + gap - repeats[i]! * 2 * widest - (repeats[i]! + 1) * most) / 2);
    high = Math.min(high, (length - repeats[i]! * (2 * narrowest + gap)) / 2);
  }
  if (!(low <= high)) return [];
  // a − g/2 as one cosine, on both sides of the rise at which it is greatest.
  const most = Math.hypot(lay.ofSpan, lay.ofDepth) * over.shape.chord;
  const middle = Math.atan2(lay.ofDepth, lay.ofSpan);
  const angleOf = (offset: number): number => Math.acos(Math.min(1, Math.max(-1, (offset - gap / 2) / most)));
  const near = angleOf(high);
  const far = angleOf(low);
  return [
    ...clip(windows.corners, middle - far, middle - near),
    ...clip(windows.corners, middle + near, middle + far),
  ];
};
