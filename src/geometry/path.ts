/** Paths: pieces in order, each starting where the one before ends. Lengths along a path are in mm from its start. */

import { type Box, EMPTY_BOX, joinBoxes } from './box.ts';
import { type Motion, mover } from './motion.ts';
import {
  arcOf,
  line,
  movePieceBy,
  type Piece,
  pieceAt,
  pieceBox,
  pieceDirection,
  pieceLength,
  reversePiece,
  trimPiece,
} from './piece.ts';
import { cross, type Point, scale } from './point.ts';

export interface Path {
  readonly pieces: readonly Piece[];
  /** Whether the last piece ends at the start of the first. */
  readonly closed: boolean;
}

export const openPath = (pieces: readonly Piece[]): Path => ({ pieces, closed: false });
export const closedPath = (pieces: readonly Piece[]): Path => ({ pieces, closed: true });

/** A path of straight lines through points; closed adds the line back to the first. */
export const polyline = (points: readonly Point[], closed = false): Path => {
  const pieces: Piece[] = [];
  for (let i = 1; i < points.length; i++) pieces.push({ kind: 'line', from: points[i - 1]!, to: points[i]! });
  if (closed && points.length > 1) pieces.push({ kind: 'line', from: points.at(-1)!, to: points[0]! });
  return { pieces, closed };
};

export const pathLength = (path: Path): number => path.pieces.reduce((sum, p) => sum + pieceLength(p), 0);

export const pathStart = (path: Path): Point | undefined => path.pieces[0]?.from;
export const pathEnd = (path: Path): Point | undefined => path.pieces.at(-1)?.to;

export const pathBox = (path: Path): Box =>
  path.pieces.reduce<Box>((box, p) => joinBoxes(box, pieceBox(p)), EMPTY_BOX);

export const movePath = (path: Path, m: Motion): Path => {
  const f = mover(m);
  return { pieces: path.pieces.map((p) => movePieceBy(p, m, f)), closed: path.closed };
};

/** Enlarged about the origin: a figure similar to itself, as a picture of another resolution shows it. */
export const scalePath = (path: Path, factor: number): Path => {
  const f = (p: Point): Point => scale(p, factor);
  return {
    pieces: path.pieces.map((p) =>
      p.kind === 'line'
        ? line(f(p.from), f(p.to))
        : arcOf(f(p.center), p.radius * factor, p.start, p.sweep, f(p.from), f(p.to)),
    ),
    closed: path.closed,
  };
};

export const reversePath = (path: Path): Path => ({
  pieces: path.pieces.map(reversePiece).reverse(),
  closed: path.closed,
});

/** The piece under a length along the path, with the share of that piece; lengths outside are clamped. */
export const locate = (path: Path, at: number): { index: number; share: number } | undefined => {
  const ends = endsOf(path);
  if (ends.length === 0) return undefined;
  let low = 0;
  let high = ends.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (at <= ends[middle]!) high = middle;
    else low = middle + 1;
  }
  const before = low > 0 ? ends[low - 1]! : 0;
  const length = pieceLength(path.pieces[low]!);
  const share = length > 0 ? (at - before) / length : 0;
  return { index: low, share: Math.min(1, Math.max(0, share)) };
};

/** How far along a path each of its pieces ends, worked out once: a path of many thousand pieces is asked at as many places. */
const endsOf = ({ pieces }: Path): readonly number[] => {
  const found = knownEnds.get(pieces);
  if (found) return found;
  let sum = 0;
  const ends = pieces.map((piece) => {
    sum += pieceLength(piece);
    return sum;
  });
  knownEnds.set(pieces, ends);
  return ends;
};

const knownEnds = new WeakMap<readonly Piece[], readonly number[]>();

export const pointAlong = (path: Path, at: number): Point | undefined => {
  const found = locate(path, at);
  return found && pieceAt(path.pieces[found.index]!, found.share);
};

export const directionAlong = (path: Path, at: number): Point | undefined => {
  const found = locate(path, at);
  return found && pieceDirection(path.pieces[found.index]!, found.share);
};

/**
 * The open stretch of a path between two lengths; empty when from is not before to. A crumb of a piece, at an end that
 * was meant to be a joint, is left out: it has no direction, and is no place.
 */
export const slicePath = (path: Path, from: number, to: number): Path => {
  const pieces: Piece[] = [];
  let before = 0;
  for (const p of path.pieces) {
    const length = pieceLength(p);
    const t0 = length > 0 ? (from - before) / length : 0;
    const t1 = length > 0 ? (to - before) / length : 0;
    before += length;
    const [a, b] = [Math.max(0, t0), Math.min(1, t1)];
    if (a === 0 && b === 1) pieces.push(p);
    else if ((b - a) * length > CRUMB) pieces.push(trimPiece(p, a, b));
  }
  return openPath(pieces);
};

/** What lengths (mm) added up along a path of some metres may be off by. */
const CRUMB = 1e-10;

/** Signed area (mm²) of a closed path, positive when it runs counterclockwise. Exact for lines and arcs (Green). */
export const signedArea = (path: Path): number => {
  let twice = 0;
  for (const p of path.pieces) {
    twice += cross(p.from, p.to);
    if (p.kind === 'arc') twice += p.radius * p.radius * lessItsSine(p.sweep);
  }
  return twice / 2;
};

/** a − sin a, by its series where the difference would cancel: nearly straight arcs have huge radii. */
const lessItsSine = (a: number): number =>
  Math.abs(a) < SMALL_SWEEP ? ((a * a * a) / 6) * (1 - (a * a) / 20) : a - Math.sin(a);

/** Below this (radians) the series' next term is less than 1e-11 of the whole, and the cancellation no better. */
const SMALL_SWEEP = 1e-2;

/**
 * Points along a path, no farther from it than `tolerance` (mm) in between: for what must be polygons
 * (reference libraries, fills, pictures), never for the stitched edge itself.
 */
export const flatten = (path: Path, tolerance: number): Point[] => {
  const first = pathStart(path);
  if (!first) return [];
  const points = [first];
  for (const p of path.pieces) {
    if (p.kind === 'arc') {
      const sagitta = Math.min(1, tolerance / p.radius);
      // 2·acos(1 − s), written so that a small share of a large radius does not vanish beside 1.
      const step = 4 * Math.asin(Math.sqrt(sagitta / 2));
      const parts = Math.min(MOST_PARTS, Math.max(1, Math.ceil(Math.abs(p.sweep) / step)));
      for (let i = 1; i < parts; i++) points.push(pieceAt(p, i / parts));
    }
    points.push(p.to);
  }
  return points;
};

/** An arc is flattened into at most this many chords, whatever the tolerance. */
const MOST_PARTS = 4096;

/** The radius (mm) of a path's longest arc; 0 where it has none. */
export const widestRadius = (path: Path): number => {
  let [radius, longest] = [0, 0];
  for (const p of path.pieces)
    if (p.kind === 'arc' && pieceLength(p) > longest) [radius, longest] = [p.radius, pieceLength(p)];
  return radius;
};
