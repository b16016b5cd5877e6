/**
 * Where to lay the grid of windows so that the fewest sheets carry ink: every shift in steps of 1 mm, for every
 * shape of window that the paper allows.
 *
 * Method: for each shift a lower bound, the number of cores that hold ink for certain, from running sums over an
 * occupancy grid, row by row. Then the exact count, in the order of the bounds, until the next bound is above the
 * best count. So the answer is least among all shifts, and few shifts are counted exactly.
 */

import type { Ink } from './ink.ts';
import { type Occupancy, occupancyOf } from './occupancy.ts';
import { axisFor, type Divided, divide, type Tiling, tile, type Untidiness, untidinessOf } from './tiling.ts';

/** The search's step (mm), the same on both axes. */
const SHIFT_STEP = 1;

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
  const candidates = shapes.map((shape) => candidateFor(ink, grid, shape));
  let best: { found: Found; untidiness: Untidiness } | undefined;
  // The bounds are small whole numbers, so they are gone through one by one.
  for (let bound = 0; bound <= (best?.found.tiling.sheets ?? most); bound++) {
    for (const [shape, { bounds, across, up }] of candidates.entries()) {
      for (let index = bounds.indexOf(bound); index >= 0; index = bounds.indexOf(bound, index + 1)) {
        const limit = best?.found.tiling.sheets ?? most;
        const x = across[index % across.length]!;
        const y = up[Math.floor(index / across.length)]!;
        const tiling = tile(ink, grid, x, y, limit);
        if (!tiling) continue;
        const untidiness = untidinessOf(ink, grid, tiling, x, y);
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

interface Candidate {
  /** The axes for every shift. */
  readonly across: readonly Divided[];
  readonly up: readonly Divided[];
  /** bounds[shiftY · across.length + shiftX]: at least so many sheets. */
  readonly bounds: Int32Array;
}

const candidateFor = (ink: Ink, grid: Occupancy, shape: WindowShape): Candidate => {
  const { box } = ink;
  const axes = (min: number, max: number, step: number, overlap: number): Divided[] =>
    Array.from({ length: shiftsFor(step) }, (_, shift) =>
      divide(axisFor(min, max, shift * SHIFT_STEP, step, overlap), grid, min),
    );
  const across = axes(box.minX, box.maxX, shape.width - shape.overlapX, shape.overlapX);
  const up = axes(box.minY, box.maxY, shape.height - shape.overlapY, shape.overlapY);
  return { across, up, bounds: boundsFor(grid, across, up) };
};

const boundsFor = (grid: Occupancy, across: readonly Divided[], up: readonly Divided[]): Int32Array => {
  const bounds = new Int32Array(across.length * up.length);
  const wide = grid.columns + 1;
  const below = new Int32Array(wide);
  // The cores' ends as plain numbers, clamped to the grid once: shift by shift, window by window.
  const ends = across.map(({ axis, stretches }) => {
    const cells = new Int32Array(2 * axis.count);
    for (let k = 0; k < axis.count; k++) {
      const [i0, i1] = stretches[2 * k + 1]!.within;
      const first = Math.min(grid.columns, Math.max(0, i0));
      cells[2 * k] = first;
      cells[2 * k + 1] = Math.max(first, Math.min(grid.columns, i1));
    }
    return cells;
  });
  // Cores beyond the ink have no cells.
  const widths = ends.map((cells) => {
    const own: number[] = [];
    for (let e = 0; e < cells.length; e += 2)
      if (cells[e + 1]! > cells[e]!) own.push(cells[e + 1]! - cells[e]!);
    return { narrowest: Math.min(...own), cores: own.length };
  });
  for (const [shiftY, { axis, stretches }] of up.entries()) {
    for (let k = 0; k < axis.count; k++) {
      const [first, last] = stretches[2 * k + 1]!.within;
      const j0 = Math.max(0, first);
      const j1 = Math.min(grid.rows, last);
      if (!(j0 < j1)) continue;
      for (let i = 0; i < wide; i++) below[i] = grid.sums[j1 * wide + i]! - grid.sums[j0 * wide + i]!;
      const gap = longestGap(below);
      for (const [shiftX, cells] of ends.entries()) {
        // In a dense drawing no core fits between its ink.
        const { narrowest, cores } = widths[shiftX]!;
        if (gap < narrowest) {
          bounds[shiftY * across.length + shiftX]! += cores;
          continue;
        }
        let inked = 0;
        for (let e = 0; e < cells.length; e += 2) if (below[cells[e + 1]!]! > below[cells[e]!]!) inked++;
        bounds[shiftY * across.length + shiftX]! += inked;
      }
    }
  }
  return bounds;
};

/** The most cells in a row without ink, of running sums along a row. */
const longestGap = (sums: Int32Array): number => {
  let longest = 0;
  let since = 0;
  for (let i = 1; i < sums.length; i++) {
    if (sums[i]! > sums[i - 1]!) since = i;
    else if (i - since > longest) longest = i - since;
  }
  return longest;
};
