/**
 * Filled areas as runs that only rise or only fall, so that "inside?" is a count of crossings (even-odd) and a
 * row of paper can be filled between its crossings. Exact for lines and arcs.
 */

import type { Path, Piece, Point } from '../geometry/index.ts';
import { pieceAt } from '../geometry/index.ts';

/** A stretch of outline along which y only grows or only shrinks. */
export interface Rise {
  readonly fromY: number;
  readonly toY: number;
  /** Where the stretch crosses the height y. */
  readonly xAt: (y: number) => number;
}

export const risesOf = (loops: readonly Path[]): Rise[] => {
  const rises: Rise[] = [];
  for (const loop of loops) {
    const first = loop.pieces[0];
    const last = loop.pieces.at(-1);
    if (!first || !last) continue;
    for (const piece of loop.pieces) rises.push(...risesOfPiece(piece));
    // A loop that was left open is filled as if it were closed, as PDF and SVG do.
    rises.push(...risesOfPiece({ kind: 'line', from: last.to, to: first.from }));
  }
  return rises;
};

const risesOfPiece = (piece: Piece): Rise[] => {
  if (piece.kind === 'line') {
    const { from, to } = piece;
    if (from.y === to.y) return [];
    const slope = (to.x - from.x) / (to.y - from.y);
    return [{ fromY: from.y, toY: to.y, xAt: (y) => from.x + (y - from.y) * slope }];
  }
  const { center, radius, start, sweep } = piece;
  const shares = [0, ...turningShares(start, sweep), 1];
  const rises: Rise[] = [];
  for (let i = 1; i < shares.length; i++) {
    const a = pieceAt(piece, shares[i - 1]!);
    const b = pieceAt(piece, shares[i]!);
    const side = Math.cos(start + (sweep * (shares[i - 1]! + shares[i]!)) / 2) < 0 ? -1 : 1;
    rises.push({
      fromY: a.y,
      toY: b.y,
      xAt: (y) => center.x + side * Math.sqrt(Math.max(0, radius * radius - (y - center.y) ** 2)),
    });
  }
  return rises;
};

/** The shares of an arc at its highest and lowest points, in order. */
const turningShares = (start: number, sweep: number): number[] => {
  if (!(Math.abs(sweep) > 0)) return [];
  const low = Math.min(start, start + sweep);
  const high = Math.max(start, start + sweep);
  const shares: number[] = [];
  // At most a full turn, so at most three highest and lowest points.
  for (let k = Math.ceil((low - Math.PI / 2) / Math.PI); k * Math.PI + Math.PI / 2 < high; k++) {
    const share = (k * Math.PI + Math.PI / 2 - start) / sweep;
    if (share > 0 && share < 1) shares.push(share);
  }
  return shares.sort((a, b) => a - b);
};

/** Where the outline crosses a height, from left to right; half-open, so that a shared end counts once. */
export const crossingsAt = (rises: readonly Rise[], y: number): number[] => {
  const xs: number[] = [];
  for (const rise of rises) if (rise.fromY <= y !== rise.toY <= y) xs.push(rise.xAt(y));
  return xs.sort((a, b) => a - b);
};

export const isInside = (rises: readonly Rise[], p: Point): boolean => {
  let crossings = 0;
  for (const rise of rises) if (rise.fromY <= p.y !== rise.toY <= p.y && rise.xAt(p.y) > p.x) crossings++;
  return crossings % 2 === 1;
};
