/**
 * How near the two halves of a swag that turns a corner come to each other: they are mirror images in the mitre,
 * so the narrowest neck between them is twice the least distance of one half to the mitre. At the crown they
 * meet, and its point may be as narrow as it likes; what counts is all that is farther from the crown.
 *
 * A point r from the crown, seen at an angle to the mitre, is r·sin of that angle from it. While the half turns about its
 * crown on one side of the mitre that is a concave function of the turn, and so is the least of all points': the rises
 * (windows.ts) that leave room are one stretch out of each window, and its ends are found by halving, on either side of
 * the rise at which the neck is widest.
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
  const neckAt = (rise: number): number =>
    neckOf(
      body,
      { tilt: rise - chordAngle, halfSpan: chord * Math.cos(rise), depth: chord * Math.sin(rise) },
      mirror,
    );
  const serves = (rise: number): boolean => neckAt(rise) >= least;
  return windows.flatMap((w): Window[] => {
    const serving = servingIn(w, neckAt, least);
    return serving === undefined
      ? []
      : [{ from: endOf(serves, serving, w.from), to: endOf(serves, serving, w.to) }];
  });
};

/** A rise in a window at which a neck is wide enough; undefined where there is none. */
const servingIn = (
  { from, to }: Window,
  neckAt: (rise: number) => number,
  least: number,
): number | undefined => {
  let [low, high] = [from, to];
  for (const end of [from, to]) if (neckAt(end) >= least) return end;
  for (let i = 0; i < HALVINGS; i++) {
    const [before, after] = [low + (high - low) / 3, high - (high - low) / 3];
    const [a, b] = [neckAt(before), neckAt(after)];
    if (Math.max(a, b) >= least) return a < b ? after : before;
    if (a < b) low = before;
    else high = after;
  }
  return undefined;
};

/** The rise nearest to the end of a window up to which it serves, from one that does. */
const endOf = (serves: (rise: number) => boolean, serving: number, end: number): number => {
  if (serves(end)) return end;
  let [inside, outside] = [serving, end];
  for (let i = 0; i < HALVINGS; i++) {
    const mid = (inside + outside) / 2;
    if (serves(mid)) inside = mid;
    else outside = mid;
  }
  return inside;
};

/** From a quarter turn to the last digit of a rise. */
const HALVINGS = 40;
