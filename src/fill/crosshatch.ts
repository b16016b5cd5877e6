/**
 * Crosshatch: two families of parallel lines at right angles, exact in spacing and angle, cut at the region's
 * edge.
 */

import { checked, type Fill, nothing, TOO_FINE } from './fill.ts';
import { anchorOf, evenOffsets, parallelLines, reachAcross } from './parallel.ts';
import { linesOnSides } from './sides.ts';

/** On the diagonal, as crosshatch is quilted unless someone asks otherwise (common practice). */
const DIAGONAL = Math.PI / 4;

export const crosshatch: Fill = checked({
  name: 'crosshatch',
  about: 'two families of parallel lines at right angles, cut at the edge',
  suits: 'area',
  sewn: 'sew one direction line after line, each back beside the one before, then the other direction; between two lines the needle travels along the edge',
  crowd: 0.2,
  takes: ['angle'],
  usualAngle: DIAGONAL,
  fill: (region, options, context) => {
    if (context?.sides) {
      const first = options.angle ?? DIAGONAL;
      const paths = linesOnSides(region, context.sides, [first, first + Math.PI / 2], options.spacing);
      return paths ? { paths, continuous: false, messages: [] } : nothing(TOO_FINE);
    }
    const anchor = anchorOf(region, context);
    const angle = (options.angle ?? DIAGONAL) + (options.turn ?? 0);
    const families = [angle, angle + Math.PI / 2].map((a) => {
      const offsets = evenOffsets(reachAcross(region, anchor, a), options.spacing);
      return offsets && parallelLines(region, anchor, a, offsets);
    });
    if (families.some((f) => !f)) return nothing(TOO_FINE);
    return { paths: families.flatMap((f) => f ?? []), continuous: false, messages: [] };
  },
});
