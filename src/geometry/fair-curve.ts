/**
 * A fair curve through points that were measured or seen, and are a little off: the curve c that makes
 *
 *   Σ wᵢ |c(tᵢ) − pᵢ|² + Λ⁶ ∫ |c‴|² dt
 *
 * least, with t the length along the points and wᵢ the share of it that a point stands for. The third
 * derivative is the change of curvature along the way, which is what an eye calls unfair; lines and circles have
 * next to none of it. Λ (mm) is the fairness: waves shorter than about 2πΛ are smoothed away, and a circle of
 * radius r comes out too small by r·(Λ/r)⁶.
 *
 * Methods: penalised least squares on an even grid (Whittaker, "On a new method of graduation", Proc. Edinb.
 * Math. Soc. 41, 1923; Eilers, "A perfect smoother", Analytical Chemistry 75, 2003; of the third order, as
 * Moreton and Séquin's curves of least variation, SIGGRAPH 1992). Between grid points the curve is Catmull and
 * Rom's. The equations have a band of seven and are solved by Cholesky's method.
 *
 * Requires two or more points, none on top of the one before. The ends may be held. No points, or one, give none.
 */

import { distance, type Point } from './point.ts';

export interface FairOptions {
  /** mm between points of the result. */
  readonly step: number;
  /** Λ, mm. */
  readonly fairness: number;
  /** Whether the curve goes through the first and the last point exactly (but for rounding). */
  readonly heldEnds: boolean;
  /** Where along the curve each point lies, mm; the lengths of the chords between them unless given. */
  readonly lengths?: readonly number[];
}

/** More grid points than this (1 m of template in steps of 0.2 mm is 5000) are refused. */
const MOST_NODES = 40_000;

/** How much more a held end weighs than any other point: it then moves by less than a millionth of the misfit. */
const HELD = 1e7;

/** Points of the curve, evenly spaced, the first and last at the ends. Throws a RangeError for a step too small. */
export const fairCurve = (points: readonly Point[], options: FairOptions): Point[] => {
  const { step, fairness, heldEnds } = options;
  if (points.length < 2) return [];
  const lengths = options.lengths ?? chordLengths(points);
  const whole = lengths.at(-1)!;
  if (!(whole > 0 && step > 0)) throw new RangeError('A fair curve needs points apart, and a step above 0.');
  const count = Math.max(LEAST_NODES, Math.ceil(whole / step)) + 1;
  if (!(count <= MOST_NODES)) throw new RangeError('The step is too small for a curve of this length.');
  const h = whole / (count - 1);
  const band = new Float64Array(count * BAND);
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  addData(points, lengths, h, heldEnds, { band, x, y, count });
  addFairness(fairness ** 6 / h ** 5, band, count);
  solve(band, count, [x, y]);
  const curve = Array.from({ length: count }, (_, i): Point => ({ x: x[i]!, y: y[i]! }));
  if (heldEnds) {
    curve[0] = points[0]!;
    curve[count - 1] = points.at(-1)!;
  }
  return curve;
};

/** Fewer grid points cannot carry a third difference and an interpolation at both ends. */
const LEAST_NODES = 5;

/** Running lengths of the chords, from 0 at the first point (mm). */
export const chordLengths = (points: readonly Point[]): number[] => {
  let at = 0;
  return points.map((p, i) => {
    if (i > 0) at += distance(points[i - 1]!, p);
    return at;
  });
};

/** Each row of the matrix holds the diagonal and the three entries right of it. */
const BAND = 4;

interface Equations {
  readonly band: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly count: number;
}

const addData = (
  points: readonly Point[],
  lengths: readonly number[],
  h: number,
  heldEnds: boolean,
  { band, x, y, count }: Equations,
): void => {
  const last = points.length - 1;
  for (let i = 0; i <= last; i++) {
    const t = lengths[i]! / h;
    const before = i > 0 ? lengths[i]! - lengths[i - 1]! : 0;
    const after = i < last ? lengths[i + 1]! - lengths[i]! : 0;
    const isHeld = heldEnds && (i === 0 || i === last);
    const w = ((before + after) / 2) * (isHeld ? HELD : 1);
    const { first, weights } = catmullRom(t, count);
    for (let a = 0; a < 4; a++) {
      const wa = w * weights[a]!;
      if (wa === 0) continue;
      x[first + a]! += wa * points[i]!.x;
      y[first + a]! += wa * points[i]!.y;
      for (let b = a; b < 4; b++) band[(first + a) * BAND + b - a]! += wa * weights[b]!;
    }
  }
};

/** The four grid points that a place between two of them hangs on, and how much on each. */
const catmullRom = (t: number, count: number): { first: number; weights: readonly number[] } => {
  const cell = Math.min(count - 2, Math.max(0, Math.floor(t)));
  const u = t - cell;
  const inner = [
    (-u + 2 * u * u - u * u * u) / 2,
    (2 - 5 * u * u + 3 * u * u * u) / 2,
    (u + 4 * u * u - 3 * u * u * u) / 2,
    (u * u * u - u * u) / 2,
  ];
  if (cell > 0 && cell < count - 2) return { first: cell - 1, weights: inner };
  // At the ends the missing neighbour is the one that goes on evenly: p₋₁ = 3p₀ − 3p₁ + p₂.
  const [a, b, c, d] = inner as [number, number, number, number];
  if (cell === 0) return { first: 0, weights: [b + 3 * a, c - 3 * a, d + a, 0] };
  return { first: count - 4, weights: [0, a + d, b - 3 * d, c + 3 * d] };
};

/** The third difference −1 3 −3 1, squared. */
const addFairness = (weight: number, band: Float64Array, count: number): void => {
  const difference = [-1, 3, -3, 1];
  for (let i = 0; i + 3 < count; i++)
    for (let a = 0; a < 4; a++)
      for (let b = a; b < 4; b++) band[(i + a) * BAND + b - a]! += weight * difference[a]! * difference[b]!;
};

/** LDLᵀ of a banded matrix in place, and the solutions in place of the right sides. */
const solve = (band: Float64Array, count: number, sides: readonly Float64Array[]): void => {
  for (let i = 0; i < count; i++) {
    // A grid point that nothing holds cannot come about with three differences and data at both ends.
    const d = Math.max(band[i * BAND]!, Number.MIN_VALUE);
    for (let a = 1; a < BAND && i + a < count; a++) {
      const l = band[i * BAND + a]! / d;
      for (let b = a; b < BAND && i + b < count; b++)
        band[(i + a) * BAND + b - a]! -= l * band[i * BAND + b]!;
      for (const s of sides) s[i + a]! -= l * s[i]!;
      band[i * BAND + a] = l;
    }
  }
  for (const s of sides) {
    for (let i = count - 1; i >= 0; i--) {
      s[i]! /= Math.max(band[i * BAND]!, Number.MIN_VALUE);
      for (let a = 1; a < BAND && i + a < count; a++) s[i]! -= band[i * BAND + a]! * s[i + a]!;
    }
  }
};
