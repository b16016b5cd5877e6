/** All the places at which a set of pieces meet one another, found by a sweep over their boxes from left to right. */

import { boxesTouch, growBox } from './box.ts';
import { crossings } from './crossing.ts';
import { type Piece, pieceBox } from './piece.ts';
import type { Point } from './point.ts';

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

/** Calls `visit` for every meeting of two pieces (first < second); stops early when it returns true. */
export const eachMeeting = (pieces: readonly Piece[], visit: (m: Meeting) => boolean | undefined): void => {
  const boxes = pieces.map((p) => growBox(pieceBox(p), BOX_SLACK));
  const order = pieces.map((_, i) => i).sort((i, j) => boxes[i]!.minX - boxes[j]!.minX);
  let active: number[] = [];
  for (const i of order) {
    const box = boxes[i]!;
    active = active.filter((j) => boxes[j]!.maxX >= box.minX);
    for (const j of active) {
      if (!boxesTouch(box, boxes[j]!)) continue;
      const first = Math.min(i, j);
      const second = Math.max(i, j);
      for (const c of crossings(pieces[first]!, pieces[second]!)) {
        if (visit({ first, second, point: c.point, a: c.a, b: c.b })) return;
      }
    }
    active.push(i);
  }
};

/** For each piece the shares at which others meet it, ascending, from 0 to 1 inclusive. */
export const cutShares = (pieces: readonly Piece[]): readonly (readonly number[])[] => {
  const cuts: number[][] = pieces.map(() => [0, 1]);
  eachMeeting(pieces, (m) => {
    cuts[m.first]!.push(m.a);
    cuts[m.second]!.push(m.b);
    return false;
  });
  for (const shares of cuts) shares.sort((x, y) => x - y);
  return cuts;
};
