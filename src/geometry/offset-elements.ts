/**
 * The raw parts of a parallel, before anything is cut: every piece moved to the left by c, and an arc of
 * radius c round every convex corner, in the order of the edge.
 */

import { type Arc, arcBetween, type Piece, pieceAt, pieceDirection, pieceLength } from './piece.ts';
import {
  add,
  angleOf,
  cross,
  distance,
  leftOf,
  middle,
  type Point,
  positiveAngle,
  scale,
  subtract,
  turnBetween,
} from './point.ts';

export interface OffsetElement {
  readonly piece: Piece;
  /** Where along the edge (mm from its start) the element's two ends touch; equal for a corner's arc. */
  readonly contactFrom: number;
  readonly contactTo: number;
  readonly kind: 'edge' | 'corner' | 'cap';
}

/**
 * Turns (radians) below this are noise of the figures in a file and of fitted curves, not corners. Were it
 * smaller, the overlap that a concave kink leaves would lie within rounding of the distance c, and nothing
 * could tell it from the stitched edge; the ends it moves, it moves by at most c·KINK/2.
 */
export const KINK = 4e-6;

/** Within this of a half turn (radians) the sign of a turn says nothing, and the pieces' bending decides. */
const HALF_TURN_NOISE = 1e-6;

/** The signed turn from one piece into the next, positive to the left; a cusp's sign follows its two branches. */
export const turnInto = (before: Piece, after: Piece): number => {
  const out = pieceDirection(before, 1);
  const angle = turnBetween(out, pieceDirection(after, 0));
  if (Math.abs(angle) < Math.PI - HALF_TURN_NOISE) return angle;
  const step = CUSP_LOOK * Math.min(pieceLength(before), pieceLength(after));
  const back = pieceAt(before, 1 - step / pieceLength(before));
  const ahead = pieceAt(after, step / pieceLength(after));
  const side = cross(out, subtract(ahead, back));
  return side > 0 ? Math.PI : -Math.PI;
};

/** How far along the shorter branch of a cusp to look for the side on which the other lies. */
const CUSP_LOOK = 0.01;

/** A piece moved to its left by c; undefined for a concave arc that the disc cannot enter (r ≤ c). */
export const offsetPiece = (p: Piece, c: number): Piece | undefined => {
  if (p.kind === 'line') {
    const by = scale(leftOf(pieceDirection(p, 0)), c);
    return { kind: 'line', from: add(p.from, by), to: add(p.to, by) };
  }
  const radius = p.sweep > 0 ? p.radius - c : p.radius + c;
  if (!(radius > 0)) return undefined;
  const grow = radius / p.radius;
  return {
    ...p,
    radius,
    from: add(p.center, scale(subtract(p.from, p.center), grow)),
    to: add(p.center, scale(subtract(p.to, p.center), grow)),
  };
};

/**
 * The elements of one walk round `pieces`, which must close. `caps` are the indices of pieces that are
 * followed by an end of the edge, round which the disc goes by half a turn.
 */
export const offsetElements = (
  pieces: readonly Piece[],
  c: number,
  caps: ReadonlySet<number>,
): readonly OffsetElement[] => {
  const count = pieces.length;
  const moved = pieces.map((p) => offsetPiece(p, c));
  const corners: (OffsetElement | undefined)[] = new Array(count).fill(undefined);
  let at = 0;
  const starts: number[] = [];
  for (let i = 0; i < count; i++) {
    starts.push(at);
    at += pieceLength(pieces[i]!);
    const next = (i + 1) % count;
    const turn = caps.has(i) ? -Math.PI : turnInto(pieces[i]!, pieces[next]!);
    if (Math.abs(turn) < KINK) {
      const before = moved[i];
      const after = moved[next];
      if (before && after) {
        const shared = middle(before.to, after.from);
        moved[i] = withEnds(before, before.from, shared);
        moved[next] = withEnds(moved[next]!, shared, moved[next]!.to);
      }
    } else if (turn < 0) {
      const vertex = pieces[i]!.to;
      const from = moved[i]?.to ?? add(vertex, scale(leftOf(pieceDirection(pieces[i]!, 1)), c));
      const to = moved[next]?.from ?? add(vertex, scale(leftOf(pieceDirection(pieces[next]!, 0)), c));
      const piece = arcBetween(vertex, from, to, false);
      corners[i] = { piece, contactFrom: at, contactTo: at, kind: caps.has(i) ? 'cap' : 'corner' };
    }
  }
  const elements: OffsetElement[] = [];
  for (let i = 0; i < count; i++) {
    const piece = moved[i];
    const from = starts[i]!;
    if (piece) elements.push({ piece, contactFrom: from, contactTo: starts[i + 1] ?? at, kind: 'edge' });
    const corner = corners[i];
    if (corner) elements.push(corner);
  }
  return elements;
};

/** The same piece with its ends moved by a hair along it. */
export const withEnds = (p: Piece, from: Point, to: Point): Piece => {
  if (p.kind === 'line') return { kind: 'line', from, to };
  const sense = Math.sign(p.sweep);
  const start = distance(from, p.from) > 0 ? nearAngle(p, from, p.start) : p.start;
  const end = distance(to, p.to) > 0 ? nearAngle(p, to, p.start + p.sweep) : p.start + p.sweep;
  const sweep = end - start;
  return { ...p, start, sweep: sense * sweep > 0 ? sweep : p.sweep, from, to };
};

/** The angle of a point on an arc, by the turn that is nearest to `near`. */
const nearAngle = (p: Arc, at: Point, near: number): number => {
  const a = angleOf(subtract(at, p.center));
  const off = positiveAngle(a - near + Math.PI) - Math.PI;
  return near + off;
};
