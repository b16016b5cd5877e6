/**
 * The line through the middle of a region, from one end to the other: a feather's spine, the middle of a
 * band.
 *
 * Method: the boundary is sampled; the Voronoi vertices of the samples that lie inside, joined across
 * Delaunay edges between samples that are no neighbours, approximate the medial axis (Brandt and Algazi,
 * "Continuous skeleton computation by Voronoi diagram", CVGIP: Image Understanding 55(3), 1992). Its longest
 * path is found by two sweeps of Dijkstra's method, freed of the forks into corners, carried on straight to
 * the edge, and smoothed, because lobes of the edge pull the medial axis to and fro.
 */

import { Delaunay } from 'd3-delaunay';
import FlatQueue from 'flatqueue';
import {
  add,
  distance,
  flatten,
  mover,
  type Path,
  type Point,
  pathLength,
  pointAlong,
  probeRegion,
  type Region,
  type RegionProbe,
  scale,
  subtract,
  unit,
} from '../geometry/index.ts';
import type { Axis } from './fill.ts';
import { closedCurveThrough, curveThrough, resample, smoothed, smoothedRound } from './smooth-path.ts';
import { mirrorOf, offAxis } from './symmetry.ts';

/** The boundary is sampled this many times in all. */
const SAMPLES = 600;

/**
 * A branch of the medial axis shorter than this many depths at its fork only leads into a corner (a right
 * angle's: √2).
 */
const CORNER_BRANCH = 1.6;

/**
 * The medial axis is smoothed over this many mean depths of the region, so that lobes of the edge do not
 * show. What must keep to the middle of a band asks for less.
 */
const SMOOTHING = 0.9;
export const BAND_SMOOTHING = 0.35;

/** Points that carry the smoothed line, and those of them that the curve is drawn through. */
const FINE = 241;
const COARSE = 33;

/**
 * The spine of a region in one part, or undefined where there is none (a dot, a sliver). It stays at least
 * `end` mm away from the boundary. With an axis that it crosses, it is its own mirror image. In a region with
 * a hole it goes round and is closed.
 */
export const spineOf = (
  region: Region,
  end: number,
  axis: Axis | undefined,
  probe = probeRegion(region),
  smoothing = SMOOTHING,
): Path | undefined => {
  const skeleton = skeletonOf(region, probe);
  const round = region.loops.length > 1 ? ringMiddle(skeleton) : undefined;
  if (round) return ringSpine(round, probe, smoothing);
  const longest = longestMiddle(skeleton, probe);
  if (!longest) return undefined;
  const middle = axis ? evenAcross(longest, axis) : longest;
  const reaching = extended(middle, probe, end);
  if (reaching.length < 2) return undefined;
  let fine = resample(reaching, FINE);
  const step = distance(fine[0]!, fine[1]!);
  const meanDepth = fine.reduce((sum, p) => sum + Math.max(0, probe.depth(p)), 0) / fine.length;
  if (!(step > 0)) return undefined;
  if (axis) fine = mirrored(fine, axis);
  // Where the smoothed line would leave the region (at a deep notch, in a bent neck) it is smoothed less.
  for (const { share, knots } of CAREFUL) {
    const soft = smoothed(fine, Math.min(FINE / 6, (share * smoothing * meanDepth) / step));
    const path = curveThrough(resample(soft, knots));
    const length = pathLength(path);
    if (
      length > 0 &&
      fine.every((_, i) => probe.depth(pointAlong(path, (length * i) / (FINE - 1))!) >= end * KEPT)
    )
      return path;
  }
  return undefined;
};

/**
 * In a mirrored region with three arms, one of them along the axis, the longest way may run from a side arm into
 * the arm on the axis. Then the side arm and its mirror image are the way to go. A way along the axis, and one
 * from side to side, stay as they are.
 */
const evenAcross = (points: readonly Point[], axis: Axis): readonly Point[] => {
  const offs = points.map((p) => offAxis(p, axis));
  const [a, b] = [offs[0]!, offs.at(-1)!];
  const far = Math.max(Math.abs(a), Math.abs(b));
  if (a * b < 0 && Math.min(Math.abs(a), Math.abs(b)) > far / 2) return points;
  const length = distance(points[0]!, points.at(-1)!);
  if (!(far > ALONG_AXIS * length)) return points;
  const fromSide = Math.abs(a) >= Math.abs(b) ? points : [...points].reverse();
  const side = Math.sign(offAxis(fromSide[0]!, axis));
  const meets = fromSide.findIndex((p) => side * offAxis(p, axis) <= AT_AXIS * far);
  if (meets < 2) return points;
  const half = fromSide.slice(0, meets);
  const over = mover(mirrorOf(axis));
  return [...half, ...half.map(over).reverse()];
};

/** A way whose ends lie within this share of its length from the axis runs along it. */
const ALONG_AXIS = 0.15;
/** Within this share of a side arm's own distance the arm has come to the axis. */
const AT_AXIS = 0.02;

/** How the line is drawn: fully smoothed, then ever more like the medial axis itself. */
const CAREFUL = [
  { share: 1, knots: COARSE },
  { share: 0.4, knots: 2 * COARSE - 1 },
  { share: 0.12, knots: 4 * COARSE - 3 },
  { share: 0, knots: FINE },
] as const;

/** The share of the distance to the edge, asked for at the line's ends, that must be left everywhere. */
const KEPT = 0.6;

interface Skeleton {
  readonly at: readonly Point[];
  readonly next: readonly (readonly number[])[];
}

const skeletonOf = (region: Region, probe: RegionProbe): Skeleton => {
  const total = region.loops.reduce((sum, l) => sum + pathLength(l), 0);
  const points: Point[] = [];
  const place: { loop: number; index: number; of: number }[] = [];
  region.loops.forEach((loop, k) => {
    const count = Math.max(12, Math.round((SAMPLES * pathLength(loop)) / total));
    const samples = resample(flatten(loop, 0.02), count + 1).slice(0, -1);
    samples.forEach((p, index) => {
      points.push(p);
      place.push({ loop: k, index, of: samples.length });
    });
  });
  const delaunay = Delaunay.from(
    points,
    (p) => p.x,
    (p) => p.y,
  );
  const { triangles, halfedges } = delaunay;
  const centres = delaunay.voronoi([-1e6, -1e6, 1e6, 1e6]).circumcenters;
  const at: Point[] = [];
  const inside: boolean[] = [];
  for (let t = 0; t < triangles.length / 3; t++) {
    const c = { x: centres[2 * t]!, y: centres[2 * t + 1]! };
    at.push(c);
    inside.push(Number.isFinite(c.x) && Number.isFinite(c.y) && probe.contains(c));
  }
  const next: number[][] = at.map(() => []);
  for (let e = 0; e < halfedges.length; e++) {
    const f = halfedges[e]!;
    if (!(f > e)) continue;
    const [t, u] = [Math.floor(e / 3), Math.floor(f / 3)];
    if (!inside[t] || !inside[u]) continue;
    const [a, b] = [place[triangles[e]!]!, place[triangles[f]!]!];
    const apart = Math.abs(a.index - b.index);
    // Neighbours along the boundary have their Voronoi edge between them, square to it: no part of the
    // middle.
    if (a.loop === b.loop && Math.min(apart, a.of - apart) <= 1) continue;
    next[t]!.push(u);
    next[u]!.push(t);
  }
  return { at, next };
};

/** The longest of the shortest paths in the skeleton, without forks into corners. */
const longestMiddle = (skeleton: Skeleton, probe: RegionProbe): Point[] | undefined => {
  const best = longestPath(skeleton);
  if (best.length < 2) return undefined;
  const fromStart = withoutFork(best, skeleton, probe);
  const both = withoutFork([...fromStart].reverse(), skeleton, probe).reverse();
  const path = both.length >= 2 ? both : best;
  return path.map((i) => skeleton.at[i]!);
};

const longestPath = (skeleton: Skeleton): number[] => {
  let best: number[] = [];
  let bestLength = 0;
  const seen = new Set<number>();
  skeleton.next.forEach((n, start) => {
    if (n.length === 0 || seen.has(start)) return;
    const first = farthest(skeleton, start);
    for (const node of first.reached) seen.add(node);
    const second = farthest(skeleton, first.path.at(-1)!);
    if (second.length > bestLength) {
      bestLength = second.length;
      best = second.path;
    }
  });
  return best;
};

/** The way round a region with a hole: its longest path out, and back by another way. */
const ringMiddle = (skeleton: Skeleton): Point[] | undefined => {
  const there = longestPath(skeleton);
  if (there.length < 8) return undefined;
  const [start, end] = [there[0]!, there.at(-1)!];
  // The ends of the path may lie on spurs; only its middle part is closed to the way back.
  const kept = Math.floor(there.length * 0.15);
  const closed = new Set(there.slice(kept, there.length - kept));
  const rest: Skeleton = {
    at: skeleton.at,
    next: skeleton.next.map((n, i) => (closed.has(i) ? [] : n.filter((j) => !closed.has(j)))),
  };
  const back = farthest(rest, end, start);
  if (back.path.at(-1) !== start) return undefined;
  // What both ways share at the ends is a spur.
  const shared = new Set(back.path.filter((i) => there.includes(i)));
  const loop = [...there, ...back.path.slice(1, -1)].filter((i) => !shared.has(i) || isBranch(skeleton, i));
  return loop.length >= 8 ? loop.map((i) => skeleton.at[i]!) : undefined;
};

const isBranch = (s: Skeleton, i: number): boolean => s.next[i]!.length > 2;

const ringSpine = (round: readonly Point[], probe: RegionProbe, smoothing: number): Path | undefined => {
  const fine = resample([...round, round[0]!], FINE).slice(0, -1);
  const step = distance(fine[0]!, fine[1]!);
  const meanDepth = fine.reduce((sum, p) => sum + Math.max(0, probe.depth(p)), 0) / fine.length;
  if (!(step > 0 && meanDepth > 0)) return undefined;
  const soft = smoothedRound(fine, Math.min(FINE / 12, (smoothing * meanDepth) / step));
  const coarse = resample([...soft, soft[0]!], 2 * COARSE).slice(0, -1);
  return closedCurveThrough(coarse);
};

/** Dijkstra's method. */
const farthest = (
  s: Skeleton,
  start: number,
  goal?: number,
): { path: number[]; length: number; reached: Iterable<number> } => {
  const far = new Map<number, number>([[start, 0]]);
  const from = new Map<number, number>();
  const done = new Set<number>();
  const queue = new FlatQueue();
  queue.push(start, 0);
  let last = start;
  for (let node = queue.pop(); node !== undefined; node = queue.pop()) {
    if (done.has(node)) continue;
    done.add(node);
    last = node;
    if (node === goal) break;
    for (const to of s.next[node]!) {
      const there = far.get(node)! + distance(s.at[node]!, s.at[to]!);
      if (!(there < (far.get(to) ?? Number.POSITIVE_INFINITY))) continue;
      far.set(to, there);
      from.set(to, node);
      queue.push(to, there);
    }
  }
  const path = [last];
  for (let at = last; at !== start; ) {
    at = from.get(at)!;
    path.push(at);
  }
  path.reverse();
  return { path, length: far.get(last) ?? 0, reached: far.keys() };
};

const withoutFork = (path: readonly number[], s: Skeleton, probe: RegionProbe): number[] => {
  let cut = 0;
  let length = 0;
  for (let i = 1; i < path.length - 1; i++) {
    const at = s.at[path[i]!]!;
    length += distance(s.at[path[i - 1]!]!, at);
    const depth = probe.distance(at);
    if (s.next[path[i]!]!.length > 2 && length <= CORNER_BRANCH * depth) cut = i;
    // Beyond every possible corner's branch.
    if (length > 4 * depth + 10 && i > path.length / 3) break;
  }
  return path.slice(cut);
};

/**
 * The middle carried on in its own direction, and both ends cut where they come within `end` of the boundary.
 */
const extended = (middle: readonly Point[], probe: RegionProbe, end: number): Point[] => {
  const forward = reachEnd([...middle], probe, end);
  return reachEnd(forward.reverse(), probe, end).reverse();
};

const reachEnd = (line: Point[], probe: RegionProbe, end: number): Point[] => {
  while (line.length > 1 && !(probe.depth(line.at(-1)!) >= end)) line.pop();
  const tip = line.at(-1)!;
  const depth = probe.depth(tip);
  // The direction over about one depth: the last few Voronoi vertices alone are too rough.
  let back = line.length - 1;
  while (back > 0 && distance(line[back]!, tip) < depth) back--;
  const along = unit(subtract(tip, line[back]!));
  if (!(Math.hypot(along.x, along.y) > 0)) return line;
  const step = Math.max(0.05, end / 4);
  for (let k = 1; k <= MOST_STEPS; k++) {
    const p = add(tip, scale(along, k * step));
    if (!(probe.depth(p) >= end)) break;
    line.push(p);
  }
  return line;
};

/** Steps from the last fork to the edge: far more than any corner needs. */
const MOST_STEPS = 2000;

/**
 * The line made its own mirror image: the half with more of it, and its reflection. Lines that do not cross
 * stay as they are.
 */
const mirrored = (points: readonly Point[], axis: Axis): Point[] => {
  const over = mover(mirrorOf(axis));
  const side = (p: Point): number => offAxis(p, axis);
  // A line that runs along the axis crosses it only by rounding.
  const [first, end1] = [side(points[0]!), side(points.at(-1)!)];
  const length = distance(points[0]!, points[1]!) * points.length;
  if (!(first * end1 < 0 && Math.min(Math.abs(first), Math.abs(end1)) > length / 20)) return [...points];
  const crossing = points.findIndex((p, i) => i > 0 && side(p) >= 0 !== side(points[i - 1]!) >= 0);
  if (crossing < 0) return [...points];
  const half = points.slice(0, crossing);
  if (half.length < points.length / 4 || half.length > (3 * points.length) / 4) return [...points];
  const last = half.at(-1)!;
  const image = over(last);
  const onAxis = { x: (last.x + image.x) / 2, y: (last.y + image.y) / 2 };
  return resample([...half, onAxis, ...half.map(over).reverse()], FINE);
};
