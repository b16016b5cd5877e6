/** Echo lines: the region's edge repeated inwards until nothing is left, or what is stitched beside it outwards. */

import {
  boxHeight,
  boxWidth,
  insetRegion,
  isEmptyRegion,
  type Path,
  pathLength,
  regionBox,
  signedArea,
} from '../geometry/index.ts';
import { checked, type Fill, MOST_ELEMENTS, nothing, TOO_FINE } from './fill.ts';

/** A loop narrower than this share of the spacing would be one line stitched twice over itself. */
const LEAST_WIDTH = 0.15;

/** The width of a long loop: twice its area over its length. */
const meanWidth = (loop: Path): number => (2 * Math.abs(signedArea(loop))) / pathLength(loop);

export const echo: Fill = checked({
  name: 'echo',
  about: 'the edge repeated inwards to the middle; in the background the swags’ own line, outwards',
  suits: 'area',
  sewn: 'sew the line nearest to the stitching first and then each one farther away; lines that lie apart are started anew',
  crowd: 0.2,
  takes: [],
  fill: (region, { spacing }, context) => {
    if (context?.echoed) {
      const paths = context.echoed(spacing);
      if (paths.length === 0) return nothing('the area is too narrow for a line at this spacing');
      return { paths, continuous: false, messages: [] };
    }
    const box = regionBox(region);
    const most = Math.ceil(Math.min(boxWidth(box), boxHeight(box)) / 2 / spacing) + 1;
    if (!(most < MOST_ELEMENTS)) return nothing(TOO_FINE);
    const paths: Path[] = [];
    for (let k = 1; k <= most; k++) {
      // Each from the first edge, not from the last line: so no error adds up.
      const inside = insetRegion(region, k * spacing);
      if (isEmptyRegion(inside)) break;
      paths.push(...inside.loops.filter((loop) => meanWidth(loop) > spacing * LEAST_WIDTH));
    }
    if (paths.length === 0) return nothing('the area is too narrow for a line at this spacing');
    return { paths, continuous: false, messages: [] };
  },
});
