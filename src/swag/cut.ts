/** A shape followed, at a fixed tilt, only as far as a mirror line. */

import { firstMeetingWithLine, type Path, type Point } from '../geometry/index.ts';
import { type Shape, shortened } from './shape.ts';
import { sameName } from './stitching.ts';

/**
 * The part of a shape from its start to where it first meets the line through `at` along `direction`; undefined
 * where it does not get there. `laid` is the shape's path at its tilt, from the start at the origin, and the line
 * is told in the same frame.
 */
export const cutShape = (shape: Shape, laid: Path, at: Point, direction: Point): Shape | undefined => {
  const meeting = firstMeetingWithLine(laid, at, direction, 0);
  if (!meeting) return undefined;
  const forward = shape.direction === 'heel-first';
  const end = {
    ...sameName('where it meets the centre line'),
    along: forward ? shape.from.along + meeting.along : shape.to.along - meeting.along,
    contact: undefined,
    section: undefined,
    line: undefined,
  };
  return shortened(shape, meeting.along, end);
};
