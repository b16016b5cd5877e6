/** Where two halves come to their mirror square to it, they are one smooth curve there; else they meet in a point. */

import { pieceDirection } from '../geometry/index.ts';
import type { Seat } from './seat.ts';
import type { Shape } from './shape.ts';
import { clip, type Window } from './windows.ts';

/** How far off square (radians) a half may come there: the two then turn by a degree, which no eye sees in stitches. */
const SMOOTH = Math.PI / 360;

/** By how much (radians) a half falls off from square to its mirror where it ends. */
export const pointOf = ({ shape, pose, mirror }: Seat): number =>
  offSquare(endAngle(shape) + pose.tilt - (mirror - Math.PI / 2));

/** The same of the angle (radians) at which it goes on from a mirror, from the line square to that. */
export const offSquare = (angle: number): number => Math.abs(Math.asin(Math.sin(angle)));

export const isSmooth = (seat: Seat): boolean => pointOf(seat) <= SMOOTH + ROUNDING;

/** Of some rises those at which a shape comes square to a mirror at that angle (radians) to its start line. */
export const smoothRises = (windows: readonly Window[], shape: Shape, mirror: number): readonly Window[] => {
  const square = mirror - Math.PI / 2 - endAngle(shape) + shape.chordAngle;
  const rise = Math.atan2(Math.sin(square), Math.cos(square));
  return clip(windows, rise - SMOOTH, rise + SMOOTH);
};

/** Of a rise that is looked for, and worked out again from its half span, radians. */
const ROUNDING = 1e-7;

/** Which way a path goes where it ends, before it is tilted, radians. */
export const endAngle = ({ path }: Shape): number => {
  const { x, y } = pieceDirection(path.pieces.at(-1)!, 1);
  return Math.atan2(y, x);
};
