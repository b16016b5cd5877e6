/**
 * The outline of a patch to a fraction of a pixel: the line on which the grey, taken as even between the middles
 * of neighbouring pixels, has the outline's level. Followed from cell to cell of four pixels (marching squares;
 * Lorensen and Cline, "Marching cubes", SIGGRAPH 1987, in the plane). Where a cell's corners alternate, the mean
 * of the four decides.
 *
 * Coordinates are pixels, x to the right and y down, the middle of the first pixel at (0.5, 0.5). The ink lies on
 * the left as seen with y down (so on the right once y points up): an outer outline runs with the shape on its
 * right in a picture seen as usual.
 */

import type { Point } from '../geometry/index.ts';
import type { Picture } from './picture.ts';
import type { Tone } from './tone.ts';

/** A longer outline than this is a ragged one: a template's at 1200 dots per inch has 100,000 steps. */
const MOST_STEPS = 400_000;

/**
 * The outline through the upper side of a pixel that is inked and has a ground pixel above it (or the other way
 * round). Undefined where it does not close within the limit.
 */
export const contourFrom = (
  { width, height, grey }: Picture,
  tone: Tone,
  startX: number,
  startY: number,
): readonly Point[] | undefined => {
  const sign = tone.dark ? 1 : -1;
  // Outside the picture lies ground, as far from the level as ink can be on the other side.
  const value = (x: number, y: number): number =>
    x < 0 || y < 0 || x >= width || y >= height ? -OUTSIDE : sign * (tone.level - grey[y * width + x]!);
  const points: Point[] = [];
  // The walk goes along the boundary from side to side of cells, ink on the right hand as seen (y down).
  // A side is between an inked pixel (ix, iy) and a ground pixel (gx, gy), neighbours of each other.
  const isInk = value(startX, startY) > 0;
  let ix = startX;
  let iy = isInk ? startY : startY - 1;
  let gx = startX;
  let gy = isInk ? startY - 1 : startY;
  const first = [ix, iy, gx, gy] as const;
  for (let step = 0; step < MOST_STEPS; step++) {
    const vi = value(ix, iy);
    const vg = value(gx, gy);
    const t = vi / (vi - vg);
    points.push({ x: ix + 0.5 + (gx - ix) * t, y: iy + 0.5 + (gy - iy) * t });
    // Ahead lies the cell that has these two pixels and the next two: turn the step from ink to ground by a
    // quarter clockwise as seen, so that the ink stays on the right.
    const dx = gx - ix;
    const dy = gy - iy;
    const ax = -dy;
    const ay = dx;
    const vi2 = value(ix + ax, iy + ay);
    const vg2 = value(gx + ax, gy + ay);
    const inkAhead = vi2 > 0;
    const groundAhead = !(vg2 > 0);
    if (inkAhead && groundAhead) {
      ix += ax;
      iy += ay;
      gx += ax;
      gy += ay;
    } else if (!inkAhead && groundAhead) {
      // The way turns round the inked pixel.
      gx = ix + ax;
      gy = iy + ay;
    } else if (inkAhead && !groundAhead) {
      ix = gx + ax;
      iy = gy + ay;
    } else if (vi + vg + vi2 + vg2 > 0) {
      ix = gx + ax;
      iy = gy + ay;
    } else {
      gx = ix + ax;
      gy = iy + ay;
    }
    if (ix === first[0] && iy === first[1] && gx === first[2] && gy === first[3]) return points;
  }
  return undefined;
};

const OUTSIDE = 255;

/** Twice the area inside a ring of points, positive where it runs counterclockwise with y up. */
export const ringArea = (ring: readonly Point[]): number => {
  let twice = 0;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!;
    const b = ring[(i + 1) % ring.length]!;
    twice += a.x * b.y - a.y * b.x;
  }
  return twice / 2;
};
