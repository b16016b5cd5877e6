/** Places along a closed line of points: how far, and where. */

import type { Place } from './pointer.ts';

/** The length of a closed line up to each of its points, and last the whole, in its own unit. */
export const lengthsOf = (points: readonly Place[]): readonly number[] => {
  const lengths = [0];
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length]!;
    lengths.push(lengths[i]! + Math.hypot(q.x - p.x, q.y - p.y));
  });
  return lengths;
};

/** How far along a closed line its place nearest to another lies. */
export const alongOf = (points: readonly Place[], lengths: readonly number[], at: Place): number => {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length]!;
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    const square = dx * dx + dy * dy;
    const t = square > 0 ? Math.min(1, Math.max(0, ((at.x - p.x) * dx + (at.y - p.y) * dy) / square)) : 0;
    const away = Math.hypot(p.x + t * dx - at.x, p.y + t * dy - at.y);
    if (away >= least) return;
    least = away;
    best = lengths[i]! + t * Math.sqrt(square);
  });
  return best;
};

/** The place so far along a closed line. */
export const placeAlong = (points: readonly Place[], lengths: readonly number[], along: number): Place => {
  const i = Math.max(0, lengths.findIndex((length) => length > along) - 1);
  const p = points[i]!;
  const q = points[(i + 1) % points.length]!;
  const size = lengths[i + 1]! - lengths[i]!;
  const t = size > 0 ? (along - lengths[i]!) / size : 0;
  return { x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) };
};
