/** Pieces of one line that were made by different ways round. */

import type { Piece, Point } from '../geometry/index.ts';

/** They meet to rounding; the line takes the one before's end as the next one's start. */
export const stitched = (pieces: readonly Piece[]): Piece[] => {
  let last: Point | undefined;
  return pieces.map((p) => {
    const next = last ? { ...p, from: last } : p;
    last = p.to;
    return next;
  });
};
