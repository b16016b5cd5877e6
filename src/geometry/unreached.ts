/** The parts of an edge that a round foot cannot touch, and how far from them the stitching stays. */

import { distanceToPiece } from './nearness.ts';
import { type Path, slicePath } from './path.ts';
import type { Piece } from './piece.ts';
import { add, distance, type Point, scale, subtract, unit } from './point.ts';

/** A stretch of edge, as lengths (mm) from its start; a corner that the foot rolls round has from = to. */
export interface Contact {
  readonly from: number;
  readonly to: number;
}

export interface Unreached extends Contact {
  /** Where the foot's centre stands when it can go no further in. */
  readonly turn: Point;
  /** The place on the edge that stays farthest from the stitching. */
  readonly deepest: Point;
  /** mm from `deepest` to the stitching. */
  readonly away: number;
}

/** Gaps in the contact shorter than this (mm) are rounding. */
const GAP_NOISE = 1e-6;

export const findUnreached = (
  path: Path,
  contacts: readonly Contact[],
  edge: Path,
  edgeLength: number,
): readonly Unreached[] => {
  const found: Unreached[] = [];
  const note = (from: number, to: number, turn: Point): void => {
    if (to - from > GAP_NOISE)
      found.push({ from, to, ...farthest(slicePath(edge, from, to), path, turn), turn });
  };
  const count = contacts.length;
  const firstPiece = path.pieces[0];
  const lastPiece = path.pieces[count - 1];
  if (!firstPiece || !lastPiece) return found;
  if (!edge.closed) note(0, contacts[0]!.from, firstPiece.from);
  for (let i = 1; i < count; i++) note(contacts[i - 1]!.to, contacts[i]!.from, path.pieces[i]!.from);
  if (!edge.closed) note(contacts[count - 1]!.to, edgeLength, lastPiece.to);
  else if (contacts[0]!.from > GAP_NOISE || edgeLength - contacts[count - 1]!.to > GAP_NOISE) {
    note(contacts[count - 1]!.to, edgeLength, firstPiece.from);
    note(0, contacts[0]!.from, firstPiece.from);
  }
  return found;
};

/** The point of the stretch that is farthest from the stitched path: an end of a piece, or the far side of an arc. */
const farthest = (stretch: Path, path: Path, turn: Point): { deepest: Point; away: number } => {
  let deepest = turn;
  let away = 0;
  for (const p of stretch.pieces) {
    for (const at of [p.from, p.to, farSide(p, turn)]) {
      if (!at || !(distance(at, turn) > away)) continue;
      const d = path.pieces.reduce(
        (least, q) => Math.min(least, distanceToPiece(q, at)),
        Number.POSITIVE_INFINITY,
      );
      if (d > away) {
        deepest = at;
        away = d;
      }
    }
  }
  return { deepest, away };
};

const farSide = (p: Piece, from: Point): Point | undefined => {
  if (p.kind === 'line') return undefined;
  const at = add(p.center, scale(unit(subtract(p.center, from)), p.radius));
  return distanceToPiece(p, at) < GAP_NOISE ? at : undefined;
};
