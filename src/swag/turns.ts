/**
 * Counts and the corner for borders whose swags turn the corner.
 *
 * The two halves of a corner swag belong to two sides and must meet on the mitre, so all four corners share
 * one pose, with half span h and depth d, h² + d² = C². Its join mirror lies a = h ∓ d + g/2 from the corner
 * (− from the inner seam, + from the outer), and each side has L = n·(2hᵢ + g) + 2a with its own hᵢ and dᵢ.
 * One unknown is left, the corner's h; it is chosen so that all depths, the corner's too, differ least.
 *
 * Method. Poses are told by their rise (windows.ts): the corner's valid rises are sampled, each side's rise
 * follows in closed form, and the best samples are refined by golden-section search. Rises outside their
 * windows count as worse than any spread, the farther out the worse, so that the search also finds an
 * optimum on the edge of what is valid. Checked in the tests against a fine grid.
 */

import type { Field } from './field.ts';
import { depthsOf, type Fit, type SideFit, spreadOf } from './fit.ts';
import { FIT_NOISE, fits, misses, type Result } from './misfit.ts';
import { crownPose, type Pose, pastMirror, tiltedPose } from './pose.ts';
import { type Counts, countsFor, type Miss, type Tried } from './runs.ts';
import { gapFor, NEIGHBOUR_ROOM, type Seat, type SeatRules, seat } from './seat.ts';
import type { Way } from './setting.ts';
import { outsideBy, type Window, windowsOf } from './windows.ts';

/** All good choices of counts, each with its best corner, for one way. */
export const fitTurns = (way: Way, field: Field, rules: SeatRules, counts: readonly Counts[]): Tried =>
  way.tilt === undefined
    ? turnsByCrown(way, field, rules, counts)
    : turnsByTilt(way, way.tilt, field, rules, counts);

const sign = (field: Field): number => (field.from === 'inner' ? -1 : 1);

const turnsByCrown = (way: Way, field: Field, rules: SeatRules, counts: readonly Counts[]): Tried => {
  const found: Fit[] = [];
  const missed: Miss[] = [];
  const windows = windowsByGap(way, field, rules);
  for (const repeats of promisingCounts(way, field, rules, counts)) {
    const tried = bestCorner(way, field, rules, repeats, windows);
    if (tried.ok) found.push(tried.value);
    else missed.push({ way, run: field.runs[0]!, repeats: repeats[0]!, misfit: tried.misfit });
  }
  return { fits: found.sort((a, b) => spreadOf(depthsOf(a)) - spreadOf(depthsOf(b))), misses: missed };
};

/**
 * Count vectors near one common depth: for each count of the longest side the depth at which it comes out
 * even, and for the others the whole numbers on either side of what that depth asks for.
 */
const promisingCounts = (
  way: Way,
  field: Field,
  rules: SeatRules,
  counts: readonly Counts[],
): readonly (readonly number[])[] => {
  const { chord } = way.shape;
  const gap = rules.gap === 'auto' ? 0 : rules.gap;
  const anchor = field.runs.reduce((best, r, i) => (r.length > field.runs[best]!.length ? i : best), 0);
  const seen = new Set<string>();
  const vectors: number[][] = [];
  for (const n of countsFor(counts[anchor]!, way, field.runs[anchor]!.length, rules)) {
    // The count that a common half span h asks of a side of length L falls as h grows: bisect for n.
    const asks = (length: number, h: number): number => {
      const d = Math.sqrt(Math.max(0, chord * chord - h * h));
      return (length - 2 * h - 2 * sign(field) * d - gap) / (2 * h + gap);
    };
    let low = chord * LEAST_SPAN;
    let high = chord;
    for (let i = 0; i < BISECTIONS; i++) {
      const mid = (low + high) / 2;
      if (asks(field.runs[anchor]!.length, mid) > n) low = mid;
      else high = mid;
    }
    const choices = field.runs.map((run, i): readonly number[] => {
      const c = counts[i]!;
      if ('exactly' in c) return [c.exactly];
      if (i === anchor) return [n];
      const wish = asks(run.length, high);
      return [Math.floor(wish), Math.ceil(wish)].filter((k) => k >= 1 && k <= c.upTo);
    });
    for (const vector of product(choices)) {
      const key = vector.join(' ');
      if (seen.has(key)) continue;
      seen.add(key);
      vectors.push(vector);
    }
  }
  return vectors;
};

/** Half spans below this share of the chord stand the template on its end; no border wants them. */
const LEAST_SPAN = 0.02;
/** Enough halvings to bring any chord to less than the fit's noise. */
const BISECTIONS = 60;

const product = (choices: readonly (readonly number[])[]): number[][] =>
  choices.reduce<number[][]>((all, some) => all.flatMap((head) => some.map((x) => [...head, x])), [[]]);

/** The corner that makes the depths most alike for given counts. */
const bestCorner = (
  way: Way,
  field: Field,
  rules: SeatRules,
  repeats: readonly number[],
  windows: WindowsAt,
): Result<Fit> => {
  if (rules.gap !== 'auto') return bestCornerAt(way, field, rules, repeats, rules.gap, windows);
  // The gap that the poses need depends on the poses: from none upward until it serves.
  let gap = 0;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const tried = bestCornerAt(way, field, rules, repeats, gap, windows);
    if (tried.ok || tried.misfit.kind !== 'bulges') return tried;
    gap += Math.max(tried.misfit.by, FIT_NOISE);
  }
  return misses({ kind: 'no-length', by: gap });
};

const MOST_ROUNDS = 60;

const bestCornerAt = (
  way: Way,
  field: Field,
  rules: SeatRules,
  repeats: readonly number[],
  gap: number,
  windows: WindowsAt,
): Result<Fit> => {
  const { chord } = way.shape;
  const { sides, corners } = windows(gap);
  const cost = (rise: number): number => {
    const depth = chord * Math.sin(rise);
    const offset = chord * Math.cos(rise) + sign(field) * depth + gap / 2;
    let low = depth;
    let high = depth;
    let outside = outsideBy(corners, rise) + Math.max(0, -offset) / chord;
    for (let i = 0; i < repeats.length; i++) {
      const cosine = ((field.runs[i]!.length - 2 * offset) / repeats[i]! - gap) / (2 * chord);
      const beyond = Math.max(0, cosine - 1, -cosine);
      const side = Math.acos(Math.min(1, Math.max(0, cosine)));
      outside += beyond + outsideBy(sides, side);
      const d = chord * Math.sin(side);
      if (d < low) low = d;
      if (d > high) high = d;
    }
    return outside > RISE_NOISE ? OUTSIDE + outside : high - low;
  };
  let best = Number.NaN;
  let least = Number.POSITIVE_INFINITY;
  for (const w of corners) {
    const step = (w.to - w.from) / SAMPLES;
    const samples = Array.from({ length: SAMPLES + 1 }, (_, k) => cost(w.from + k * step));
    const valleys = samples.map((_, k) => k).filter((k) => isValley(samples, k));
    for (const k of valleys) {
      const middle = w.from + k * step;
      const refined = goldenLeast(cost, Math.max(w.from, middle - step), Math.min(w.to, middle + step));
      for (const rise of [middle, refined]) {
        const c = cost(rise);
        if (c < least) {
          least = c;
          best = rise;
        }
      }
    }
  }
  if (Number.isNaN(best)) return layTurn(way, field, rules, repeats, gap, chord * Math.SQRT1_2);
  return layTurn(way, field, rules, repeats, gap, chord * Math.cos(best));
};

/** Rises this near (radians) to a window count as in it: less than the fit's noise on any chord. */
const RISE_NOISE = 1e-11;
/** Worse than any spread of depths in mm. */
const OUTSIDE = 1e6;
/** Samples of a window; between two of them the depths' spread has one valley. */
const SAMPLES = 48;

const isValley = (samples: readonly number[], k: number): boolean =>
  samples[k]! <= (samples[k - 1] ?? Number.POSITIVE_INFINITY) &&
  samples[k]! <= (samples[k + 1] ?? Number.POSITIVE_INFINITY);

interface TurnWindows {
  readonly sides: readonly Window[];
  readonly corners: readonly Window[];
}

type WindowsAt = (gap: number) => TurnWindows;

/** The valid rises of sides and corners for a gap; found once for each gap, since all counts ask for the same. */
const windowsByGap = (way: Way, field: Field, rules: SeatRules): WindowsAt => {
  const known = new Map<number, TurnWindows>();
  return (gap) => {
    // Where the gap is made to suit the bulge, the bulge rules nothing out.
    const made = rules.gap === 'auto';
    const key = made ? 0 : gap;
    let windows = known.get(key);
    if (!windows) {
      const bulge = made ? Number.POSITIVE_INFINITY : Math.max(0, (gap - NEIGHBOUR_ROOM) / 2);
      windows = {
        sides: windowsOf(way.shape, { room: rules.room, bulge, mirror: Math.PI / 2 }),
        corners: windowsOf(way.shape, { room: rules.room, bulge, mirror: field.mitre }),
      };
      known.set(key, windows);
    }
    return windows;
  };
};

/** Golden-section search for the least of a function with one valley between two places. */
const goldenLeast = (f: (x: number) => number, from: number, to: number): number => {
  const ratio = (Math.sqrt(5) - 1) / 2;
  let a = from;
  let b = to;
  let c = b - ratio * (b - a);
  let d = a + ratio * (b - a);
  let fc = f(c);
  let fd = f(d);
  for (let i = 0; i < GOLDEN_STEPS; i++) {
    if (fc < fd) {
      b = d;
      d = c;
      fd = fc;
      c = b - ratio * (b - a);
      fc = f(c);
    } else {
      a = c;
      c = d;
      fc = fd;
      d = a + ratio * (b - a);
      fd = f(d);
    }
  }
  return fc < fd ? c : d;
};

/** Brings a window's step to below the noise of a double. */
const GOLDEN_STEPS = 56;

const layTurn = (
  way: Way,
  field: Field,
  rules: SeatRules,
  repeats: readonly number[],
  gap: number,
  h: number,
): Result<Fit> => {
  const pose = crownPose(way.shape, h);
  if (!pose) return misses({ kind: 'too-short', by: h - way.shape.chord });
  const corner = checkCorner(way, pose, gap, field, rules);
  if (!corner.ok) return corner;
  const toCorner = h + sign(field) * pose.depth;
  const offset = toCorner + gap / 2;
  const sides: SideFit[] = [];
  for (let i = 0; i < repeats.length; i++) {
    const run = field.runs[i]!;
    const tried = seat(way, (run.length - 2 * offset) / repeats[i]!, { ...rules, gap });
    if (!tried.ok) return tried;
    sides.push({ run, repeats: repeats[i]!, seat: tried.value });
  }
  return fits({ way, sides, corner: { seat: corner.value, toCorner, offset } });
};

const checkCorner = (way: Way, pose: Pose, gap: number, field: Field, rules: SeatRules): Result<Seat> => {
  const { shape } = way;
  const wanted = gapFor(pose);
  if (wanted > gap + FIT_NOISE) return misses({ kind: 'bulges', by: wanted - gap, bulge: pose.bulge });
  if (!(pose.depth > FIT_NOISE)) return misses({ kind: 'dips', by: Math.max(FIT_NOISE, -pose.depth) });
  if (pose.dip > FIT_NOISE) return misses({ kind: 'dips', by: pose.dip });
  const toCorner = pose.halfSpan + sign(field) * pose.depth;
  if (toCorner < -FIT_NOISE) return misses({ kind: 'beyond-corner', by: -toCorner });
  const past = pastMirror(shape, pose, field.mitre);
  if (past > FIT_NOISE) return misses({ kind: 'past-centre', by: past });
  if (pose.top > rules.room + FIT_NOISE) return misses({ kind: 'too-deep', by: pose.top - rules.room });
  return fits({ way, shape, pose, gap });
};

/** With a fixed tilt all half swags are alike, corners too; what is left of each side is shared as its gaps. */
const turnsByTilt = (
  way: Way,
  tilt: number,
  field: Field,
  rules: SeatRules,
  counts: readonly Counts[],
): Tried => {
  const pose = tiltedPose(way.shape, tilt);
  const least = Math.max(rules.gap === 'auto' ? 0 : rules.gap, gapFor(pose));
  const missed: Miss[] = [];
  const miss = (repeats: number, misfit: Miss['misfit']): Tried => {
    missed.push({ way, run: field.runs[0]!, repeats, misfit });
    return { fits: [], misses: missed };
  };
  if (!(pose.halfSpan > 0)) return miss(1, { kind: 'past-centre', by: -pose.halfSpan });
  const corner = checkCorner(way, pose, least, field, rules);
  if (!corner.ok) return miss(1, corner.misfit);
  const sides: SideFit[] = [];
  const toCorner = pose.halfSpan + sign(field) * pose.depth;
  for (let i = 0; i < field.runs.length; i++) {
    const run = field.runs[i]!;
    const c = counts[i]!;
    // L = n(2h + g) + 2(toCorner + g/2): the most repeats that leave at least the least gap.
    const free = run.length - 2 * toCorner;
    const n =
      'exactly' in c ? c.exactly : Math.min(c.upTo, Math.floor((free - least) / (2 * pose.halfSpan + least)));
    const gap = (free - 2 * n * pose.halfSpan) / (n + 1);
    if (n < 1 || !(gap >= least - FIT_NOISE))
      return miss(Math.max(1, n), { kind: 'no-length', by: least - gap });
    if (gap >= 2 * pose.halfSpan) return miss(n, { kind: 'too-wide-gap', by: gap - 2 * pose.halfSpan });
    const tried = seat(way, 2 * pose.halfSpan + Math.max(0, gap), rules);
    if (!tried.ok) return miss(n, tried.misfit);
    sides.push({ run, repeats: n, seat: tried.value });
  }
  // The corner's own half gap differs from side to side; its offset is told for the first.
  return {
    fits: [
      { way, sides, corner: { seat: corner.value, toCorner, offset: toCorner + sides[0]!.seat.gap / 2 } },
    ],
    misses: missed,
  };
};
