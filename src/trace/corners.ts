/**
 * The corners of an outline that was seen through pixels, which round every corner off. Where the ways before and
 * after a place, each followed by a parabola that keeps clear of the place, arrive there in different directions,
 * there is a corner; and it stands where the two parabolas cross.
 */

import { chordLengths, cross, dot, norm, type Point, subtract } from '../geometry/index.ts';

export interface Corner {
  /** Along the ring from its first point, mm. */
  readonly at: number;
  readonly point: Point;
  /** Radians, positive to the left. */
  readonly turn: number;
  /** How far on either side of it the outline cannot be believed, mm. */
  readonly gap: number;
}

export interface CornerOptions {
  /** How far on either side of a corner the outline cannot be believed, mm. */
  readonly gap: number;
  /** How far points may lie off a fair curve by noise, mm. */
  readonly noise: number;
  /** The steps that the outline goes in (mm): a pixel of line art, which shows no greys between; 0 otherwise. */
  readonly steps: number;
}

/** A ring of points in mm, closed without its first point again at the end. */
export interface Ring {
  readonly points: readonly Point[];
  /** The running length at each point, and of the whole at the end. */
  readonly lengths: readonly number[];
}

export const ringOf = (points: readonly Point[]): Ring => ({
  points,
  lengths: chordLengths([...points, points[0]!]),
});

export const ringLength = (ring: Ring): number => ring.lengths.at(-1)!;

/** The least turn that is told from noise and from a tight curve (radians). */
const LEAST_TURN = (15 * Math.PI) / 180;
/**
 * A straight side is known better than a curve, so that a smaller turn is told where one ends: a little less than
 * what counts as a corner, for noise.
 */
const LEAST_TURN_OF_FLAT = (9 * Math.PI) / 180;
/** How much of an outline is straight (mm), the longest first, to be a side. */
const FLATS = [12, 7];
/** A shorter side tells less, and no smaller turn; but a line reaches over the gap better than a parabola does. */
const SHORT_FLATS = [5];
const FLAT_ROOM = 2;
/** Places looked at, apart (mm). */
const STEP = 0.15;
/** How much of the outline on either side is followed (mm): as much as is fair, the longest first. */
const ARMS = [3, 2, 1.2, 0.8];
/** An outline that goes in steps is known by many of them: arms are longer where steps are coarser than these (mm). */
const USUAL_STEPS = 0.06;
/** Corners are at least this far apart, mm, in gaps and in steps: nearer to a corner an arm may reach over it. */
const APART = 1.2;
const APART_GAPS = 3;
const APART_STEPS = 24;

/** `room` is how many times as far apart as usual the same corner may be seen from two places. */
export const findCorners = (ring: Ring, options: CornerOptions, room = 1): readonly Corner[] => {
  const whole = ringLength(ring);
  const count = Math.ceil(whole / STEP);
  const step = whole / count;
  const noise = Math.min(options.noise, Math.max(usualNoise(ring), STEP_NOISE * options.steps));
  const longer = Math.max(1, options.steps / USUAL_STEPS);
  // A side so long averages its noise out.
  const flatNoise = Math.min(options.noise, FLAT_ROOM * noise);
  const curved = (at: number, side: 1 | -1): Arm | undefined =>
    flatArm(ring, at, side, options.gap, flatNoise, SHORT_FLATS) ??
    armAt(ring, at, side, options.gap, noise, longer);
  const found: Corner[] = [];
  const meeting = (place: number, before: Arm | undefined, after: Arm | undefined, least: number): void => {
    if (!before || !after) return;
    // The parabolas of a true corner cross near it, as far off as pixels and a pen round it at most.
    const met = crossing(before, after);
    if (!met || !(Math.max(Math.abs(met.before), Math.abs(met.after)) <= 2 * options.gap)) return;
    const ahead = (met.before + met.after) / 2;
    // Farther from the corner than the gap, one of the arms lies over it and tells nothing.
    if (!(Math.abs(ahead) <= options.gap)) return;
    const turn =
      least < LEAST_TURN ? turnOf(before, met.before, after, met.after) : turnOf(before, 0, after, 0);
    if (!(Math.abs(turn) >= least)) return;
    const at = place + ahead;
    found.push({ at: ((at % whole) + whole) % whole, point: met.point, turn, gap: options.gap });
  };
  for (let i = 0; i < count; i++) {
    const at = i * step;
    const flatBefore = flatArm(ring, at, -1, options.gap, flatNoise, FLATS);
    const flatAfter = flatArm(ring, at, 1, options.gap, flatNoise, FLATS);
    const before = flatBefore ?? curved(at, -1);
    const after = flatAfter ?? curved(at, 1);
    if (!before || !after) continue;
    if (Math.abs(turnOf(before, 0, after, 0)) >= LEAST_TURN) meeting(at, before, after, LEAST_TURN);
    else if (flatBefore || flatAfter) meeting(at, before, after, LEAST_TURN_OF_FLAT);
  }
  const same = room * Math.max(SAME, SAME_STEPS * options.steps);
  const best: Corner[] = [];
  // A corner is seen alike from every place within the gap of it. An arm that just reaches over it points
  // somewhere else from each place, so the corner is where most of them agree.
  const agreed = found.map((corner) => ({
    corner,
    votes: found.filter((f) => agree(f, corner, same)).length,
  }));
  // From half of the places within the gap on either side, at least.
  const enough = Math.max(2, options.gap / STEP);
  const apart = Math.max(APART, APART_GAPS * options.gap, APART_STEPS * options.steps);
  for (const { corner: c, votes } of agreed.sort((a, b) => b.votes - a.votes)) {
    if (!(votes >= enough)) break;
    const near = best.some((b) => {
      const d = Math.abs(b.at - c.at);
      return Math.min(d, whole - d) < apart;
    });
    if (!near) best.push(c);
  }
  return best.sort((a, b) => a.at - b.at);
};

/**
 * A corner so sharp that more than the gap is lost of it, near a place where no outline without it serves: seen from
 * farther away. What rounds a corner off, a pen or a lens, reaches the farther along it the sharper it is.
 */
export const sharpCornerNear = (
  ring: Ring,
  place: Point,
  options: CornerOptions,
  others: readonly Corner[],
): Corner | undefined => {
  for (const wider of WIDER) {
    const gap = wider * options.gap;
    const far = (p: Point): number => Math.hypot(p.x - place.x, p.y - place.y);
    const sharp = findCorners(ring, { ...options, gap }, SHARP_ROOM)
      .filter(({ turn, point }) => Math.abs(turn) >= SHARP && far(point) <= 2 * gap)
      .filter(({ point: p }) => others.every((o) => Math.hypot(p.x - o.point.x, p.y - o.point.y) > 2 * gap))
      .sort((a, b) => far(a.point) - far(b.point));
    if (sharp[0]) return sharp[0];
  }
  return undefined;
};

/** Times the gap. */
const WIDER = [1.5, 2, 2.5];
/** What turns by less (radians) may be a tight curve, which a wide gap would cut off. */
const SHARP = (90 * Math.PI) / 180;
/** Two sides that are a little off cross twice as far off where they make 60° (one over the sine of half of it). */
const SHARP_ROOM = 2;

/** Places nearer than this (mm, and in steps) are the same corner, seen from two places. */
const SAME = 0.12;
const SAME_STEPS = 0.8;

const agree = (a: Corner, b: Corner, same: number): boolean =>
  Math.hypot(a.point.x - b.point.x, a.point.y - b.point.y) <= same;

/** A parabola a + b·t + c·t² with t the length (mm) from the place, in both coordinates. */
interface Arm {
  readonly a: Point;
  readonly b: Point;
  readonly c: Point;
}

const velocity = ({ b, c }: Arm, t: number): Point => ({ x: b.x + 2 * c.x * t, y: b.y + 2 * c.y * t });
const placeOn = ({ a, b, c }: Arm, t: number): Point => ({
  x: a.x + t * (b.x + t * c.x),
  y: a.y + t * (b.y + t * c.y),
});

const turnOf = (before: Arm, s: number, after: Arm, t: number): number => {
  const [a, b] = [velocity(before, s), velocity(after, t)];
  return Math.atan2(cross(a, b), dot(a, b));
};

/**
 * What keeps points off fair parabolas on most of the ring (mm), with room for the places where the light was poor. An arm that is off
 * by more has a corner on it, or bends more than a parabola does.
 */
const usualNoise = (ring: Ring): number => {
  const whole = ringLength(ring);
  const errors: number[] = [];
  for (let i = 0; i < NOISE_PROBES; i++) {
    const fitted = parabola(ring, (i * whole) / NOISE_PROBES, 0, ARMS[1]!);
    if (fitted) errors.push(fitted.error);
  }
  errors.sort((a, b) => a - b);
  return NOISE_ROOM * (errors[errors.length >> 1] ?? 0) + LEAST_NOISE;
};

const NOISE_PROBES = 400;
const NOISE_ROOM = 3.5;
/** What goes in steps is off by √(1/12) of them, and where it runs along the rows of pixels by more. */
const STEP_NOISE = 0.4;
/** mm: rounding of greys to whole numbers alone moves an outline by this. */
const LEAST_NOISE = 0.003;

const armAt = (
  ring: Ring,
  at: number,
  side: 1 | -1,
  gap: number,
  noise: number,
  longer: number,
): Arm | undefined => {
  for (const arm of ARMS) {
    const reach = arm * longer;
    const near = side * gap;
    const far = side * (gap + reach);
    const fitted = parabola(ring, at, Math.min(near, far), Math.max(near, far));
    if (fitted && fitted.error <= noise) return fitted.arm;
  }
  return undefined;
};

/** A straight side up to the gap before or after a place: a parabola that hardly bends is one. */
const flatArm = (
  ring: Ring,
  at: number,
  side: 1 | -1,
  gap: number,
  noise: number,
  flats: readonly number[],
): Arm | undefined => {
  for (const reach of flats) {
    const [near, far] = [side * gap, side * (gap + reach)];
    const fitted = parabola(ring, at, Math.min(near, far), Math.max(near, far));
    if (!fitted || !(fitted.error <= noise)) continue;
    const [from, to] = [placeOn(fitted.arm, near), placeOn(fitted.arm, far)];
    const b = { x: (to.x - from.x) / (far - near), y: (to.y - from.y) / (far - near) };
    // The sagitta of a parabola, and the chord laid through its thirds.
    const bow = (norm(fitted.arm.c) * reach * reach) / 4;
    if (!(bow <= Math.max(STRAIGHT, noise))) continue;
    const middle = placeOn(fitted.arm, (near + far) / 2);
    const a = {
      x: (from.x + to.x + middle.x) / 3 - (b.x * (near + far)) / 2,
      y: (from.y + to.y + middle.y) / 3 - (b.y * (near + far)) / 2,
    };
    return { a: { x: a.x, y: a.y }, b, c: { x: 0, y: 0 } };
  }
  return undefined;
};

/** The bow of a straight side that pixels and a lens may feign, mm. */
const STRAIGHT = 0.03;

/** The parabola of least squares through the ring's points between two lengths, and their mean distance from it. */
const parabola = (
  ring: Ring,
  at: number,
  from: number,
  to: number,
): { readonly arm: Arm; readonly error: number } | undefined => {
  const whole = ringLength(ring);
  const { points, lengths } = ring;
  const count = points.length;
  const start = at + from;
  const offset = Math.floor(start / whole) * whole;
  let i = firstAtOrAfter(lengths, start - offset);
  let turns = offset;
  // Sums about the middle of the stretch, scaled to its half length: the equations are then well set.
  const middle = (from + to) / 2;
  const half = (to - from) / 2;
  let n = 0;
  const s = [0, 0, 0, 0, 0];
  const x = [0, 0, 0];
  const y = [0, 0, 0];
  const used: { u: number; p: Point }[] = [];
  for (let k = 0; k <= count; k++) {
    if (i >= count) {
      i = 0;
      turns += whole;
    }
    const t = lengths[i]! + turns - at;
    if (t > to) break;
    const u = (t - middle) / half;
    const p = points[i]!;
    let power = 1;
    for (let e = 0; e < 5; e++) {
      s[e]! += power;
      if (e < 3) {
        x[e]! += power * p.x;
        y[e]! += power * p.y;
      }
      power *= u;
    }
    used.push({ u, p });
    n++;
    i++;
  }
  if (n < LEAST_POINTS) return undefined;
  const [s0, s1, s2, s3, s4] = s as [number, number, number, number, number];
  const det = s0 * (s2 * s4 - s3 * s3) - s1 * (s1 * s4 - s2 * s3) + s2 * (s1 * s3 - s2 * s2);
  if (!(Math.abs(det) > 1e-9)) return undefined;
  const solve = (r: readonly number[]): [number, number, number] => {
    const [r0, r1, r2] = r as [number, number, number];
    return [
      (r0 * (s2 * s4 - s3 * s3) + r1 * (s2 * s3 - s1 * s4) + r2 * (s1 * s3 - s2 * s2)) / det,
      (r0 * (s2 * s3 - s1 * s4) + r1 * (s0 * s4 - s2 * s2) + r2 * (s1 * s2 - s0 * s3)) / det,
      (r0 * (s1 * s3 - s2 * s2) + r1 * (s1 * s2 - s0 * s3) + r2 * (s0 * s2 - s1 * s1)) / det,
    ];
  };
  const cx = solve(x);
  const cy = solve(y);
  let sum = 0;
  for (const { u, p } of used) {
    const dx = p.x - (cx[0] + u * (cx[1] + u * cx[2]));
    const dy = p.y - (cy[0] + u * (cy[1] + u * cy[2]));
    sum += dx * dx + dy * dy;
  }
  const inT = ([k0, k1, k2]: [number, number, number]): [number, number, number] => {
    const m = -middle / half;
    return [k0 + k1 * m + k2 * m * m, (k1 + 2 * k2 * m) / half, k2 / (half * half)];
  };
  const [ax, bx, kx] = inT(cx);
  const [ay, by, ky] = inT(cy);
  const arm = { a: { x: ax, y: ay }, b: { x: bx, y: by }, c: { x: kx, y: ky } };
  return { arm, error: Math.sqrt(sum / n) };
};

/** Three points make a parabola; these leave room to see whether it fits. */
const LEAST_POINTS = 6;

const firstAtOrAfter = (lengths: readonly number[], at: number): number => {
  let low = 0;
  let high = lengths.length - 1;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (lengths[mid]! < at) low = mid + 1;
    else high = mid;
  }
  return low;
};

/** Where two parabolas cross, by Newton's method from the place between them. */
const crossing = (
  before: Arm,
  after: Arm,
): { readonly point: Point; readonly before: number; readonly after: number } | undefined => {
  let s = 0;
  let t = 0;
  for (let i = 0; i < MOST_STEPS; i++) {
    const gap = subtract(placeOn(after, t), placeOn(before, s));
    const u = velocity(before, s);
    const v = velocity(after, t);
    const det = cross(u, v);
    if (!(Math.abs(det) > LEAST_CROSS)) return undefined;
    const ds = cross(gap, v) / det;
    const dt = cross(gap, u) / det;
    s += ds;
    t += dt;
    if (!(Math.abs(s) < FARTHEST && Math.abs(t) < FARTHEST)) return undefined;
    if (norm({ x: ds, y: dt }) < 1e-9) {
      const [p, q] = [placeOn(before, s), placeOn(after, t)];
      return { point: { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }, before: s, after: t };
    }
  }
  return undefined;
};

const MOST_STEPS = 20;
const LEAST_CROSS = 0.1;
/** mm */
const FARTHEST = 5;
