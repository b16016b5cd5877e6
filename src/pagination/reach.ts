/**
 * Does a line or an arc, drawn with a round pen, reach into a rectangle? Exact for both: the distance between
 * the piece's middle line and the closed rectangle is compared with half the pen's width.
 *
 * Method: the least distance between a piece and a rectangle that do not meet lies between an end of the piece
 * and the rectangle, or a corner of the rectangle and the piece, or (arcs) where the arc runs parallel to a side.
 * Scalars instead of boxes, because the occupancy grid asks this some hundred thousand times.
 */

import { type Arc, type Line, type Piece, type Point, shareOfAngle } from '../geometry/index.ts';

/** True where the piece comes nearer than `half` (mm) to the rectangle, or, with half 0, meets it. */
export const pieceReaches = (
  piece: Piece,
  half: number,
  minX: number,
  minY: number,
  maxX: number,
  maxY: number,
): boolean =>
  piece.kind === 'line'
    ? lineReaches(piece, half, minX, minY, maxX, maxY)
    : arcReaches(piece, half, minX, minY, maxX, maxY);

const lineReaches = (
  line: Line,
  half: number,
  minX: number,
  minY: number,
  maxX: number,
  maxY: number,
): boolean => {
  const { from, to } = line;
  if (Math.max(from.x, to.x) < minX - half || Math.min(from.x, to.x) > maxX + half) return false;
  if (Math.max(from.y, to.y) < minY - half || Math.min(from.y, to.y) > maxY + half) return false;
  if (lineMeets(from, to, minX, minY, maxX, maxY)) return true;
  if (!(half > 0)) return false;
  const near = half * half;
  return (
    pointToBox(from.x, from.y, minX, minY, maxX, maxY) < near ||
    pointToBox(to.x, to.y, minX, minY, maxX, maxY) < near ||
    pointToLine(minX, minY, from, to) < near ||
    pointToLine(maxX, minY, from, to) < near ||
    pointToLine(maxX, maxY, from, to) < near ||
    pointToLine(minX, maxY, from, to) < near
  );
};

/** Clips the segment's share [0, 1] against the four sides (Liang and Barsky, ACM Trans. Graphics 3, 1984). */
const lineMeets = (
  from: Point,
  to: Point,
  minX: number,
  minY: number,
  maxX: number,
  maxY: number,
): boolean => {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  let enter = 0;
  let leave = 1;
  if (dx === 0) {
    if (!(from.x >= minX && from.x <= maxX)) return false;
  } else {
    const a = (minX - from.x) / dx;
    const b = (maxX - from.x) / dx;
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  if (dy === 0) {
    if (!(from.y >= minY && from.y <= maxY)) return false;
  } else {
    const a = (minY - from.y) / dy;
    const b = (maxY - from.y) / dy;
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  return enter <= leave;
};

const arcReaches = (
  arc: Arc,
  half: number,
  minX: number,
  minY: number,
  maxX: number,
  maxY: number,
): boolean => {
  const { center, radius } = arc;
  // The ring of the whole circle first: most rectangles lie well inside or outside it.
  const nearest = Math.sqrt(pointToBox(center.x, center.y, minX, minY, maxX, maxY));
  const farX = Math.max(center.x - minX, maxX - center.x);
  const farY = Math.max(center.y - minY, maxY - center.y);
  const farthest = Math.hypot(farX, farY);
  if (!(nearest <= radius + half && farthest >= radius - half)) return false;
  if (arcMeets(arc, minX, minY, maxX, maxY)) return true;
  if (!(half > 0)) return false;
  const near = half * half;
  if (pointToBox(arc.from.x, arc.from.y, minX, minY, maxX, maxY) < near) return true;
  if (pointToBox(arc.to.x, arc.to.y, minX, minY, maxX, maxY) < near) return true;
  if (cornerNear(arc, half, minX, minY) || cornerNear(arc, half, maxX, minY)) return true;
  if (cornerNear(arc, half, maxX, maxY) || cornerNear(arc, half, minX, maxY)) return true;
  return (
    extremeNear(arc, 0, center.x + radius, center.y, near, minX, minY, maxX, maxY) ||
    extremeNear(arc, Math.PI / 2, center.x, center.y + radius, near, minX, minY, maxX, maxY) ||
    extremeNear(arc, Math.PI, center.x - radius, center.y, near, minX, minY, maxX, maxY) ||
    extremeNear(arc, -Math.PI / 2, center.x, center.y - radius, near, minX, minY, maxX, maxY)
  );
};

/** An arc meets a rectangle when it starts inside it or crosses one of its sides. */
const arcMeets = (arc: Arc, minX: number, minY: number, maxX: number, maxY: number): boolean => {
  const { from } = arc;
  if (from.x >= minX && from.x <= maxX && from.y >= minY && from.y <= maxY) return true;
  return (
    crossesUpright(arc, minX, minY, maxY) ||
    crossesUpright(arc, maxX, minY, maxY) ||
    crossesLevel(arc, minY, minX, maxX) ||
    crossesLevel(arc, maxY, minX, maxX)
  );
};

const crossesUpright = (arc: Arc, x: number, minY: number, maxY: number): boolean => {
  const dx = x - arc.center.x;
  const square = arc.radius * arc.radius - dx * dx;
  if (!(square >= 0)) return false;
  const dy = Math.sqrt(square);
  const up = arc.center.y + dy;
  const down = arc.center.y - dy;
  return (
    (up >= minY && up <= maxY && onArc(arc, Math.atan2(dy, dx))) ||
    (down >= minY && down <= maxY && onArc(arc, Math.atan2(-dy, dx)))
  );
};

const crossesLevel = (arc: Arc, y: number, minX: number, maxX: number): boolean => {
  const dy = y - arc.center.y;
  const square = arc.radius * arc.radius - dy * dy;
  if (!(square >= 0)) return false;
  const dx = Math.sqrt(square);
  const right = arc.center.x + dx;
  const left = arc.center.x - dx;
  return (
    (right >= minX && right <= maxX && onArc(arc, Math.atan2(dy, dx))) ||
    (left >= minX && left <= maxX && onArc(arc, Math.atan2(dy, -dx)))
  );
};

const onArc = (arc: Arc, angle: number): boolean => shareOfAngle(arc, angle) !== undefined;

const cornerNear = (arc: Arc, half: number, x: number, y: number): boolean => {
  const dx = x - arc.center.x;
  const dy = y - arc.center.y;
  return Math.abs(Math.hypot(dx, dy) - arc.radius) < half && onArc(arc, Math.atan2(dy, dx));
};

const extremeNear = (
  arc: Arc,
  angle: number,
  x: number,
  y: number,
  near: number,
  minX: number,
  minY: number,
  maxX: number,
  maxY: number,
): boolean => pointToBox(x, y, minX, minY, maxX, maxY) < near && onArc(arc, angle);

/** Squared distance. */
const pointToBox = (x: number, y: number, minX: number, minY: number, maxX: number, maxY: number): number => {
  const dx = x < minX ? minX - x : x > maxX ? x - maxX : 0;
  const dy = y < minY ? minY - y : y > maxY ? y - maxY : 0;
  return dx * dx + dy * dy;
};

/** Squared distance of a point to a segment. */
const pointToLine = (x: number, y: number, from: Point, to: Point): number => {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const square = dx * dx + dy * dy;
  const along = square > 0 ? ((x - from.x) * dx + (y - from.y) * dy) / square : 0;
  const t = Math.min(1, Math.max(0, along));
  const ex = from.x + t * dx - x;
  const ey = from.y + t * dy - y;
  return ex * ex + ey * ey;
};
