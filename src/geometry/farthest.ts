/** How far is the farthest point of a path? */

import { shareOf } from './crossing.ts';
import type { Path } from './path.ts';
import { add, distance, type Point, scale, subtract, unit } from './point.ts';

/** The greatest distance (mm) from a point to a path, exact for lines and arcs; 0 for an empty path. */
export const farthestFrom = (path: Path, from: Point): number => {
  let most = 0;
  for (const p of path.pieces) {
    most = Math.max(most, distance(p.from, from), distance(p.to, from));
    if (p.kind === 'line') continue;
    // Straight across the centre lies the circle's farthest point, if the arc gets there.
    const across = add(p.center, scale(unit(subtract(p.center, from)), p.radius));
    if (shareOf(p, across) !== undefined) most = Math.max(most, distance(across, from));
  }
  return most;
};
