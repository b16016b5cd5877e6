/**
 * Breaks: where one section of the working edge ends and the next begins. Corners are found by themselves;
 * a name that stands at a corner names it, elsewhere it marks a place on a smooth stretch.
 */

import {
  cross,
  type Path,
  type Piece,
  type Point,
  pieceAt,
  pieceDirection,
  pieceLength,
  pointAlong,
  subtract,
  turnBetween,
} from '../geometry/index.ts';
import type { Break } from './template.ts';

/** A name at a length along the edge (mm). */
export interface NamedPlace {
  readonly at: number;
  readonly name: string;
}

/**
 * The edge has a corner where it turns by more than this (radians). Two arcs that were meant to meet smoothly,
 * measured to 1/32 in over chords of 2 in, may meet at 4°; a corner that a finger can feel turns by more.
 */
export const CORNER_TURN = (10 * Math.PI) / 180;

/** Nearer than this (radians) to turning straight back, rounding alone decides the sign of the turn. */
const STRAIGHT_BACK = 1e-6;

/** A name this near to a corner (mm) names the corner. */
const SAME_PLACE = 1e-6;

export const findBreaks = (edge: Path, named: readonly NamedPlace[]): readonly Break[] => {
  const breaks: Break[] = [];
  const left = [...named];
  let at = 0;
  for (let i = 1; i < edge.pieces.length; i++) {
    const before = edge.pieces[i - 1]!;
    const after = edge.pieces[i]!;
    at += pieceLength(before);
    const kind = cornerKind(before, after);
    if (!kind) continue;
    const index = left.findIndex((n) => Math.abs(n.at - at) <= SAME_PLACE);
    const name = index < 0 ? undefined : left.splice(index, 1)[0]!.name;
    breaks.push({ at, point: after.from, kind, name });
  }
  for (const n of left) {
    const point = pointAlong(edge, n.at);
    if (point) breaks.push({ at: n.at, point, kind: 'mark', name: n.name });
  }
  return breaks.sort((a, b) => a.at - b.at);
};

/** The foot is on the left: an edge that turns left turns towards it, and leaves a notch. */
const cornerKind = (before: Piece, after: Piece): 'notch' | 'corner' | undefined => {
  const turn = turnBetween(pieceDirection(before, 1), pieceDirection(after, 0));
  if (!(Math.abs(turn) > CORNER_TURN)) return undefined;
  if (Math.PI - Math.abs(turn) > STRAIGHT_BACK) return turn > 0 ? 'notch' : 'corner';
  return backKind(before, after);
};

/**
 * Where the edge turns straight back, as between two half circles, the bends beside the corner tell on which
 * side the slit is. On the left it is a notch: seen from the corner, the way in lies left of the way out.
 */
const backKind = (before: Piece, after: Piece): 'notch' | 'corner' => {
  const step = Math.min(pieceLength(before), pieceLength(after)) / 4;
  const corner: Point = after.from;
  const out = subtract(pieceAt(after, step / pieceLength(after)), corner);
  const back = subtract(pieceAt(before, 1 - step / pieceLength(before)), corner);
  return cross(out, back) >= 0 ? 'notch' : 'corner';
};
