/**
 * One way to lay a grid of windows over the ink, and which of its sheets are needed. Windows are `step` apart
 * and `step + overlap` long, so each axis falls into cores, which one window shows, and bands, which two show.
 */

import type { Box } from '../geometry/index.ts';
import { fewestFor } from './covering.ts';
import { holdsInk, type Ink } from './ink.ts';
import { countInside, countTouched, type Occupancy } from './occupancy.ts';

/** One axis of a grid of windows: window k runs from `start + k·step` for `step + overlap`, k from 0 to count − 1. */
export interface Axis {
  readonly start: number;
  readonly step: number;
  readonly overlap: number;
  readonly count: number;
}

export interface Tiling {
  readonly x: Axis;
  readonly y: Axis;
  /** printed[row · x.count + column], rows from low y to high. */
  readonly printed: readonly boolean[];
  readonly sheets: number;
}

/** The windows that meet [min, max] when the one that holds `min` starts `shift` before it (0 ≤ shift < step). */
export const axisFor = (min: number, max: number, shift: number, step: number, overlap: number): Axis => {
  // The window before ends in a band that may hold the beginning of the ink.
  const start = shift < overlap ? min - shift - step : min - shift;
  const count = Math.max(1, Math.ceil((max - start) / step - SHARE_NOISE));
  return { start, step, overlap, count };
};

/** A window that starts where the ink ends, but for rounding, is not needed. */
const SHARE_NOISE = 1e-9;

export const windowOf = (x: Axis, y: Axis, column: number, row: number): Box => ({
  minX: x.start + column * x.step,
  minY: y.start + row * y.step,
  maxX: x.start + (column + 1) * x.step + x.overlap,
  maxY: y.start + (row + 1) * y.step + y.overlap,
});

/** A stretch of an axis and the windows that show it: two for a band, one for a core. */
interface Stretch {
  readonly min: number;
  readonly max: number;
  readonly windows: readonly number[];
}

/** The axis from end to end in order: band, core, band, … The first band and the last have only one window. */
const stretchesOf = (axis: Axis): Stretch[] => {
  const stretches: Stretch[] = [];
  for (let k = 0; k <= axis.count; k++) {
    const at = axis.start + k * axis.step;
    const both = [k - 1, k].filter((w) => w >= 0 && w < axis.count);
    stretches.push({ min: at, max: at + axis.overlap, windows: both });
    if (k < axis.count) stretches.push({ min: at + axis.overlap, max: at + axis.step, windows: [k] });
  }
  return stretches;
};

/**
 * Whether a box holds ink: by the grid where that is certain, by the exact test where only cells on the box's
 * rim are marked.
 */
const inked = (ink: Ink, grid: Occupancy, box: Box): boolean => {
  if (countInside(grid, box) > 0) return true;
  return countTouched(grid, box) > 0 && holdsInk(ink, box);
};

/** The tiling with the fewest sheets for this placing of the grid, or undefined when it needs more than `most`. */
export const tile = (ink: Ink, grid: Occupancy, x: Axis, y: Axis, most: number): Tiling | undefined => {
  const printed = new Array<boolean>(x.count * y.count).fill(false);
  let sheets = 0;
  for (let row = 0; row < y.count; row++) {
    for (let column = 0; column < x.count; column++) {
      const w = windowOf(x, y, column, row);
      const core = {
        minX: w.minX + x.overlap,
        minY: w.minY + y.overlap,
        maxX: w.maxX - x.overlap,
        maxY: w.maxY - y.overlap,
      };
      if (!inked(ink, grid, core)) continue;
      printed[row * x.count + column] = true;
      if (++sheets > most) return undefined;
    }
  }
  const across = stretchesOf(x);
  const groups: number[][] = [];
  for (const [index, up] of stretchesOf(y).entries()) {
    // Cores are done: of a row of cores only the bands are left.
    const coreRow = index % 2 === 1;
    for (let i = 0; i < across.length; i += coreRow ? 2 : 1) {
      const along = across[i]!;
      const group = up.windows.flatMap((row) => along.windows.map((column) => row * x.count + column));
      if (group.some((sheet) => printed[sheet])) continue;
      const box = { minX: along.min, minY: up.min, maxX: along.max, maxY: up.max };
      if (inked(ink, grid, box)) groups.push(group);
    }
  }
  const extra = fewestFor(groups);
  if (sheets + extra.length > most) return undefined;
  for (const sheet of extra) printed[sheet] = true;
  return { x, y, printed, sheets: sheets + extra.length };
};

/** What decides between tilings with equally many sheets: less first, in this order. */
export interface Untidiness {
  /** Edges that have to be taped. */
  readonly joins: number;
  /** Marked cells in bands between printed neighbours. */
  readonly inkInBands: number;
  /** How far (mm) the ink's middle lies from the printed sheets' middle, both axes added. */
  readonly offCentre: number;
}

export const untidinessOf = (ink: Ink, grid: Occupancy, t: Tiling): Untidiness => {
  let joins = 0;
  let inkInBands = 0;
  let [left, right, low, high] = [t.x.count, -1, t.y.count, -1];
  const isPrinted = (column: number, row: number): boolean =>
    column < t.x.count && row < t.y.count && t.printed[row * t.x.count + column] === true;
  for (let row = 0; row < t.y.count; row++) {
    for (let column = 0; column < t.x.count; column++) {
      if (!isPrinted(column, row)) continue;
      left = Math.min(left, column);
      right = Math.max(right, column);
      low = Math.min(low, row);
      high = Math.max(high, row);
      const w = windowOf(t.x, t.y, column, row);
      if (isPrinted(column + 1, row)) {
        joins++;
        inkInBands += countTouched(grid, { ...w, minX: w.maxX - t.x.overlap });
      }
      if (isPrinted(column, row + 1)) {
        joins++;
        inkInBands += countTouched(grid, { ...w, minY: w.maxY - t.y.overlap });
      }
    }
  }
  const first = windowOf(t.x, t.y, left, low);
  const last = windowOf(t.x, t.y, right, high);
  const offCentre =
    Math.abs(first.minX + last.maxX - ink.box.minX - ink.box.maxX) / 2 +
    Math.abs(first.minY + last.maxY - ink.box.minY - ink.box.maxY) / 2;
  return { joins, inkInBands, offCentre };
};
