/** Lines and arcs as PDF path operators; arcs become cubics. */

import { type Arc, distance, type Path, type Piece, type Point } from '../../geometry/index.ts';
import { pdfNumber } from './numbers.ts';

/** From mm, in whatever coordinates the caller draws, to points on the page. Affine, so that curves stay right. */
export type ToPage = (p: Point) => Point;

/**
 * Arcs are cut into equal parts of at most 45°, each one cubic with handles of 4/3·tan(θ/4) radii. The cubic
 * leaves the arc outward by at most 4.2e-6 radii: 0.4 µm at 100 mm, 4 µm at 1 m. (Exact at both ends and in the
 * middle. The figure is the maximum over the curve, found numerically; the well-known 2.7e-4 of a quarter circle
 * shrinks with the sixth power of the angle.)
 */
const LARGEST_PART = Math.PI / 4;

/** A full turn computed as 2π may come out a hair above eight parts. */
const PART_NOISE = 1e-9;

/** Points nearer than this (mm) are one point: a path goes on instead of starting anew. */
const SAME_POINT = 1e-6;

/**
 * An arc that is a point to the last digit that is written draws nothing and is left out where there is more of the
 * path: sines that differ in their last bit from one machine to another make such specks on one of them only.
 */
export const pathOperators = (path: Path, toPage: ToPage): string => {
  const parts: string[] = [];
  let last: Point | undefined;
  for (const piece of path.pieces) {
    const { from, to } = piece;
    const operators = piece.kind === 'line' ? `${xy(toPage(to))} l` : arcOperators(piece, toPage);
    const starts = !last || Math.abs(last.x - from.x) > SAME_POINT || Math.abs(last.y - from.y) > SAME_POINT;
    if (path.pieces.length > 1 && isSpeck(piece, operators, toPage)) {
      // Where the path would have started with it, it starts with the next piece.
      if (!starts) last = to;
      continue;
    }
    if (starts) parts.push(`${xy(toPage(from))} m`);
    parts.push(operators);
    last = to;
  }
  if (path.closed && parts.length > 0) parts.push('h');
  return parts.join('\n');
};

/** Only where the ends are near is it worth writing the point to compare. A whole circle's ends are, too. */
const isSpeck = (piece: Piece, operators: string, toPage: ToPage): boolean => {
  if (piece.kind === 'line' || distance(piece.from, piece.to) > NEAR_ENDS) return false;
  const here = xy(toPage(piece.from));
  return operators === `${here} ${here} ${here} c`;
};

/** mm; the last digit that is written is a thousandth of a point, 3.5e-4 mm. */
const NEAR_ENDS = 1e-2;

const arcOperators = (arc: Arc, toPage: ToPage): string => {
  const { center, radius, start, sweep } = arc;
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / LARGEST_PART - PART_NOISE));
  const part = sweep / count;
  const handle = (4 / 3) * Math.tan(part / 4) * radius;
  let operators = '';
  let from = arc.from;
  for (let i = 1; i <= count; i++) {
    const a = start + part * (i - 1);
    const b = start + part * i;
    const to =
      i === count ? arc.to : { x: center.x + radius * Math.cos(b), y: center.y + radius * Math.sin(b) };
    const first = { x: from.x - handle * Math.sin(a), y: from.y + handle * Math.cos(a) };
    const second = { x: to.x + handle * Math.sin(b), y: to.y - handle * Math.cos(b) };
    operators += `${i > 1 ? '\n' : ''}${xy(toPage(first))} ${xy(toPage(second))} ${xy(toPage(to))} c`;
    from = to;
  }
  return operators;
};

export const xy = (p: Point): string => `${pdfNumber(p.x)} ${pdfNumber(p.y)}`;
