/**
 * How two rows on the same marks keep apart. Inside a cell the distance to a row of swags is the distance to the
 * cell's own half, so the halves that share a cell say it all.
 */

import {
  compose,
  line,
  type Motion,
  move,
  movePath,
  openPath,
  type Path,
  pathLength,
  pathsApart,
  shift,
  slicePath,
  turn,
} from '../geometry/index.ts';
import { FIT_NOISE } from './misfit.ts';
import { NEIGHBOUR_ROOM, type Seat } from './seat.ts';
import type { Shape } from './shape.ts';

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
  // Of the two only the far one is moved: to where it lies as the near one sees it before that is tilted.
  const back = turn(-near.pose.tilt);
  const outer = movePath(far.shape.path, compose(back, compose(shift(0, at), turn(far.pose.tilt))));
  if (at > 0) return missing(near.shape.path, beforeStart(outer, far, compose(back, shift(0, at))), apart);
  const { atMark, beyond } = partsOf(near.shape);
  return missing(atMark, outer, TOUCHING) > 0 ? NEIGHBOUR_ROOM : missing(beyond, outer, NEIGHBOUR_ROOM);
};

/** Where there is a gap, the far row's ground begins with its start line. */
const beforeStart = (outer: Path, { gap }: Seat, start: Motion): Path =>
  gap > 0
    ? openPath([line(move(start, { x: -gap / 2, y: 0 }), move(start, { x: 0, y: 0 })), ...outer.pieces])
    : outer;

interface Parts {
  /** Where two rows that start on one mark may run side by side; but at the mark itself they are one. */
  readonly atMark: Path;
  readonly beyond: Path;
}

const partsOf = (shape: Shape): Parts => {
  let parts = known.get(shape);
  if (!parts) {
    const length = pathLength(shape.path);
    const parted = Math.min(PARTED, length / 2);
    parts = {
      atMark: slicePath(shape.path, AT_MARK, parted),
      beyond: slicePath(shape.path, parted, length),
    };
    known.set(shape, parts);
  }
  return parts;
};

/** A shape is laid below many rows. */
const known = new WeakMap<Shape, Parts>();

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
