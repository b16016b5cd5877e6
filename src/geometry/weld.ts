/**
 * An edge as the foot's way is worked out on it: every piece starts at the very point where the one before
 * ends, and none is too short to have a direction.
 *
 * Figures in files and sums of rounded steps leave repeated points, pieces of a few atoms' length that point
 * anywhere, and gaps as small. Taken at its word such a piece would be a corner, with an arc of the full
 * clearance round it. Here it is left out, and the piece after it is led from its near end, or where it is so short
 * that this would turn it, moved there as it is; a gap is closed in the same way. No point of the edge moves by more than the gap that is allowed.
 */

import { type Piece, pieceLength, roundFrom, trimPiece } from './piece.ts';
import { add, angleOf, distance, norm, type Point, polar, subtract } from './point.ts';

export interface Welded {
  readonly piece: Piece;
  /** The number of the piece that it comes from. */
  readonly index: number;
  /** Where the piece lies on the edge as it was given, mm from its start. */
  readonly from: number;
  readonly to: number;
}

/** Pieces shorter than this (mm) say nothing about a direction; a tenth of the accuracy that is promised. */
export const SPECK = 1e-7;

/** Pieces of this length (mm) and more turn by no more than 1e-7 when one end is led aside by a speck. */
const STEADY = 1;

/** An arc whose parts do not agree to this (mm) is drawn anew: a tenth of what distances are told apart by. */
const AGREEMENT = 1e-12;

/** The pieces worth rolling along, in order; a closed edge stays closed. */
export const weld = (pieces: readonly Piece[], closed: boolean): readonly Welded[] => {
  const kept: Welded[] = [];
  let at = 0;
  for (const [index, piece] of pieces.entries()) {
    const length = pieceLength(piece);
    const start = kept.at(-1)?.piece.to ?? piece.from;
    const whole = { piece, index, from: at, to: at + length };
    if (length > SPECK && isSame(start, piece.from) && agrees(piece)) kept.push(whole);
    // Many specks in a row do add up: what counts is how far the last one ends from what was kept.
    else if (length > SPECK || distance(start, piece.to) > SPECK) {
      const [first, ...rest] = agrees(piece) ? [whole] : redrawn(whole);
      kept.push(...ledFrom(first!, start), ...rest);
    }
    at += length;
  }
  const last = kept.pop();
  if (!last) return kept;
  // An open edge ends, as it starts, with a piece worth rolling along: led to the far end of a speck, a piece hardly
  // longer than that would turn, and with it the place where the foot must stop.
  return closed ? [...kept, ...ledTo(last, (kept[0] ?? last).piece.from)] : [...kept, last];
};

/**
 * An arc says where it ends in two ways, by its sweep and by its last point. Where the two differ by more than
 * rounding, the last point holds: all that follows relies on both.
 */
const agrees = (piece: Piece): boolean => {
  if (piece.kind === 'line') return true;
  const { from, to, center, radius, start, sweep } = piece;
  if (!(distance(roundFrom(from, start, sweep, radius), to) <= AGREEMENT)) return false;
  return Math.abs(distance(from, center) - radius) <= 4 * Number.EPSILON * radius;
};

const redrawn = (w: Welded): readonly Welded[] =>
  bendable(w).map((part) => ({ ...part, piece: between(part.piece, part.piece.from, part.piece.to) }));

const isSame = (a: Point, b: Point): boolean => a.x === b.x && a.y === b.y;

const ledFrom = (w: Welded, from: Point): readonly Welded[] => {
  if (isSame(w.piece.from, from)) return [w];
  if (pieceLength(w.piece) < STEADY && pieceLength(w.piece) > SPECK && distance(w.piece.from, from) <= SPECK)
    return movedTo(w, from);
  const [first, ...rest] = bendable(w);
  return [{ ...first!, piece: between(first!.piece, from, first!.piece.to) }, ...rest];
};

/**
 * A short piece moved as it is. Led from a point 1e-9 mm aside, a millionth of a millimetre at the end of an edge would
 * turn by a thousandth, and the foot would stop a thousandth of the clearance too early.
 */
const movedTo = (w: Welded, from: Point): readonly Welded[] => {
  const by = subtract(from, w.piece.from);
  let at = from;
  return bendable(w).map((part) => {
    const to = add(part.piece.to, by);
    const piece = between(part.piece, at, to);
    at = to;
    return { ...part, piece };
  });
};

const ledTo = (w: Welded, to: Point): readonly Welded[] => {
  if (isSame(w.piece.to, to)) return [w];
  const parts = bendable(w);
  const last = parts.at(-1)!;
  return [...parts.slice(0, -1), { ...last, piece: between(last.piece, last.piece.from, to) }];
};

/** An arc beyond half a turn in two halves: its chord is too short to be led anywhere without changing it. */
const bendable = (w: Welded): readonly Welded[] => {
  const { piece, index, from, to } = w;
  if (piece.kind === 'line' || !(Math.abs(piece.sweep) > Math.PI)) return [w];
  const middle = (from + to) / 2;
  return [
    { piece: trimPiece(piece, 0, 0.5), index, from, to: middle },
    { piece: trimPiece(piece, 0.5, 1), index, from: middle, to },
  ];
};

/** A piece of the same shape (an arc of the same sweep) between ends a hair from its own. */
const between = (p: Piece, from: Point, to: Point): Piece => {
  const chord = subtract(to, from);
  const half = p.kind === 'arc' ? p.sweep / 2 : 0;
  const radius = norm(chord) / (2 * Math.abs(Math.sin(half)));
  if (p.kind === 'line' || !(radius < MOST_RADIUS)) return { kind: 'line', from, to };
  // The tangent at the start lies half the sweep before the chord; the centre, a quarter turn from it.
  const start = angleOf(chord) - half - (Math.sign(half) * Math.PI) / 2;
  return { ...p, center: subtract(from, polar(start, radius)), radius, start, from, to };
};

/** A longer radius (mm) belongs to an arc that rises less than 1e-9 mm over a metre. */
const MOST_RADIUS = 1e14;
