/** A shape followed, at a given tilt, only as far as a mirror line. */

import { meetingsWithLine, movePath, type Point, turn } from '../geometry/index.ts';
import { type Shape, shapeOf } from './shape.ts';

/**
 * The part of a shape from its start to where it first meets the line through `at` along `direction` (both in
 * the cell's frame, where the start is the origin); undefined where it does not get there.
 */
export const cutShape = (shape: Shape, tilt: number, at: Point, direction: Point): Shape | undefined => {
  const laid = movePath(shape.path, turn(tilt));
  const meeting = meetingsWithLine(laid, at, direction).find((m) => m.along > 0);
  if (!meeting) return undefined;
  const forward = shape.direction === 'heel-first';
  const end = {
    label: 'where it meets the centre line',
    along: forward ? shape.from.along + meeting.along : shape.to.along - meeting.along,
    contact: undefined,
    section: undefined,
    line: undefined,
  };
  return forward
    ? shapeOf(shape.stitching, shape.from, end, shape.side, shape.direction)
    : shapeOf(shape.stitching, end, shape.to, shape.side, shape.direction);
};
