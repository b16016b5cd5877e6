/** Whether a region is the same on both sides of a line, so that its fill can be too. */

import {
  isEmptyRegion,
  type Motion,
  mirror,
  mover,
  type Point,
  pieceAt,
  probeRegion,
  type Region,
  regionBox,
  regionPieces,
} from '../geometry/index.ts';
import type { Axis, FillContext } from './fill.ts';

/** Boundaries that agree to this (mm) when mirrored are mirror images to the eye. */
const AGREE = 0.2;

/**
 * The mirror line that was given, or the upright one through the region's middle if the region is its own
 * image.
 */
export const axisOf = (region: Region, context: FillContext | undefined): Axis | undefined => {
  if (isEmptyRegion(region)) return undefined;
  if (context?.axis) return isMirrored(region, context.axis) ? context.axis : undefined;
  const box = regionBox(region);
  const upright: Axis = {
    at: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 },
    angle: Math.PI / 2,
  };
  return isMirrored(region, upright) ? upright : undefined;
};

const isMirrored = (region: Region, axis: Axis): boolean => {
  const over = mover(mirrorOf(axis));
  const near = probeRegion(region);
  return regionPieces(region).every((p) =>
    [0, 0.25, 0.5, 0.75].every((t) => near.distance(over(pieceAt(p, t))) < AGREE),
  );
};

export const mirrorOf = (axis: Axis): Motion => mirror(axis.at, axis.angle);

/** The distance (mm) from the axis, positive on its left. */
export const offAxis = (p: Point, axis: Axis): number =>
  (p.y - axis.at.y) * Math.cos(axis.angle) - (p.x - axis.at.x) * Math.sin(axis.angle);
