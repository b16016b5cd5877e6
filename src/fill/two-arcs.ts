/** Two arcs in place of a curve: heads of plumes, turns of a ribbon, bends of a swirl. */

import {
  add,
  dot,
  type Piece,
  type Point,
  pieceLength,
  reversePiece,
  scale,
  subtract,
  tangentArc,
} from '../geometry/index.ts';

/**
 * Two arcs with one tangent from `a`, left along the unit vector `leaving`, to `b`, reached along `arriving`.
 * Of all such biarcs the one whose outer handles are equally long: it treats both ends alike (Bolton, "Biarc
 * curves", Computer-Aided Design 7(2), 1975).
 */
export const biarc = (a: Point, leaving: Point, b: Point, arriving: Point): Piece[] => {
  const v = subtract(b, a);
  const t = add(leaving, arriving);
  const bend = 2 * (1 - dot(leaving, arriving));
  const vt = dot(v, t);
  const vv = dot(v, v);
  let handle: number;
  if (bend > 1e-9) {
    const root = Math.sqrt(vt * vt + bend * vv);
    // The form without cancellation; both give (−v·t + root) / bend.
    handle = vt > 0 ? vv / (vt + root) : (root - vt) / bend;
  } else {
    const along = dot(v, arriving);
    if (!(along > 0)) return [tangentArc(a, leaving, b)];
    handle = vv / (4 * along);
  }
  const joint = scale(add(add(a, scale(leaving, handle)), subtract(b, scale(arriving, handle))), 0.5);
  const first = tangentArc(a, leaving, joint);
  const second = reversePiece(tangentArc(b, scale(arriving, -1), joint));
  return [first, second].filter((p) => pieceLength(p) > 0);
};
