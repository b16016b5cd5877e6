/**
 * An edge as the foot's way is worked out on it: every piece starts at the very point where the one before
 * ends, and none is too short to have a direction.
 *
 * Figures in files and sums of rounded steps leave repeated points, pieces of a few atoms' length that point
 * anywhere, and gaps as small. Taken at its word such a piece would be a corner, with an arc of the full
 * clearance round it. Here it is left out, and its neighbour is led to its far end; a gap is closed in the same
 * way. No point of the edge moves by more than the gap that is allowed.
 */

import { type Piece, pieceLength, trimPiece } from './piece.ts';
import { angleOf, distance, type Point, scale, subtract, turnBetween } from './point.ts';

export interface Welded {
  readonly piece: Piece;
  /** Where the piece lies on the edge as it was given, mm from its start. */
  readonly from: number;
  readonly to: number;
}

/** Pieces shorter than this (mm) say nothing about a direction; a hundredth of the accuracy that is promised. */
export const SPECK = 1e-8;

/** The pieces worth rolling along, in order; a closed edge stays closed. */
export const weld = (pieces: readonly Piece[], closed: boolean): readonly Welded[] => {
  const kept: Welded[] = [];
  let at = 0;
  for (const piece of pieces) {
    const length = pieceLength(piece);
    const start = kept.at(-1)?.piece.to ?? piece.from;
    // Many specks in a row do add up: what counts is how far the last one ends from what was kept.
    const isSpeck = !(length > SPECK) && !(distance(start, piece.to) > SPECK);
    if (!isSpeck) kept.push(...ledFrom({ piece, from: at, to: at + length }, start));
    at += length;
  }
  const last = kept.pop();
  if (!last) return kept;
  const end = closed ? (kept[0] ?? last).piece.from : pieces.at(-1)!.to;
  return [...kept, ...ledTo(last, end)];
};

const isSame = (a: Point, b: Point): boolean => a.x === b.x && a.y === b.y;

const ledFrom = (w: Welded, from: Point): readonly Welded[] => {
  if (isSame(w.piece.from, from)) return [w];
  const [first, ...rest] = bendable(w);
  return [{ ...first!, piece: between(first!.piece, from, first!.piece.to) }, ...rest];
};

const ledTo = (w: Welded, to: Point): readonly Welded[] => {
  if (isSame(w.piece.to, to)) return [w];
  const parts = bendable(w);
  const last = parts.at(-1)!;
  return [...parts.slice(0, -1), { ...last, piece: between(last.piece, last.piece.from, to) }];
};

/** An arc beyond half a turn in two halves: its chord is too short to be led anywhere without changing it. */
const bendable = (w: Welded): readonly Welded[] => {
  const { piece, from, to } = w;
  if (piece.kind === 'line' || !(Math.abs(piece.sweep) > Math.PI)) return [w];
  const middle = (from + to) / 2;
  return [
    { piece: trimPiece(piece, 0, 0.5), from, to: middle },
    { piece: trimPiece(piece, 0.5, 1), from: middle, to },
  ];
};

/** A piece of the same shape (an arc of the same sweep) between ends a hair from its own. */
const between = (p: Piece, from: Point, to: Point): Piece => {
  if (p.kind === 'line') return { kind: 'line', from, to };
  const old = subtract(p.to, p.from);
  const now = subtract(to, from);
  const turn = turnBetween(old, now);
  const size = distance(from, to) / distance(p.from, p.to);
  if (!(Math.abs(size - 1) < 0.5)) return { kind: 'line', from, to };
  const spoke = scale(subtract(p.center, p.from), size);
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const center = {
    x: from.x + spoke.x * cos - spoke.y * sin,
    y: from.y + spoke.x * sin + spoke.y * cos,
  };
  return { ...p, center, radius: p.radius * size, start: angleOf(subtract(from, center)), from, to };
};
