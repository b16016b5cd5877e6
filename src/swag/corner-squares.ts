/** The squares of cloth at the corners of a border whose sides end beside them. */

import { compose, type Motion, polyline, type Region, regionOf, shift } from '../geometry/index.ts';
import type { Design, PlacedSide } from './design.ts';
import { leavesSquare } from './field.ts';

/** What of each square may be quilted: as far from the seams as the sides' quilting keeps. All four are alike. */
export interface CornerSquares {
  /** In a square's own frame, which begins at the corner nearest to the quilt's middle or farthest from it. */
  readonly region: Region;
  readonly at: readonly CornerSquare[];
}

interface CornerSquare {
  /** `top right`. */
  readonly name: string;
  /** The side that ends beside it, and the one that begins there. */
  readonly before: PlacedSide;
  readonly after: PlacedSide;
  /** From the square's own frame to the quilt's, as drawn. */
  readonly place: Motion;
}

/** Undefined where sides meet, or a swag lies over the corners. */
export const cornerSquares = ({ field, sides }: Design): CornerSquares | undefined => {
  if (!leavesSquare(field) || !field.isBounded) return undefined;
  const { from, startMargin, farMargin, marksAt } = field;
  const near = field.near - marksAt;
  const size = field.far - field.near;
  // Beyond the end of a side that is as long as the inner seam, whichever seam its swags leave.
  const beyond = from === 'inner' ? startMargin : farMargin;
  const ends = [
    { x: 0, y: 0 },
    { x: size, y: 0 },
    { x: size, y: size },
    { x: 0, y: size },
  ];
  const at = sides.flatMap((before): readonly CornerSquare[] => {
    const after = sides.find((side) => side !== before && side.run.name === before.run.next);
    const place = compose(before.run.place, shift(before.run.drawn + beyond, near + marksAt));
    return after ? [{ name: after.run.begins, before, after, place }] : [];
  });
  return { region: regionOf([polyline(ends, true)]), at };
};
