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
  let swept = (angleOf(subtract(at, p.center)) - p.start) * Math.sign(p.sweep);
  swept -= Math.floor(swept / TURN) * TURN;
  const noise = slack / p.radius;
  if (swept > size + noise && TURN - swept <= noise) swept -= TURN;
  return within(swept / size, noise / size);
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

const lineCircle = (l: Line, c: Arc, slack: number, out: Point[]): void => {
  const along = subtract(l.to, l.from);
  const length = norm(along);
  if (!(length > 0)) return;
  const u = scale(along, 1 / length);
  const foot = add(l.from, scale(u, dot(subtract(c.center, l.from), u)));
  const off = distance(foot, c.center);
  if (!(off <= c.radius + slack)) return;
  const half = Math.sqrt(Math.max(0, (c.radius - off) * (c.radius + off)));
  out.push(add(foot, scale(u, half)), add(foot, scale(u, -half)));
  if (half < TANGENT_HALF * c.radius) out.push(foot);
};

const circleCircle = (a: Arc, b: Arc, slack: number, out: Point[]): void => {
  const between = subtract(b.center, a.center);
  const d = norm(between);
  const apart = Math.abs(a.radius - b.radius);
  if (d <= slack && apart <= slack) {
    out.push(b.from, b.to, a.from, a.to);
    return;
  }
  if (!(d <= a.radius + b.radius + slack && d >= apart - slack && d > 0)) return;
  const u = scale(between, 1 / d);
  // (d² + ra² − rb²)/(2d), written so that nearly equal radii do not cancel.
  const along = (d + ((a.radius - b.radius) * (a.radius + b.radius)) / d) / 2;
  const half = Math.sqrt(Math.max(0, (a.radius - along) * (a.radius + along)));
  const foot = add(a.center, scale(u, along));
  const side = leftOf(u);
  out.push(add(foot, scale(side, half)), add(foot, scale(side, -half)));
  if (half < TANGENT_HALF * Math.min(a.radius, b.radius)) {
    out.push(add(a.center, scale(u, Math.sign(along) * a.radius)));
    // Two circles this close to tangent run along one another for a while; arcs that end there meet at their ends.
    for (const p of [b.from, b.to]) if (Math.abs(distance(p, a.center) - a.radius) <= slack) out.push(p);
    for (const p of [a.from, a.to]) if (Math.abs(distance(p, b.center) - b.radius) <= slack) out.push(p);
  }
};

/** Half chords below this share of the radius are where the two crossings of a near tangency lose their digits. */
const TANGENT_HALF = 1e-4;
