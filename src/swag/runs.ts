/**
 * Counts for runs that end at their corners: each side of length L takes n repeats of L/n, on its own. What
 * shows on the quilt is the difference in depth between the sides, so the counts are chosen together.
 *
 * A count is first only a comparison of numbers (windows.ts, followed.ts). What is chosen is then laid, and
 * with that checked a second time, from the laid path.
 */

import type { Path } from '../geometry/index.ts';
import { askedOfSides, widestAsked } from './asked-rises.ts';
import { besideNeighbour, partedAt } from './beside.ts';
import { anchorOf, bestChoices, type Choice, type Counts, countsBetween, lopsidedPair } from './counts.ts';
import type { Field } from './field.ts';
import { ALIKE, type Fit, HALVES, type SideFit, WITHOUT_SWAG } from './fit.ts';
import { followerOf } from './followed.ts';
import { FIT_NOISE, type Misfit } from './misfit.ts';
import { bulgeAt } from './pose.ts';
import type { Run } from './run.ts';
import { bulgeFor, gapAsked, gapFor, keepsGap, MOST_ROUNDS, type SeatRules, seat } from './seat.ts';
import type { Way } from './setting.ts';
import { reachOf } from './shape.ts';
import { clip, isWithin, limitsOf, riseBelow, riseOfBulge, uprightRise, windowsOf } from './windows.ts';
import { wishedWorth } from './wished.ts';

/** What was tried and missed, for telling a person what would be nearest. */
export interface Miss {
  readonly way: Way;
  readonly run: Run;
  /** Undefined where what is in the way is the corner, whatever the count. */
  readonly repeats: number | undefined;
  readonly misfit: Misfit;
}

export interface Tried {
  readonly fits: readonly Fit[];
  /** How many counts and poses were looked at. */
  readonly tried: number;
}

/**
 * For one way and each count of the longest side, the counts of the others that cost least with it. Which side is
 * called the first makes no difference.
 */
export const fitRuns = (
  way: Way,
  field: Field,
  rules: SeatRules,
  counts: readonly Counts[],
  outward: number,
): Tried => {
  const { depthIn, least, most, own = rules } = depthsFor(way, field, rules, outward);
  let tried = 0;
  const bySide = field.runs.map((run, i): readonly Choice[] => {
    const found: Choice[] = [];
    for (const repeats of countsBetween(counts[i]!, run.length / most, run.length / least)) {
      tried++;
      const depth = depthIn(run.length / repeats);
      if (depth !== undefined) found.push({ repeats, depth });
    }
    return found;
  });
  if (bySide.some((choices) => choices.length === 0)) return { fits: [], tried };
  const laid = field.runs.map(() => new Map<number, SideFit | undefined>());
  const lay = (i: number, repeats: number): SideFit | undefined => {
    const known = laid[i]!;
    if (!known.has(repeats)) known.set(repeats, sideFit(way, field.runs[i]!, repeats, own, field));
    return known.get(repeats);
  };
  const lengths = field.runs.map((r) => r.length);
  const anchor = anchorOf(lengths);
  const worth = wishedWorth(way, field, outward, rules.wishes);
  const chosen = bestChoices(bySide, anchor, {
    isBarred: lopsidedPair(lengths, counts),
    add: (sum, i, { repeats }) => {
      const side = lay(i, repeats);
      return side && worth.add(sum, i, side);
    },
    cost: worth.cost,
  });
  const fits = chosen.map((choices): Fit => {
    const sides = choices.map((c, i) => lay(i, c.repeats)!);
    return { way, sides, corner: field.corners === 'half' ? HALVES : WITHOUT_SWAG, pattern: ALIKE };
  });
  return { fits, tried };
};

const sideFit = (
  way: Way,
  run: Run,
  repeats: number,
  rules: SeatRules,
  field: Field,
): SideFit | undefined => {
  const tried = seat(way, run.length / repeats, rules);
  if (!tried.ok) return undefined;
  if (besideNeighbour(tried.value, field)) return undefined;
  return { run, repeats, seat: tried.value };
};

interface Depths {
  /** The depth (mm) that a way has in a share (mm) of a side; undefined where it does not fit there. */
  readonly depthIn: (share: number) => number | undefined;
  /** No share outside these (mm) can do. */
  readonly least: number;
  readonly most: number;
  /** The rules with what the way adds to them. */
  readonly own?: SeatRules;
}

const depthsFor = (way: Way, field: Field, rules: SeatRules, outward: number): Depths =>
  way.tilt === undefined || !way.laid
    ? depthsByCrown(way, field, rules, outward)
    : depthsByTilt(way, way.tilt, way.laid, rules);

const NONE: Depths = { depthIn: () => undefined, least: Number.POSITIVE_INFINITY, most: 1 };

const depthsByCrown = ({ shape }: Way, field: Field, rules: SeatRules, outward: number): Depths => {
  const limits = limitsOf(shape, rules.room);
  const fixed = rules.gap === 'auto' ? 0 : rules.gap;
  let windows = askedOfSides(windowsOf(limits, Math.PI / 2), shape, field, outward, rules.wishes);
  const upright = uprightRise(limits);
  if (rules.gap !== 'auto') windows = clip(windows, 0, riseOfBulge(shape, limits, bulgeFor(fixed)));
  const line = partedAt(field);
  if (line !== undefined && rules.gap === 0) windows = clip(windows, 0, riseBelow(limits, line));
  if (windows.length === 0) return NONE;
  const { chord } = shape;
  const own: SeatRules = { ...rules, widestSpan: widestAsked(shape, windows, rules.wishes) };
  const riseIn = (share: number, gap: number): number => Math.acos(Math.min(1, (share - gap) / (2 * chord)));
  const depthIn = (share: number): number | undefined => {
    let gap = gapAsked(share, 1, 1, fixed, own);
    let rise = riseIn(share, gap);
    if (rules.gap === 'auto' && rise > upright) {
      for (let round = 0; round < MOST_ROUNDS; round++) {
        const wanted = gapFor({ bulge: bulgeAt(shape, rise) });
        if (wanted <= gap + FIT_NOISE) break;
        gap = wanted;
        if (!(gap < share)) return undefined;
        rise = riseIn(share, gap);
      }
    }
    return isWithin(windows, rise) ? chord * Math.sin(rise) : undefined;
  };
  const flattest = windows[0]!.from;
  const steepest = windows.at(-1)!.to;
  // A gap that is made to suit is no wider than a swag that fills the rest of its share.
  const span = 2 * chord * Math.cos(flattest);
  const gap = rules.gap === 'auto' ? 2 * reachOf(shape) + 2 : fixed;
  const most =
    span + (own.widestSpan === undefined ? gap : Math.max(gap, Math.min(span, rules.widestGap ?? 0)));
  return { depthIn, least: Math.max(1, 2 * chord * Math.cos(steepest) + fixed), most, own };
};

const depthsByTilt = (way: Way, tilt: number, laid: Path, rules: SeatRules): Depths => {
  const { shape } = way;
  const follow = followerOf(laid);
  const halfSpan = shape.chord * Math.cos(shape.chordAngle + tilt);
  const depth = shape.chord * Math.sin(shape.chordAngle + tilt);
  const fixed = rules.gap === 'auto' ? 0 : rules.gap;
  const serves = (f: { depth: number; top: number; dip: number }): boolean =>
    f.depth > FIT_NOISE && f.dip <= FIT_NOISE && f.top <= rules.room + FIT_NOISE;
  const c = Math.cos(tilt);
  const s = Math.sin(tilt);
  const ends = {
    top: shape.support(s, c),
    dip: shape.support(-s, -c),
    bulge: shape.support(-c, s),
    right: shape.support(c, -s),
  };
  const wholeServes = serves({ ...ends, depth }) && ends.right <= halfSpan + FIT_NOISE && halfSpan > 0;
  const narrowest = Math.max(fixed, gapFor(ends, rules.gap));
  if (!wholeServes && !way.mayStopSooner) return NONE;
  const depthIn = (share: number): number | undefined => {
    if (halfSpan > 0 && 2 * halfSpan + narrowest <= share + FIT_NOISE)
      return wholeServes && share < 4 * halfSpan && keepsGap(share - 2 * halfSpan, rules) ? depth : undefined;
    if (!way.mayStopSooner) return undefined;
    let gap = fixed;
    for (let round = 0; round < 3; round++) {
      const f = follow((share - gap) / 2);
      if (!f || !serves(f)) return undefined;
      const wanted = gapFor(f, rules.gap);
      if (wanted <= gap + FIT_NOISE) return f.depth;
      if (rules.gap !== 'auto') return undefined;
      gap = wanted;
    }
    return undefined;
  };
  return {
    depthIn,
    least: way.mayStopSooner ? 1 : 2 * halfSpan + narrowest - FIT_NOISE,
    most: Math.max(4 * halfSpan, 2 * ends.right + narrowest),
  };
};
