/**
 * Swags over the corners at a fixed tilt: all half swags are alike, the corners' too, and what is left of each side is
 * shared equally as its gaps: L = n·(2h + g) + 2·(h ∓ d + g/2), across the corner L = n·(2h + g) + 2·(√2·h + g/2).
 */

import { type CountWish, isAbout } from '../plan/index.ts';
import type { Wishes } from './asked.ts';
import { besideNeighbour, gapBefore, linesBeside } from './beside.ts';
import { checkCorner, layOf, overNeighbour, toCornerOf } from './corner.ts';
import {
  allows,
  type Counted,
  type Counts,
  countsBeside,
  differAcross,
  fixedCount,
  lopsidedCounts,
  lopsidedPair,
  product,
  swagsOf,
} from './counts.ts';
import type { CorneredField } from './field.ts';
import { ALIKE, type Fit, type SideFit } from './fit.ts';
import { FIT_NOISE } from './misfit.ts';
import { tiltedPose } from './pose.ts';
import type { Tried } from './runs.ts';
import { gapsCost } from './score.ts';
import { type SeatRules, seat } from './seat.ts';
import type { Way } from './setting.ts';
import { cheaper, type Kept } from './ties.ts';
import { countsAsked } from './turns-wished.ts';
import { wishedScore } from './wished.ts';

export const turnsByTilt = (
  way: Way,
  tilt: number,
  field: CorneredField,
  rules: SeatRules,
  counts: readonly Counts[],
  outward: number,
): Tried => {
  const pose = tiltedPose(way.shape, tilt);
  const none: Tried = { fits: [], tried: 1 };
  const rise = tilt + way.shape.chordAngle;
  const least = Math.max(
    rules.gap === 'auto' ? 0 : rules.gap,
    ...linesBeside(field).map((line) => gapBefore(line, way.shape, rise, rules.gap)),
  );
  if (!(pose.halfSpan > 0 && pose.depth > 0)) return none;
  const corner = checkCorner(way, pose, least, field, rules);
  if (!corner.ok) return none;
  const toCorner = toCornerOf(field, pose);
  const fitting = (gap: number, i: number): number =>
    (field.runs[i]!.length - 2 * toCorner - gap + FIT_NOISE) / (2 * pose.halfSpan + gap);
  // The most repeats that leave at least the least gap; opposite sides that are as long take as many.
  const most = field.runs.map(({ length }, i): Counted => {
    const c = counts[i]!;
    const fit = Math.floor(fitting(least, i));
    return { length, repeats: fixedCount(c) ?? Math.min(fit, countsBeside(c, fit)[0] ?? 0) };
  });
  const repeats = most.map((side, i) => {
    const opposite = most[(i + 2) % most.length]!;
    const isFree = fixedCount(counts[i]!) === undefined && opposite.repeats > 0;
    return isFree && differAcross(side, opposite) ? Math.min(side.repeats, opposite.repeats) : side.repeats;
  });
  /** The gap (mm) that so many swags leave on a side. */
  const gapWith = (n: number, i: number): number =>
    (field.runs[i]!.length - 2 * toCorner - 2 * n * pose.halfSpan) / (n + 1);
  const laid = (vector: readonly number[]): Fit | undefined => {
    const sides: SideFit[] = [];
    for (let i = 0; i < field.runs.length; i++) {
      const run = field.runs[i]!;
      const n = vector[i]!;
      const gap = gapWith(n, i);
      if (n < 1 || !(gap >= least - FIT_NOISE && gap < 2 * pose.halfSpan)) return undefined;
      const tried = seat(way, 2 * pose.halfSpan + Math.max(0, gap), rules);
      if (!tried.ok) return undefined;
      sides.push({ run, repeats: n, seat: tried.value });
    }
    const seats = [corner.value, ...sides.map((s) => s.seat)];
    if (field.corners === 'across' && seats.some((s) => besideNeighbour(s, field))) return undefined;
    if (overNeighbour(sides, toCorner, field) > FIT_NOISE) return undefined;
    // The corner's own half gap differs from side to side; its offset is told for the first.
    const offset = toCorner + sides[0]!.seat.gap / 2;
    return {
      way,
      sides,
      corner: { kind: layOf(field).kind, seat: corner.value, toCorner, offset },
      pattern: ALIKE,
    };
  };
  const lengths = field.runs.map(({ length }) => length);
  const vectors = [
    repeats,
    cheapestCounts(repeats, counts, lengths, 2 * pose.halfSpan, gapWith),
    ...otherCounts(repeats, field, rules.wishes, counts, fitting),
  ];
  let best: Kept | undefined;
  for (const vector of vectors) {
    const fit = laid(vector);
    const score = fit && wishedScore(fit, field, outward, rules.wishes);
    if (fit && score) best = cheaper(best, { fit, cost: score.cost });
  }
  return { fits: best ? [best.fit] : [], tried: vectors.length };
};

/**
 * The counts that cost least beside `most`, as many as there is room for: a side may have fewer than it has room for, with
 * wider gaps, because each swag is a start and a stop, and because the opposite side has so many. Only the widest gap of
 * all costs, so for each that there may be every side takes as few as leave no wider one. `span` (mm) is of all alike.
 */
const cheapestCounts = (
  most: readonly number[],
  counts: readonly Counts[],
  lengths: readonly number[],
  span: number,
  gapWith: (n: number, i: number) => number,
): readonly number[] => {
  const mayBe = (n: number, i: number): boolean =>
    n === most[i] || (fixedCount(counts[i]!) === undefined && allows(counts[i]!, n));
  const areLopsided = lopsidedPair(lengths, counts);
  const pairs =
    most.length === 4
      ? [
          [0, 2],
          [1, 3],
        ]
      : most.map((_, i) => [i]);
  const few = [...most];
  let best: { readonly cost: number; readonly repeats: readonly number[] } | undefined;
  for (;;) {
    const repeats = [...few];
    let lopsided = 0;
    for (const [i = 0, k = i] of pairs) {
      if (repeats[i] === repeats[k]) continue;
      const common = Math.max(repeats[i]!, repeats[k]!);
      const mayAgree = common <= Math.min(most[i]!, most[k]!) && mayBe(common, i) && mayBe(common, k);
      // One more swag costs far less than counts that differ.
      if (mayAgree) repeats[i] = repeats[k] = common;
      else if (areLopsided(i, repeats[i]!, k, repeats[k]!)) lopsided = Number.POSITIVE_INFINITY;
      else lopsided++;
    }
    const gap = Math.max(...repeats.map(gapWith));
    const cost = gapsCost({ gap, gapShare: gap / span, swags: swagsOf(repeats), lopsided });
    if (!best || cost < best.cost) best = { cost, repeats };
    // The next wider gap that one of them may have.
    const next = few.map((n, i) => {
      for (let fewer = n - 1; fewer > 0; fewer--) if (mayBe(fewer, i)) return gapWith(fewer, i);
      return Number.POSITIVE_INFINITY;
    });
    const wider = Math.min(...next);
    if (
      !(wider < span) ||
      gapsCost({ gap: wider, gapShare: wider / span, swags: 0, lopsided: 0 }) > best.cost
    )
      return best.repeats;
    next.forEach((gapThere, i) => {
      if (gapThere > wider + FIT_NOISE) return;
      do few[i]!--;
      while (!mayBe(few[i]!, i));
    });
  }
};

/** Fewer swags with wider gaps, where that is what is asked. `fitting` tells how many a side takes with a gap (mm). */
const otherCounts = (
  repeats: readonly number[],
  field: CorneredField,
  wishes: Wishes | undefined,
  counts: readonly Counts[],
  fitting: (gap: number, i: number) => number,
): readonly (readonly number[])[] => {
  if (!wishes) return [];
  const gaps = wishes.asked.flatMap(({ key, wish }) => (key === 'gap' ? gapsIn(wish) : []));
  const options = repeats.map((n, i) => [
    ...new Set([
      n,
      ...countsAsked(wishes, counts[i]!, i, n, { i: 0, repeats: repeats[0]! }),
      ...gaps.flatMap((gap) => countsBeside(counts[i]!, fitting(gap, i))),
    ]),
  ]);
  const isLopsided = lopsidedCounts(
    field.runs.map((run) => run.length),
    counts,
  );
  return product(options)
    .filter((vector) => !isLopsided(vector))
    .slice(1);
};

const gapsIn = (wish: CountWish): readonly number[] => {
  if (typeof wish === 'string') return [];
  if (typeof wish === 'number') return [wish];
  return isAbout(wish) ? [wish.about] : [wish.least, wish.most].filter((gap) => gap !== undefined);
};
