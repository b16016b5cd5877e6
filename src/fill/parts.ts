/** A region taken apart where it is too narrow to be filled across. */

import { insetRegion, type Region, regionParts } from '../geometry/index.ts';

/**
 * The parts of a region that hang together by more than a neck 2·`half` mm wide, each as wide as it was
 * (rounded at the neck). A region without such a neck comes back as it is, with all its corners.
 */
export const roomyParts = (region: Region, half: number): Region[] =>
  regionParts(region).flatMap((part) => {
    const cores = regionParts(insetRegion(part, half));
    if (cores.length <= 1) return [part];
    // A little less than it was shrunk, so that no part can reach over its own edge by rounding.
    return cores.map((core) => insetRegion(core, -half * 0.999));
  });
