/**
 * The plan of the sheets: which window of the drawing goes on which sheet of paper, how it lies there, and where
 * everything else on the sheet stands. Plain data: a writer only draws it.
 *
 * Positions on paper are in mm from the sheet's lower left corner as it is read, y up, as a true ruler measures
 * them on the printed sheet. A writer makes up for what the printer does, by the plan's `factors`.
 */

import type { Box, Motion, Point } from '../geometry/index.ts';
import type { Paper } from '../plan/index.ts';
import type { Margins, Orientation } from './margins.ts';
import type { PerAxis, PerEdge } from './paper-edges.ts';

export type Side = 'left' | 'right' | 'top' | 'bottom';

interface Segment {
  readonly from: Point;
  readonly to: Point;
}

/** A registration cross: one point of the drawing, shown on both sheets of a join. */
export interface Cross {
  /** mm, in the drawing. */
  readonly drawing: Point;
  /** mm, on this sheet. */
  readonly paper: Point;
}

/** One side of a sheet where another sheet joins. */
export interface SharedEdge {
  readonly side: Side;
  /** The neighbour's label. */
  readonly neighbour: string;
  /** True where this sheet is cut and lies on top; its neighbour lies under it there, uncut. */
  readonly cut: boolean;
  /** What both sheets show. */
  readonly band: Box;
  /** The half of the band outside the trim line: cut off here, or covered by the neighbour. */
  readonly outer: Box;
  /** The middle of the band, where the upper sheet is cut and its edge comes to lie. */
  readonly trim: Segment;
  readonly crosses: readonly Cross[];
  /** The middle of the outer half, for the neighbour's label. */
  readonly labelAt: Point;
}

export interface Sheet {
  /** The row's letter and the column's number, `B3`. */
  readonly label: string;
  /** Counted from 0, from the top. */
  readonly row: number;
  /** Counted from 0, from the left. */
  readonly column: number;
  /** What it shows of the drawing, mm. */
  readonly window: Box;
  /** From the drawing to this sheet. */
  readonly place: Motion;
  readonly edges: readonly SharedEdge[];
  /** The check square's lower left corner. */
  readonly check: Point;
  /** Whether the check square stands clear of all ink. */
  readonly checkIsClear: boolean;
  /** Beside lines that are laid on seams. */
  readonly words: readonly SheetWords[];
}

/** Words on the paper, from where their base line begins; mm, and radians counterclockwise. */
export interface SheetWords {
  readonly text: string;
  readonly at: Point;
  readonly angle: number;
  readonly size: number;
}

/** A place in the grid whose window holds no ink that other sheets do not show. */
interface SkippedSheet {
  readonly label: string;
  readonly row: number;
  readonly column: number;
  readonly window: Box;
}

export interface Tick {
  /** From the rule's zero, mm. */
  readonly at: number;
  /** mm */
  readonly length: number;
  readonly label?: string;
}

/** A rule along one side of the live area; the frame is its base line and its ticks point inward. */
export interface Rule {
  readonly side: Side;
  readonly unit: 'in' | 'mm';
  readonly zero: Point;
  /** The direction in which it counts: to the right or up. */
  readonly along: Point;
  readonly inward: Point;
  /** mm */
  readonly length: number;
  readonly ticks: readonly Tick[];
}

export interface SheetPlan {
  readonly paper: Paper;
  /** Of the pages that are read and not taped. */
  readonly cover: Paper;
  readonly orientation: Orientation;
  /** Whether the drawing is turned a quarter turn clockwise on the sheets, so that a strip starts on sheet A1. */
  readonly turned: boolean;
  /** The page in the file, mm, as it is read. */
  readonly width: number;
  readonly height: number;
  readonly margins: Margins;
  /** What neighbours beside each other share, and neighbours above each other (mm): a correction may change it a little. */
  readonly overlap: PerAxis;
  readonly measured: PerEdge;
  /** What lengths in the file are multiplied by, so that the printer's error cancels. */
  readonly factors: PerAxis;
  /** The part of the sheet that is printed on. */
  readonly live: Box;
  readonly rules: readonly Rule[];
  /** The side of the check square, mm, and the length of the second measure marked on two of its sides. */
  readonly check: { readonly side: number; readonly second: number };
  readonly rows: number;
  readonly columns: number;
  /** Row by row from the top, each from the left. */
  readonly sheets: readonly Sheet[];
  readonly skipped: readonly SkippedSheet[];
  /** The drawing's ink, mm. */
  readonly ink: Box;
}

/** A for the first row, Z for the 26th, then AA. */
const rowLetters = (row: number): string => {
  let letters = '';
  for (let rest = row + 1; rest > 0; rest = Math.floor((rest - 1) / 26))
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  return letters;
};

export const sheetLabel = (row: number, column: number): string => `${rowLetters(row)}${column + 1}`;
