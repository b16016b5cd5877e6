/**
 * The line that one half swag stitches, before it is laid anywhere: a stretch of a template's stitched edge,
 * turned over if need be, and brought to start at the origin. Laying it is then a single turn, the tilt.
 */

import {
  angleOf,
  compose,
  type Motion,
  move,
  movePath,
  norm,
  type Path,
  pathEnd,
  pathStart,
  reversePath,
  STAY,
  type Support,
  shareOfAngle,
  shift,
  slicePath,
  subtract,
  supportOf,
} from '../geometry/index.ts';
import type { Stitching, Stop } from './stitching.ts';

/** The template lies inside the swag (between stitching and seam), or outside it. */
export type TemplateSide = 'inside' | 'outside';
/** Which end of the edge stands at the start mark. */
export type Direction = 'heel-first' | 'crown-first';

export interface Shape {
  readonly stitching: Stitching;
  /** In the edge's order, whatever the direction: from nearer the heel to nearer the crown. */
  readonly from: Stop;
  readonly to: Stop;
  readonly side: TemplateSide;
  readonly direction: Direction;
  /** From the template's own frame to the shape's: a turn-over or none, and a move. */
  readonly motion: Motion;
  /** From the start mark to the crown, starting at the origin, not yet tilted. */
  readonly path: Path;
  /** The straight line from start to end: its length (mm) and its angle before tilting (radians). */
  readonly chord: number;
  readonly chordAngle: number;
  readonly support: Support;
}

/** A swag needs some way to go; stretches whose ends are nearer than this (mm) make none. */
const SHORTEST_CHORD = 5;

/**
 * The shape of a stretch, or undefined where it has no length or comes back to its start.
 *
 * The foot runs on the left of the edge, so the template lies on the right of the needle's way. Going
 * heel-first with the swag to the right of its start, that is inside; every change of one of the two turns
 * the template over, and a change of both leaves it as it was.
 */
export const shapeOf = (
  stitching: Stitching,
  from: Stop,
  to: Stop,
  side: TemplateSide,
  direction: Direction,
): Shape | undefined => {
  if (!(to.along > from.along)) return undefined;
  const stretch = slicePath(stitching.stitched.path, from.along, to.along);
  const forward = direction === 'heel-first';
  const way = forward ? stretch : reversePath(stretch);
  const flip = (side === 'outside') === forward;
  const start = pathStart(way);
  if (!start) return undefined;
  const over: Motion = { ...STAY, flip };
  const at = move(over, start);
  const motion = compose(shift(-at.x, -at.y), over);
  const path = movePath(way, motion);
  return measured({ stitching, from, to, side, direction, motion, path });
};

/** The first `along` mm of a shape's own path, ending at a stop on the same edge. */
export const shortened = (shape: Shape, along: number, end: Stop): Shape | undefined => {
  const path = slicePath(shape.path, 0, along);
  return measured(
    shape.direction === 'heel-first' ? { ...shape, to: end, path } : { ...shape, from: end, path },
  );
};

const measured = (bare: Omit<Shape, 'chord' | 'chordAngle' | 'support'>): Shape | undefined => {
  const { path } = bare;
  const end = pathEnd(path);
  if (!end) return undefined;
  const along = subtract(end, pathStart(path)!);
  const chord = norm(along);
  if (!(chord >= SHORTEST_CHORD)) return undefined;
  return {
    ...bare,
    chord,
    chordAngle: Math.atan2(along.y, along.x),
    support: supportOf(path),
  };
};

/** The farthest that a shape's path comes from its start, mm. */
export const reachOf = ({ path }: Shape): number => {
  let most = 0;
  for (const p of path.pieces) {
    most = Math.max(most, norm(p.to));
    // The farthest point of a circle lies behind its centre.
    if (p.kind === 'arc' && shareOfAngle(p, angleOf(p.center)) !== undefined)
      most = Math.max(most, norm(p.center) + p.radius);
  }
  return most;
};
