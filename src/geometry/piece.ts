/**
 * The two shapes that everything here is made of: straight lines and circular arcs, each with a direction.
 *
 * Lines and arcs stay lines and arcs when they are offset, mirrored, turned and clipped, and their lengths
 * and crossings have closed forms. That is why nothing else exists: it keeps the whole program exact.
 */

import type { Box } from './box.ts';
import { type Motion, mover } from './motion.ts';
import {
  add,
  angleOf,
  distance,
  leftOf,
  type Point,
  polar,
  positiveAngle,
  scale,
  subtract,
  TURN,
  turnBetween,
  unit,
} from './point.ts';

export interface Line {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

/**
 * A circular arc. `start` is the angle of `from` seen from the centre; `sweep` is signed (positive is
 * counterclockwise) and may go up to a full turn. `from` and `to` are kept beside them, so that neighbours
 * that share an end share it to the last bit.
 */
export interface Arc {
  readonly kind: 'arc';
  readonly center: Point;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
  readonly from: Point;
  readonly to: Point;
}

export type Piece = Line | Arc;

export const line = (from: Point, to: Point): Line => ({ kind: 'line', from, to });

/** An arc of parts that are already known to agree. All arcs are made alike, which the hot loops are quick by. */
export const arcOf = (
  center: Point,
  radius: number,
  start: number,
  sweep: number,
  from: Point,
  to: Point,
): Arc => ({ kind: 'arc', center, radius, start, sweep, from, to });

/** A piece that starts at a point a rounding from its own start. */
export const startingAt = (p: Piece, from: Point): Piece =>
  p.kind === 'line' ? line(from, p.to) : arcOf(p.center, p.radius, p.start, p.sweep, from, p.to);

/** An arc from its centre, radius (mm), start angle and signed sweep (radians). */
export const arc = (center: Point, radius: number, start: number, sweep: number): Arc => ({
  kind: 'arc',
  center,
  radius,
  start,
  sweep,
  from: add(center, polar(start, radius)),
  to: add(center, polar(start + sweep, radius)),
});

/** An arc round `center` between two points that are already known to lie on it, kept to the last bit. */
export const arcBetween = (center: Point, from: Point, to: Point, counterclockwise: boolean): Arc => {
  const a = angleOf(subtract(from, center));
  const b = angleOf(subtract(to, center));
  const sweep = counterclockwise ? positiveAngle(b - a) : -positiveAngle(a - b);
  return { kind: 'arc', center, radius: distance(center, from), start: a, sweep, from, to };
};

/**
 * The rise (mm, as `arcByRise` takes it) of the arc from one point through another to a third: the turn from one
 * chord to the next is half the arc's sweep (the inscribed angle theorem, Euclid III.20). Infinite or near it
 * where the middle point lies beyond an end in line with both; what is then right, the caller knows.
 */
export const riseThrough = (from: Point, through: Point, to: Point): number =>
  (-distance(from, to) / 2) * Math.tan(turnBetween(subtract(through, from), subtract(to, through)) / 2);

/**
 * The arc over a chord by its rise, as a ruler measures it: `rise` (mm) is the height of the arc's middle
 * over the chord, positive to the left of from→to. Zero, or a rise too small to tell from straight, gives
 * the line. Source of the formulas: r = (c² + 4h²)/(8h), a = 4·atan(2h/c), Machinery's Handbook, 31st ed.,
 * pp. 50 and 83.
 */
export const arcByRise = (from: Point, to: Point, rise: number): Piece => {
  const chord = distance(from, to);
  if (!(Math.abs(rise) > STRAIGHT_RISE)) return line(from, to);
  const h = Math.abs(rise);
  const radius = (chord * chord + 4 * h * h) / (8 * h);
  const sweep = 4 * Math.atan((2 * h) / chord);
  const along = unit(subtract(to, from));
  const left = leftOf(along);
  // A rise to the left bends the path to the right on its way: it goes round clockwise.
  const side = rise > 0 ? 1 : -1;
  const mid = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const center = add(mid, scale(left, side * (h - radius)));
  const start = angleOf(subtract(from, center));
  return { kind: 'arc', center, radius, start, sweep: -side * sweep, from, to };
};

/** Below this rise (mm) an arc is a line: its middle is off by less than a thousandth of the tolerance. */
const STRAIGHT_RISE = 1e-9;

export const pieceLength = (p: Piece): number =>
  p.kind === 'line' ? distance(p.from, p.to) : Math.abs(p.sweep) * p.radius;

/** The point at a share t in [0, 1] of the piece's length; the ends are returned to the last bit. */
export const pieceAt = (p: Piece, t: number): Point => {
  if (t <= 0) return p.from;
  if (t >= 1) return p.to;
  if (p.kind === 'line')
    return { x: p.from.x + (p.to.x - p.from.x) * t, y: p.from.y + (p.to.y - p.from.y) * t };
  return t <= 0.5
    ? roundFrom(p.from, p.start, p.sweep * t, p.radius)
    : roundFrom(p.to, p.start + p.sweep, p.sweep * (t - 1), p.radius);
};

/**
 * The point a turn farther round a circle from a point of it. By its chord from there, not from the centre: a
 * nearly straight arc has its centre kilometres away, and from so far off a micron is lost in rounding.
 */
export const roundFrom = (at: Point, angle: number, turn: number, radius: number): Point => {
  const chord = 2 * radius * Math.sin(turn / 2);
  const middle = angle + turn / 2;
  return { x: at.x - chord * Math.sin(middle), y: at.y + chord * Math.cos(middle) };
};

/** The unit direction of travel at a share t of the piece; zero for a line without length. */
export const pieceDirection = (p: Piece, t: number): Point => {
  if (p.kind === 'line') return unit(subtract(p.to, p.from));
  const s = Math.sign(p.sweep);
  // At the ends the spoke is at hand, and needs no sine.
  const end = t <= 0 ? p.from : t >= 1 ? p.to : undefined;
  if (end) return unit({ x: -s * (end.y - p.center.y), y: s * (end.x - p.center.x) });
  const a = p.start + p.sweep * t;
  return { x: -Math.sin(a) * s, y: Math.cos(a) * s };
};

/**
 * Whether the direction at the end of a piece and that at the start of another differ by no more than a small
 * turn (radians). By directions without their lengths: the tangent of the turn is cross/dot.
 */
export const isStraightOn = (a: Piece, b: Piece, most: number): boolean => {
  const s = a.kind === 'line' ? 0 : Math.sign(a.sweep);
  const ux = a.kind === 'line' ? a.to.x - a.from.x : (a.center.y - a.to.y) * s;
  const uy = a.kind === 'line' ? a.to.y - a.from.y : (a.to.x - a.center.x) * s;
  const t = b.kind === 'line' ? 0 : Math.sign(b.sweep);
  const vx = b.kind === 'line' ? b.to.x - b.from.x : (b.center.y - b.from.y) * t;
  const vy = b.kind === 'line' ? b.to.y - b.from.y : (b.from.x - b.center.x) * t;
  const along = ux * vx + uy * vy;
  return along > 0 && Math.abs(ux * vy - uy * vx) <= most * along;
};

export const reversePiece = (p: Piece): Piece =>
  p.kind === 'line'
    ? line(p.to, p.from)
    : arcOf(p.center, p.radius, p.start + p.sweep, -p.sweep, p.to, p.from);

/** The stretch between the shares t0 < t1 of a piece. */
export const trimPiece = (p: Piece, t0: number, t1: number): Piece => {
  const from = pieceAt(p, t0);
  const to = pieceAt(p, t1);
  if (p.kind === 'line') return line(from, to);
  const a = Math.max(0, t0);
  const b = Math.min(1, t1);
  return arcOf(p.center, p.radius, p.start + p.sweep * a, p.sweep * (b - a), from, to);
};

/** A piece after a rigid motion. A motion that turns over also turns the sense of an arc. */
export const movePiece = (p: Piece, m: Motion): Piece => movePieceBy(p, m, mover(m));

export const movePieceBy = (p: Piece, m: Motion, f: (q: Point) => Point): Piece => {
  const from = f(p.from);
  const to = f(p.to);
  if (p.kind === 'line') return line(from, to);
  const start = m.flip ? m.angle - p.start : m.angle + p.start;
  return arcOf(f(p.center), p.radius, start, m.flip ? -p.sweep : p.sweep, from, to);
};

export const pieceBox = (p: Piece): Box => {
  const four = [0, 0, 0, 0];
  putPieceBox(p, four, 0);
  return { minX: four[0]!, minY: four[1]!, maxX: -four[2]!, maxY: -four[3]! };
};

/** Writes a piece's box into an array as minX, minY, −maxX, −maxY, for those who need a thousand of them. */
export const putPieceBox = (p: Piece, into: number[], at: number): void => {
  const { from, to } = p;
  let minX = Math.min(from.x, to.x);
  let minY = Math.min(from.y, to.y);
  let maxX = Math.max(from.x, to.x);
  let maxY = Math.max(from.y, to.y);
  if (p.kind === 'arc') {
    const { center } = p;
    const ax = from.x - center.x;
    const ay = from.y - center.y;
    const bx = to.x - center.x;
    const by = to.y - center.y;
    // With both ends in one quadrant a short arc stays in it, and its ends are its box. Elsewhere it passes the
    // top, left, bottom or right of its circle where that direction is in its wedge.
    const isInQuadrant = ax * bx > 0 && ay * by > 0 && Math.abs(p.sweep) <= Math.PI;
    for (let quarter = isInQuadrant ? 4 : 0; quarter < 4; quarter++) {
      const px = quarter === 0 ? 1 : quarter === 2 ? -1 : 0;
      const py = quarter === 1 ? 1 : quarter === 3 ? -1 : 0;
      if (!inWedge(ax, ay, bx, by, p.sweep, px, py)) continue;
      const share = shareOfAngle(p, (quarter * Math.PI) / 2);
      if (share === undefined) continue;
      const top = pieceAt(p, share);
      minX = Math.min(minX, top.x);
      minY = Math.min(minY, top.y);
      maxX = Math.max(maxX, top.x);
      maxY = Math.max(maxY, top.y);
    }
  }
  into[at] = minX;
  into[at + 1] = minY;
  into[at + 2] = -maxX;
  into[at + 3] = -maxY;
};

/**
 * Whether the direction (px, py) lies between (ax, ay) and (bx, by), going round by the sign of `sweep`. By
 * cross products, not angles: quicker, and exact at the ends.
 */
export const inWedge = (
  ax: number,
  ay: number,
  bx: number,
  by: number,
  sweep: number,
  px: number,
  py: number,
): boolean => {
  const s = sweep < 0 ? -1 : 1;
  const afterStart = s * (ax * py - ay * px) >= 0;
  const beforeEnd = s * (px * by - py * bx) >= 0;
  return Math.abs(sweep) <= Math.PI ? afterStart && beforeEnd : afterStart || beforeEnd;
};

/** Where along an arc (share of its length) an angle lies, or undefined when it is not on the arc. */
export const shareOfAngle = (p: Arc, angle: number): number | undefined => {
  const swept = p.sweep >= 0 ? positiveAngle(angle - p.start) : positiveAngle(p.start - angle);
  const size = Math.abs(p.sweep);
  if (size === 0) return undefined;
  if (swept <= size) return swept / size;
  // An angle a hair before the start comes out as nearly a full turn; it is the start.
  if (TURN - swept < ANGLE_NOISE) return 0;
  if (swept - size < ANGLE_NOISE) return 1;
  return undefined;
};

/** Angles nearer than this (radians) are the same: rounding of atan2 and of one addition. */
const ANGLE_NOISE = 1e-12;
