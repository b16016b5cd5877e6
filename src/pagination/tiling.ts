/**
 * One way to lay a grid of windows over the ink, and which of its sheets are needed. Windows are `step` apart
 * and `step + overlap` long, so each axis falls into cores, which one window shows, and bands, which two show.
 */

import type { Box } from '../geometry/index.ts';
import { fewestFor } from './covering.ts';
import { holdsInk, type Ink } from './ink.ts';
import { countCells, firstInside, lastInside, type Occupancy } from './occupancy.ts';

/** One axis of a grid of windows: window k runs from `start + k·step` for `step + overlap`, k from 0 to count − 1. */
export interface Axis {
  readonly start: number;
  readonly step: number;
  readonly overlap: number;
  readonly count: number;
}

/** A stretch of an axis, mm, with its cells: those that lie wholly in it and those that it touches, end excluded. */
interface Stretch {
  readonly min: number;
  readonly max: number;
  readonly within: readonly [number, number];
  readonly touched: readonly [number, number];
}

/** An axis and its stretches from end to end: band, core, band, …, band. Stretch 2k + 1 is the core of window k. */
export interface Divided {
  readonly axis: Axis;
  readonly stretches: readonly Stretch[];
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

/** Divides an axis; `origin` is the occupancy grid's corner along it. */
export const divide = (axis: Axis, grid: Occupancy, origin: number): Divided => {
  const stretches: Stretch[] = [];
  const add = (min: number, max: number): void => {
    const low = min - origin;
    const high = max - origin;
    stretches.push({
      min,
      max,
      within: [firstInside(grid, low), lastInside(grid, high)],
      touched: [lastInside(grid, low), firstInside(grid, high)],
    });
  };
  for (let k = 0; k <= axis.count; k++) {
    const at = axis.start + k * axis.step;
    add(at, at + axis.overlap);
    if (k < axis.count) add(at + axis.overlap, at + axis.step);
  }
  return { axis, stretches };
};

/** By the grid where that is certain, by the exact test where only cells on the rim are marked. */
const isInked = (ink: Ink, grid: Occupancy, x: Stretch, y: Stretch): boolean => {
  if (countCells(grid, x.within[0], y.within[0], x.within[1], y.within[1]) > 0) return true;
  return (
    countCells(grid, x.touched[0], y.touched[0], x.touched[1], y.touched[1]) > 0 &&
    holdsInk(ink, { minX: x.min, minY: y.min, maxX: x.max, maxY: y.max })
  );
};

/** The windows that show a stretch: one for a core, two for a band, one for the bands at the ends. */
const windowsOn = (stretch: number, count: number): number[] => {
  const k = stretch >> 1;
  return stretch % 2 === 1 ? [k] : [k - 1, k].filter((w) => w >= 0 && w < count);
};

/** The tiling with the fewest sheets for this placing of the grid, or undefined when it needs more than `most`. */
export const tile = (
  ink: Ink,
  grid: Occupancy,
  across: Divided,
  up: Divided,
  most: number,
): Tiling | undefined => {
  const columns = across.axis.count;
  const rows = up.axis.count;
  const printed = new Array<boolean>(columns * rows).fill(false);
  let sheets = 0;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      if (!isInked(ink, grid, across.stretches[2 * column + 1]!, up.stretches[2 * row + 1]!)) continue;
      printed[row * columns + column] = true;
      if (++sheets > most) return undefined;
    }
  }
  const isPrinted = (column: number, row: number): boolean =>
    column >= 0 && row >= 0 && column < columns && row < rows && printed[row * columns + column]!;
  const groups: number[][] = [];
  for (let j = 0; j <= 2 * rows; j++) {
    const row = j >> 1;
    const coreRow = j % 2 === 1;
    // Cores are done: of a row of cores only the bands are left.
    for (let i = 0; i <= 2 * columns; i += coreRow ? 2 : 1) {
      const column = i >> 1;
      const shown =
        isPrinted(column, row) ||
        (i % 2 === 0 && isPrinted(column - 1, row)) ||
        (!coreRow && (isPrinted(column, row - 1) || (i % 2 === 0 && isPrinted(column - 1, row - 1))));
      if (shown || !isInked(ink, grid, across.stretches[i]!, up.stretches[j]!)) continue;
      const beside = windowsOn(i, columns);
      groups.push(windowsOn(j, rows).flatMap((r) => beside.map((c) => r * columns + c)));
    }
  }
  const extra = fewestFor(groups);
  if (sheets + extra.length > most) return undefined;
  for (const sheet of extra) printed[sheet] = true;
  return { x: across.axis, y: up.axis, printed, sheets: sheets + extra.length };
};

/** Whether each piece of the ink is on a printed sheet. */
export const showsAllInk = (ink: Ink, grid: Occupancy, t: Tiling, across: Divided, up: Divided): boolean => {
  const outside = (axis: Axis, min: number, max: number): boolean =>
    min < axis.start - END_NOISE || max > axis.start + axis.count * axis.step + axis.overlap + END_NOISE;
  if (outside(t.x, ink.box.minX, ink.box.maxX) || outside(t.y, ink.box.minY, ink.box.maxY)) return false;
  return up.stretches.every((y, j) =>
    across.stretches.every((x, i) => {
      const columns = windowsOn(i, t.x.count);
      const shown = windowsOn(j, t.y.count).some((row) =>
        columns.some((column) => t.printed[row * t.x.count + column]),
      );
      return shown || !isInked(ink, grid, x, y);
    }),
  );
};

/** Ink that ends where the last window ends, but for rounding, is on it (mm). */
const END_NOISE = 1e-9;

/** What decides between tilings with equally many sheets: less first, in this order. */
export interface Untidiness {
  /** Edges that have to be taped. */
  readonly joins: number;
  /** Marked cells in bands between printed neighbours. */
  readonly inkInBands: number;
  /** How far (mm) the ink's middle lies from the printed sheets' middle, both axes added. */
  readonly offCentre: number;
}

export const untidinessOf = (
  ink: Ink,
  grid: Occupancy,
  t: Tiling,
  across: Divided,
  up: Divided,
): Untidiness => {
  let joins = 0;
  let inkInBands = 0;
  let [left, right, low, high] = [t.x.count, -1, t.y.count, -1];
  const isPrinted = (column: number, row: number): boolean =>
    column < t.x.count && row < t.y.count && t.printed[row * t.x.count + column] === true;
  const window = (d: Divided, k: number): [number, number] => [
    d.stretches[2 * k]!.touched[0],
    d.stretches[2 * k + 2]!.touched[1],
  ];
  for (let row = 0; row < t.y.count; row++) {
    for (let column = 0; column < t.x.count; column++) {
      if (!isPrinted(column, row)) continue;
      left = Math.min(left, column);
      right = Math.max(right, column);
      low = Math.min(low, row);
      high = Math.max(high, row);
      if (isPrinted(column + 1, row)) {
        const [i0, i1] = across.stretches[2 * column + 2]!.touched;
        const [j0, j1] = window(up, row);
        joins++;
        inkInBands += countCells(grid, i0, j0, i1, j1);
      }
      if (isPrinted(column, row + 1)) {
        const [j0, j1] = up.stretches[2 * row + 2]!.touched;
        const [i0, i1] = window(across, column);
        joins++;
        inkInBands += countCells(grid, i0, j0, i1, j1);
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
