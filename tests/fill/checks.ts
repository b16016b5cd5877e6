/**
 * Checks that share nothing with the fills: polygons, winding by the crossing rule, and brute distances over
 * a grid.
 */

import type { Path, Point, Region } from '../../src/geometry/index.ts';
import { pointOn } from '../geometry/curve-helpers.ts';

/** Points along a path no farther apart than `step`, by the pieces' own angles. */
export const sample = (path: Path, step: number, turn = 0.1): Point[] => {
  const points: Point[] = [];
  for (const p of path.pieces) {
    const length =
      p.kind === 'line' ? Math.hypot(p.to.x - p.from.x, p.to.y - p.from.y) : Math.abs(p.sweep) * p.radius;
    // Arcs also need steps small against their radius: at most `turn` radians.
    const count = Math.max(
      1,
      Math.ceil(length / step),
      p.kind === 'arc' ? Math.ceil(Math.abs(p.sweep) / turn) : 1,
    );
    for (let i = 0; i < count; i++) points.push(pointOn(p, i / count));
  }
  const last = path.pieces.at(-1);
  if (last) points.push(last.to);
  return points;
};

export const polygonsOf = (region: Region): Point[][] => region.loops.map((l) => sample(l, 200, 0.02));

const crossesRay = (p: Point, a: Point, b: Point): boolean =>
  a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x;

const toSegment = (p: Point, a: Point, b: Point): number => {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const d2 = dx * dx + dy * dy;
  const t = d2 > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / d2)) : 0;
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
};

/** Even–odd containment in polygons, and distance to them: together a signed depth. */
export const depthIn = (polygons: readonly Point[][], p: Point): number => {
  let inside = false;
  let near = Number.POSITIVE_INFINITY;
  for (const poly of polygons)
    for (let i = 0; i < poly.length; i++) {
      const [a, b] = [poly[i]!, poly[(i + 1) % poly.length]!];
      if (crossesRay(p, a, b)) inside = !inside;
      near = Math.min(near, toSegment(p, a, b));
    }
  return inside ? near : -near;
};

export interface Segment {
  readonly a: Point;
  readonly b: Point;
  /** How far along its line it starts. */
  readonly at: number;
  readonly line: number;
}

/** All paths as short segments; stretches stitched twice are kept once. */
export const segmentsOf = (paths: readonly Path[], step: number): Segment[] => {
  const seen = new Set<string>();
  const out: Segment[] = [];
  paths.forEach((path, line) => {
    let at = 0;
    for (const piece of path.pieces) {
      const points = sample({ pieces: [piece], closed: false }, step);
      const middle = pointOn(piece, 0.5);
      const ends = [piece.from, piece.to].map((p) => `${p.x.toFixed(3)} ${p.y.toFixed(3)}`).sort();
      const key = `${ends.join(' ')} ${middle.x.toFixed(3)} ${middle.y.toFixed(3)}`;
      const again = seen.has(key);
      seen.add(key);
      for (let i = 1; i < points.length; i++) {
        const [a, b] = [points[i - 1]!, points[i]!];
        if (!again) out.push({ a, b, at, line });
        at += Math.hypot(a.x - b.x, a.y - b.y);
      }
    }
  });
  return out;
};

const cellsOf = (segments: readonly Segment[], cell: number): Map<string, Segment[]> => {
  const cells = new Map<string, Segment[]>();
  for (const s of segments) {
    const key = `${Math.floor(s.a.x / cell)},${Math.floor(s.a.y / cell)}`;
    cells.set(key, [...(cells.get(key) ?? []), s]);
  }
  return cells;
};

const around = (cells: Map<string, Segment[]>, cell: number, p: Point): Segment[] => {
  const [i, j] = [Math.floor(p.x / cell), Math.floor(p.y / cell)];
  const found: Segment[] = [];
  for (let di = -1; di <= 1; di++)
    for (let dj = -1; dj <= 1; dj++) found.push(...(cells.get(`${i + di},${j + dj}`) ?? []));
  return found;
};

const side = (a: Point, b: Point, p: Point): number => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);

/** Places where segments cross in their insides at more than a grazing angle. */
export const crossingsOf = (segments: readonly Segment[], step: number): Point[] => {
  const cell = 2 * step;
  const cells = cellsOf(segments, cell);
  const found: Point[] = [];
  for (const s of segments)
    for (const t of around(cells, cell, s.a)) {
      if (t === s || (t.line === s.line && Math.abs(t.at - s.at) < step / 2)) continue;
      const [sx, sy, tx, ty] = [s.b.x - s.a.x, s.b.y - s.a.y, t.b.x - t.a.x, t.b.y - t.a.y];
      const [ls, lt] = [Math.hypot(sx, sy), Math.hypot(tx, ty)];
      if (Math.abs(sx * ty - sy * tx) < 0.02 * ls * lt) continue;
      const [a, b] = [side(s.a, s.b, t.a) / ls, side(s.a, s.b, t.b) / ls];
      const [c, d] = [side(t.a, t.b, s.a) / lt, side(t.a, t.b, s.b) / lt];
      // Ends that only touch do not cross: each must lie clearly on its own side.
      const clear = 0.002;
      if (a * b < 0 && c * d < 0 && Math.min(...[a, b, c, d].map(Math.abs)) > clear) found.push(s.a);
    }
  return found;
};

/**
 * The least distance between two stretches of lines that are not neighbours: more than `along` apart on one
 * line, or on two. Found where it is below `reach`, else `reach`.
 */
export const leastGap = (
  segments: readonly Segment[],
  along: number,
  reach: number,
  closedLength?: number,
): number => {
  const cells = cellsOf(segments, reach);
  let least = reach;
  for (const s of segments)
    for (const t of around(cells, reach, s.a)) {
      if (s.line === t.line) {
        const apart = Math.abs(s.at - t.at);
        const round = closedLength === undefined ? apart : Math.min(apart, closedLength - apart);
        if (round < along) continue;
      }
      least = Math.min(least, toSegment(s.a, t.a, t.b));
    }
  return least;
};
