/**
 * At which rises may a shape be laid? The rise is the angle of its chord over the start line: depth = C·sin,
 * half span = C·cos. What may not be (below the start line, past a mirror, into the margin) depends on the
 * rise alone, so it is found once for a shape, and every count and corner is then a comparison of numbers.
 *
 * Method. Turning about a fixed point keeps a path on one side of a line through that point for one stretch
 * of turns, which follows from the least and the greatest angle at which the path is seen from the point: the
 * start for the start line and the join, the crown for the centre mirror or the mitre. Only the reach towards
 * the far margin is not of that kind. It changes by at most R a radian (R: the farthest point from the start),
 * so a stretch of rises of width w whose middle is clear of the limit by R·w/2, on either side, is decided
 * as a whole, and the rest is halved.
 */

import { angleOf, distance, type Path, type Point, subtract, TURN } from '../geometry/index.ts';
import { bulgeAt, reachAt } from './pose.ts';
import { reachOf, type Shape } from './shape.ts';

/** Rises from `from` to `to`, radians in (0, π/2). */
export interface Window {
  readonly from: number;
  readonly to: number;
}

/** What limits the rises of a shape, before any count is tried. All in radians. */
export interface Limits {
  /** How far the path is seen to the right (≤ 0) and left (≥ 0) of the chord, from the start. */
  readonly fromStart: Extent;
  /** The same from the crown, looking back along the chord. */
  readonly fromCrown: Extent;
  /** Where the path keeps out of the far margin. */
  readonly shallow: readonly Window[];
}

interface Extent {
  readonly least: number;
  readonly most: number;
}

/** A swag without depth is a line, and one without span a spike. */
const FLATTEST = 1e-3;
/** Valid rises on a narrower stretch than this (radians; a hundredth of a degree) nobody could set by hand. */
const SLIVER = 2e-4;
/** Halvings of a sliver down to the last digit of a rise. */
const BISECTIONS = 40;
/** Tangents are kept out of this (radians) when a mirror is touched only in passing: rounding of an arcsine. */
const ANGLE_NOISE = 1e-10;

/** `turned` is how far (radians) the line that the room (mm) is measured from is turned back from the shape's own start line. */
export const limitsOf = (shape: Shape, room: number, turned = 0): Limits => {
  const { path, chordAngle } = shape;
  const start: Point = { x: 0, y: 0 };
  const crown: Point = { x: shape.chord * Math.cos(chordAngle), y: shape.chord * Math.sin(chordAngle) };
  return {
    fromStart: extentOf(path, start, chordAngle),
    fromCrown: extentOf(path, crown, chordAngle + Math.PI),
    shallow: shallowRises(shape, room, turned),
  };
};

/** The rises at which the path keeps between its start line, the mirror through its crown and the far margin. */
export const windowsOf = ({ fromStart, fromCrown, shallow }: Limits, mirror: number): readonly Window[] => {
  const from = Math.max(-fromStart.least, mirror - Math.PI - fromCrown.least) - ANGLE_NOISE;
  const to = Math.min(Math.PI - fromStart.most, mirror - fromCrown.most) + ANGLE_NOISE;
  return clip(shallow, from, to);
};

/** The highest rise at which the path does not bulge back past its start. */
export const uprightRise = ({ fromStart }: Limits): number => Math.PI / 2 - fromStart.most + ANGLE_NOISE;

/** The highest rise at which the path keeps, from its very start, below a line at `angle` to the start line. */
export const riseBelow = ({ fromStart }: Limits, angle: number): number =>
  angle - fromStart.most + ANGLE_NOISE;

/**
 * The highest rise up to π/2 at which the path bulges back past its start by no more than `most` mm, square to a line
 * at an angle to the start line (radians).
 */
export const riseOfBulge = (shape: Shape, limits: Limits, most: number, line = Math.PI / 2): number => {
  // A path above its start line bulges the more the more it is raised.
  let low = Math.min(riseBelow(limits, line), Math.PI / 2);
  let high = Math.PI / 2;
  if (!(most > 0) || bulgeAt(shape, high, line) <= most) return most > 0 ? high : low;
  for (let i = 0; i < BISECTIONS; i++) {
    const mid = (low + high) / 2;
    if (bulgeAt(shape, mid, line) <= most) low = mid;
    else high = mid;
  }
  return low;
};

export const clip = (windows: readonly Window[], from: number, to: number): readonly Window[] => {
  const clipped: Window[] = [];
  for (const w of windows) {
    const a = Math.max(w.from, from);
    const b = Math.min(w.to, to);
    if (b > a) clipped.push({ from: a, to: b });
  }
  return clipped;
};

/** Of some rises those at which the stitching reaches no more than `room` mm from its start line. */
export const lowerThan = (windows: readonly Window[], shape: Shape, room: number): readonly Window[] =>
  shallowRises(shape, room).flatMap((w) => clip(windows, w.from, w.to));

/** What is left of some windows when others are taken out, their ends but for a sliver of nothing left in. */
export const without = (windows: readonly Window[], out: readonly Window[]): readonly Window[] =>
  out.reduce(
    (left, { from, to }) =>
      [...clip(left, 0, from), ...clip(left, to, Math.PI)].sort((a, b) => a.from - b.from),
    windows,
  );

export const isWithin = (windows: readonly Window[], rise: number): boolean => {
  for (const w of windows) if (rise >= w.from && rise <= w.to) return true;
  return false;
};

/** The least and greatest angle of a path's points, seen from `eye` and measured from the direction `ahead`. */
const extentOf = (path: Path, eye: Point, ahead: number): Extent => {
  let least = 0;
  let most = 0;
  const see = (angle: number): void => {
    const a = angle - ahead - TURN * Math.round((angle - ahead) / TURN);
    if (a < least) least = a;
    if (a > most) most = a;
  };
  for (const p of path.pieces) {
    const fromFar = distance(p.from, eye) > AT_EYE;
    const toFar = distance(p.to, eye) > AT_EYE;
    // A crumb at the eye has no direction worth the name.
    if (!fromFar && !toFar) continue;
    if (fromFar) see(angleOf(subtract(p.from, eye)));
    if (toFar) see(angleOf(subtract(p.to, eye)));
    if (p.kind === 'line') continue;
    const quarter = (Math.sign(p.sweep) * Math.PI) / 2;
    // An arc that starts or ends at the eye is first seen along its own direction there.
    if (!fromFar) see(p.start + quarter);
    if (!toFar) see(p.start + p.sweep - quarter);
    if (!fromFar || !toFar) continue;
    const away = distance(p.center, eye);
    if (!(away > p.radius)) continue;
    // From outside a circle its two tangents limit the view: they touch where the radius is square to them.
    const toEye = angleOf(subtract(eye, p.center));
    const opening = Math.acos(p.radius / away);
    for (const side of [-1, 1]) {
      const touch = toEye + side * opening;
      const swept = (touch - p.start) * Math.sign(p.sweep);
      if (swept - TURN * Math.floor(swept / TURN) > Math.abs(p.sweep)) continue;
      see(toEye + Math.PI - side * Math.asin(p.radius / away));
    }
  }
  return { least, most };
};

/** A point this near (mm) to the eye has no direction from it. */
const AT_EYE = 1e-7;

const shallowRises = (shape: Shape, room: number, turned = 0): readonly Window[] => {
  const whole = { from: FLATTEST, to: Math.PI / 2 - FLATTEST };
  const reach = reachOf(shape);
  if (reach <= room) return [whole];
  const over = (rise: number): number => reachAt(shape, rise, turned) - room;
  const valid: { from: number; to: number }[] = [];
  const look = (from: number, to: number): void => {
    const mid = (from + to) / 2;
    const by = over(mid);
    const change = (reach * (to - from)) / 2;
    if (by > change) return;
    if (by > -change) {
      if (to - from > SLIVER) {
        look(from, mid);
        look(mid, to);
        return;
      }
      if (!(by <= 0)) return;
    }
    const last = valid.at(-1);
    if (last && from - last.to < SLIVER) last.to = to;
    else valid.push({ from, to });
  };
  look(whole.from, whole.to);
  return valid.map((w) => ({
    from: w.from > whole.from ? edgeOf(over, w.from, -1) : w.from,
    to: w.to < whole.to ? edgeOf(over, w.to, 1) : w.to,
  }));
};

/** Moves a window's end out, or in, to where the excess passes zero. */
const edgeOf = (excess: (rise: number) => number, end: number, outward: 1 | -1): number => {
  const endIsIn = excess(end) <= 0;
  let inside = endIsIn ? end : end - outward * SLIVER;
  let outside = endIsIn ? end + outward * SLIVER : end;
  for (let i = 0; i < BISECTIONS; i++) {
    const mid = (inside + outside) / 2;
    if (excess(mid) <= 0) inside = mid;
    else outside = mid;
  }
  return inside;
};
