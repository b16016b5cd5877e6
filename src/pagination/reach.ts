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
    crosses(arc, true, minX, minY, maxY) ||
    crosses(arc, true, maxX, minY, maxY) ||
    crosses(arc, false, minY, minX, maxX) ||
    crosses(arc, false, maxY, minX, maxX)
  );
};

/** Whether an arc crosses one side of a rectangle, upright or level. */
const crosses = (arc: Arc, upright: boolean, level: number, least: number, most: number): boolean => {
  const { center, radius } = arc;
  const off = level - (upright ? center.x : center.y);
  const middle = upright ? center.y : center.x;
  const square = radius * radius - off * off;
  if (!(square >= 0)) return false;
  const far = Math.sqrt(square);
  return (
    (middle + far >= least && middle + far <= most && meetsAt(arc, upright, off, far)) ||
    (middle - far >= least && middle - far <= most && meetsAt(arc, upright, off, -far))
  );
};

const meetsAt = (arc: Arc, upright: boolean, off: number, along: number): boolean =>
  onArc(arc, upright ? Math.atan2(along, off) : Math.atan2(off, along));

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
