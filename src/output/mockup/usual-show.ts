/** How much of a design is printed at true size when nobody says. */

import type { Design } from '../../swag/index.ts';

/** A strip is printed whole. A whole border would be a hundred sheets, and one corner tells what there is to tell. */
export const usualShow = (design: Design): string =>
  design.corner || design.sides.length > 1 ? 'corner' : 'all';
