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
import { isLeftOut } from './flat.ts';
import { followerOf } from './followed.ts';
import { FIT_NOISE, type Misfit } from './misfit.ts';
import { bulgeAt, reachAt } from './pose.ts';
import type { Run } from './run.ts';
import { differenceCost } from './score.ts';
import {
  bulgeFor,
  gapAsked,
  gapFor,
  isPrintedAsAsked,
  keepsGap,
  MOST_ROUNDS,
  type SeatRules,
  seat,
} from './seat.ts';
import type { Way } from './setting.ts';
import { reachOf } from './shape.ts';
import { clip, isWithin, limitsOf, riseBelow, riseOfBulge, uprightRise, windowsOf } from './windows.ts';
import { type Measured, wishedWorth } from './wished.ts';

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
  const { sizeIn, least, most, own = rules } = sizesFor(way, field, rules, outward);
  let tried = 0;
  const bySide = field.runs.map((run, i): readonly Choice[] => {
    const found: Choice[] = [];
    for (const repeats of countsBetween(counts[i]!, run.length / most, run.length / least)) {
      tried++;
      const size = sizeIn(run.length / repeats);
      if (size) found.push({ repeats, ...size });
    }
    return found;
  });
  if (bySide.some((choices) => choices.length === 0)) return { fits: [], tried };
  const lengths = field.runs.map((r) => r.length);
  const anchor = anchorOf(lengths);
  const worth = wishedWorth(way, field, outward, rules.wishes);
  const laid = field.runs.map(() => new Map<number, Laid | undefined>());
  const lay = (i: number, repeats: number): Laid | undefined => {
    const known = laid[i]!;
    if (known.has(repeats)) return known.get(repeats);
    const side = sideFit(way, field.runs[i]!, repeats, own, field);
    const measured = side && worth.measure(i, side);
    const made = measured && { side, measured };
    known.set(repeats, made);
    return made;
  };
  const chosen = bestChoices(bySide, anchor, {
    isBarred: lopsidedPair(lengths, counts),
    add: (sum, i, { repeats }) => {
      const made = lay(i, repeats);
      return made && worth.addMeasured(sum, i, made.measured);
    },
    cost: worth.cost,
    leastAlone: worth.leastAlone,
    leastApart: differenceCost,
    lengths,
  });
  const fits = chosen.map((choices): Fit => {
    const sides = choices.map((c, i) => lay(i, c.repeats)!.side);
    return { way, sides, corner: field.corners === 'half' ? HALVES : WITHOUT_SWAG, pattern: ALIKE };
  });
  return { fits, tried };
};

/** A side with so many swags, and what it counts for. */
interface Laid {
  readonly side: SideFit;
  readonly measured: Measured;
}

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

/** mm. */
type Size = Pick<Choice, 'depth' | 'span' | 'top'>;

interface Sizes {
  /** How large a way is in a share (mm) of a side; undefined where it does not fit there. */
  readonly sizeIn: (share: number) => Size | undefined;
  /** No share outside these (mm) can do. */
  readonly least: number;
  readonly most: number;
  /** The rules with what the way adds to them. */
  readonly own?: SeatRules;
}

const sizesFor = (way: Way, field: Field, rules: SeatRules, outward: number): Sizes =>
  way.tilt === undefined || !way.laid
    ? sizesByCrown(way, field, rules, outward)
    : sizesByTilt(way, way.tilt, way.laid, rules);

const NONE: Sizes = { sizeIn: () => undefined, least: Number.POSITIVE_INFINITY, most: 1 };

const sizesByCrown = ({ shape }: Way, field: Field, rules: SeatRules, outward: number): Sizes => {
  const limits = limitsOf(shape, rules.room);
  const fixed = rules.gap === 'auto' ? 0 : rules.gap;
  let windows = askedOfSides(windowsOf(limits, Math.PI / 2), shape, field, outward, rules);
  const upright = uprightRise(limits);
  if (rules.gap !== 'auto') windows = clip(windows, 0, riseOfBulge(shape, limits, bulgeFor(fixed)));
  const line = partedAt(field);
  if (line !== undefined && rules.gap === 0) windows = clip(windows, 0, riseBelow(limits, line));
  if (windows.length === 0) return NONE;
  const { chord } = shape;
  // A gap that is given in figures is not widened, and may be as wide as a swag.
  const widestSpan = rules.widestGap === undefined ? undefined : widestAsked(shape, windows, rules.wishes);
  const widestPrinted = widestSpan && widestAsked(shape, windows, rules.wishes, true);
  const own: SeatRules = { ...rules, widestSpan, widestPrinted };
  const riseIn = (share: number, gap: number): number => Math.acos(Math.min(1, (share - gap) / (2 * chord)));
  const sizeIn = (share: number): Size | undefined => {
    const asked = gapAsked(share, 1, 1, fixed, own);
    const bulging = asked > fixed ? sizeFromGap(share, fixed) : undefined;
    return bulging && isPrintedAsAsked(bulging.span, own) ? bulging : sizeFromGap(share, asked);
  };
  const sizeFromGap = (share: number, asked: number): Size | undefined => {
    let gap = asked;
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
    return isWithin(windows, rise)
      ? { depth: chord * Math.sin(rise), span: share - gap, top: reachAt(shape, rise) }
      : undefined;
  };
  const flattest = windows[0]!.from;
  const steepest = windows.at(-1)!.to;
  // A gap that is made to suit is no wider than a swag that fills the rest of its share.
  const span = 2 * chord * Math.cos(flattest);
  const gap = rules.gap === 'auto' ? 2 * reachOf(shape) + 2 : fixed;
  const most =
    span + (own.widestSpan === undefined ? gap : Math.max(gap, Math.min(span, rules.widestGap ?? 0)));
  return { sizeIn, least: Math.max(1, 2 * chord * Math.cos(steepest) + fixed), most, own };
};

const sizesByTilt = (way: Way, tilt: number, laid: Path, rules: SeatRules): Sizes => {
  const { shape } = way;
  const follow = followerOf(laid);
  const halfSpan = shape.chord * Math.cos(shape.chordAngle + tilt);
  const depth = shape.chord * Math.sin(shape.chordAngle + tilt);
  const fixed = rules.gap === 'auto' ? 0 : rules.gap;
  const serves = (f: { depth: number; top: number; dip: number }, span: number): boolean =>
    f.depth > FIT_NOISE &&
    f.dip <= FIT_NOISE &&
    f.top <= rules.room + FIT_NOISE &&
    !isLeftOut({ depth: f.depth, span }, rules);
  const c = Math.cos(tilt);
  const s = Math.sin(tilt);
  const ends = {
    top: shape.support(s, c),
    dip: shape.support(-s, -c),
    bulge: shape.support(-c, s),
    right: shape.support(c, -s),
  };
  const wholeServes =
    serves({ ...ends, depth }, 2 * halfSpan) && ends.right <= halfSpan + FIT_NOISE && halfSpan > 0;
  const narrowest = Math.max(fixed, gapFor(ends, rules.gap));
  if (!wholeServes && !way.mayStopSooner) return NONE;
  const whole: Size = { depth, span: 2 * halfSpan, top: ends.top };
  const sizeIn = (share: number): Size | undefined => {
    if (halfSpan > 0 && 2 * halfSpan + narrowest <= share + FIT_NOISE)
      return wholeServes && share < 4 * halfSpan && keepsGap(share - 2 * halfSpan, rules) ? whole : undefined;
    if (!way.mayStopSooner) return undefined;
    let gap = fixed;
    for (let round = 0; round < 3; round++) {
      const f = follow((share - gap) / 2);
      if (!f || !serves(f, share - gap)) return undefined;
      const wanted = gapFor(f, rules.gap);
      if (wanted <= gap + FIT_NOISE) return { depth: f.depth, span: share - gap, top: f.top };
      if (rules.gap !== 'auto') return undefined;
      gap = wanted;
    }
    return undefined;
  };
  return {
    sizeIn,
    least: way.mayStopSooner ? 1 : 2 * halfSpan + narrowest - FIT_NOISE,
    most: Math.max(4 * halfSpan, 2 * ends.right + narrowest),
  };
};
