/** How much of a design is printed at true size when nobody says. */

import { MM_PER_INCH } from '../../length/index.ts';
import type { Design } from '../../swag/index.ts';

/** A frame round a block of up to this size (mm) takes a dozen sheets at most, and is held against the block whole. */
const WHOLE_SIDE = 20 * MM_PER_INCH;

/**
 * A strip and a frame are printed whole. A whole border would be a hundred sheets, and one corner tells what there
 * is to tell.
 */
export const usualShow = ({ sides }: Design): string =>
  sides.length > 1 && Math.max(...sides.map((s) => s.run.length)) > WHOLE_SIDE ? 'corner' : 'all';
