/** How a sheet of paper is held, and what of it stays white. */

import { MM_PER_INCH } from '../length/index.ts';

export type Orientation = 'portrait' | 'landscape';

/** Millimetres kept free at each side of the sheet, as the sheet is read. */
export interface Margins {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** The edge that printers cannot reach is 4 to 6.35 mm as a rule; 1/2 in clears nearly all of them. */
export const DEFAULT_MARGIN = MM_PER_INCH / 2;

/** Most printers reach to within 1/4 in of the edge; nearer than that ink is lost. */
export const LEAST_MARGIN = MM_PER_INCH / 4;

/**
 * 1/2 in: the cut runs down the middle, so that 1/4 in of paper lies under every join for the tape to hold, the
 * crosses stand whole on the sheet below, and a feed that is off by the usual 1 mm leaves no gap.
 */
export const DEFAULT_OVERLAP = MM_PER_INCH / 2;

export const evenMargins = (margin: number): Margins => ({
  top: margin,
  right: margin,
  bottom: margin,
  left: margin,
});
