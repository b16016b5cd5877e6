/**
 * A tree of straight branches through points that keeps room for a line on both sides of every branch.
 *
 * Branches are edges of the Delaunay triangulation, taken in a random order as in Kruskal's method; one is
 * refused if it would close a circle, leave the region, meet another at too sharp an angle, or come too near
 * another. Points that cannot be reached under these rules are left out.
 */

import { Delaunay } from 'd3-delaunay';
import { cross, distance, dot, middle, type Point, subtract } from '../geometry/index.ts';
import { forest } from './forest.ts';
import { gridOf } from './point-grid.ts';
import type { Random } from './random.ts';

export interface Tree {
  readonly points: readonly Point[];
  /** Neighbours of each point. */
  readonly next: readonly (readonly number[])[];
}

interface Pass {
  /** The sharpest angle (radians) between branches at a point. */
  readonly angle: number;
  /** Branches that do not share a point stay this far (mm) apart. */
  readonly apart: number;
  /** The longest branch (mm). */
  readonly longest: number;
}

export interface TreeRules {
  /** First what looks well, then what is possible at all. */
  readonly passes: readonly Pass[];
  /** Added to a branch's random key (0 to 1): branches with larger keys are taken only where others fail. */
  readonly reluctance?: (a: number, b: number) => number;
  /** Whether a branch lies in the region. */
  readonly allowed: (a: Point, b: Point) => boolean;
}

interface Branch {
  readonly a: number;
  readonly b: number;
}

export const growTree = (points: readonly Point[], rules: TreeRules, random: Random): Tree => {
  const next: number[][] = points.map(() => []);
  if (points.length < 2) return { points, next };
  const { find, join } = forest(points.length);
  const reach = Math.max(...rules.passes.map((p) => p.longest));
  const grid = gridOf<Branch>(reach);
  const candidates = edgesOf(points)
    .filter(({ a, b }) => distance(points[a]!, points[b]!) <= reach)
    .map((e) => ({ ...e, key: random.next() + (rules.reluctance?.(e.a, e.b) ?? 0) }))
    .sort((x, y) => x.key - y.key);
  for (const { angle, apart, longest } of rules.passes)
    for (const { a, b } of candidates) {
      if (find(a) === find(b) || !(distance(points[a]!, points[b]!) <= longest)) continue;
      const [p, q] = [points[a]!, points[b]!];
      if (!opensEnough(points, next, a, b, angle) || !opensEnough(points, next, b, a, angle)) continue;
      const near = grid.near(middle(p, q), reach + apart);
      const clear = near.every(
        (o) =>
          o.a === a ||
          o.a === b ||
          o.b === a ||
          o.b === b ||
          segmentsApart(p, q, points[o.a]!, points[o.b]!) >= apart,
      );
      if (!clear || !rules.allowed(p, q)) continue;
      join(a, b);
      next[a]!.push(b);
      next[b]!.push(a);
      grid.add(middle(p, q), { a, b });
    }
  return { points, next };
};

const edgesOf = (points: readonly Point[]): Branch[] => {
  if (points.length === 2) return [{ a: 0, b: 1 }];
  const delaunay = Delaunay.from(
    points,
    (p) => p.x,
    (p) => p.y,
  );
  const edges: Branch[] = [];
  points.forEach((_, a) => {
    for (const b of delaunay.neighbors(a)) if (b > a) edges.push({ a, b });
  });
  return edges;
};

const opensEnough = (
  points: readonly Point[],
  next: readonly (readonly number[])[],
  at: number,
  to: number,
  angle: number,
): boolean => {
  const u = subtract(points[to]!, points[at]!);
  return next[at]!.every((other) => {
    const v = subtract(points[other]!, points[at]!);
    return Math.abs(Math.atan2(cross(u, v), dot(u, v))) >= angle;
  });
};

const toSegment = (p: Point, a: Point, b: Point): number => {
  const u = subtract(b, a);
  const t = Math.min(1, Math.max(0, dot(subtract(p, a), u) / dot(u, u)));
  return Math.hypot(p.x - a.x - t * u.x, p.y - a.y - t * u.y);
};

/** Delaunay edges never cross, so that the distance is taken at an end. */
const segmentsApart = (a: Point, b: Point, c: Point, d: Point): number =>
  Math.min(toSegment(a, c, d), toSegment(b, c, d), toSegment(c, a, b), toSegment(d, a, b));

/** The sets of points that hang together, largest first. */
export const componentsOf = (tree: Tree): number[][] => {
  const seen = new Uint8Array(tree.points.length);
  const parts: number[][] = [];
  tree.points.forEach((_, start) => {
    if (seen[start]) return;
    seen[start] = 1;
    const part = [start];
    for (let i = 0; i < part.length; i++)
      for (const j of tree.next[part[i]!]!)
        if (!seen[j]) {
          seen[j] = 1;
          part.push(j);
        }
    parts.push(part);
  });
  return parts.sort((a, b) => b.length - a.length);
};
