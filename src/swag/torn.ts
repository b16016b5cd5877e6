/**
 * Lines over a join that stands open in the drawing, because opposite sides differ (design.ts). Drawn, they go level
 * over it; on the side by itself, which has no such gap, they meet.
 */

import {
  crossings,
  distance,
  line,
  movePath,
  openPath,
  type Path,
  type Piece,
  type Point,
  pathLength,
  shift,
  trimPiece,
} from '../geometry/index.ts';
import { type PlacedSide, repeatMarks } from './design.ts';

/** Where it begins, mm along the run as drawn, and how wide it is (mm). */
export interface Torn {
  readonly at: number;
  readonly by: number;
}

/** Undefined where none of a side's joins stands open. */
export const tearAt = (side: PlacedSide): Torn | undefined => {
  const { tear, places } = side;
  if (!tear || tear.after >= places) return undefined;
  return { at: repeatMarks(side, tear.after).join - tear.by, by: tear.by };
};

/** Whether a place of the run's frame lies on the near side of it. */
export const isAt = ({ x }: Point, at: number): boolean => Math.abs(x - at) < ONE_PLACE;

/** Ends nearer than this (mm) are one place. */
const ONE_PLACE = 1e-6;

/** A path of a side's own length, drawn with the gap: beyond it is moved on, and level over it. */
export const tornPath = (path: Path, { at, by }: Torn): Path =>
  remade(path, [at], (part) => {
    const over = middleX(part) > at;
    return over ? movePath(openPath([part]), shift(by, 0)).pieces[0]! : part;
  });

/** A path of a side as drawn, without the gap: what lies in it is left out, and beyond it is moved back. */
export const mendedPath = (path: Path, { at, by }: Torn): Path =>
  remade(path, [at, at + by], (part) => {
    const x = middleX(part);
    if (x < at) return part;
    return x > at + by ? movePath(openPath([part]), shift(-by, 0)).pieces[0]! : undefined;
  });

const middleX = ({ from, to }: Piece): number => (from.x + to.x) / 2;

/** A path whose parts, cut at upright lines, are each put elsewhere or left out; what is then apart is joined straight. */
const remade = (
  { pieces, closed }: Path,
  cuts: readonly number[],
  put: (part: Piece) => Piece | undefined,
): Path => {
  const found: Piece[] = [];
  const join = (from: Point, to: Point): void => {
    if (distance(from, to) > ONE_PLACE) found.push(line(from, to));
  };
  for (const piece of pieces)
    for (const part of partedAt(piece, cuts)) {
      const laid = put(part);
      if (!laid) continue;
      const before = found.at(-1);
      if (before) join(before.to, laid.from);
      found.push(laid);
    }
  const [first, last] = [found[0], found.at(-1)];
  if (closed && first && last) join(last.to, first.from);
  return { pieces: found, closed };
};

const partedAt = (piece: Piece, cuts: readonly number[]): readonly Piece[] => {
  const reach = pathLength(openPath([piece])) + 1;
  const shares = cuts
    .flatMap((x) =>
      crossings(piece, line({ x, y: piece.from.y - reach }, { x, y: piece.from.y + reach })).map((c) => c.a),
    )
    .filter((t) => t > LEAST_SHARE && t < 1 - LEAST_SHARE)
    .toSorted((a, b) => a - b);
  if (shares.length === 0) return [piece];
  return [...shares, 1].map((to, i) => trimPiece(piece, i === 0 ? 0 : shares[i - 1]!, to));
};

/** Less of a piece is rounding at its end. */
const LEAST_SHARE = 1e-9;
