/** From places on the edge to places on the stitched edge: where along the needle's way the foot touches what. */

import { pieceLength } from './piece.ts';
import type { StitchedEdge } from './rolling-foot.ts';

/** Places along an edge nearer than this (mm) are the same place. */
const SAME_PLACE = 1e-7;

/**
 * The length (mm) along the stitched path at which stitching that starts at a place on the edge begins. At a
 * convex corner that is on the normal of the stretch that follows; where the foot cannot reach the place (a
 * notch), it is where the foot turns.
 */
export const startAlong = (stitched: StitchedEdge, contact: number): number => {
  let before = 0;
  for (let i = 0; i < stitched.contacts.length; i++) {
    const { from, to } = stitched.contacts[i]!;
    const length = pieceLength(stitched.path.pieces[i]!);
    if (to > contact + SAME_PLACE) {
      if (from >= contact) return before;
      return before + (length * (contact - from)) / (to - from);
    }
    before += length;
  }
  return before;
};

/** The length (mm) along the stitched path at which stitching that stops at a place on the edge ends: the mirror image of `startAlong`. */
export const endAlong = (stitched: StitchedEdge, contact: number): number => {
  let before = 0;
  for (let i = 0; i < stitched.contacts.length; i++) {
    const { from, to } = stitched.contacts[i]!;
    const length = pieceLength(stitched.path.pieces[i]!);
    if (to >= contact - SAME_PLACE) {
      if (from >= contact - SAME_PLACE) return before;
      return before + length * Math.min(1, (contact - from) / (to - from));
    }
    before += length;
  }
  return before;
};
