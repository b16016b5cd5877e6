/**
 * The raw parts of a parallel, before anything is cut: every piece moved to the left by c, and an arc of
 * radius c round every convex corner, in the order of the edge.
 */

import {
  arc,
  arcBetween,
  arcOf,
  isStraightOn,
  type Piece,
  pieceAt,
  pieceDirection,
  pieceLength,
  roundFrom,
} from './piece.ts';
import { add, cross, leftOf, scale, subtract, turnBetween } from './point.ts';
import type { Welded } from './weld.ts';

export interface OffsetElement {
  readonly piece: Piece;
  /** Where along the edge (mm from its start) the element's two ends touch; equal for a corner's arc. */
  readonly contactFrom: number;
  readonly contactTo: number;
  readonly kind: 'edge' | 'corner' | 'cap';
}

/**
 * Turns (radians) below this are noise of the figures in a file and of fitted curves, not corners; 5e-6 for
 * the usual clearance. The overlap that a concave kink φ leaves is c·φ/2 long on each side and on average
 * c·φ²/4 deep. A kink is told from a smooth joint when that is four times the rounding of a distance; below,
 * the ends are brought together, which moves them along the edge by c·φ/2 and off it by nothing to speak of.
 */
const kinkFor = (clearance: number): number => 4 * Math.sqrt(DISTANCE_NOISE / clearance);

/** Rounding of a distance, mm: a hundred times the noise of coordinates of a few metres. */
export const DISTANCE_NOISE = 1e-11;

/** Within this of a half turn (radians) the sign of a turn says nothing, and the pieces' bending decides. */
const HALF_TURN_NOISE = 1e-6;

/** The signed turn from one piece into the next, positive to the left; a cusp's sign follows its two branches. */
const turnInto = (before: Piece, after: Piece): number => {
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
const offsetPiece = (p: Piece, c: number): Piece | undefined => {
  if (p.kind === 'line') {
    const by = scale(leftOf(pieceDirection(p, 0)), c);
    return { kind: 'line', from: add(p.from, by), to: add(p.to, by) };
  }
  const outward = p.sweep > 0 ? -c : c;
  const radius = p.radius + outward;
  if (!(radius > 0)) return undefined;
  // Moved out along the spoke between them, the last digits of a tiny arc's ends and centre would grow to nanometres.
  if (p.radius < TINY * c) return arc(p.center, radius, p.start, p.sweep);
  // From the end itself, not from the centre, which may be kilometres away.
  const by = outward / p.radius;
  const { center, from, to } = p;
  return arcOf(
    center,
    radius,
    p.start,
    p.sweep,
    { x: from.x + (from.x - center.x) * by, y: from.y + (from.y - center.y) * by },
    { x: to.x + (to.x - center.x) * by, y: to.y + (to.y - center.y) * by },
  );
};

/** Arcs of radii below this share of the clearance are moved by their angles. */
const TINY = 1e-2;

/**
 * The elements of one walk that comes back to where it starts. `caps` are the indices of pieces that are
 * followed by an end of the edge, round which the disc goes by half a turn.
 */
export const offsetElements = (
  walk: readonly Welded[],
  c: number,
  caps: ReadonlySet<number>,
): readonly OffsetElement[] => {
  const pieces = walk.map((w) => w.piece);
  const count = pieces.length;
  const kink = kinkFor(c);
  // The turn (radians) below which a kink leaves open less than can be told.
  const straight = Math.min(kink, (2 * DISTANCE_NOISE) / c);
  const moved = pieces.map((p) => offsetPiece(p, c));
  const isRoomy = moved.map((p) => p !== undefined && hasRoom(p, DISTANCE_NOISE));
  const corners: (OffsetElement | undefined)[] = new Array(count).fill(undefined);
  for (let i = 0; i < count; i++) {
    const next = (i + 1) % count;
    const before = moved[i];
    const after = moved[next];
    // Most joints are smooth, and need no angle.
    if (isRoomy[i] && isRoomy[next] && !caps.has(i) && isStraightOn(pieces[i]!, pieces[next]!, straight))
      continue;
    const turn = caps.has(i) ? -Math.PI : turnInto(pieces[i]!, pieces[next]!);
    // Where one side is not entered: a turn of nothing has no arc, which by rounding might go all the way round.
    if (Math.abs(turn) <= straight && !(before && after)) continue;
    // Half of what a kink leaves open or doubled: by so much each side is led on, or held back.
    const share = (-turn * c) / 2;
    const isKink = Math.abs(turn) < kink && before && after;
    if (isKink && hasRoom(before, share) && hasRoom(after, share)) {
      if (!(Math.abs(share) > DISTANCE_NOISE)) continue;
      moved[i] = lengthened(before, 0, share);
      moved[next] = lengthened(moved[next]!, share, 0);
    } else if (isKink && share < 0 && isSpeck(before, share) && hasRoom(after, 2 * share)) {
      // A speck is too short to be held back: the other side gives all that is doubled.
      moved[next] = lengthened(after, 2 * share, 0);
    } else if (isKink && share < 0 && isSpeck(after, share) && hasRoom(before, 2 * share)) {
      moved[i] = lengthened(before, 0, 2 * share);
    } else if (turn < 0) {
      const vertex = pieces[i]!.to;
      const from = before?.to ?? add(vertex, scale(leftOf(pieceDirection(pieces[i]!, 1)), c));
      const to = after?.from ?? add(vertex, scale(leftOf(pieceDirection(pieces[next]!, 0)), c));
      const piece = arcBetween(vertex, from, to, false);
      const at = walk[i]!.to;
      corners[i] = { piece, contactFrom: at, contactTo: at, kind: caps.has(i) ? 'cap' : 'corner' };
    }
  }
  const elements: OffsetElement[] = [];
  for (let i = 0; i < count; i++) {
    const piece = moved[i];
    const { from, to } = walk[i]!;
    if (piece) elements.push({ piece, contactFrom: from, contactTo: to, kind: 'edge' });
    const corner = corners[i];
    if (corner) elements.push(corner);
  }
  return elements;
};

/** Whether a piece is long and wide enough to be lengthened or shortened by a hair. */
const hasRoom = (p: Piece, by: number): boolean => Math.abs(by) * ROOM < pieceLength(p) && isStraight(p, by);

/** Whether a piece has no room for its shortness alone, and goes straight on as far as it goes. */
const isSpeck = (p: Piece, by: number): boolean =>
  !(Math.abs(by) * ROOM < pieceLength(p)) && isStraight(p, by);

/** Whether a piece bends away from its tangent, over a hair of its length, by no more than a kink that is none may be deep. */
const isStraight = (p: Piece, by: number): boolean =>
  p.kind === 'line' || (Math.abs(by) * ROOM < p.radius && by * by < BEND * p.radius);

/** A kink beside a piece shorter than this many times what it leaves open counts as a corner. */
const ROOM = 8;

/** A chord s rises s²/2r from its tangent: this much times r is four times the rounding of a distance. */
const BEND = 8 * DISTANCE_NOISE;

/** A piece led on along its own line or circle by so much (mm) before its start and after its end. */
const lengthened = (p: Piece, before: number, after: number): Piece => {
  if (p.kind === 'line') {
    const along = pieceDirection(p, 0);
    return { kind: 'line', from: add(p.from, scale(along, -before)), to: add(p.to, scale(along, after)) };
  }
  const sense = Math.sign(p.sweep);
  const start = p.start - (sense * before) / p.radius;
  const sweep = p.sweep + (sense * (before + after)) / p.radius;
  const from = before === 0 ? p.from : roundFrom(p.from, p.start, (-sense * before) / p.radius, p.radius);
  const to = after === 0 ? p.to : roundFrom(p.to, p.start + p.sweep, (sense * after) / p.radius, p.radius);
  return arcOf(p.center, p.radius, start, sweep, from, to);
};
