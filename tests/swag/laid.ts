/** The few reading functions that checks of a laid design need, and a way back to the template's own frame. */

import { inverse, type Motion, mover, type Point, pieceDirection } from '../../src/geometry/index.ts';
import { type Design, placedPath } from '../../src/swag/index.ts';

export { distanceToPiece, type Point, pathEnd, pathStart } from '../../src/geometry/index.ts';
export { placedPath } from '../../src/swag/index.ts';

/** From a cell's frame back to the template's. */
export const move = (motion: Motion, p: Point): Point => mover(inverse(motion))(p);

/** By how many degrees the stitching turns where the two halves over a corner meet, as it is drawn. */
export const turnsOnMitre = ({ halves }: Design): number => {
  const [one, other] = halves
    .filter((half) => half.repeat === 'corner top right')
    .map((half) => pieceDirection(placedPath(half).pieces.at(-1)!, 1));
  // Both come to the mitre; sewn on, the second is gone through backward.
  const [along, on] = [one!, { x: -other!.x, y: -other!.y }];
  const turn = Math.atan2(along.x * on.y - along.y * on.x, along.x * on.x + along.y * on.y);
  return Math.abs((turn * 180) / Math.PI);
};
