/**
 * Where two pieces meet, in closed form.
 *
 * Method: line–line by Cramer's rule, line–circle and circle–circle by the foot of the perpendicular, each
 * result kept only where it lies on both pieces. Touching counts as meeting: pieces that are tangent within
 * `slack` give the point of contact, and pieces that lie on one another give the ends of their common
 * stretch. Callers cut at these points, and a cut too many does no harm where one too few would.
 */

import type { Arc, Line, Piece } from './piece.ts';
import { distance, lengthOf, type Point, TURN } from './point.ts';

export interface Crossing {
  readonly point: Point;
  /** Share of the first piece's length, in [0, 1]. */
  readonly a: number;
  /** Share of the second piece's length, in [0, 1]. */
  readonly b: number;
}

/** Pieces nearer than this (mm) touch: a hundred times the rounding noise of coordinates of a few metres. */
export const TOUCH = 1e-9;

/**
 * All meetings of two pieces, in no particular order. `slack` is absolute, in mm.
 *
 * Inside, points are pairs of numbers: this is asked for every two neighbours, of which hardly any cross, and
 * points made only to be thrown away would cost more than the sums.
 */
export const crossings = (a: Piece, b: Piece, slack = TOUCH): Crossing[] => {
  const points: number[] = [];
  if (a.kind === 'line') {
    if (b.kind === 'line') lineLine(a, b, slack, points);
    else lineCircle(a, b, slack, points);
  } else if (b.kind === 'line') lineCircle(b, a, slack, points);
  else circleCircle(a, b, slack, points);
  const found: Crossing[] = [];
  for (let i = 0; i < points.length; i += 2) keep(a, b, points[i]!, points[i + 1]!, slack, found);
  return found;
};

/**
 * The meetings of a piece with one that starts where it ends: their joint; where their lines or circles cross once more;
 * and the far end of either where it lies on the other. From the joint on: where they are tangent there, going on or
 * going back, the closed forms for any two pieces lose half their digits, and say that they meet beside it.
 */
export const crossingsOfNeighbours = (a: Piece, b: Piece, slack = TOUCH): Crossing[] => {
  const found: Crossing[] = [{ point: a.to, a: 1, b: 0 }];
  if (a.kind === 'arc') secondCrossing(a, b, a.to, a, b, slack, found);
  else if (b.kind === 'arc') secondCrossing(b, a, a.to, a, b, slack, found);
  if (isOnCarrier(b, a.from.x, a.from.y, slack)) keep(a, b, a.from.x, a.from.y, slack, found);
  if (isOnCarrier(a, b.to.x, b.to.y, slack)) keep(a, b, b.to.x, b.to.y, slack, found);
  return found;
};

/** A place on the lines or circles of two pieces is a crossing where it is on both pieces, and not known yet. */
const keep = (a: Piece, b: Piece, x: number, y: number, slack: number, found: Crossing[]): void => {
  for (let i = 0; i < found.length; i++) {
    const { point } = found[i]!;
    if (lengthOf(point.x - x, point.y - y) <= slack) return;
  }
  const onA = shareAt(a, x, y, slack);
  if (onA === undefined) return;
  const onB = shareAt(b, x, y, slack);
  if (onB !== undefined) found.push({ point: { x, y }, a: onA, b: onB });
};

/**
 * Where a circle and another piece's line or circle that cross at `joint` cross once more: its mirror image in the line
 * through their centres. Nothing for two circles about one centre.
 */
const secondCrossing = (
  circle: Arc,
  other: Piece,
  joint: Point,
  a: Piece,
  b: Piece,
  slack: number,
  found: Crossing[],
): void => {
  // By the ways from the joint: a nearly straight arc has its centre kilometres away.
  const sx = circle.center.x - joint.x;
  const sy = circle.center.y - joint.y;
  const x = other.kind === 'line' ? other.from.y - other.to.y : other.center.x - circle.center.x;
  const y = other.kind === 'line' ? other.to.x - other.from.x : other.center.y - circle.center.y;
  const square = x * x + y * y;
  if (!(square > 0)) return;
  const by = (2 * (x * sy - y * sx)) / square;
  keep(a, b, joint.x - y * by, joint.y + x * by, slack, found);
};

const isOnCarrier = (p: Piece, x: number, y: number, slack: number): boolean =>
  p.kind === 'line' ? isOnLine(p, x, y, slack) : isOnCircle(p, x, y, slack);

/** The share of a piece's length at which a point of its line or circle lies; undefined beyond its ends. */
export const shareOf = (p: Piece, at: Point, slack = TOUCH): number | undefined =>
  shareAt(p, at.x, at.y, slack);

const shareAt = (p: Piece, x: number, y: number, slack: number): number | undefined => {
  const { from, to } = p;
  if (p.kind === 'line') {
    const ux = to.x - from.x;
    const uy = to.y - from.y;
    const square = ux * ux + uy * uy;
    if (!(square > 0)) return lengthOf(from.x - x, from.y - y) <= slack ? 0 : undefined;
    return within(((x - from.x) * ux + (y - from.y) * uy) / square, slack / Math.sqrt(square));
  }
  const size = Math.abs(p.sweep);
  if (!(size > 0 && p.radius > 0)) return lengthOf(from.x - x, from.y - y) <= slack ? 0 : undefined;
  const noise = slack / p.radius;
  if (size < SHORT_SWEEP) return within(sweptByChord(p, x, y) / size, noise / size);
  let swept = (Math.atan2(y - p.center.y, x - p.center.x) - p.start) * Math.sign(p.sweep);
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
const sweptByChord = (p: Arc, atX: number, atY: number): number => {
  const x = atX - p.from.x;
  const y = atY - p.from.y;
  const swept = 2 * Math.asin(Math.min(1, Math.sqrt(x * x + y * y) / (2 * p.radius)));
  const forward = (y * Math.cos(p.start) - x * Math.sin(p.start)) * Math.sign(p.sweep);
  return forward < 0 ? -swept : swept;
};

const within = (share: number, slack: number): number | undefined =>
  share >= -slack && share <= 1 + slack ? Math.min(1, Math.max(0, share)) : undefined;

const lineLine = (a: Line, b: Line, slack: number, out: number[]): void => {
  const ux = a.to.x - a.from.x;
  const uy = a.to.y - a.from.y;
  const vx = b.to.x - b.from.x;
  const vy = b.to.y - b.from.y;
  const det = ux * vy - uy * vx;
  const lengths = lengthOf(ux, uy) * lengthOf(vx, vy);
  if (Math.abs(det) > PARALLEL * lengths) {
    const t = ((b.from.x - a.from.x) * vy - (b.from.y - a.from.y) * vx) / det;
    out.push(a.from.x + ux * t, a.from.y + uy * t);
  }
  if (!(Math.abs(det) > NEARLY_PARALLEL * lengths)) endsAlong(a, b, slack, out);
};

/** Sines below which lines have no crossing worth computing, or may also run along one another. */
const PARALLEL = 1e-13;
const NEARLY_PARALLEL = 1e-7;

const isOnLine = ({ from, to }: Line, x: number, y: number, slack: number): boolean => {
  const ux = to.x - from.x;
  const uy = to.y - from.y;
  const square = ux * ux + uy * uy;
  const px = x - from.x;
  const py = y - from.y;
  if (!(square > 0)) return lengthOf(px, py) <= slack;
  const off = ux * py - uy * px;
  return off * off <= slack * slack * square;
};

/** Whether a point lies on an arc's circle, within the slack; measured from the arc's start (see `power`). */
const isOnCircle = (c: Arc, x: number, y: number, slack: number): boolean =>
  Math.abs(power(c, x, y)) <= slack * (2 * c.radius + slack);

/**
 * The power of a point, |p − centre|² − r², as |q|² − 2q·w with q = p − start and w = centre − start. The
 * centre of a nearly straight arc may be kilometres away; so written, nothing of its size is ever subtracted.
 */
const power = (c: Arc, atX: number, atY: number): number => {
  const x = atX - c.from.x;
  const y = atY - c.from.y;
  return x * (x - 2 * (c.center.x - c.from.x)) + y * (y - 2 * (c.center.y - c.from.y));
};

const lineCircle = (l: Line, c: Arc, slack: number, out: number[]): void => {
  const x = l.to.x - l.from.x;
  const y = l.to.y - l.from.y;
  const length = lengthOf(x, y);
  if (!(length > 0)) return;
  if (rayCircle(l.from.x, l.from.y, x * (1 / length), y * (1 / length), c, slack, TANGENT_DEPTH, out))
    endsAlong(l, c, slack, out);
};

/**
 * Where pieces run along one another for a while, or a speck ends beside one, no crossing of their lines and circles says
 * so: an end of either that lies on the other does.
 */
const endsAlong = (a: Piece, b: Piece, slack: number, out: number[]): void => {
  if (isOnCarrier(a, b.from.x, b.from.y, slack)) out.push(b.from.x, b.from.y);
  if (isOnCarrier(a, b.to.x, b.to.y, slack)) out.push(b.to.x, b.to.y);
  if (isOnCarrier(b, a.from.x, a.from.y, slack)) out.push(a.from.x, a.from.y);
  if (isOnCarrier(b, a.to.x, a.to.y, slack)) out.push(a.to.x, a.to.y);
};

/**
 * Where the endless line through (x, y) along the unit vector u meets a circle: at the parameters −b ± h, with
 * −b the foot of the perpendicular and h half the chord. True when it is close to a tangent. The line may miss the
 * circle by `miss` (mm), and touches it midway between its crossings where it is no deeper in it than `deep` (mm).
 */
const rayCircle = (
  x: number,
  y: number,
  ux: number,
  uy: number,
  c: Arc,
  miss: number,
  deep: number,
  out: number[],
): boolean => {
  const wx = c.center.x - c.from.x;
  const wy = c.center.y - c.from.y;
  const qx = x - c.from.x;
  const qy = y - c.from.y;
  const beside = ux * wy - uy * wx;
  const side = beside < 0 ? -1 : 1;
  // r − |distance to the centre|, with r − |u×w| as (u·w)²/(r + |u×w|), so that large radii do not cancel.
  const uw = ux * wx + uy * wy;
  const inside = (uw * uw) / (c.radius + side * beside) + side * (ux * qy - uy * qx);
  // On the other side of the centre it is this that says how far inside the circle the line runs.
  const beyond = 2 * c.radius - inside;
  const depth = Math.min(inside, beyond);
  if (!(depth >= -miss)) return false;
  const half = Math.sqrt(Math.max(0, inside * beyond));
  const b = ux * qx + uy * qy - uw;
  const isTangent = half < TANGENT_HALF * c.radius;
  // On a large circle two crossings may be told apart well, and midway between them nothing touches.
  if (isTangent && depth < deep) {
    // The place on the circle itself: the line may be farther from it than two circles are from one another.
    const fx = x - ux * b - c.center.x;
    const fy = y - uy * b - c.center.y;
    const by = depth / lengthOf(fx, fy);
    out.push(x - ux * b + fx * by, y - uy * b + fy * by);
  }
  if (!(half > 0)) return true;
  const far = b > 0 ? -b - half : -b + half;
  let near = b > 0 ? -b + half : -b - half;
  // The product of the two parameters is the power of (x, y): it gives the one that would cancel.
  if (Math.abs(near) < CANCELS * Math.abs(far)) near = power(c, x, y) / far;
  out.push(x + ux * near, y + uy * near, x + ux * far, y + uy * far);
  return isTangent || depth <= miss;
};

/** A root smaller than this share of the other has lost three digits or more to cancellation. */
const CANCELS = 1e-3;

const circleCircle = (a: Arc, b: Arc, slack: number, out: number[]): void => {
  const d = distance(b.center, a.center);
  const apart = Math.abs(a.radius - b.radius);
  if (d <= slack && apart <= slack) {
    endsAlong(a, b, slack, out);
    return;
  }
  if (!(d <= a.radius + b.radius + slack && d >= apart - slack && d > 0)) {
    // Centres kilometres apart are not known to within the slack.
    if (!(a.radius + b.radius > FAR_CENTRE && d > 0)) return;
  }
  // The crossings lie on the radical line, on which both circles have the same power. The smaller circle has
  // the power 0 at its own start, so the line is the larger one's power there away from it.
  const small = a.radius <= b.radius ? a : b;
  const large = a.radius <= b.radius ? b : a;
  const ux = (large.center.x - small.center.x) * (1 / d);
  const uy = (large.center.y - small.center.y) * (1 / d);
  const { x, y } = small.from;
  const away = power(large, x, y) / (2 * d);
  // A gap between the circles, or an overlap, moves the radical line by the larger radius over d times as much.
  const lever = large.radius / d;
  const [miss, deep] = [slack * (1 + lever), TANGENT_DEPTH * lever];
  if (rayCircle(x + ux * away, y + uy * away, -uy, ux, small, miss, deep, out)) endsAlong(a, b, slack, out);
};

/** Radii (mm) beyond which rounding at the centre comes near to `TOUCH`. */
const FAR_CENTRE = 1e5;

/** Half chords below this share of the radius are where the two crossings of a near tangency lose their digits. */
const TANGENT_HALF = 1e-4;

/** A line or circle this deep (mm) in a circle does not touch it midway between its crossings: half the accuracy promised. */
const TANGENT_DEPTH = 5e-7;
