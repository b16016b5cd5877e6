/**
 * How long the needle's way is, exactly; and about how much thread it takes.
 *
 * Source of the estimate: published tables for the lockstitch (stitch type 301 of ISO 4915) give 2.5 units of
 * thread for a unit of seam, half of it needle thread and half bobbin thread when the tensions are balanced,
 * and 10 to 15 % for starts, ends and waste. The geometric model behind it takes 2 + 2·T·S units (T thickness,
 * S stitches per unit of length), which is 2.5 where T·S = 1/4: a thick quilt takes more. Measured against
 * stitched samples by Malek, Jaouachi, Khedher and Adolphe, Autex Research Journal 20(4), 2020, 415–425.
 */

import { type Path, pathLength } from '../geometry/index.ts';
import type { Channels } from '../plan/index.ts';
import { channelsOf, rowChannels } from './channels.ts';
import { type Cell, type Design, nameOf, type Placed, rowsOf } from './design.ts';
import { cornerSwag, hasGaps } from './fit.ts';

export interface StitchedLength {
  /** One repeat of each side, and one corner swag, of each row, mm: its stitching, its channels, its fills. */
  readonly repeats: readonly {
    readonly name: string;
    readonly length: number;
    readonly channels: number;
    readonly fills: number;
  }[];
  /** All swags of the whole border or strip, mm. */
  readonly swags: number;
  /** All channels of it, mm. */
  readonly channels: number;
  /** All its fills, mm: 0 where they were not given. */
  readonly fills: number;
}

/** `fills` gives for each half the length (mm) of what fills its whole repeat. */
export const stitchedLength = (
  design: Design,
  channels: Channels,
  fills: ReadonlyMap<Placed, number> = new Map(),
): StitchedLength => {
  const lengths = rowsOf(design).map((row) => rowLength(row, channels, fills));
  const all = (key: 'swags' | 'channels' | 'fills'): number => lengths.reduce((sum, l) => sum + l[key], 0);
  return {
    repeats: lengths.flatMap((l) => l.repeats),
    swags: all('swags'),
    channels: all('channels'),
    fills: all('fills'),
  };
};

const rowLength = (
  design: Design,
  channels: Channels,
  fills: ReadonlyMap<Placed, number>,
): StitchedLength => {
  const placed = rowChannels(design, channels, design.halves);
  const echo = (half: Placed): number =>
    (placed.get(half) ?? []).reduce((sum, channel) => sum + lengthOf(channel.paths), 0);
  const { halves } = design;
  // Of a side's repeats the middle one: the first and last may end at mitres.
  const middleFill = (cell: Cell): number => {
    const own = halves.filter((half) => half.cell === cell);
    return fills.get(own[own.length >> 1]!) ?? 0;
  };
  return {
    repeats: design.cells.map((cell) => ({
      name: nameOf(design, cell),
      length: 2 * pathLength(cell.path),
      channels: 2 * channelsOf(cell, design, channels).reduce((sum, c) => sum + lengthOf(c.paths), 0),
      fills: middleFill(cell),
    })),
    swags: halves.reduce((sum, half) => sum + pathLength(half.cell.path), 0),
    channels: halves.reduce((sum, half) => sum + echo(half), 0),
    fills: halves.reduce((sum, half) => sum + (fills.get(half) ?? 0) / 2, 0),
  };
};

const lengthOf = (paths: readonly Path[]): number => paths.reduce((sum, p) => sum + pathLength(p), 0);

/** Units of thread for a unit of seam, both threads together. */
export const LOCKSTITCH_RATIO = 2.5;
/** For starts, ends and waste: the upper end of what the tables say. */
export const WASTAGE = 0.15;

export interface ThreadEstimate {
  /** mm, waste included. */
  readonly needle: number;
  readonly bobbin: number;
}

/** An estimate for a seam of `length` mm; whoever shows it shows two digits at most. */
export const threadFor = (length: number, ratio = LOCKSTITCH_RATIO): ThreadEstimate => {
  const each = (length * ratio * (1 + WASTAGE)) / 2;
  return { needle: each, bobbin: each };
};

/** The ratio of the geometric model for a quilt `thickness` mm thick, with stitches `stitch` mm long. */
export const modelRatio = (thickness: number, stitch: number): number => 2 + (2 * thickness) / stitch;

/** Two significant digits, since an estimate is no more exact. */
export const twoDigits = (value: number): number => (value > 0 ? Number(value.toPrecision(2)) : 0);

/**
 * How often the thread is started and stopped: with gaps at every swag; without them once all round, and once on each run
 * where runs do not come to one another.
 */
export const threadStarts = ({ field, fit }: Pick<Design, 'field' | 'fit'>): number => {
  if (!hasGaps(fit)) return field.corners === 'open' ? field.runs.length : 1;
  const corners = cornerSwag(fit) ? field.runs.length : 0;
  return fit.sides.reduce((sum, { repeats }) => sum + repeats, corners);
};
