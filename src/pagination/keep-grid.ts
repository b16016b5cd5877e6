/**
 * The same sheets again for a corrected print: the printer's error makes every window a little larger or smaller, and
 * the bands that neighbours share take that up, so that each sheet keeps its name and its part of the drawing.
 */

import { leastLive } from './check-square.ts';
import type { Ink } from './ink.ts';
import { LEAST_MARGIN } from './margins.ts';
import type { Occupancy } from './occupancy.ts';
import type { WindowShape } from './search.ts';
import { type Axis, divide, showsAllInk, type Tiling } from './tiling.ts';

/** Half of it lies under the join; less than 3 mm does not hold, and the crosses would be cut off. */
export const LEAST_OVERLAP = LEAST_MARGIN;

/** A band wider than so many times what was asked for wastes paper: then the sheets are laid anew. */
const WIDEST_BAND = 2;

/** The tiling with windows of another shape, or undefined where a band gets too narrow or ink is on no sheet. */
export const keepGrid = (
  ink: Ink,
  grid: Occupancy,
  tiling: Tiling,
  shape: WindowShape,
): Tiling | undefined => {
  const t = inUse(tiling);
  const { minX, maxX, minY, maxY } = ink.box;
  const x = resized(t.x, minX, maxX, shape.width);
  const y = resized(t.y, minY, maxY, shape.height);
  if (!isTapeable(x, shape.overlapX, shape) || !isTapeable(y, shape.overlapY, shape)) return undefined;
  const kept = { ...t, x, y };
  const all = showsAllInk(ink, grid, kept, divide(x, grid, minX), divide(y, grid, minY));
  return all ? kept : undefined;
};

/** Without the rows and columns of windows at the ends that print nothing. */
const inUse = (t: Tiling): Tiling => {
  const printed = [...t.printed.keys()].filter((index) => t.printed[index]);
  const columns = printed.map((index) => index % t.x.count);
  const rows = printed.map((index) => Math.floor(index / t.x.count));
  const trim = (axis: Axis, used: readonly number[]): Axis => {
    const first = Math.min(...used);
    return { ...axis, start: axis.start + first * axis.step, count: Math.max(...used) - first + 1 };
  };
  const x = trim(t.x, columns);
  const y = trim(t.y, rows);
  const [left, low] = [Math.min(...columns), Math.min(...rows)];
  return {
    x,
    y,
    printed: Array.from(
      { length: x.count * y.count },
      (_, i) => t.printed[(Math.floor(i / x.count) + low) * t.x.count + (i % x.count) + left]!,
    ),
    sheets: t.sheets,
  };
};

/** About the same middles, moved only as far as the ink's ends ask for. One window by itself has no band. */
const resized = (axis: Axis, min: number, max: number, length: number): Axis => {
  const leastStep = (max - min - length) / (axis.count - 1);
  const step = axis.count === 1 ? length - axis.overlap : Math.max(axis.step, leastStep);
  const overlap = length - step;
  const about = axis.start + (axis.count * (axis.step - step) + axis.overlap - overlap) / 2;
  const latest = min;
  const earliest = max - (axis.count * step + overlap);
  return { ...axis, step, overlap, start: Math.max(earliest, Math.min(latest, about)) };
};

/** A band that is taken up by nothing comes out a hair narrower. */
const LENGTH_NOISE = 1e-9;

const isTapeable = (axis: Axis, asked: number, { width, height }: WindowShape): boolean =>
  axis.overlap >= Math.min(asked, LEAST_OVERLAP) - LENGTH_NOISE &&
  axis.overlap <= WIDEST_BAND * asked &&
  Math.max(leastLive(axis.overlap), 3 * axis.overlap) <= Math.min(width, height);
