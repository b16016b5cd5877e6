/**
 * The drawing's ink on a square grid, with running sums, so that the ink in any block of cells is four look-ups.
 * A cell is marked when ink reaches into it, by the same exact test as for windows.
 *
 * A long stroke marks its cells by halving rectangles that it reaches, a short one cell by cell; an area marks the cells of its outline that
 * way and fills the rest row by row between crossings (even-odd).
 */

import { type Box, boxHeight, boxWidth, pieceAt, pieceLength } from '../geometry/index.ts';
import { type AreaMark, INK_NOISE, type Ink, type StrokeMark } from './ink.ts';
import { crossingsAt } from './inside.ts';
import { pieceReaches } from './reach.ts';

export interface Occupancy {
  /** The lower left corner of the grid, mm. */
  readonly x: number;
  readonly y: number;
  /** The side of a cell, mm. */
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  /** sums[(columns + 1)·j + i] is the number of marked cells left of column i and below row j. */
  readonly sums: Uint32Array;
}

/** 1 mm: as fine as the search for the shift. */
const CELL = 1;

/** A 4 × 4 m quilt in 1 mm cells: 64 MB of running sums. Larger drawings get larger cells, and stay exact. */
const MOST_CELLS = 16e6;

export const occupancyOf = (ink: Ink): Occupancy => {
  const width = boxWidth(ink.box);
  const height = boxHeight(ink.box);
  const cell = Math.max(CELL, Math.sqrt((width * height) / MOST_CELLS), Math.max(width, height) / MOST_CELLS);
  const columns = Math.max(1, Math.ceil(width / cell));
  const rows = Math.max(1, Math.ceil(height / cell));
  const { minX, minY } = ink.box;
  const cells = new Uint8Array(columns * rows);

  const mark = (i: number, j: number): void => {
    cells[j * columns + i] = 1;
  };
  const clampColumn = (x: number): number =>
    Math.min(columns - 1, Math.max(0, Math.floor((x - minX) / cell)));
  const clampRow = (y: number): number => Math.min(rows - 1, Math.max(0, Math.floor((y - minY) / cell)));

  /** Marks the cells from (i0, j0) to (i1, j1), ends included, that `reaches` finds inked. */
  const halve = (i0: number, j0: number, i1: number, j1: number, reaches: Reaches): void => {
    const inked = reaches(
      minX + i0 * cell + INK_NOISE,
      minY + j0 * cell + INK_NOISE,
      minX + (i1 + 1) * cell - INK_NOISE,
      minY + (j1 + 1) * cell - INK_NOISE,
    );
    if (!inked) return;
    if (i0 === i1 && j0 === j1) mark(i0, j0);
    else if (i1 - i0 >= j1 - j0) {
      const middle = (i0 + i1) >> 1;
      halve(i0, j0, middle, j1, reaches);
      halve(middle + 1, j0, i1, j1, reaches);
    } else {
      const middle = (j0 + j1) >> 1;
      halve(i0, j0, i1, middle, reaches);
      halve(i0, middle + 1, i1, j1, reaches);
    }
  };
  /**
   * Marks the cells that a short piece, of few cells, inks: those that its middle line goes through without a
   * question, and of the others round it those that the exact test finds.
   */
  const trace = (m: StrokeMark, i0: number, j0: number, i1: number, j1: number): void => {
    const { piece, half } = m;
    const steps = Math.ceil((2 * pieceLength(piece)) / cell);
    for (let k = 0; k <= steps; k++) {
      const { x, y } = pieceAt(piece, steps > 0 ? k / steps : 0);
      const across = (x - minX) / cell;
      const up = (y - minY) / cell;
      const i = Math.floor(across);
      const j = Math.floor(up);
      if (i < i0 || i > i1 || j < j0 || j > j1) continue;
      if (isWithin(across - i) && isWithin(up - j)) mark(i, j);
    }
    for (let j = j0; j <= j1; j++) {
      const low = minY + j * cell + INK_NOISE;
      const high = minY + (j + 1) * cell - INK_NOISE;
      for (let i = i0; i <= i1; i++) {
        if (cells[j * columns + i]) continue;
        const left = minX + i * cell + INK_NOISE;
        const right = minX + (i + 1) * cell - INK_NOISE;
        if (pieceReaches(piece, half, left, low, right, high)) mark(i, j);
      }
    }
  };
  const stroke = (m: StrokeMark): void => {
    const { box, piece, half } = m;
    const [i0, i1] = [clampColumn(box.minX), clampColumn(box.maxX)];
    const [j0, j1] = [clampRow(box.minY), clampRow(box.maxY)];
    if ((i1 - i0 + 1) * (j1 - j0 + 1) <= FEW_CELLS) trace(m, i0, j0, i1, j1);
    else halve(i0, j0, i1, j1, (a, b, c, d) => pieceReaches(piece, half, a, b, c, d));
  };
  const halveIn = (box: Box, reaches: Reaches): void =>
    halve(clampColumn(box.minX), clampRow(box.minY), clampColumn(box.maxX), clampRow(box.maxY), reaches);

  const fill = (area: AreaMark): void => {
    for (let j = clampRow(area.box.minY); j <= clampRow(area.box.maxY); j++) {
      const xs = crossingsAt(area.rises, minY + (j + 0.5) * cell);
      for (let k = 1; k < xs.length; k += 2) {
        // Cells whose middle lies between two crossings; those on the outline are marked already.
        const first = Math.max(0, Math.ceil((xs[k - 1]! - minX) / cell - 0.5));
        const last = Math.min(columns - 1, Math.floor((xs[k]! - minX) / cell - 0.5));
        for (let i = first; i <= last; i++) mark(i, j);
      }
    }
  };

  for (const item of ink.items) {
    for (const m of item.runs.flatMap(({ marks }) => marks)) {
      if (m.kind === 'stroke') stroke(m);
      else {
        for (const piece of m.outline) halveIn(m.box, (a, b, c, d) => pieceReaches(piece, 0, a, b, c, d));
        fill(m);
      }
    }
  }
  return { x: minX, y: minY, cell, columns, rows, sums: runningSums(cells, columns, rows) };
};

/** Pieces whose box holds no more cells than this are gone through cell by cell. */
const FEW_CELLS = 64;

/** A point this share of a cell away from its sides is in the cell that windows know, which is smaller by `INK_NOISE`. */
const SURELY = 1e-4;
const isWithin = (share: number): boolean => share > SURELY && share < 1 - SURELY;

type Reaches = (minX: number, minY: number, maxX: number, maxY: number) => boolean;

const runningSums = (cells: Uint8Array, columns: number, rows: number): Uint32Array => {
  const wide = columns + 1;
  const sums = new Uint32Array(wide * (rows + 1));
  for (let j = 0; j < rows; j++) {
    let row = 0;
    for (let i = 0; i < columns; i++) {
      row += cells[j * columns + i]!;
      sums[(j + 1) * wide + i + 1] = sums[j * wide + i + 1]! + row;
    }
  }
  return sums;
};

/** The marked cells in columns [i0, i1) and rows [j0, j1); a block outside the grid, or turned round, holds none. */
export const countCells = (o: Occupancy, i0: number, j0: number, i1: number, j1: number): number => {
  const a = Math.max(0, i0);
  const b = Math.max(0, j0);
  const c = Math.min(o.columns, i1);
  const d = Math.min(o.rows, j1);
  if (!(a < c && b < d)) return 0;
  const wide = o.columns + 1;
  return o.sums[d * wide + c]! - o.sums[b * wide + c]! - o.sums[d * wide + a]! + o.sums[b * wide + a]!;
};

/** How many cells of a box (mm) that lie wholly in it are marked: more than none means ink for certain. */
export const countInside = (o: Occupancy, box: Box): number =>
  countCells(
    o,
    firstInside(o, box.minX - o.x),
    firstInside(o, box.minY - o.y),
    lastInside(o, box.maxX - o.x),
    lastInside(o, box.maxY - o.y),
  );

/** How many cells that a box (mm) touches are marked: none means that it holds no ink for certain. */
export const countTouched = (o: Occupancy, box: Box): number =>
  countCells(
    o,
    lastInside(o, box.minX - o.x),
    lastInside(o, box.minY - o.y),
    firstInside(o, box.maxX - o.x),
    firstInside(o, box.maxY - o.y),
  );

/** The first whole cell at or after an offset (mm) from the grid's corner, and the end of the last before it. */
export const firstInside = (o: Occupancy, offset: number): number => Math.ceil(offset / o.cell - CELL_NOISE);
export const lastInside = (o: Occupancy, offset: number): number => Math.floor(offset / o.cell + CELL_NOISE);

/** A share of a cell: an edge that misses a cell's edge by rounding lies on it (INK_NOISE is ten times more). */
const CELL_NOISE = 1e-7;
