/**
 * The largest discs in a region that no line enters: what a fill has left bare.
 *
 * Lines and edge are sampled; the largest empty circles of points have their centres in the points' Voronoi vertices
 * (M. Shamos and D. Hoey, "Closest-point problems", FOCS 1975), which are the circumcentres of the Delaunay triangles.
 */

import { Delaunay } from 'd3-delaunay';
import {
  distance,
  flatten,
  type Path,
  type Point,
  pathLength,
  type Region,
  type RegionProbe,
} from '../geometry/index.ts';
import { gridOf } from './point-grid.ts';
import { resample } from './smooth-path.ts';

export interface BarePlace {
  readonly at: Point;
  /** mm to the nearest line or edge. */
  readonly radius: number;
}

/** The bare places with a radius of at least `least` mm, largest first; none lies in a larger one. */
export const barePlaces = (
  region: Region,
  { contains }: RegionProbe,
  lines: readonly Path[],
  least: number,
): readonly BarePlace[] => {
  const step = least / 4;
  const points = [...region.loops, ...lines].flatMap((line) =>
    resample(flatten(line, step / 10), Math.max(2, Math.ceil(pathLength(line) / step) + 1)),
  );
  if (points.length < 3) return [];
  const delaunay = Delaunay.from(
    points,
    (p) => p.x,
    (p) => p.y,
  );
  const { triangles } = delaunay;
  const centres = delaunay.voronoi().circumcenters;
  const found: BarePlace[] = [];
  for (let t = 0; t < triangles.length / 3; t++) {
    const at = { x: centres[2 * t]!, y: centres[2 * t + 1]! };
    const radius = distance(at, points[triangles[3 * t]!]!);
    if (radius >= least && contains(at)) found.push({ at, radius });
  }
  found.sort((a, b) => b.radius - a.radius);
  if (found.length === 0) return [];
  const grid = gridOf<Point>(least);
  for (const p of points) grid.add(p, p);
  const kept: BarePlace[] = [];
  for (const place of found) {
    // Of three points on nearly one line the centre is lost to rounding, and may lie among others.
    const isEmpty = grid.near(place.at, least).every((p) => distance(p, place.at) > 0.99 * least);
    if (isEmpty && kept.every((k) => distance(k.at, place.at) > (k.radius + place.radius) / 2))
      kept.push(place);
  }
  return kept;
};
