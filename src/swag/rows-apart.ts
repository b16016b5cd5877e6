/**
 * How two rows on the same marks keep apart. Inside a cell the distance to a row of swags is the distance to the
 * cell's own half, so the halves that share a cell say it all.
 */

import {
  line,
  movePath,
  openPath,
  type Path,
  pathLength,
  pathsApart,
  shift,
  slicePath,
} from '../geometry/index.ts';
import { FIT_NOISE } from './misfit.ts';
import { laidPath, NEIGHBOUR_ROOM, type Seat } from './seat.ts';

/**
 * By how much (mm) two halves come too near to each other, 0 where they keep apart. The far one starts `at` mm
 * beyond the near one, and keeps `apart` mm from it.
 *
 * Two that start on one mark part from it: they are `apart` on the centre line, and an inch from the mark, from where on
 * they would look like one thick line, they are as far from each other as neighbours are.
 */
export const nearRows = (near: Seat, far: Seat, at: number, apart: number): number => {
  const crowns = at + far.pose.depth - near.pose.depth;
  if (!(crowns >= apart - FIT_NOISE)) return apart - crowns;
  const inner = laidPath(near);
  const outer = movePath(laidPath(far), shift(0, at));
  if (at > 0) return missing(inner, beforeStart(outer, far, at), apart);
  const length = pathLength(inner);
  const parted = Math.min(PARTED, length / 2);
  const beside = missing(slicePath(inner, AT_MARK, parted), outer, TOUCHING);
  return beside > 0 ? NEIGHBOUR_ROOM : missing(slicePath(inner, parted, length), outer, NEIGHBOUR_ROOM);
};

/** Where there is a gap, the far row's ground begins with its start line. */
const beforeStart = (outer: Path, { gap }: Seat, at: number): Path =>
  gap > 0 ? openPath([line({ x: -gap / 2, y: at }, { x: 0, y: at }), ...outer.pieces]) : outer;

const missing = (a: Path, b: Path, apart: number): number => {
  const away = pathsApart(a, b, apart);
  return away >= apart - FIT_NOISE ? 0 : apart - away;
};

/** Two rows that start on one mark may run side by side so far (mm, an inch). Common practice, no source. */
const PARTED = 25.4;
/** At the mark itself (mm) the two are one. */
const AT_MARK = 0.5;
/** Nearer than this (mm) two lines touch. */
const TOUCHING = 1e-3;
