/**
 * Ways between closed lines through what lies between them. They are edges of the Voronoi diagram of points on the lines
 * and on the area's edge, which keep as far from all of them as can be (C. Ó'Dúnlaing and C. Yap, "A 'retraction' method
 * for planning the motion of a disc", Journal of Algorithms 6(1), 1985). All lines grow along them at once till they meet
 * (Dijkstra's method).
 */

import { Delaunay } from 'd3-delaunay';
import FlatQueue from 'flatqueue';
import { distance, type Path, type Point, pieceAt, pieceLength, type Region } from '../geometry/index.ts';

/** What a way keeps of the spacing from the area's edge, and from other stretches. */
export const EDGE_GAP = 0.06;
export const GAP = 0.4;
const LEAVING = 0.15;

/** In spacings: points on lines and edges are this far apart, and no way is longer than that. */
export const STEP = 0.2;
const EDGE_STEP = 0.08;
const LONGEST = 80;

/** A shorter way (spacings) is no more than a bend from one line into the other. */
export const SHORT = 1.5;

/** So many ways from one line to another are tried. */
const MOST_TRIED = 8;

/** A point on a line, so many mm along it. */
export interface Port {
  readonly p: Point;
  readonly line: number;
  readonly at: number;
}

/** A way from one line to another: points along its middle, from port to port. */
export interface Way {
  readonly from: Port;
  readonly to: Port;
  readonly length: number;
  readonly points: readonly Point[];
}

/** Points along a line, at most `step` mm apart. */
export const portsOn = ({ pieces }: Path, line: number, step: number): readonly Port[] => {
  const found: Port[] = [];
  let [s, next] = [0, 0];
  for (const piece of pieces) {
    const length = pieceLength(piece);
    for (; next < s + length; next += step)
      found.push({ p: pieceAt(piece, (next - s) / length), line, at: next });
    s += length;
  }
  return found;
};

/** Ways from each line to others, shortest first. As flat arrays: there are many thousand points. */
export const waysBetween = (
  ports: readonly (readonly Port[])[],
  { loops }: Region,
  spacing: number,
): readonly Way[] => {
  // Edges come after the lines, their points closer together than twice what a way keeps of them, so that none gets
  // between two.
  const chains = [...ports, ...loops.map((loop) => portsOn(loop, EDGE, EDGE_STEP * spacing))];
  const all = chains.flat();
  const coords = new Float64Array(2 * all.length);
  // Which point comes after each on its own line or edge.
  const after = new Int32Array(all.length);
  let first = 0;
  for (const chain of chains) {
    chain.forEach(({ p }, i) => {
      coords[2 * (first + i)] = p.x;
      coords[2 * (first + i) + 1] = p.y;
      after[first + i] = first + ((i + 1) % chain.length);
    });
    first += chain.length;
  }
  const delaunay = new Delaunay(coords);
  const { triangles, halfedges } = delaunay;
  const centres = delaunay.voronoi().circumcenters;
  const centre = (t: number): Point => ({ x: centres[2 * t]!, y: centres[2 * t + 1]! });
  const isLine = (i: number): boolean => all[i]!.line !== EDGE;
  const isNext = (a: number, b: number): boolean => after[a] === b || after[b] === a;
  const ways: Way[] = [];
  // Lines side by side: from point to point.
  for (let e = 0; e < halfedges.length; e++) {
    if (halfedges[e]! > e) continue;
    const [from, to] = [all[triangles[e]!]!, all[triangles[nextEdge(e)]!]!];
    if (from.line === to.line || from.line === EDGE || to.line === EDGE) continue;
    const length = distance(from.p, to.p);
    if (length <= SHORT * spacing) ways.push({ from, to, length, points: [from.p, to.p] });
  }
  // All others, along the diagram, from every line at once.
  const count = triangles.length / 3;
  const far = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const before = new Int32Array(count).fill(-1);
  const start = new Int32Array(count).fill(-1);
  for (let t = 0; t < count; t++)
    for (let e = 3 * t; e < 3 * t + 3; e++) {
      const i = triangles[e]!;
      if (!isLine(i)) continue;
      const room = Math.hypot(coords[2 * i]! - centres[2 * t]!, coords[2 * i + 1]! - centres[2 * t + 1]!);
      if (room >= LEAVING * spacing && room <= SHORT * spacing) {
        far[t] = room;
        start[t] = i;
      }
      break;
    }
  const queue = new FlatQueue<number>();
  for (let t = 0; t < count; t++) {
    if (start[t]! < 0) continue;
    // Where all about it belongs to the same line, that line has shorter ways.
    const { line } = all[start[t]!]!;
    for (let e = 3 * t; e < 3 * t + 3; e++) {
      const u = halfedges[e]! < 0 ? -1 : Math.floor(halfedges[e]! / 3);
      if (u < 0 || (start[u]! >= 0 && all[start[u]!]!.line === line)) continue;
      queue.push(t, far[t]!);
      break;
    }
  }
  const wayFrom = (t: number): Point[] => {
    const found: Point[] = [];
    for (let at = t; at >= 0; at = before[at]!) found.push(centre(at));
    return [...found, all[start[t]!]!.p];
  };
  const settled = new Uint8Array(count);
  for (let t = queue.pop(); t !== undefined; t = queue.pop()) {
    if (settled[t]) continue;
    settled[t] = 1;
    for (let e = 3 * t; e < 3 * t + 3; e++) {
      const u = halfedges[e]! < 0 ? -1 : Math.floor(halfedges[e]! / 3);
      const [a, b] = [triangles[e]!, triangles[nextEdge(e)]!];
      if (u < 0 || isNext(a, b)) continue;
      const [p, q] = [centre(t), centre(u)];
      const kept = isLine(a) && isLine(b) ? GAP : isLine(a) || isLine(b) ? LEAVING : EDGE_GAP;
      if (toSegment(all[a]!.p, p, q) < kept * spacing) continue;
      const there = far[t]! + distance(p, q);
      if (settled[u]) {
        const [from, to] = [all[start[t]!]!, all[start[u]!]!];
        const length = there + far[u]!;
        if (from.line !== to.line && length <= LONGEST * spacing)
          ways.push({ from, to, length, points: [...wayFrom(t).reverse(), ...wayFrom(u)] });
      } else if (there < far[u]!) {
        far[u] = there;
        before[u] = t;
        start[u] = start[t]!;
        queue.push(u, there);
      }
    }
  }
  return worthTrying(ways, spacing);
};

/** What points on the area's edge have for a line. */
const EDGE = -1;

/** Of ways between the same two lines the shortest few that do not begin beside one another. */
const worthTrying = (ways: readonly Way[], spacing: number): readonly Way[] => {
  const tried = new Map<string, Way[]>();
  return [...ways]
    .sort((a, b) => a.length - b.length)
    .filter((way) => {
      const { from, to } = way;
      const key = `${Math.min(from.line, to.line)} ${Math.max(from.line, to.line)}`;
      const others = tried.get(key) ?? [];
      const isNew =
        others.length < MOST_TRIED &&
        others.every(({ from: p, to: q }) =>
          [p.p, q.p].every((o) => distance(o, from.p) > 0.4 * spacing || distance(o, to.p) > 0.4 * spacing),
        );
      if (isNew) tried.set(key, [...others, way]);
      return isNew;
    });
};

const nextEdge = (e: number): number => (e % 3 === 2 ? e - 2 : e + 1);

const toSegment = (p: Point, a: Point, b: Point): number => {
  const [x, y] = [b.x - a.x, b.y - a.y];
  const square = x * x + y * y;
  const t = square > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * x + (p.y - a.y) * y) / square)) : 0;
  return Math.hypot(p.x - a.x - t * x, p.y - a.y - t * y);
};
