/**
 * How near two paths come to each other, exactly: of two pieces that do not meet, either an end of one is nearest, or
 * the places are on a line square to both: through a circle's centre, or through two.
 */

import type { Box } from './box.ts';
import { crossings } from './crossing.ts';
import { distanceToPiece } from './nearness.ts';
import type { Path } from './path.ts';
import { type Arc, type Piece, pieceBox } from './piece.ts';
import { lengthOf, type Point } from './point.ts';

/** mm between two paths at their nearest, 0 where they meet; `most` where they come no nearer than that. */
export const pathsApart = (a: Path, b: Path, most = Number.POSITIVE_INFINITY): number => {
  const boxes = b.pieces.map(pieceBox);
  let least = most;
  for (const p of a.pieces) {
    const box = pieceBox(p);
    for (let k = 0; k < boxes.length && least > 0; k++)
      if (boxesApart(box, boxes[k]!) < least) least = Math.min(least, piecesApart(p, b.pieces[k]!));
  }
  return least;
};

const boxesApart = (a: Box, b: Box): number =>
  lengthOf(Math.max(0, a.minX - b.maxX, b.minX - a.maxX), Math.max(0, a.minY - b.maxY, b.minY - a.maxY));

const piecesApart = (a: Piece, b: Piece): number => {
  if (crossings(a, b).length > 0) return 0;
  let least = Number.POSITIVE_INFINITY;
  const look = (p: Piece, at: Point): void => {
    least = Math.min(least, distanceToPiece(p, at));
  };
  for (const at of [a.from, a.to]) look(b, at);
  for (const at of [b.from, b.to]) look(a, at);
  // Each of these places is on one of the two, so that what it measures is never less than what is true.
  if (a.kind === 'arc') squareTo(a, b, (at) => look(b, at));
  if (b.kind === 'arc') squareTo(b, a, (at) => look(a, at));
  return least;
};

/** The places of an arc at which a line square to it may be square to another piece as well. */
const squareTo = (a: Arc, other: Piece, look: (at: Point) => void): void => {
  const [x, y] =
    other.kind === 'arc'
      ? [other.center.x - a.center.x, other.center.y - a.center.y]
      : [other.from.y - other.to.y, other.to.x - other.from.x];
  const length = lengthOf(x, y);
  if (!(length > 0)) return;
  for (const sign of [-1, 1]) {
    const at = {
      x: a.center.x + (sign * a.radius * x) / length,
      y: a.center.y + (sign * a.radius * y) / length,
    };
    if (distanceToPiece(a, at) < ON_IT) look(at);
  }
};

/** A place of a circle that is this near (mm) to an arc of it is on the arc. */
const ON_IT = 1e-9;
