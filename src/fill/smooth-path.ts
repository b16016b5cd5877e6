/** Smooth curves through points, as lines and arcs. */

import {
  add,
  closedPath,
  cubicToArcs,
  distance,
  flatten,
  openPath,
  type Path,
  type Piece,
  type Point,
  pathLength,
  pieceDirection,
  scale,
  subtract,
  turnBetween,
} from '../geometry/index.ts';

/** Fills are stitched by hand-guided machines: curves as arcs to this (mm) are finer than any hand. */
const FILL_TOLERANCE = 0.02;

/**
 * The open curve through points: centripetal Catmull–Rom (Barry and Goldman, "A recursive evaluation
 * algorithm for a class of Catmull–Rom splines", SIGGRAPH 1988; knots by the square root of the distance,
 * which makes no loops), as biarcs.
 */
export const curveThrough = (points: readonly Point[]): Path =>
  openPath(through(points.filter((p, i) => i === 0 || distance(p, points[i - 1]!) > 1e-9)));

/** The closed curve through points, in the same way; the first point is not repeated. */
export const closedCurveThrough = (points: readonly Point[]): Path =>
  closedPath(through([...points, points[0]!], { before: points.at(-1)!, after: points[1]! }));

const through = (points: readonly Point[], beyond?: { before: Point; after: Point }): Piece[] => {
  const pieces: Piece[] = [];
  for (let i = 1; i < points.length; i++) {
    const [b, c] = [points[i - 1]!, points[i]!];
    const a = points[i - 2] ?? beyond?.before ?? subtract(scale(b, 2), c);
    const d = points[i + 1] ?? beyond?.after ?? subtract(scale(c, 2), b);
    const [t1, t2, t3] = [knot(a, b), knot(b, c), knot(c, d)];
    const handle = (p: Point, q: Point, r: Point, before: number, after: number): Point =>
      scale(
        add(
          subtract(scale(subtract(q, p), 1 / before), scale(subtract(r, p), 1 / (before + after))),
          scale(subtract(r, q), 1 / after),
        ),
        t2 / 3,
      );
    const first = add(b, handle(a, b, c, t1, t2));
    const second = subtract(c, handle(b, c, d, t2, t3));
    pieces.push(...cubicToArcs(b, first, second, c, FILL_TOLERANCE).map(straightened));
  }
  return pieces;
};

/** An arc with a larger radius (mm) is a line: centres many metres away would only make trouble for whoever draws it. */
const LARGEST_RADIUS = 2000;

const straightened = (p: Piece): Piece =>
  p.kind === 'arc' && p.radius > LARGEST_RADIUS ? { kind: 'line', from: p.from, to: p.to } : p;

const knot = (a: Point, b: Point): number => Math.sqrt(distance(a, b));

/** The same open line where it has no corner; else drawn through points smoothed over `over` mm. */
export const withoutCorners = (path: Path, over: number): Path => {
  const isSmooth = path.pieces.every((piece, i) => {
    const next = path.pieces[i + 1];
    if (!next) return true;
    return Math.abs(turnBetween(pieceDirection(piece, 1), pieceDirection(next, 0))) < LEAST_CORNER;
  });
  if (isSmooth || path.closed) return path;
  const step = over / 4;
  const points = resample(flatten(path, FILL_TOLERANCE), Math.max(5, Math.ceil(pathLength(path) / step)));
  return curveThrough(smoothed(points, over / step / 2));
};

/** A turn (radians) that shows. */
const LEAST_CORNER = 0.2;

/** Points at equal distances along a polyline, its ends included. */
export const resample = (points: readonly Point[], count: number): Point[] => {
  const along = [0];
  for (let i = 1; i < points.length; i++) along.push(along[i - 1]! + distance(points[i - 1]!, points[i]!));
  const total = along.at(-1) ?? 0;
  if (!(total > 0) || count < 2) return points.slice(0, 1);
  let k = 1;
  return Array.from({ length: count }, (_, i) => {
    const at = (total * i) / (count - 1);
    while (k < points.length - 1 && along[k]! < at) k++;
    const span = along[k]! - along[k - 1]!;
    const t = span > 0 ? Math.min(1, Math.max(0, (at - along[k - 1]!) / span)) : 0;
    const [p, q] = [points[k - 1]!, points[k]!];
    return { x: p.x + (q.x - p.x) * t, y: p.y + (q.y - p.y) * t };
  });
};

/**
 * Points smoothed along the line by a Gaussian of `sigma` steps, with the ends held: beyond an end the line
 * is carried on by its own point reflection, so that neither the end nor its direction is drawn inwards.
 */
export const smoothed = (points: readonly Point[], sigma: number): Point[] => {
  const n = points.length;
  return gaussian(points, sigma, (i) => {
    if (i < 0) return subtract(scale(points[0]!, 2), points[-i]!);
    if (i >= n) return subtract(scale(points[n - 1]!, 2), points[2 * (n - 1) - i]!);
    return points[i]!;
  });
};

/** The same round a closed line, whose first point is not repeated. */
export const smoothedRound = (points: readonly Point[], sigma: number): Point[] =>
  gaussian(points, sigma, (i) => points[(i + points.length) % points.length]!);

const gaussian = (points: readonly Point[], sigma: number, at: (i: number) => Point): Point[] => {
  const reach = Math.min(points.length - 1, Math.ceil(3 * sigma));
  if (!(reach >= 1)) return [...points];
  const weights = Array.from({ length: reach + 1 }, (_, k) => Math.exp(-(k * k) / (2 * sigma * sigma)));
  return points.map((p, i) => {
    let [x, y, sum] = [p.x * weights[0]!, p.y * weights[0]!, weights[0]!];
    for (let k = 1; k <= reach; k++) {
      const [a, b, w] = [at(i - k), at(i + k), weights[k]!];
      x += (a.x + b.x) * w;
      y += (a.y + b.y) * w;
      sum += 2 * w;
    }
    return { x: x / sum, y: y / sum };
  });
};
