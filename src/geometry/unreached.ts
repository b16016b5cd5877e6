/** The parts of an edge that a round foot cannot touch, and how far from them the stitching stays. */

import { distanceToPiece } from './nearness.ts';
import { openPath, type Path, pathLength, slicePath } from './path.ts';
import { type Piece, pieceAt, pieceLength } from './piece.ts';
import { add, distance, type Point, scale, subtract, unit } from './point.ts';

/** A stretch of edge, as lengths (mm) from its start; a corner that the foot rolls round has from = to. */
export interface Contact {
  readonly from: number;
  readonly to: number;
}

/** Where it goes over the start of a closed edge, `to` is counted on beyond the edge's length. */
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

/** A place that stays farther from the stitching than the clearance by less than this (mm) is touched. */
const TOUCHED = 1e-6;

export const findUnreached = (
  path: Path,
  contacts: readonly Contact[],
  edge: Path,
  edgeLength: number,
  clearance: number,
): readonly Unreached[] => {
  const found: Unreached[] = [];
  const note = (from: number, to: number, turn: Point): void => {
    if (!(to - from > GAP_NOISE)) return;
    // On a closed edge a stretch may run on past the start.
    const beyond = to > edgeLength ? slicePath(edge, 0, to - edgeLength).pieces : [];
    const stretch = openPath([...slicePath(edge, from, to).pieces, ...beyond]);
    const { deepest, away } = farthest(stretch, path, turn);
    if (away > clearance + TOUCHED) found.push({ from, to, turn, deepest, away });
  };
  const count = contacts.length;
  const firstPiece = path.pieces[0];
  const lastPiece = path.pieces[count - 1];
  if (!firstPiece || !lastPiece) return found;
  if (!edge.closed) note(0, contacts[0]!.from, firstPiece.from);
  for (let i = 1; i < count; i++) note(contacts[i - 1]!.to, contacts[i]!.from, path.pieces[i]!.from);
  if (!edge.closed) note(contacts[count - 1]!.to, edgeLength, lastPiece.to);
  else note(contacts[count - 1]!.to, edgeLength + contacts[0]!.from, firstPiece.from);
  return found;
};

/** A place on a stretch of edge, and how far (mm) from it the stitching stays. */
interface Place {
  readonly deepest: Point;
  readonly away: number;
}

/**
 * The place on the stretch that stays farthest from the stitching. No place is farther from the stitching than
 * from the turn, which is on it. So where the place farthest from the turn has nothing nearer than the turn, as
 * in a notch, that is the answer; elsewhere (an end that the foot cannot come to) it is searched for.
 */
const farthest = (stretch: Path, path: Path, turn: Point): Place => {
  const distanceToPath = (at: Point): number => {
    let least = Number.POSITIVE_INFINITY;
    for (const q of path.pieces) least = Math.min(least, distanceToPiece(q, at));
    return least;
  };
  let bound: Place = { deepest: turn, away: 0 };
  for (const p of stretch.pieces) {
    for (const at of [p.from, p.to, farSide(p, turn)]) {
      if (at && distance(at, turn) > bound.away) bound = { deepest: at, away: distance(at, turn) };
    }
  }
  const { deepest } = bound;
  const away = distanceToPath(deepest);
  if (away >= bound.away - GAP_NOISE) return { deepest, away };
  return searched(stretch, distanceToPath, { deepest, away });
};

/** Samples for a whole stretch; every rise between them is followed to its top. */
const SAMPLES = 64;
const REFINEMENTS = 30;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

const searched = (stretch: Path, distanceToPath: (at: Point) => number, least: Place): Place => {
  const length = pathLength(stretch);
  let best = least;
  for (const piece of stretch.pieces) {
    const parts = Math.max(2, Math.round((SAMPLES * pieceLength(piece)) / length));
    const away = Array.from({ length: parts + 1 }, (_, k) => distanceToPath(pieceAt(piece, k / parts)));
    for (let k = 0; k <= parts; k++) {
      const here = away[k]!;
      if (here < (away[k - 1] ?? 0) || here < (away[k + 1] ?? 0)) continue;
      const top = topBetween(
        piece,
        Math.max(0, k - 1) / parts,
        Math.min(parts, k + 1) / parts,
        distanceToPath,
      );
      const found = top.away > here ? top : { deepest: pieceAt(piece, k / parts), away: here };
      if (found.away > best.away) best = found;
    }
  }
  return best;
};

/** Golden-section search between two shares of a piece. */
const topBetween = (piece: Piece, from: number, to: number, distanceToPath: (at: Point) => number): Place => {
  let low = from;
  let high = to;
  for (let k = 0; k < REFINEMENTS; k++) {
    const a = high - (high - low) * GOLDEN;
    const b = low + (high - low) * GOLDEN;
    if (distanceToPath(pieceAt(piece, a)) > distanceToPath(pieceAt(piece, b))) high = b;
    else low = a;
  }
  const deepest = pieceAt(piece, (low + high) / 2);
  return { deepest, away: distanceToPath(deepest) };
};

/** The point of an arc's circle opposite to a point, where it is on the arc. */
const farSide = (p: Piece, from: Point): Point | undefined => {
  // A speck left over where a stretch was cut out has no direction that could be told from its opposite.
  if (p.kind === 'line' || !(p.radius * Math.abs(p.sweep) > GAP_NOISE)) return undefined;
  const at = add(p.center, scale(unit(subtract(p.center, from)), p.radius));
  return distanceToPiece(p, at) < GAP_NOISE ? at : undefined;
};
