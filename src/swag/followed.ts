/**
 * A path at a fixed tilt, followed from its start until it first comes to the centre line, wherever that is:
 * for any half span the depth there, and how far the path has reached until then. Laying hundreds of counts
 * is then a look-up each, and only what is kept is built.
 */

import {
  angleOf,
  type Path,
  type Piece,
  pieceAt,
  pieceBox,
  pieceDirection,
  shareOfAngle,
  trimPiece,
} from '../geometry/index.ts';

/** How a path has gone until it comes to a centre line. All in mm, from the start. */
export interface Followed {
  readonly depth: number;
  readonly top: number;
  /** How far it passed below the start line, and back past its start; 0 where it did not. */
  readonly dip: number;
  readonly bulge: number;
  /** Which way it goes there, radians. */
  readonly heading: number;
}

interface Reached {
  readonly piece: Piece;
  /** Of the path before this piece. */
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** The question "how has it gone by this half span?"; undefined where the path never comes so far. */
export const followerOf = (laid: Path): ((halfSpan: number) => Followed | undefined) => {
  const reached: Reached[] = [];
  let [left, right, low, high] = [0, 0, 0, 0];
  for (const piece of laid.pieces) {
    const box = pieceBox(piece);
    reached.push({ piece, left, right, low, high });
    left = Math.min(left, box.minX);
    right = Math.max(right, box.maxX);
    low = Math.min(low, box.minY);
    high = Math.max(high, box.maxY);
  }
  const farthest = right;
  return (halfSpan) => {
    if (!(halfSpan > 0 && halfSpan <= farthest)) return undefined;
    // The last piece before which the path had not yet come so far is the one that gets there.
    let at = 0;
    let beyond = reached.length;
    while (beyond - at > 1) {
      const mid = (at + beyond) >> 1;
      if (reached[mid]!.right < halfSpan) at = mid;
      else beyond = mid;
    }
    const before = reached[at]!;
    const share = shareAtX(before.piece, halfSpan);
    const box = pieceBox(trimPiece(before.piece, 0, share));
    return {
      depth: pieceAt(before.piece, share).y,
      top: Math.max(before.high, box.maxY),
      dip: -Math.min(before.low, box.minY),
      bulge: -Math.min(before.left, box.minX),
      heading: angleOf(pieceDirection(before.piece, share)),
    };
  };
};

/** The first share of a piece at which it comes to x; its end where rounding says that it never does. */
const shareAtX = (piece: Piece, x: number): number => {
  if (piece.kind === 'line') {
    const run = piece.to.x - piece.from.x;
    return run > 0 ? Math.min(1, Math.max(0, (x - piece.from.x) / run)) : 1;
  }
  const angle = Math.acos(Math.min(1, Math.max(-1, (x - piece.center.x) / piece.radius)));
  const shares = [shareOfAngle(piece, angle), shareOfAngle(piece, -angle)].filter((s) => s !== undefined);
  return shares.length > 0 ? Math.min(...shares) : 1;
};
