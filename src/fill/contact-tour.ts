/**
 * One line through touching circles, each traced once: where the needle comes to a circle that touches, it
 * goes over to it, goes all the way round it (and round all that hang on it), and comes back to the same
 * point. Circles are taken the other way round from the one that they were reached from, like gears, so that
 * the line passes every contact without a corner.
 */

import {
  add,
  arcBetween,
  distance,
  type Path,
  type Piece,
  type Point,
  positiveAngle,
  scale,
  subtract,
  TURN,
} from '../geometry/index.ts';
import { gridOf } from './point-grid.ts';

export interface Circle {
  readonly center: Point;
  readonly radius: number;
}

/** A circle on the way: where it was entered, which way round, and what is still to come. */
interface Visit {
  readonly circle: number;
  readonly entry: Point;
  readonly left: boolean;
  readonly stops: { readonly child: number; readonly at: Point }[];
  from: Point;
  next: number;
}

/**
 * One line for each set of circles that hang together; `touching[i]` lists the circles that touch circle i.
 */
export const tourOfCircles = (
  circles: readonly Circle[],
  touching: readonly (readonly number[])[],
): Path[] => {
  const seen = new Uint8Array(circles.length);
  return circles.flatMap((_, root) => {
    if (seen[root]) return [];
    return [tourFrom(root, circles, touching, seen)];
  });
};

const tourFrom = (
  root: number,
  circles: readonly Circle[],
  touching: readonly (readonly number[])[],
  seen: Uint8Array,
): Path => {
  // A breadth-first tree spreads evenly; in depth it could grow one arm as long as all the circles.
  const children = new Map<number, number[]>();
  seen[root] = 1;
  for (let queue = [root]; queue.length > 0; ) {
    const later: number[] = [];
    for (const i of queue) {
      const mine = touching[i]!.filter((j) => !seen[j]);
      for (const j of mine) seen[j] = 1;
      children.set(i, mine);
      later.push(...mine);
    }
    queue = later;
  }
  const visitOf = (circle: number, entry: Point, left: boolean): Visit => {
    const { center, radius } = circles[circle]!;
    const start = Math.atan2(entry.y - center.y, entry.x - center.x);
    const stops = children.get(circle)!.map((child) => {
      const toward = subtract(circles[child]!.center, center);
      const at = add(center, scale(toward, radius / Math.hypot(toward.x, toward.y)));
      const angle = Math.atan2(toward.y, toward.x);
      return { child, at, swept: positiveAngle(left ? angle - start : start - angle) };
    });
    stops.sort((a, b) => a.swept - b.swept);
    return { circle, entry, left, stops, from: entry, next: 0 };
  };
  const pieces: Piece[] = [];
  const first = circles[root]!;
  const stack = [visitOf(root, add(first.center, { x: first.radius, y: 0 }), true)];
  while (stack.length > 0) {
    const visit = stack.at(-1)!;
    const stop = visit.stops[visit.next++];
    const to = stop?.at ?? visit.entry;
    const { center, radius } = circles[visit.circle]!;
    if (!stop && visit.stops.length === 0) pieces.push(wholeCircle(center, radius, visit.entry, visit.left));
    else if (distance(visit.from, to) > 0) pieces.push(arcBetween(center, visit.from, to, visit.left));
    visit.from = to;
    if (stop) stack.push(visitOf(stop.child, stop.at, !visit.left));
    else stack.pop();
  }
  return { pieces, closed: true };
};

const wholeCircle = (center: Point, radius: number, at: Point, left: boolean): Piece => ({
  kind: 'arc',
  center,
  radius,
  start: Math.atan2(at.y - center.y, at.x - center.x),
  sweep: left ? TURN : -TURN,
  from: at,
  to: at,
});

/** Which circles touch, within `slack` (mm). */
export const contactsOf = (circles: readonly Circle[], slack: number): number[][] => {
  const largest = circles.reduce((most, c) => Math.max(most, c.radius), 0);
  const grid = gridOf<number>(2 * largest || 1);
  circles.forEach((c, i) => {
    grid.add(c.center, i);
  });
  return circles.map((c, i) =>
    grid
      .near(c.center, c.radius + largest + slack)
      .filter((j) => {
        const d = circles[j]!;
        return j !== i && Math.abs(distance(c.center, d.center) - c.radius - d.radius) <= slack;
      })
      .sort((a, b) => a - b),
  );
};
