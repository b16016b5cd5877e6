/**
 * How near the two halves of a swag that turns a corner come to each other: they are mirror images in the mitre,
 * so the narrowest neck between them is twice the least distance of one half to the mitre. At the crown they
 * meet, and its point may be as narrow as it likes; what counts is all that is farther from the crown.
 *
 * Turning the half about its crown away from the mitre only widens a neck, so the rises (windows.ts) that leave
 * room are those up to a highest one, and that is found by halving.
 */

import { pathLength, type Support, slicePath, supportOf } from '../geometry/index.ts';
import type { Pose } from './pose.ts';
import type { Shape } from './shape.ts';
import type { Window } from './windows.ts';

/**
 * The narrowest neck is as wide as the foot, two clearances: where the lines come nearer, the foot rides on the
 * first of them while it stitches the second, the template has no room between them, and no channel of one
 * clearance goes in (common practice, no source).
 */
export const leastNeck = ({ stitching }: Shape): number => 2 * stitching.stitched.clearance;

/** The crown's point, where the halves close in on each other: so many clearances of stitching, or this share of a short half. */
const POINT_CLEARANCES = 4;
const POINT_SHARE = 1 / 3;

/** All of a half but the crown's point. */
export const bodyOf = (shape: Shape): Support => {
  let body = bodies.get(shape);
  if (!body) {
    const length = pathLength(shape.path);
    const point = Math.min(POINT_CLEARANCES * shape.stitching.stitched.clearance, POINT_SHARE * length);
    body = supportOf(slicePath(shape.path, 0, length - point));
    bodies.set(shape, body);
  }
  return body;
};

/** A search asks for the body of the same shape once for every corner that it lays. */
const bodies = new WeakMap<Shape, Support>();

/** The narrowest neck (mm) between a half and its image in a mirror through its crown at `mirror` (radians); negative where it passes it. */
export const neckOf = (
  body: Support,
  { tilt, halfSpan, depth }: Pick<Pose, 'tilt' | 'halfSpan' | 'depth'>,
  mirror: number,
): number => {
  const nx = Math.sin(mirror);
  const ny = -Math.cos(mirror);
  const c = Math.cos(tilt);
  const s = Math.sin(tilt);
  return 2 * (halfSpan * nx + depth * ny - body(c * nx + s * ny, c * ny - s * nx));
};

/** The rises at which a half leaves room for its neck, out of windows of rises. */
export const withRoomForNecks = (
  windows: readonly Window[],
  shape: Shape,
  mirror: number,
): readonly Window[] => {
  if (windows.length === 0) return windows;
  const body = bodyOf(shape);
  const least = leastNeck(shape);
  const { chord, chordAngle } = shape;
  const serves = (rise: number): boolean =>
    neckOf(
      body,
      { tilt: rise - chordAngle, halfSpan: chord * Math.cos(rise), depth: chord * Math.sin(rise) },
      mirror,
    ) >= least;
  return windows.flatMap((w) => {
    if (serves(w.to)) return [w];
    if (!serves(w.from)) return [];
    let low = w.from;
    let high = w.to;
    for (let i = 0; i < HALVINGS; i++) {
      const mid = (low + high) / 2;
      if (serves(mid)) low = mid;
      else high = mid;
    }
    return [{ from: w.from, to: low }];
  });
};

/** From a quarter turn to the last digit of a rise. */
const HALVINGS = 40;
