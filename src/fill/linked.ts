/**
 * Closed lines of one area made one line: where a place is too narrow for a line to wander through, the needle goes
 * through it to what lies behind and comes back the same way, beside its own line where that has room and else on it.
 *
 * The ways between lines and edges are the edges of the Voronoi diagram of points on both, which keep as far from all of
 * them as can be (C. Ó'Dúnlaing and C. Yap, "A 'retraction' method for planning the motion of a disc", Journal of
 * Algorithms 6(1), 1985). All lines grow along them at once till they meet (Dijkstra's method), and the shortest ways
 * that close no circle are taken (Kruskal's).
 */

import { Delaunay } from 'd3-delaunay';
import FlatQueue from 'flatqueue';
import {
  add,
  closedPath,
  cross,
  directionAlong,
  distance,
  leftOf,
  openPath,
  type Path,
  type Piece,
  type Point,
  pathEnd,
  pathLength,
  pathStart,
  pieceAt,
  pieceLength,
  pointAlong,
  probeRegion,
  type Region,
  type RegionProbe,
  reversePath,
  scale,
  slicePath,
  subtract,
  unit,
} from '../geometry/index.ts';
import { gridOf, type PointGrid } from './point-grid.ts';
import { curveThrough, resample, smoothed } from './smooth-path.ts';
import { stitched } from './stitched.ts';
import { biarc } from './two-arcs.ts';

/** What a way keeps of the spacing from the area's edge, and from other stretches. */
const EDGE_GAP = 0.06;
const GAP = 0.4;
const LEAVING = 0.15;

/** In spacings: points on lines and edges are this far apart, and no way is longer than that. */
const STEP = 0.2;
const EDGE_STEP = 0.08;
const FINE = 0.1;
const LONGEST = 80;

/** In spacings: half of what is between the strands of a way, and how far beyond them its line is left open on both sides. */
const BESIDE = 0.23;
const ROUNDINGS = [0.5, 0.35, 0.22, 0.15] as const;

/** A shorter way (spacings) is no more than a bend from one line into the other. */
const SHORT = 1.5;

/** So many ways from one line to another are tried. */
const MOST_TRIED = 8;

/** A point on a line, so many mm along it. */
interface Port {
  readonly p: Point;
  readonly line: number;
  readonly at: number;
}

/** A way from one line to another: points along its middle, from port to port. */
interface Way {
  readonly from: Port;
  readonly to: Port;
  readonly length: number;
  readonly points: readonly Point[];
}

/**
 * Two strands from one line to the other, on the left and the right of the way. Both lines are left open so many mm to
 * both sides of their ports. On which side of each line, as it runs, the way lies: 1 for its left.
 */
interface Link extends Pick<Way, 'from' | 'to'> {
  readonly cut: number;
  readonly left: Path;
  readonly right: Path;
  readonly sides: readonly [1 | -1, 1 | -1];
}

/** The same lines, as few as they can be made: those that hang together by ways through the region are one. */
export const linked = (lines: readonly Path[], region: Region, spacing: number): readonly Path[] => {
  if (lines.length < 2 || !lines.every((l) => l.closed)) return lines;
  const probe = probeRegion(region);
  const ports = lines.map((path, line) => portsOn(path, line, STEP * spacing));
  const lengths = lines.map(pathLength);
  const grid = gridOf<Port>(spacing);
  for (const port of ports.flat()) grid.add(port.p, port);
  const laid = gridOf<Point>(spacing);
  const tree = forest(lines.length);
  const links: Link[][] = lines.map(() => []);
  for (const way of waysBetween(ports, region, spacing)) {
    const { from, to } = way;
    if (tree.find(from.line) === tree.find(to.line)) continue;
    const link = linkAlong(way, { lines, lengths, links, grid, laid, probe, spacing });
    if (!link) continue;
    tree.join(from.line, to.line);
    links[from.line]!.push(link);
    links[to.line]!.push(link);
    for (const strand of [link.left, link.right])
      for (const { p } of portsOn(strand, 0, STEP * spacing)) laid.add(p, p);
  }
  const done = new Set<number>();
  return lines.flatMap((line, i) => {
    const all = tree.find(i);
    if (done.has(all)) return [];
    done.add(all);
    if (links[i]!.length === 0) return [line];
    const pieces: Piece[] = [];
    walk({ line: i, way: 1 }, { lines, lengths, links }, pieces);
    return [closedPath(stitched(pieces))];
  });
};

/** Points along a line, at most `step` mm apart. */
const portsOn = ({ pieces }: Path, line: number, step: number): readonly Port[] => {
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

const forest = (count: number) => {
  const root = Array.from({ length: count }, (_, i) => i);
  const find = (i: number): number => {
    let at = i;
    while (root[at] !== at) {
      root[at] = root[root[at]!]!;
      at = root[at]!;
    }
    return at;
  };
  return {
    find,
    join: (a: number, b: number): void => {
      root[find(a)] = find(b);
    },
  };
};

/** Ways from each line to others, shortest first. As flat arrays: there are many thousand points. */
const waysBetween = (
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

interface Laid {
  readonly lines: readonly Path[];
  readonly lengths: readonly number[];
  readonly links: readonly (readonly Link[])[];
}

interface Surroundings extends Laid {
  readonly grid: PointGrid<Port>;
  readonly laid: PointGrid<Point>;
  readonly probe: RegionProbe;
  readonly spacing: number;
}

/** The first of several ways to stitch it that keeps its distance from all else; undefined where none does. */
const linkAlong = (way: Way, around: Surroundings): Link | undefined => {
  const { spacing } = around;
  const { from, to, length } = way;
  const fits = (link: Link): boolean => {
    const isFree = [from, to].every((port) =>
      around.links[port.line]!.every((other) =>
        [other.from, other.to].every(
          (o) =>
            o.line !== port.line ||
            roundGap(o.at, port.at, around.lengths[o.line]!) > link.cut + other.cut + STEP * spacing,
        ),
      ),
    );
    return isFree && [link.left, link.right].every((strand) => hasRoom(strand, link, around));
  };
  if (length <= SHORT * spacing) {
    const link = bends(way, length / 2 + BESIDE * spacing, around);
    if (fits(link)) return link;
  }
  for (const beside of [BESIDE, 0])
    for (const smoothing of SMOOTHINGS)
      for (const rounding of ROUNDINGS) {
        const link = strands(way, { beside, smoothing, rounding }, around);
        if (link && fits(link)) return link;
      }
  return undefined;
};

/** Ends of the strands on both lines: where they are left and taken up, and in which direction. */
const endsOf = ({ from, to, points }: Way, cut: number, { lines, lengths }: Laid) => {
  const leaving = unit(subtract(points[1]!, points[0]!));
  const arriving = unit(subtract(points.at(-1)!, points.at(-2)!));
  const on = ({ line, at }: Port, by: number) => {
    const s = (((at + by) % lengths[line]!) + lengths[line]!) % lengths[line]!;
    return { p: pointAlong(lines[line]!, s)!, along: directionAlong(lines[line]!, s)! };
  };
  const side = (port: Port, toward: Point): 1 | -1 => (cross(on(port, 0).along, toward) > 0 ? 1 : -1);
  const sides = [side(from, leaving), side(to, scale(arriving, -1))] as const;
  // On the left a strand leaves where the line comes from, seen from where the way is on its left.
  const start = (left: 1 | -1) => {
    const { p, along } = on(from, -left * sides[0] * cut);
    return { p, along: scale(along, left * sides[0]) };
  };
  const end = (left: 1 | -1) => {
    const { p, along } = on(to, left * sides[1] * cut);
    return { p, along: scale(along, left * sides[1]) };
  };
  return { sides, start, end };
};

/** A bend from each line into the other. */
const bends = (way: Way, cut: number, laid: Laid): Link => {
  const { sides, start, end } = endsOf(way, cut, laid);
  const strand = (left: 1 | -1): Path => {
    const [a, b] = [start(left), end(left)];
    return openPath(biarc(a.p, a.along, b.p, b.along));
  };
  return { from: way.from, to: way.to, cut, sides, left: strand(1), right: strand(-1) };
};

/** Strands beside the middle of the way, rounded into both lines; all in spacings. */
const strands = (
  way: Way,
  { beside, smoothing, rounding }: { beside: number; smoothing: number; rounding: number },
  around: Surroundings,
): Link | undefined => {
  const { spacing } = around;
  const raw = resample(way.points, Math.max(5, Math.ceil(way.length / (FINE * spacing)) + 1));
  const middle = smoothed(raw, smoothing / FINE);
  const lasts = Math.ceil(rounding / FINE);
  const kept = middle.slice(lasts, middle.length - lasts);
  if (kept.length < 2) return undefined;
  const cut = (beside + rounding) * spacing;
  const { sides, start, end } = endsOf({ ...way, points: middle }, cut, around);
  const strand = (left: 1 | -1): Path | undefined => {
    const points = kept.map((p, i) => {
      const k = i + lasts;
      const across = leftOf(unit(subtract(middle[k + 1]!, middle[k - 1]!)));
      return add(p, scale(across, left * beside * spacing));
    });
    const line = curveThrough(points);
    const [a, b] = [start(left), end(left)];
    const [p, q] = [pathStart(line), pathEnd(line)];
    if (!p || !q) return undefined;
    const [first, last] = [directionAlong(line, 0)!, directionAlong(line, pathLength(line))!];
    return openPath([...biarc(a.p, a.along, p, first), ...line.pieces, ...biarc(q, last, b.p, b.along)]);
  };
  const [left, right] = [strand(1), strand(-1)];
  return left && right && { from: way.from, to: way.to, cut, sides, left, right };
};

/** A way is smoothed over so many spacings, and over fewer where that would bring it too near to something. */
const SMOOTHINGS = [0.5, 0.2, 0.06] as const;

/** How far apart two places of a closed line are along it. */
const roundGap = (a: number, b: number, length: number): number => {
  const apart = Math.abs(a - b);
  return Math.min(apart, length - apart);
};

/** Whether a strand keeps clear of the edge, of all lines but where it comes from and goes to, and curls nowhere. */
const hasRoom = (
  strand: Path,
  { from, to, cut }: Link,
  { grid, laid, lengths, probe, spacing }: Surroundings,
): boolean => {
  if (
    strand.pieces.some((p) => p.kind === 'arc' && (p.radius < TIGHTEST * spacing || Math.abs(p.sweep) > CURL))
  )
    return false;
  const gap = Math.hypot(GAP, STEP / 2) * spacing;
  const own = cut + NEIGHBOURS * spacing;
  const isOwn = ({ line, at }: Port): boolean =>
    [from, to].some((port) => port.line === line && roundGap(port.at, at, lengths[line]!) <= own);
  return portsOn(strand, 0, (STEP * spacing) / 2).every(
    ({ p }) =>
      probe.depth(p) >= EDGE_GAP * spacing * 0.9 &&
      laid.near(p, gap).every((q) => distance(p, q) >= gap) &&
      grid.near(p, gap).every((q) => isOwn(q) || distance(p, q.p) >= gap),
  );
};

/** In spacings: the least radius of a bend, and how far beyond what is left open a line may be near. In radians: the longest bend. */
const TIGHTEST = 0.1;
const NEIGHBOURS = 0.7;
const CURL = 1.2 * Math.PI;

/** Where a line is walked from: the link that it was reached by, and whether as it runs. */
interface Visit {
  readonly line: number;
  readonly way: 1 | -1;
  readonly by?: Link;
}

/** A line and all that hangs on it, from beyond the link that it was reached by, round to before it. */
const walk = ({ line, way, by }: Visit, known: Laid, pieces: Piece[]): void => {
  const { lines, lengths, links } = known;
  const [path, length] = [lines[line]!, lengths[line]!];
  const placeOf = (link: Link): number => (link.from.line === line ? link.from.at : link.to.at);
  const first = by ?? links[line]![0]!;
  const origin = placeOf(first);
  const along = (link: Link): number => (((way * (placeOf(link) - origin)) % length) + length) % length;
  const stretch = (from: number, to: number): void => {
    const [a, b] = way === 1 ? [origin + from, origin + to] : [origin - to, origin - from];
    const part = roundSlice(path, length, a, b);
    for (const piece of (way === 1 ? part : reversePath(part)).pieces) pieces.push(piece);
  };
  const visit = (link: Link): void => {
    const forth = link.from.line === line;
    const [own, its] = forth ? link.sides : [link.sides[1], link.sides[0]];
    const isLeft = own * way > 0 === forth;
    const [out, home] = isLeft ? [link.left, link.right] : [link.right, link.left];
    for (const piece of (forth ? out : reversePath(out)).pieces) pieces.push(piece);
    walk(
      { line: (forth ? link.to : link.from).line, way: own === its ? way : way === 1 ? -1 : 1, by: link },
      known,
      pieces,
    );
    for (const piece of (forth ? reversePath(home) : home).pieces) pieces.push(piece);
  };
  if (!by) visit(first);
  let at = first.cut;
  const others = links[line]!.filter((link) => link !== first).sort((a, b) => along(a) - along(b));
  for (const link of others) {
    stretch(at, along(link) - link.cut);
    visit(link);
    at = along(link) + link.cut;
  }
  stretch(at, length - first.cut);
};

/** Of a closed line what lies between two places, counted on beyond its beginning and its end. */
const roundSlice = (path: Path, length: number, from: number, to: number): Path => {
  const a = ((from % length) + length) % length;
  const b = a + to - from;
  if (b <= length) return slicePath(path, a, b);
  return openPath([...slicePath(path, a, length).pieces, ...slicePath(path, 0, b - length).pieces]);
};
