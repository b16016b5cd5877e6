/**
 * How far is a point from a path? Exact for lines and arcs, and quick: by a tree of boxes over the pieces
 * (box-tree.ts), so that "is anything nearer than c?" looks at a few pieces only. An arc's wedge is tested with
 * cross products, not angles, which is both faster and exact at its ends.
 */

import { type BoxTree, boxTreeOf } from './box-tree.ts';
import { inWedge, type Piece, pieceAt } from './piece.ts';
import { lengthOf, type Point } from './point.ts';

export interface Nearness {
  /** Distance (mm) from a point to the nearest piece; Infinity where there are none. */
  readonly distance: (p: Point) => number;
  /** Whether any piece is nearer than `reach` (mm). */
  readonly nearer: (p: Point, reach: number) => boolean;
  /** The index of the nearest piece, −1 where there are none. */
  readonly nearest: (p: Point) => number;
}

/** `tree` is the one over these very pieces, where it is at hand. */
export const nearnessOf = (pieces: readonly Piece[], tree: BoxTree = boxTreeOf(pieces)): Nearness => {
  const { boxes, count, leaves } = tree;

  const boxSquare = (k: number, x: number, y: number): number => {
    const dx = Math.max(boxes[4 * k]! - x, x + boxes[4 * k + 2]!, 0);
    const dy = Math.max(boxes[4 * k + 1]! - y, y + boxes[4 * k + 3]!, 0);
    return dx * dx + dy * dy;
  };

  // One search serves all three questions; `stop` ends it as soon as anything is nearer. It gives the index of
  // the piece and leaves the square of the distance in `best`, so that nothing is allocated.
  const stack: number[] = [];
  let best = 0;
  const search = (p: Point, within: number, stop: boolean): number => {
    const { x, y } = p;
    best = within * within;
    let index = -1;
    let top = 0;
    if (count > 0 && boxSquare(0, x, y) < best) stack[top++] = 0;
    while (top > 0) {
      const k = stack[--top]!;
      if (k >= leaves - 1) {
        const d = distanceToPiece(pieces[k - leaves + 1]!, p);
        if (d * d < best) {
          best = d * d;
          index = k - leaves + 1;
          if (stop) break;
        }
        continue;
      }
      const l = 2 * k + 1;
      const left = boxSquare(l, x, y);
      const right = boxSquare(l + 1, x, y);
      // The nearer child is looked at first (pushed last): it is likely to rule the other out.
      if (left < right) {
        if (right < best) stack[top++] = l + 1;
        if (left < best) stack[top++] = l;
      } else {
        if (left < best) stack[top++] = l;
        if (right < best) stack[top++] = l + 1;
      }
    }
    return index;
  };

  return {
    distance: (p) => {
      search(p, Number.POSITIVE_INFINITY, false);
      return Math.sqrt(best);
    },
    nearer: (p, reach) => search(p, reach, true) >= 0,
    nearest: (p) => search(p, Number.POSITIVE_INFINITY, false),
  };
};

/** Whether a piece lies along others, as far as its ends and three places between tell; `within` is in mm. */
export const liesAlong = (p: Piece, others: readonly Piece[], within: number): boolean =>
  [0, 0.25, 0.5, 0.75, 1].every((t) => {
    const at = pieceAt(p, t);
    return others.some((q) => distanceToPiece(q, at) <= within);
  });

/** Distance (mm) from a point to a piece. */
export const distanceToPiece = (p: Piece, at: Point): number => {
  if (p.kind === 'line') {
    const ux = p.to.x - p.from.x;
    const uy = p.to.y - p.from.y;
    const square = ux * ux + uy * uy;
    const t = square > 0 ? ((at.x - p.from.x) * ux + (at.y - p.from.y) * uy) / square : 0;
    const s = Math.min(1, Math.max(0, t));
    return lengthOf(at.x - p.from.x - s * ux, at.y - p.from.y - s * uy);
  }
  const px = at.x - p.center.x;
  const py = at.y - p.center.y;
  if (
    inWedge(
      p.from.x - p.center.x,
      p.from.y - p.center.y,
      p.to.x - p.center.x,
      p.to.y - p.center.y,
      p.sweep,
      px,
      py,
    )
  ) {
    // | |p| − r | as |power of the point| / (|p| + r), the power taken from the arc's start: see crossing.ts.
    const x = at.x - p.from.x;
    const y = at.y - p.from.y;
    const power = x * (x + 2 * (p.from.x - p.center.x)) + y * (y + 2 * (p.from.y - p.center.y));
    return Math.abs(power) / (lengthOf(px, py) + p.radius);
  }
  return Math.min(lengthOf(at.x - p.from.x, at.y - p.from.y), lengthOf(at.x - p.to.x, at.y - p.to.y));
};
