/** All the places at which a set of pieces meet one another, found by a sweep over their boxes from left to right. */

import { crossings } from './crossing.ts';
import { type Piece, pieceBox } from './piece.ts';
import { distance, type Point } from './point.ts';

export interface Meeting {
  readonly first: number;
  readonly second: number;
  readonly point: Point;
  /** Shares along the first and the second piece. */
  readonly a: number;
  readonly b: number;
}

/** Boxes are grown by this (mm), so that pieces which only touch are not passed over by rounding. */
const BOX_SLACK = 1e-8;

/**
 * Calls `visit` for every meeting of two pieces (first < second); stops early when it returns true. Where one
 * piece goes on smoothly into the next, their joint is no meeting.
 */
export const eachMeeting = (pieces: readonly Piece[], visit: (m: Meeting) => boolean | undefined): void => {
  const count = pieces.length;
  // Flat arrays: the sweep compares many more boxes than there are meetings.
  const minX = new Float64Array(count);
  const minY = new Float64Array(count);
  const maxX = new Float64Array(count);
  const maxY = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const box = pieceBox(pieces[i]!);
    minX[i] = box.minX - BOX_SLACK;
    minY[i] = box.minY - BOX_SLACK;
    maxX[i] = box.maxX + BOX_SLACK;
    maxY[i] = box.maxY + BOX_SLACK;
  }
  const order = new Int32Array(count).map((_, i) => i).sort((i, j) => minX[i]! - minX[j]!);
  const active = new Int32Array(count);
  let size = 0;
  for (const i of order) {
    let kept = 0;
    for (let k = 0; k < size; k++) {
      const j = active[k]!;
      if (!(maxX[j]! >= minX[i]!)) continue;
      active[kept++] = j;
      if (!(minY[j]! <= maxY[i]! && minY[i]! <= maxY[j]!)) continue;
      const first = Math.min(i, j);
      const second = Math.max(i, j);
      if (second === first + 1 && goesOn(pieces[first]!, pieces[second]!)) continue;
      if (first === 0 && second === count - 1 && goesOn(pieces[second]!, pieces[first]!)) continue;
      for (const c of crossings(pieces[first]!, pieces[second]!)) {
        if (visit({ first, second, point: c.point, a: c.a, b: c.b })) return;
      }
    }
    size = kept;
    active[size++] = i;
  }
};

/**
 * Whether a piece goes on smoothly into another. Two circles, or a line and a circle, that are tangent meet
 * nowhere else; only one circle that goes round into itself does.
 */
export const goesOn = (a: Piece, b: Piece): boolean => {
  if (!(distance(a.to, b.from) <= SMOOTH_GAP)) return false;
  const round = (a.kind === 'arc' ? Math.abs(a.sweep) : 0) + (b.kind === 'arc' ? Math.abs(b.sweep) : 0);
  if (!(round < ONE_ROUND)) return false;
  // Directions without their lengths: the sine of the turn is cross/(|u||v|).
  const ux = a.kind === 'line' ? a.to.x - a.from.x : (a.center.y - a.to.y) * Math.sign(a.sweep);
  const uy = a.kind === 'line' ? a.to.y - a.from.y : (a.to.x - a.center.x) * Math.sign(a.sweep);
  const vx = b.kind === 'line' ? b.to.x - b.from.x : (b.center.y - b.from.y) * Math.sign(b.sweep);
  const vy = b.kind === 'line' ? b.to.y - b.from.y : (b.from.x - b.center.x) * Math.sign(b.sweep);
  const along = ux * vx + uy * vy;
  return along > 0 && Math.abs(ux * vy - uy * vx) <= SMOOTH_TURN * along;
};

/** mm and radians within which a joint is smooth: rounding, and nothing that could make a crossing to be seen. */
const SMOOTH_GAP = 1e-10;
const SMOOTH_TURN = 1e-11;

/** Less than a full turn (radians) by more than the tangency of two arcs could hide. */
const ONE_ROUND = 6;

/** For each piece the shares at which others meet it, ascending, from 0 to 1 inclusive. */
export const cutShares = (pieces: readonly Piece[]): readonly (readonly number[])[] => {
  const cuts: number[][] = pieces.map(() => [0, 1]);
  eachMeeting(pieces, (m) => {
    cuts[m.first]!.push(m.a);
    cuts[m.second]!.push(m.b);
    return false;
  });
  for (const shares of cuts) if (shares.length > 2) shares.sort((x, y) => x - y);
  return cuts;
};
