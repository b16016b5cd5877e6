/** The few reading functions that checks of a laid design need, and a way back to the template's own frame. */

import { inverse, type Motion, mover, type Point } from '../../src/geometry/index.ts';

export { distanceToPiece, type Point, pathEnd, pathStart } from '../../src/geometry/index.ts';
export { placedPath } from '../../src/swag/index.ts';

/** From a cell's frame back to the template's. */
export const move = (motion: Motion, p: Point): Point => mover(inverse(motion))(p);
