/**
 * Points spread about a region, none nearer to another than a given distance, evenly enough that no large
 * place stays empty.
 *
 * Method: a row of points along the inset edge; then Bridson's dart throwing from those (R. Bridson, "Fast
 * Poisson disk sampling in arbitrary dimensions", SIGGRAPH 2007 sketches; 30 candidates in the ring from one
 * to two distances); then a few steps of Lloyd's relaxation of the inner points (S. Lloyd, "Least squares
 * quantization in PCM", 1982), which evens out what chance left.
 */

import { Delaunay } from 'd3-delaunay';
import {
  boxOfPoints,
  distance,
  flatten,
  growBox,
  insetRegion,
  type Point,
  pathLength,
  probeRegion,
  type Region,
} from '../geometry/index.ts';
import { MOST_ELEMENTS } from './fill.ts';
import { gridOf } from './point-grid.ts';
import type { Random } from './random.ts';
import { resample } from './smooth-path.ts';

export interface Spread {
  readonly points: readonly Point[];
  /** The first so many points are the row along the inset edge. */
  readonly onEdge: number;
}

const CANDIDATES = 30;
const RELAXATIONS = 4;

/**
 * Points at least `margin` from the edge, and at least about `apart` from one another (relaxing takes a tenth
 * of it).
 */
export const spreadPoints = (region: Region, apart: number, margin: number, random: Random): Spread => {
  const inner = insetRegion(region, margin);
  const probe = probeRegion(inner);
  const points: Point[] = [];
  const grid = gridOf<Point>(apart);
  const free = (p: Point): boolean => grid.near(p, apart).every((q) => distance(p, q) >= apart * 0.999);
  const put = (p: Point): void => {
    points.push(p);
    grid.add(p, p);
  };
  for (const loop of inner.loops) {
    const count = Math.max(1, Math.floor(pathLength(loop) / (apart * 1.02)));
    for (const p of resample(flatten(loop, 0.01), count + 1).slice(0, -1)) if (free(p)) put(p);
  }
  const held = points.length;
  for (let i = 0; i < points.length && points.length < MOST_ELEMENTS; i++) {
    const from = points[i]!;
    for (let k = 0; k < CANDIDATES; k++) {
      const angle = random.between(0, 2 * Math.PI);
      const far = apart * Math.sqrt(random.between(1, 2.6));
      const p = { x: from.x + far * Math.cos(angle), y: from.y + far * Math.sin(angle) };
      if (free(p) && probe.contains(p)) put(p);
    }
  }
  return { points: relaxed(points, held, probe.contains), onEdge: held };
};

const relaxed = (points: readonly Point[], held: number, inside: (p: Point) => boolean): Point[] => {
  let now = [...points];
  if (now.length < 4) return now;
  const { minX, minY, maxX, maxY } = growBox(boxOfPoints(now), 1);
  for (let round = 0; round < RELAXATIONS; round++) {
    const voronoi = Delaunay.from(
      now,
      (p) => p.x,
      (p) => p.y,
    ).voronoi([minX, minY, maxX, maxY]);
    now = now.map((p, i) => {
      if (i < held) return p;
      const cell = voronoi.cellPolygon(i);
      if (!cell) return p;
      const to = centroid(cell);
      return inside(to) ? to : p;
    });
  }
  return now;
};

const centroid = (cell: readonly (readonly number[])[]): Point => {
  let [x, y, area] = [0, 0, 0];
  for (let i = 1; i < cell.length; i++) {
    const [ax, ay, bx, by] = [cell[i - 1]![0]!, cell[i - 1]![1]!, cell[i]![0]!, cell[i]![1]!];
    const w = ax * by - ay * bx;
    x += (ax + bx) * w;
    y += (ay + by) * w;
    area += w;
  }
  return { x: x / (3 * area), y: y / (3 * area) };
};
