/**
 * Where two pieces meet, in closed form.
 *
 * Method: line–line by Cramer's rule, line–circle and circle–circle by the foot of the perpendicular, each
 * result kept only where it lies on both pieces. Touching counts as meeting: pieces that are tangent within
 * `slack` give the point of contact, and pieces that lie on one another give the ends of their common
 * stretch. Callers cut at these points, and a cut too many does no harm where one too few would.
 */

import type { Arc, Line, Piece } from './piece.ts';
import {
  add,
  angleOf,
  cross,
  distance,
  dot,
  leftOf,
  norm,
  type Point,
  scale,
  subtract,
  TURN,
} from './point.ts';

export interface Crossing {
  readonly point: Point;
  /** Share of the first piece's length, in [0, 1]. */
  readonly a: number;
  /** Share of the second piece's length, in [0, 1]. */
  readonly b: number;
}

/** Pieces nearer than this (mm) touch: a hundred times the rounding noise of coordinates of a few metres. */
export const TOUCH = 1e-9;

/** All meetings of two pieces, in no particular order. `slack` is absolute, in mm. */
export const crossings = (a: Piece, b: Piece, slack = TOUCH): Crossing[] => {
  const points: Point[] = [];
  if (a.kind === 'line') {
    if (b.kind === 'line') lineLine(a, b, slack, points);
    else lineCircle(a, b, slack, points);
  } else if (b.kind === 'line') lineCircle(b, a, slack, points);
  else circleCircle(a, b, slack, points);

  const found: Crossing[] = [];
  for (const point of points) {
    const onA = shareOf(a, point, slack);
    if (onA === undefined) continue;
    const onB = shareOf(b, point, slack);
    if (onB === undefined) continue;
    if (found.some((c) => distance(c.point, point) <= slack)) continue;
    found.push({ point, a: onA, b: onB });
  }
  return found;
};

/** The share of a piece's length at which a point of its line or circle lies; undefined beyond its ends. */
export const shareOf = (p: Piece, at: Point, slack = TOUCH): number | undefined => {
  if (p.kind === 'line') {
    const along = subtract(p.to, p.from);
    const square = dot(along, along);
    if (!(square > 0)) return distance(p.from, at) <= slack ? 0 : undefined;
    return within(dot(subtract(at, p.from), along) / square, slack / Math.sqrt(square));
  }
  const size = Math.abs(p.sweep);
  if (!(size > 0 && p.radius > 0)) return distance(p.from, at) <= slack ? 0 : undefined;
  const noise = slack / p.radius;
  if (size < SHORT_SWEEP) return within(sweptByChord(p, at) / size, noise / size);
  let swept = (angleOf(subtract(at, p.center)) - p.start) * Math.sign(p.sweep);
  swept -= Math.floor(swept / TURN) * TURN;
  if (swept > size + noise && TURN - swept <= noise) swept -= TURN;
  return within(swept / size, noise / size);
};

/**
 * Arcs that turn less than this (radians) measure along themselves by chords from their start: the angle at a
 * centre far away has too few digits left.
 */
const SHORT_SWEEP = 0.5;

/** The turn, in the arc's own sense and in [−π, π], from its start to another point of its circle. */
const sweptByChord = (p: Arc, at: Point): number => {
  const x = at.x - p.from.x;
  const y = at.y - p.from.y;
  const swept = 2 * Math.asin(Math.min(1, Math.sqrt(x * x + y * y) / (2 * p.radius)));
  const forward = (y * Math.cos(p.start) - x * Math.sin(p.start)) * Math.sign(p.sweep);
  return forward < 0 ? -swept : swept;
};

const within = (share: number, slack: number): number | undefined =>
  share >= -slack && share <= 1 + slack ? Math.min(1, Math.max(0, share)) : undefined;

const lineLine = (a: Line, b: Line, slack: number, out: Point[]): void => {
  const u = subtract(a.to, a.from);
  const v = subtract(b.to, b.from);
  const w = subtract(b.from, a.from);
  const det = cross(u, v);
  const lengths = norm(u) * norm(v);
  if (Math.abs(det) > PARALLEL * lengths) {
    out.push(add(a.from, scale(u, cross(w, v) / det)));
  }
  // Nearly parallel lines may also run along one another: then their ends are where they meet.
  if (!(Math.abs(det) > NEARLY_PARALLEL * lengths)) {
    for (const p of [b.from, b.to]) if (offLine(a, p) <= slack) out.push(p);
    for (const p of [a.from, a.to]) if (offLine(b, p) <= slack) out.push(p);
  }
};

/** Sines below which lines have no crossing worth computing, or may also overlap within the slack. */
const PARALLEL = 1e-13;
const NEARLY_PARALLEL = 1e-7;

const offLine = (l: Line, p: Point): number => {
  const along = subtract(l.to, l.from);
  const length = norm(along);
  return length > 0 ? Math.abs(cross(along, subtract(p, l.from))) / length : distance(l.from, p);
};

/** Whether a point lies on an arc's circle, within the slack; measured from the arc's start (see `power`). */
const isOnCircle = (c: Arc, p: Point, slack: number): boolean =>
  Math.abs(power(c, p)) <= slack * (2 * c.radius + slack);

/**
 * The power of a point, |p − centre|² − r², as |q|² − 2q·w with q = p − start and w = centre − start. The
 * centre of a nearly straight arc may be kilometres away; so written, nothing of its size is ever subtracted.
 */
const power = (c: Arc, p: Point): number => {
  const x = p.x - c.from.x;
  const y = p.y - c.from.y;
  return x * (x - 2 * (c.center.x - c.from.x)) + y * (y - 2 * (c.center.y - c.from.y));
};

const lineCircle = (l: Line, c: Arc, slack: number, out: Point[]): void => {
  const along = subtract(l.to, l.from);
  const length = norm(along);
  if (length > 0) rayCircle(l.from, scale(along, 1 / length), c, slack, out);
};

/**
 * Where the endless line through `at` along the unit vector u meets a circle: at the parameters −b ± h, with
 * −b the foot of the perpendicular and h half the chord. True when it is close to a tangent.
 */
const rayCircle = (at: Point, u: Point, c: Arc, slack: number, out: Point[]): boolean => {
  const w = subtract(c.center, c.from);
  const q = subtract(at, c.from);
  const beside = cross(u, w);
  const side = beside < 0 ? -1 : 1;
  // r − |distance to the centre|, with r − |u×w| as (u·w)²/(r + |u×w|), so that large radii do not cancel.
  const uw = dot(u, w);
  const inside = (uw * uw) / (c.radius + side * beside) + side * cross(u, q);
  // On the other side of the centre it is this that says how far inside the circle the line runs.
  const beyond = 2 * c.radius - inside;
  if (!(inside >= -slack && beyond >= -slack)) return false;
  const half = Math.sqrt(Math.max(0, inside * beyond));
  const b = dot(u, q) - uw;
  const far = b > 0 ? -b - half : -b + half;
  let near = b > 0 ? -b + half : -b - half;
  // The product of the two parameters is the power of `at`: it gives the one that would cancel.
  if (Math.abs(near) < CANCELS * Math.abs(far)) near = power(c, at) / far;
  out.push(add(at, scale(u, near)), add(at, scale(u, far)));
  const tangent = half < TANGENT_HALF * c.radius;
  if (tangent) out.push(add(at, scale(u, -b)));
  return tangent;
};

/** A root smaller than this share of the other has lost three digits or more to cancellation. */
const CANCELS = 1e-3;

const circleCircle = (a: Arc, b: Arc, slack: number, out: Point[]): void => {
  const between = subtract(b.center, a.center);
  const d = norm(between);
  const apart = Math.abs(a.radius - b.radius);
  if (d <= slack && apart <= slack) {
    out.push(b.from, b.to, a.from, a.to);
    return;
  }
  if (!(d <= a.radius + b.radius + slack && d >= apart - slack && d > 0)) {
    // Centres kilometres apart are not known to within the slack.
    if (!(a.radius + b.radius > FAR_CENTRE && d > 0)) return;
  }
  // The crossings lie on the radical line, on which both circles have the same power. The smaller circle has
  // the power 0 at its own start, so the line is the larger one's power there away from it.
  const [small, large] = a.radius <= b.radius ? [a, b] : [b, a];
  const u = scale(subtract(large.center, small.center), 1 / d);
  const at = add(small.from, scale(u, power(large, small.from) / (2 * d)));
  // A gap between the circles moves the radical line by more than itself: by the larger radius over d.
  const found: Point[] = [];
  const tangent = rayCircle(at, leftOf(u), small, slack * (1 + large.radius / d), found);
  out.push(...found);
  if (tangent) {
    // Two circles this close to tangent run along one another for a while; arcs that end there meet at their ends.
    for (const p of [b.from, b.to]) if (isOnCircle(a, p, slack)) out.push(p);
    for (const p of [a.from, a.to]) if (isOnCircle(b, p, slack)) out.push(p);
  }
};

/** Radii (mm) beyond which rounding at the centre comes near to `TOUCH`. */
const FAR_CENTRE = 1e5;

/** Half chords below this share of the radius are where the two crossings of a near tangency lose their digits. */
const TANGENT_HALF = 1e-4;
