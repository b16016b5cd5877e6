/**
 * Where to lay the grid of windows so that the fewest sheets carry ink: every shift in steps of 1 mm, for every
 * shape of window that the paper allows.
 *
 * Method: for each shift a lower bound, the number of cores that hold ink for certain, from running sums over an
 * occupancy grid, row by row. Then the exact count, in the order of the bounds, until the next bound is above the
 * best count. So the answer is least among all shifts, and few shifts are counted exactly.
 */

import { boxHeight, boxWidth } from '../geometry/index.ts';
import type { Ink } from './ink.ts';
import { firstInside, lastInside, type Occupancy, occupancyOf } from './occupancy.ts';
import { axisFor, type Tiling, tile, type Untidiness, untidinessOf } from './tiling.ts';

/** The search's step (mm), the same on both axes. */
export const SHIFT_STEP = 1;

/** A window's size and the width of the bands that neighbours share, in mm along the drawing's own axes. */
export interface WindowShape {
  readonly width: number;
  readonly height: number;
  readonly overlapX: number;
  readonly overlapY: number;
}

export interface Found {
  /** Which of the shapes was chosen. */
  readonly shape: number;
  readonly tiling: Tiling;
  /** The ink on a grid, for what has to be put where there is none. */
  readonly grid: Occupancy;
}

/** The least tiling over all shapes and shifts, or undefined when every one needs more than `most` sheets. */
export const fewestSheets = (ink: Ink, shapes: readonly WindowShape[], most: number): Found | undefined => {
  const grid = occupancyOf(ink);
  const candidates = shapes.map((shape) => boundsFor(ink, grid, shape));
  let best: { found: Found; untidiness: Untidiness } | undefined;
  // The bounds are small whole numbers, so they are gone through one by one.
  for (let bound = 0; bound <= (best?.found.tiling.sheets ?? most); bound++) {
    for (const [shape, { bounds, shiftsX }] of candidates.entries()) {
      for (let index = 0; index < bounds.length; index++) {
        if (bounds[index] !== bound) continue;
        const limit = best?.found.tiling.sheets ?? most;
        if (bound > limit) break;
        const tiling = tileAt(ink, grid, shapes[shape]!, index % shiftsX, Math.floor(index / shiftsX), limit);
        if (!tiling) continue;
        const untidiness = untidinessOf(ink, grid, tiling);
        const better =
          !best || tiling.sheets < best.found.tiling.sheets || isTidier(untidiness, best.untidiness);
        if (better) best = { found: { shape, tiling, grid }, untidiness };
      }
    }
  }
  return best?.found;
};

const isTidier = (a: Untidiness, b: Untidiness): boolean => {
  if (a.joins !== b.joins) return a.joins < b.joins;
  if (a.inkInBands !== b.inkInBands) return a.inkInBands < b.inkInBands;
  return a.offCentre < b.offCentre - OFF_CENTRE_NOISE;
};

/** Differences of the middle below this (mm) are rounding: the earlier shape and shift stand. */
const OFF_CENTRE_NOISE = 1e-6;

const shiftsFor = (step: number): number => Math.max(1, Math.ceil(step / SHIFT_STEP));

const tileAt = (
  ink: Ink,
  grid: Occupancy,
  shape: WindowShape,
  shiftX: number,
  shiftY: number,
  most: number,
): Tiling | undefined => {
  const { box } = ink;
  const stepX = shape.width - shape.overlapX;
  const stepY = shape.height - shape.overlapY;
  const x = axisFor(box.minX, box.maxX, shiftX * SHIFT_STEP, stepX, shape.overlapX);
  const y = axisFor(box.minY, box.maxY, shiftY * SHIFT_STEP, stepY, shape.overlapY);
  return tile(ink, grid, x, y, most);
};

interface Bounds {
  /** bounds[shiftY · shiftsX + shiftX]: at least so many sheets. */
  readonly bounds: Int32Array;
  readonly shiftsX: number;
}

const boundsFor = (ink: Ink, grid: Occupancy, shape: WindowShape): Bounds => {
  const stepX = shape.width - shape.overlapX;
  const stepY = shape.height - shape.overlapY;
  const shiftsX = shiftsFor(stepX);
  const shiftsY = shiftsFor(stepY);
  const bounds = new Int32Array(shiftsX * shiftsY);
  const width = boxWidth(ink.box);
  const height = boxHeight(ink.box);
  const wide = grid.columns + 1;
  const below = new Int32Array(wide);
  for (let shiftY = 0; shiftY < shiftsY; shiftY++) {
    for (let bottom = -shiftY * SHIFT_STEP; bottom < height; bottom += stepY) {
      const j0 = Math.max(0, firstInside(grid, bottom + shape.overlapY));
      const j1 = Math.min(grid.rows, lastInside(grid, bottom + stepY));
      if (!(j0 < j1)) continue;
      for (let i = 0; i < wide; i++) below[i] = grid.sums[j1 * wide + i]! - grid.sums[j0 * wide + i]!;
      for (let shiftX = 0; shiftX < shiftsX; shiftX++) {
        let inked = 0;
        for (let left = -shiftX * SHIFT_STEP; left < width; left += stepX) {
          const i0 = Math.max(0, firstInside(grid, left + shape.overlapX));
          const i1 = Math.min(grid.columns, lastInside(grid, left + stepX));
          if (i0 < i1 && below[i1]! > below[i0]!) inked++;
        }
        bounds[shiftY * shiftsX + shiftX]! += inked;
      }
    }
  }
  return { bounds, shiftsX };
};
