/**
 * Slow and plain checks of a stitched edge, without the code under test: distances from angles and centres
 * alone, and what a disc can reach by flooding a grid of distances.
 */

import type { Piece } from '../../src/geometry/piece.ts';
import type { Point } from '../../src/geometry/point.ts';
import { distanceTo, pointOn } from './curve-helpers.ts';

export const lengthOf = (p: Piece): number =>
  p.kind === 'line' ? Math.hypot(p.to.x - p.from.x, p.to.y - p.from.y) : Math.abs(p.sweep) * p.radius;

export const totalLength = (pieces: readonly Piece[]): number => pieces.reduce((s, p) => s + lengthOf(p), 0);

export const distanceToPieces = (q: Point, pieces: readonly Piece[]): number => {
  let least = Number.POSITIVE_INFINITY;
  for (const p of pieces) least = Math.min(least, distanceTo(q, p));
  return least;
};

/** Points along every piece, ends included, no farther apart than `step` (mm), at least five a piece. */
export const samplesOf = (pieces: readonly Piece[], step: number): Point[] =>
  pieces.flatMap((p) => {
    const parts = Math.max(4, Math.ceil(lengthOf(p) / step));
    return Array.from({ length: parts + 1 }, (_, i) => pointOn(p, i / parts));
  });

/** The largest | dist(point, edge) − c | of points between the vertices of a path, as well as at them. */
export const deviation = (path: readonly Piece[], edge: readonly Piece[], c: number, step = 0.2): number => {
  let worst = 0;
  for (const q of samplesOf(path, step)) {
    const off = Math.abs(distanceToPieces(q, edge) - c);
    if (!(off <= worst)) worst = off;
  }
  return worst;
};

/** The widest gap between a piece's end and the next one's start, by their angles. */
export const widestGap = (path: readonly Piece[], closed = false): number => {
  let widest = 0;
  for (let i = closed ? 0 : 1; i < path.length; i++) {
    const a = pointOn(path.at(i - 1)!, 1);
    const b = pointOn(path[i]!, 0);
    widest = Math.max(widest, Math.hypot(a.x - b.x, a.y - b.y));
  }
  return widest;
};

/** Shoelace and circle segments: the area that a closed path goes round counterclockwise. */
export const areaOf = (path: readonly Piece[]): number => {
  let twice = 0;
  for (const p of path) {
    const [a, b] = [pointOn(p, 0), pointOn(p, 1)];
    twice += a.x * b.y - a.y * b.x;
    if (p.kind === 'arc') twice += p.radius ** 2 * (p.sweep - Math.sin(p.sweep));
  }
  return twice / 2;
};

const directionOn = (p: Piece, t: number): Point => {
  if (p.kind === 'line') {
    const l = lengthOf(p);
    return { x: (p.to.x - p.from.x) / l, y: (p.to.y - p.from.y) / l };
  }
  const a = p.start + t * p.sweep;
  const s = Math.sign(p.sweep);
  return { x: -Math.sin(a) * s, y: Math.cos(a) * s };
};

/** Where two chords of a finely sampled path cross, if anywhere. */
export const selfCrossing = (path: readonly Piece[], closed = false, step = 0.1): Point | undefined => {
  const points: Point[] = [];
  path.forEach((p, i) => {
    const parts = Math.max(8, Math.ceil(lengthOf(p) / step));
    for (let k = i === 0 ? 0 : 1; k <= parts; k++) points.push(pointOn(p, k / parts));
  });
  const count = points.length - 1;
  const leftEnd = (i: number): number => Math.min(points[i]!.x, points[i + 1]!.x);
  const order = Array.from({ length: count }, (_, i) => i).sort((i, j) => leftEnd(i) - leftEnd(j));
  const side = (a: Point, b: Point, q: Point): number =>
    (b.x - a.x) * (q.y - a.y) - (b.y - a.y) * (q.x - a.x);
  const parts = (a: number, b: number): boolean =>
    (a > ON_LINE && b < -ON_LINE) || (a < -ON_LINE && b > ON_LINE);
  let active: number[] = [];
  for (const i of order) {
    const [a, b] = [points[i]!, points[i + 1]!];
    active = active.filter((j) => Math.max(points[j]!.x, points[j + 1]!.x) >= Math.min(a.x, b.x));
    for (const j of active) {
      if (Math.abs(i - j) < 2 || (closed && Math.abs(i - j) === count - 1)) continue;
      const [p, q] = [points[j]!, points[j + 1]!];
      if (Math.max(p.y, q.y) < Math.min(a.y, b.y) || Math.min(p.y, q.y) > Math.max(a.y, b.y)) continue;
      if (parts(side(a, b, p), side(a, b, q)) && parts(side(p, q, a), side(p, q, b))) return a;
    }
    active.push(i);
  }
  return undefined;
};

/** Twice the area (mm²) of a triangle that is a line as far as rounding can tell. */
const ON_LINE = 1e-12;

/**
 * A point on a piece from the piece's own start. From the centre of a nearly straight arc, kilometres away, it would be
 * known to a nanometre only, which is enough to lay a disc beside a point that blocks its way.
 */
const contactOn = (p: Piece, t: number): Point => {
  if (p.kind === 'line') return pointOn(p, t);
  const half = (t * p.sweep) / 2;
  const chord = 2 * p.radius * Math.sin(half);
  const heading = p.start + half + Math.PI / 2;
  return { x: p.from.x + chord * Math.cos(heading), y: p.from.y + chord * Math.sin(heading) };
};

interface Flood {
  /** Centres of cells from which a disc surely (or possibly) gets outside, near a point. */
  readonly sure: (p: Point, within: number) => Point[];
  readonly possible: (p: Point, within: number) => Point[];
}

/** What a disc of radius c reaches from outside, on a grid of pitch h: too strict and too lax by a cell. */
const floodFromOutside = (edge: readonly Piece[], c: number, h: number): Flood => {
  const points = samplesOf(edge, h);
  const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
  const rim = c + 4 * h;
  const [x0, y0] = [Math.min(...xs) - rim, Math.min(...ys) - rim];
  const wide = Math.ceil((Math.max(...xs) + rim - x0) / h) + 1;
  const high = Math.ceil((Math.max(...ys) + rim - y0) / h) + 1;
  const at = (i: number, j: number): Point => ({ x: x0 + i * h, y: y0 + j * h });
  const away = new Float64Array(wide * high);
  for (let j = 0; j < high; j++)
    for (let i = 0; i < wide; i++) away[j * wide + i] = distanceToPieces(at(i, j), edge);
  const flood = (limit: number): Uint8Array => {
    const seen = new Uint8Array(wide * high);
    const stack = [0];
    seen[0] = 1;
    while (stack.length > 0) {
      const k = stack.pop()!;
      const i = k % wide;
      const j = (k - i) / wide;
      for (const [u, v] of [
        [i - 1, j],
        [i + 1, j],
        [i, j - 1],
        [i, j + 1],
      ] as const) {
        const m = v * wide + u;
        if (u < 0 || v < 0 || u >= wide || v >= high || seen[m] || !(away[m]! >= limit)) continue;
        seen[m] = 1;
        stack.push(m);
      }
    }
    return seen;
  };
  const lookup =
    (seen: Uint8Array) =>
    (p: Point, within: number): Point[] => {
      const found: Point[] = [];
      const [i0, i1] = [Math.floor((p.x - within - x0) / h), Math.ceil((p.x + within - x0) / h)];
      const [j0, j1] = [Math.floor((p.y - within - y0) / h), Math.ceil((p.y + within - y0) / h)];
      for (let j = Math.max(0, j0); j <= Math.min(high - 1, j1); j++)
        for (let i = Math.max(0, i0); i <= Math.min(wide - 1, i1); i++)
          if (seen[j * wide + i]) found.push(at(i, j));
      return found;
    };
  // Between two neighbouring cells the distance falls by at most half a pitch below the smaller one.
  return { sure: lookup(flood(c + h / 2)), possible: lookup(flood(c - h)) };
};

/** A centre of the disc, and the pieces that it was laid on: those it touches, however the figures round. */
interface Centre {
  readonly at: Point;
  readonly on: readonly Piece[];
}

/** Where the disc's centre would be at contacts along the left side of an edge, free or not. */
const centresAlong = (edge: readonly Piece[], closed: boolean, c: number, step: number): Centre[] => {
  const centres: Centre[] = [];
  for (const p of edge) {
    const parts = Math.max(3, Math.ceil(lengthOf(p) / step));
    for (let i = 0; i <= parts; i++) {
      const q = contactOn(p, i / parts);
      const d = directionOn(p, i / parts);
      centres.push({ at: { x: q.x - d.y * c, y: q.y + d.x * c }, on: [p] });
    }
  }
  for (let i = closed ? 0 : 1; i < edge.length; i++) {
    const [before, after] = [edge.at(i - 1)!, edge[i]!];
    const u = directionOn(before, 1);
    const v = directionOn(after, 0);
    const turn = Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y);
    if (!(turn < -VISIBLE_TURN)) continue;
    // The sign of a half turn is rounding: where the edge goes back on its left, the disc rolls round that point on the
    // other side.
    if (turn < VISIBLE_TURN - Math.PI && !goesBackOnRight(before, after, u)) continue;
    const q = contactOn(after, 0);
    const parts = 1 + Math.ceil((-turn * c) / step);
    for (let k = 0; k <= parts; k++) {
      const a = Math.atan2(u.x, -u.y) + (turn * k) / parts;
      centres.push({ at: { x: q.x + c * Math.cos(a), y: q.y + c * Math.sin(a) }, on: [before, after] });
    }
  }
  return centres;
};

/** Whether an edge that goes back at a point does so on the right of its way there. */
const goesBackOnRight = (before: Piece, after: Piece, along: Point): boolean => {
  const step = Math.min(lengthOf(before), lengthOf(after)) / 10;
  const back = contactOn(before, 1 - step / lengthOf(before));
  const ahead = contactOn(after, step / lengthOf(after));
  return along.x * (ahead.y - back.y) - along.y * (ahead.x - back.x) < 0;
};

/** Corners turning less (radians) have no fan worth sampling. */
const VISIBLE_TURN = 1e-5;

export interface Coverage {
  /** The farthest (mm) that a centre which the disc surely reaches lies from the path. */
  readonly missing: number;
  /** How many sampled points of the path no disc could get to from outside. */
  readonly extra: number;
  /** How many centres were surely reachable: a check that checked nothing says so. */
  readonly checked: number;
}

/**
 * Compares a path with what the disc reaches. Independent of how the path was found: centres are free when
 * nothing is nearer than c, and reachable when a straight free way leads to a flooded cell. A centre in doubt
 * counts for nothing.
 */
export const coverage = (
  path: readonly Piece[],
  edge: readonly Piece[],
  c: number,
  { closed = false, pitch = c / 10, step = c / 9 } = {},
): Coverage => {
  const { sure, possible } = floodFromOutside(edge, c, pitch);
  const isFree = (at: Point, on: readonly Piece[]): boolean =>
    edge.every((p) => distanceTo(at, p) - c >= (on.includes(p) ? -1 : 1) * roundingOf(p) - OVERLAP);
  let missing = 0;
  let checked = 0;
  const whole = edge.filter((p) => lengthOf(p) > SPECK);
  for (const { at: p, on } of centresAlong(whole, closed, c, step)) {
    if (!isFree(p, on)) continue;
    const wayOut = (q: Point): boolean => {
      for (let k = 1; k < 10; k++)
        if (!isFree({ x: p.x + (k / 10) * (q.x - p.x), y: p.y + (k / 10) * (q.y - p.y) }, on)) return false;
      return true;
    };
    if (!sure(p, 2.5 * pitch).some(wayOut)) continue;
    checked++;
    missing = Math.max(missing, distanceToPieces(p, path));
  }
  const extra = samplesOf(path, step).filter((p) => possible(p, 2 * pitch).length === 0).length;
  return { missing, extra, checked };
};

/**
 * A centre may overlap another piece by this (mm): rounding, for pieces of some decimetres. No more, because beside
 * a tangency a centre that overlaps by d lies up to √(2d/k) from where it is free, with k the difference of the
 * curvatures of the two ways of the centre. Round a point and along a line k = 1/c, and 1e-11 mm are worth 1.1e-5 mm at
 * 6.35 mm; round a point and along an arc that bends away with a radius of 1 mm they are worth 3.1e-5 mm.
 */
const OVERLAP = 1e-11;

/** What a distance (mm) to an arc is uncertain by, taken from a centre that may be kilometres away. */
const roundingOf = (p: Piece): number => (p.kind === 'arc' ? p.radius * 1e-15 : 0);

/** Pieces no longer than this (mm) have no side of their own. */
const SPECK = 1e-7;
