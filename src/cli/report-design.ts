/** What a design comes to, in words for the terminal and in numbers for programs. */

import { formatLength, INCH_SIXTEENTH, MM_HALF, type Units } from '../length/index.ts';
import type { Design } from '../swag/index.ts';
import { plural } from './messages.ts';

const DEGREES = 180 / Math.PI;

/** A line for each side: `top: 7 swags of 10 1/4 in, 4 3/16 in deep`. Lengths are rounded to be read, not used. */
export const describeDesign = (design: Design, units: Units): readonly string[] => {
  const style = units === 'in' ? INCH_SIXTEENTH : MM_HALF;
  const length = (mm: number): string => formatLength(mm, style);
  const lines = design.fit.sides.map(({ run, repeats, seat }) => {
    const size = `${plural(repeats, 'swag')} of ${length(2 * seat.pose.halfSpan)}, ${length(seat.pose.depth)} deep`;
    const gap = seat.gap > 0 ? `, ${length(seat.gap)} between neighbours` : '';
    return `${run.name}: ${size}${gap}`;
  });
  const { corner } = design.fit;
  return corner === undefined ? lines : [...lines, `corners: ${length(corner.seat.pose.depth)} deep`];
};

/** mm and degrees. */
export const designAsData = (design: Design): object => ({
  sides: design.fit.sides.map(({ run, repeats, seat }) => ({
    side: run.name,
    length: run.length,
    repeats,
    span: 2 * seat.pose.halfSpan,
    depth: seat.pose.depth,
    gap: seat.gap,
    tilt: seat.pose.tilt * DEGREES,
  })),
  corner:
    design.fit.corner === undefined
      ? null
      : { offset: design.fit.corner.offset, depth: design.fit.corner.seat.pose.depth },
});
