/** Places along a line of points, closed or open: how far, and where. */

import type { Place } from './pointer.ts';

export interface Line {
  readonly points: readonly Place[];
  readonly closed: boolean;
  /** The length up to each of its points, and last the whole, in its own unit. */
  readonly lengths: readonly number[];
}

export const lineThrough = (points: readonly Place[], closed: boolean): Line => {
  const lengths = [0];
  for (let i = 1; i < points.length + (closed ? 1 : 0); i++) {
    const [p, q] = [points[i - 1]!, points[i % points.length]!];
    lengths.push(lengths[i - 1]! + Math.hypot(q.x - p.x, q.y - p.y));
  }
  return { points, closed, lengths };
};

export const wholeLength = ({ lengths }: Line): number => lengths.at(-1)!;

/** How far along it its place nearest to another lies. */
export const alongOf = ({ points, lengths }: Line, at: Place): number => {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < lengths.length - 1; i++) {
    const p = points[i]!;
    const q = points[(i + 1) % points.length]!;
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    const square = dx * dx + dy * dy;
    const t = square > 0 ? Math.min(1, Math.max(0, ((at.x - p.x) * dx + (at.y - p.y) * dy) / square)) : 0;
    const away = Math.hypot(p.x + t * dx - at.x, p.y + t * dy - at.y);
    if (away >= least) continue;
    least = away;
    best = lengths[i]! + t * Math.sqrt(square);
  }
  return best;
};

/** The place so far along it; an open line ends at its ends. */
export const placeAlong = (line: Line, length: number): Place => {
  const { points, lengths } = line;
  const whole = wholeLength(line);
  const along = line.closed ? ((length % whole) + whole) % whole : Math.min(whole, Math.max(0, length));
  const after = lengths.findIndex((l) => l > along);
  const i = after < 0 ? lengths.length - 2 : Math.max(0, after - 1);
  const p = points[i]!;
  const q = points[(i + 1) % points.length]!;
  const size = lengths[i + 1]! - lengths[i]!;
  const t = size > 0 ? (along - lengths[i]!) / size : 0;
  return { x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) };
};
