/** What a design comes to, a line for each side: for terminals, for screens and for the cover of the sheets. */

import { formatLength, INCH_SIXTEENTH, MM_HALF, type Units } from '../../length/index.ts';
import type { Design } from '../../swag/index.ts';

/** A line for each side: `top: 7 swags of 10 1/4 in, 4 3/16 in deep`. Lengths are rounded to be read, not used. */
export const describeDesign = (design: Design, units: Units): readonly string[] => {
  const style = units === 'in' ? INCH_SIXTEENTH : MM_HALF;
  const length = (mm: number): string => formatLength(mm, style);
  const lines = design.fit.sides.map(({ run, repeats, seat }) => {
    const swags = `${repeats} ${repeats === 1 ? 'swag' : 'swags'}`;
    const size = `${swags} of ${length(2 * seat.pose.halfSpan)}, ${length(seat.pose.depth)} deep`;
    const gap = seat.gap > 0 ? `, ${length(seat.gap)} between neighbours` : '';
    return `${run.name}: ${size}${gap}`;
  });
  const { corner } = design.fit;
  return corner === undefined ? lines : [...lines, `corners: ${length(corner.seat.pose.depth)} deep`];
};
