/** What a design comes to, in words for the terminal and in numbers for programs. */

import type { Design } from '../swag/index.ts';

export { describeDesign } from '../output/mockup/index.ts';

const DEGREES = 180 / Math.PI;

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
