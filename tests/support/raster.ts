/**
 * An oracle for fills that shares nothing with them: an area and its lines on a raster, and from every place in it the
 * distance to the nearest line or edge (P. Felzenszwalb and D. Huttenlocher, "Distance transforms of sampled functions",
 * Theory of Computing 8, 2012: the exact Euclidean transform in two passes of lower envelopes of parabolas).
 */

import type { Path, Point, Region } from '../../src/geometry/index.ts';
import { polygonsOf, sample } from '../fill/checks.ts';

/** The largest empty disc: its radius (mm) is known to three quarters of a cell. */
export interface Bare {
  readonly radius: number;
  readonly at: Point;
  /** The share of the area that is farther from any line or edge than was asked. */
  readonly shareBeyond: number;
}

/** The largest disc in the area that no line enters; `beyond` (mm) is for the share. The raster has cells of `cell` mm. */
export const largestBare = (region: Region, paths: readonly Path[], cell: number, beyond = 0): Bare => {
  const polygons = polygonsOf(region);
  const xs = polygons.flatMap((p) => p.map((q) => q.x));
  const ys = polygons.flatMap((p) => p.map((q) => q.y));
  const [left, low] = [Math.min(...xs) - 2 * cell, Math.min(...ys) - 2 * cell];
  const columns = Math.ceil((Math.max(...xs) - left) / cell) + 3;
  const rows = Math.ceil((Math.max(...ys) - low) / cell) + 3;
  const squares = new Float64Array(columns * rows).fill(FAR);
  const mark = (p: Point): void => {
    const [i, j] = [Math.round((p.x - left) / cell), Math.round((p.y - low) / cell)];
    if (i >= 0 && j >= 0 && i < columns && j < rows) squares[j * columns + i] = 0;
  };
  for (const path of paths) for (const p of sample(path, cell / 2)) mark(p);
  for (const loop of region.loops) for (const p of sample(loop, cell / 2)) mark(p);
  transform(squares, columns, rows);
  let radius = 0;
  let at = { x: Number.NaN, y: Number.NaN };
  let inside = 0;
  let far = 0;
  for (let j = 0; j < rows; j++) {
    const y = low + j * cell;
    const meets = crossingsAt(polygons, y);
    for (let k = 0; k + 1 < meets.length; k += 2) {
      const last = Math.floor((meets[k + 1]! - left) / cell);
      for (let i = Math.ceil((meets[k]! - left) / cell); i <= last; i++) {
        const d = Math.sqrt(squares[j * columns + i]!) * cell;
        inside++;
        if (d > beyond) far++;
        if (d > radius) {
          radius = d;
          at = { x: left + i * cell, y };
        }
      }
    }
  }
  return { radius, at, shareBeyond: inside > 0 ? far / inside : 0 };
};

const FAR = 1e12;

/** Where a level line meets polygons, from left to right: between an odd one and the next even one it is inside. */
const crossingsAt = (polygons: readonly Point[][], y: number): number[] => {
  const found: number[] = [];
  for (const polygon of polygons)
    for (let i = 0; i < polygon.length; i++) {
      const [a, b] = [polygon[i]!, polygon[(i + 1) % polygon.length]!];
      if (a.y > y !== b.y > y) found.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
    }
  return found.sort((a, b) => a - b);
};

/** Squared distances (in cells) in place: along columns, then along rows. */
const transform = (squares: Float64Array, columns: number, rows: number): void => {
  const most = Math.max(columns, rows);
  const values = new Float64Array(most);
  const vertex = new Int32Array(most);
  const from = new Float64Array(most + 1);
  const along = (start: number, step: number, count: number): void => {
    for (let q = 0; q < count; q++) values[q] = squares[start + q * step]!;
    let k = 0;
    vertex[0] = 0;
    from[0] = -FAR;
    from[1] = FAR;
    for (let q = 1; q < count; q++) {
      const meets = (v: number): number => (values[q]! + q * q - values[v]! - v * v) / (2 * (q - v));
      let s = meets(vertex[k]!);
      while (k > 0 && s <= from[k]!) s = meets(vertex[--k]!);
      vertex[++k] = q;
      from[k] = s;
      from[k + 1] = FAR;
    }
    k = 0;
    for (let q = 0; q < count; q++) {
      while (from[k + 1]! < q) k++;
      const v = vertex[k]!;
      squares[start + q * step] = (q - v) * (q - v) + values[v]!;
    }
  };
  for (let i = 0; i < columns; i++) along(i, columns, rows);
  for (let j = 0; j < rows; j++) along(j * columns, 1, columns);
};

/**
 * How near two lines come that are not neighbours: the least distance (mm, below `reach`) between places more than
 * `apart` mm from one another along the line, or on two lines, and where. Places stitched twice, and those nearer to
 * where lines meet than `beside` mm, are meant and left out.
 */
export const nearestStretches = (
  paths: readonly Path[],
  { reach, apart, beside, step }: { reach: number; apart: number; beside: number; step: number },
): { readonly gap: number; readonly at: Point; readonly count: number } => {
  interface Spot {
    readonly p: Point;
    readonly line: number;
    readonly s: number;
  }
  const spots: Spot[] = [];
  const lengths: number[] = [];
  paths.forEach((path, line) => {
    let s = 0;
    let before: Point | undefined;
    for (const p of sample(path, step)) {
      if (before) s += Math.hypot(p.x - before.x, p.y - before.y);
      spots.push({ p, line, s });
      before = p;
    }
    lengths.push(path.closed ? s : Number.POSITIVE_INFINITY);
  });
  const cells = new Map<string, Spot[]>();
  const keyOf = (i: number, j: number): string => `${i},${j}`;
  for (const spot of spots) {
    const key = keyOf(Math.floor(spot.p.x / reach), Math.floor(spot.p.y / reach));
    const there = cells.get(key);
    if (there) there.push(spot);
    else cells.set(key, [spot]);
  }
  const others = function* (a: Spot): Generator<[Spot, number]> {
    const [i, j] = [Math.floor(a.p.x / reach), Math.floor(a.p.y / reach)];
    for (let di = -1; di <= 1; di++)
      for (let dj = -1; dj <= 1; dj++)
        for (const b of cells.get(keyOf(i + di, j + dj)) ?? []) {
          if (a.line === b.line) {
            const along = Math.abs(a.s - b.s);
            if (Math.min(along, lengths[a.line]! - along) < apart) continue;
          }
          const gap = Math.hypot(a.p.x - b.p.x, a.p.y - b.p.y);
          if (gap < reach) yield [b, gap];
        }
  };
  // Where lines touch, cross or run over one another, with what lies beside.
  const met: Point[] = [];
  for (const a of spots) for (const [, gap] of others(a)) if (gap < step * 0.75) met.push(a.p);
  const near = new Map<string, Point[]>();
  for (const p of met) {
    const key = keyOf(Math.floor(p.x / beside), Math.floor(p.y / beside));
    const there = near.get(key);
    if (there) there.push(p);
    else near.set(key, [p]);
  }
  const isMeant = (p: Point): boolean => {
    const [i, j] = [Math.floor(p.x / beside), Math.floor(p.y / beside)];
    for (let di = -1; di <= 1; di++)
      for (let dj = -1; dj <= 1; dj++)
        for (const q of near.get(keyOf(i + di, j + dj)) ?? [])
          if (Math.hypot(p.x - q.x, p.y - q.y) < beside) return true;
    return false;
  };
  let gap = reach;
  let at = { x: Number.NaN, y: Number.NaN };
  let count = 0;
  for (const a of spots) {
    let least = reach;
    for (const [, g] of others(a)) least = Math.min(least, g);
    if (least >= reach || isMeant(a.p)) continue;
    count++;
    if (least < gap) {
      gap = least;
      at = a.p;
    }
  }
  return { gap, at, count };
};

/** The sharpest turns (radians) where one piece of a line goes over into the next, largest first, with their places. */
export const sharpTurns = (paths: readonly Path[], least: number): { turn: number; at: Point }[] => {
  const found: { turn: number; at: Point }[] = [];
  for (const { pieces, closed } of paths)
    pieces.forEach((piece, i) => {
      const next = pieces[i + 1] ?? (closed ? pieces[0] : undefined);
      if (!next) return;
      const h = 1e-6;
      const [a, b] = [ahead(piece, 1 - h, 1), ahead(next, 0, h)];
      const turn = Math.abs(Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y));
      if (turn > least) found.push({ turn, at: piece.to });
    });
  return found.sort((a, b) => b.turn - a.turn);
};

const ahead = (piece: Path['pieces'][number], from: number, to: number): Point => {
  if (piece.kind === 'line') return { x: piece.to.x - piece.from.x, y: piece.to.y - piece.from.y };
  // The tangent of a circle stands square to its radius.
  const angle = piece.start + piece.sweep * (from === 0 ? 0 : to);
  const way = Math.sign(piece.sweep);
  return { x: -Math.sin(angle) * way, y: Math.cos(angle) * way };
};

/** The longest stretch (mm) of a line over which its direction stays within `range` radians. */
export const straightest = (path: Path, range: number, step: number): number => {
  const points = sample(path, step, step);
  const headings: number[] = [];
  for (let i = 1; i < points.length; i++) {
    const heading = Math.atan2(points[i]!.y - points[i - 1]!.y, points[i]!.x - points[i - 1]!.x);
    const before = headings.at(-1);
    const turns = before === undefined ? 0 : Math.round((before - heading) / (2 * Math.PI));
    headings.push(heading + turns * 2 * Math.PI);
  }
  let longest = 0;
  for (let i = 0; i < headings.length; i++) {
    let [low, high, length] = [headings[i]!, headings[i]!, 0];
    for (let j = i; j < headings.length; j++) {
      low = Math.min(low, headings[j]!);
      high = Math.max(high, headings[j]!);
      if (high - low > range) break;
      length += Math.hypot(points[j + 1]!.x - points[j]!.x, points[j + 1]!.y - points[j]!.y);
    }
    longest = Math.max(longest, length);
  }
  return longest;
};
