/** A teardrop in the open place between a feather's two halves, where they meet on the axis. */

import {
  add,
  distance,
  mirror,
  movePiece,
  type Nearness,
  nearnessOf,
  type Piece,
  type Point,
  pieceAt,
  reversePiece,
  scale,
} from '../geometry/index.ts';
import { rotated } from './feather-side.ts';
import { biarc } from './two-arcs.ts';

/** The steepest and the flattest angle (radians) from its axis at which the drop may leave its point. */
const FULLEST = 0.95;
const SLIMMEST = 0.25;
const ANGLE_STEP = 0.05;

/** A drop shorter than this many gaps is only clutter. */
const LEAST_LENGTH = 2.5;

/**
 * The drop ends at one of these shares of the way to what lies ahead, so that it reads as a bud inside a bud.
 */
const REACHES = [0.8, 0.7, 0.6, 0.5, 0.4] as const;

/**
 * A closed drop from the point `at` along the unit vector `up` and back, as full as it can be while it keeps
 * `gap` mm from the walls; undefined where there is no room.
 */
export const teardrop = (at: Point, up: Point, walls: readonly Piece[], gap: number): Piece[] | undefined => {
  const near = nearnessOf(walls);
  let length = 0;
  for (let k = 1; k <= MOST_STEPS; k++) {
    const l = (k * gap) / 8;
    // Close to the spine the walls may be nearer than the gap; farther out they must not be.
    if (near.distance(add(at, scale(up, l))) < gap) {
      if (l > 2 * gap) break;
      continue;
    }
    length = l;
  }
  // Where the place narrows ahead, a shorter drop is a fuller one: the largest of a few.
  let best: Piece[] | undefined;
  let size = 0;
  for (const reach of REACHES) {
    const along = length * reach;
    if (!(along >= LEAST_LENGTH * gap)) break;
    const angle = fullestAngle(at, up, along, near, gap);
    if (angle === undefined || !(along * along * angle > size)) continue;
    size = along * along * angle;
    best = halfDrop(at, up, along, angle);
  }
  if (!best) return undefined;
  const over = mirror(at, Math.atan2(up.y, up.x));
  return [...best, ...best.map((p) => reversePiece(movePiece(p, over))).reverse()];
};

const halfDrop = (at: Point, up: Point, length: number, angle: number): Piece[] =>
  biarc(at, rotated(up, -angle), add(at, scale(up, length)), rotated(up, Math.PI / 2));

const fullestAngle = (
  at: Point,
  up: Point,
  length: number,
  near: Nearness,
  gap: number,
): number | undefined => {
  for (let angle = FULLEST; angle >= SLIMMEST; angle -= ANGLE_STEP) {
    const fits = halfDrop(at, up, length, angle).every((p) =>
      [0.1, 0.25, 0.4, 0.55, 0.7, 0.85, 1].every((t) => {
        const q = pieceAt(p, t);
        return near.distance(q) >= Math.min(gap, distance(q, at) / 2);
      }),
    );
    if (fits) return angle;
  }
  return undefined;
};

const MOST_STEPS = 4000;
