/** Cubic Bézier curves as plain data: what is needed to turn them into arcs, and no more. */

import { add, cross, distance, type Point, polar, scale, subtract, turnBetween, unit } from './point.ts';

export interface Cubic {
  readonly p0: Point;
  readonly p1: Point;
  readonly p2: Point;
  readonly p3: Point;
}

const between = (a: Point, b: Point, t: number): Point => ({
  x: a.x + (b.x - a.x) * t,
  y: a.y + (b.y - a.y) * t,
});

/** The point at the parameter t (de Casteljau). */
export const cubicAt = ({ p0, p1, p2, p3 }: Cubic, t: number): Point => {
  const a = between(p0, p1, t);
  const b = between(p1, p2, t);
  const c = between(p2, p3, t);
  return between(between(a, b, t), between(b, c, t), t);
};

/**
 * The curve between two parameters as a cubic of its own (blossoming); t0 = 0 and t1 = 1 keep the end points.
 */
export const cubicStretch = (c: Cubic, t0: number, t1: number): Cubic => ({
  p0: t0 === 0 ? c.p0 : blossom(c, t0, t0, t0),
  p1: blossom(c, t0, t0, t1),
  p2: blossom(c, t0, t1, t1),
  p3: t1 === 1 ? c.p3 : blossom(c, t1, t1, t1),
});

const blossom = ({ p0, p1, p2, p3 }: Cubic, a: number, b: number, c: number): Point => {
  const q0 = between(p0, p1, a);
  const q1 = between(p1, p2, a);
  const q2 = between(p2, p3, a);
  return between(between(q0, q1, b), between(q1, q2, b), c);
};

/** The length of the control polygon (mm): the curve is never longer. */
export const hullLength = ({ p0, p1, p2, p3 }: Cubic): number =>
  distance(p0, p1) + distance(p1, p2) + distance(p2, p3);

/**
 * The directions at both ends (unit vectors). A handle without length hands over to the next control point,
 * which is the limit of the tangent there. Zero only when all four points are one.
 */
export const endDirections = (c: Cubic): { readonly start: Point; readonly end: Point } => {
  const least = hullLength(c) * NO_HANDLE;
  const firstLong = (...vs: Point[]): Point =>
    unit(vs.find((v) => Math.hypot(v.x, v.y) > least) ?? vs.at(-1)!);
  return {
    start: firstLong(subtract(c.p1, c.p0), subtract(c.p2, c.p0), subtract(c.p3, c.p0)),
    end: firstLong(subtract(c.p3, c.p2), subtract(c.p3, c.p1), subtract(c.p3, c.p0)),
  };
};

/**
 * A handle shorter than this share of the control polygon is rounding left over from a handle without length.
 */
const NO_HANDLE = 1e-10;

/** How far the control polygon turns in all (radians): without an inflection, the curve turns no farther. */
export const hullTurning = (c: Cubic): number => {
  const least = hullLength(c) * NO_HANDLE;
  let turning = 0;
  let last: Point | undefined;
  for (const v of [subtract(c.p1, c.p0), subtract(c.p2, c.p1), subtract(c.p3, c.p2)]) {
    if (!(Math.hypot(v.x, v.y) > least)) continue;
    if (last) turning += Math.abs(turnBetween(last, v));
    last = v;
  }
  return turning;
};

/** Real roots in the open interval (0, 1) of a·t² + b·t + c, in order. */
const rootsInside = (a: number, b: number, c: number): number[] => {
  const size = Math.max(Math.abs(a), Math.abs(b), Math.abs(c));
  if (!(size > 0)) return [];
  const inside = (t: number): boolean => t > 0 && t < 1;
  if (Math.abs(a) <= size * 1e-14) return [-c / b].filter(inside);
  // A double root that rounding lifts off the axis still counts: it is a cusp.
  const inner = Math.max(b * b - 4 * a * c, 0);
  if (b * b - 4 * a * c < -size * size * 1e-9) return [];
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(inner)) / 2;
  return [q / a, q === 0 ? 0 : c / q].filter(inside).sort((u, v) => u - v);
};

/**
 * Parameters inside the curve where it bends neither way: inflections, and cusps, where the two inflections
 * of a nearly cusped curve fall together. They are the zeros of B′ × B″, a quadratic for a cubic curve
 * (Stone and DeRose, "A geometric characterization of parametric cubic curves", ACM Transactions on
 * Graphics 8(3), 1989).
 */
export const inflections = ({ p0, p1, p2, p3 }: Cubic): number[] => {
  const a = subtract(p1, p0);
  const b = add(subtract(p2, scale(p1, 2)), p0);
  const c = add(subtract(p3, p0), scale(subtract(p1, p2), 3));
  // B′/3 = a + 2bt + ct², B″/6 = b + ct
  return rootsInside(cross(b, c), cross(a, c), cross(a, b));
};

/**
 * Parameters inside the curve where it turns back along a direction: the extremes of its shadow on a line.
 */
export const extremesAlong = ({ p0, p1, p2, p3 }: Cubic, along: Point): number[] => {
  const at = (p: Point): number => p.x * along.x + p.y * along.y;
  const [d0, d1, d2] = [at(p1) - at(p0), at(p2) - at(p1), at(p3) - at(p2)];
  return rootsInside(d0 - 2 * d1 + d2, 2 * (d1 - d0), d0);
};

/**
 * A circular or elliptical arc as cubics, given by its half axes (mm), the turn of its first axis, and the
 * eccentric angles where it starts and by how much it sweeps. The cubic of a sweep s leaves a circle of
 * radius r by about r · 2.7e-4 · (s / 90°)⁶, the sixth order law of the handle 4/3·tan(s/4); the parts are
 * made small enough for `tolerance` (mm).
 */
export const ellipseCubics = (
  center: Point,
  radii: readonly [number, number],
  tilt: number,
  start: number,
  sweep: number,
  tolerance: number,
): Cubic[] => {
  const largest = Math.max(radii[0], radii[1]);
  const step = Math.min(1, (tolerance / largest / QUARTER_ERROR) ** (1 / 6) || 0) * (Math.PI / 2);
  const count = Math.min(MOST_ARC_CUBICS, Math.max(1, Math.ceil(Math.abs(sweep) / step)));
  const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
  const place = (u: number, v: number): Point => ({
    x: c * u * radii[0] - s * v * radii[1],
    y: s * u * radii[0] + c * v * radii[1],
  });
  const cubics: Cubic[] = [];
  const handle = (4 / 3) * Math.tan(sweep / count / 4);
  for (let i = 0; i < count; i++) {
    const a = polar(start + (sweep * i) / count);
    const b = polar(start + (sweep * (i + 1)) / count);
    const p0 = add(center, place(a.x, a.y));
    const p3 = add(center, place(b.x, b.y));
    cubics.push({
      p0,
      p1: add(p0, scale(place(-a.y, a.x), handle)),
      p2: subtract(p3, scale(place(-b.y, b.x), handle)),
      p3,
    });
  }
  return cubics;
};

/** The largest radial error of the best-known cubic for a quarter circle, as a share of the radius. */
const QUARTER_ERROR = 2.7253e-4;

/** An arc becomes no more cubics than this, whatever the tolerance: at 256 the error is below 1e-15 r. */
const MOST_ARC_CUBICS = 256;
