/** Where a line turns so sharply that the eye wants to see it. */

import { type Path, pieceDirection, pieceLength, turnBetween } from '../geometry/index.ts';

/** A turn by more than this (radians) is a corner. */
const CORNER = Math.PI / 9;

/** How far along a path (mm) its corners are, its ends left out. */
export const cornersAlong = ({ pieces }: Path): readonly number[] => {
  const corners: number[] = [];
  let at = 0;
  pieces.forEach((piece, i) => {
    const next = pieces[i + 1];
    at += pieceLength(piece);
    if (next && Math.abs(turnBetween(pieceDirection(piece, 1), pieceDirection(next, 0))) > CORNER)
      corners.push(at);
  });
  return corners;
};
