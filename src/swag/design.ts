/**
 * A fit laid out on the quilt: each different half swag once, as a cell, and where its copies go.
 *
 * Coordinates are the quilt's, in mm. A strip's start line runs along x from the origin, its seam below it. A
 * border lies round the quilt's inner rectangle, whose lower left corner is the origin; sides are seen from
 * the seam that their swags leave from, running to the right.
 *
 * The corners of a border are drawn square. Where opposite sides differ in length four square corners cannot
 * close, so the shorter side is drawn in its full length from both ends with one join left open in the middle
 * by the difference (`tear`): every swag and every corner stays exact, and the picture says where it lies.
 *
 * A round run has its centre at the origin, and its first crown straight above it.
 */

import {
  angleOf,
  type Contact,
  compose,
  type Motion,
  mirror,
  movePath,
  type Path,
  type Point,
  pathLength,
  shift,
  slicePath,
  subtract,
  TURN,
  turn,
} from '../geometry/index.ts';
import type { Field, Run, SideName } from './field.ts';
import type { CornerFit, Fit, SideFit } from './fit.ts';
import { circlingOf, crownOf, laidPath, type Seat } from './seat.ts';

export type Half = 'first' | 'second';

/** A half swag between its two mirrors: x along the start line, y into the border, the start at the origin. */
export interface Cell {
  readonly name: string;
  readonly seat: Seat;
  /** From the template's own frame to the cell's. */
  readonly motion: Motion;
  /** The needle's way from the start to the crown. */
  readonly path: Path;
  /** The join mirror's place on the x axis: 0, or half a gap before the start. */
  readonly join: number;
  /** The crown, on the centre mirror. */
  readonly crown: Point;
  /** The centre mirror's angle to the start line, radians. */
  readonly mirror: number;
  /** Of the circle that swags start on; undefined on a straight run. */
  readonly centre: Point | undefined;
}

/** One copy of a cell on the quilt. */
export interface Placed {
  readonly cell: Cell;
  /** `top 1`, `strip 3`, `frame 8`, `corner top right`. */
  readonly repeat: string;
  readonly half: Half;
  /** From the cell's frame to the quilt's. */
  readonly motion: Motion;
  readonly side: SideName;
}

export interface PlacedSide {
  readonly run: Run;
  readonly fit: SideFit;
  readonly cell: Cell;
  /** From the side's frame (x along its start line from its left end, y into the border) to the quilt's. */
  readonly motion: Motion;
  /** mm along the start line before the first repeat's join: the corner's offset, or 0. */
  readonly inset: number;
  /** Where opposite sides differ: how far the rest of a shorter side is moved on, and after which repeat. */
  readonly tear: { readonly after: number; readonly by: number } | undefined;
}

export interface Design {
  readonly field: Field;
  readonly fit: Fit;
  readonly cells: readonly Cell[];
  readonly sides: readonly PlacedSide[];
  readonly corner: { readonly fit: CornerFit; readonly cell: Cell } | undefined;
  readonly halves: readonly Placed[];
}

/**
 * Lays a fit on the quilt. A side that is asked for alone is laid at its own length, however long the side opposite
 * is; the other sides are then not to be drawn.
 */
export const designOf = (field: Field, fit: Fit, alone?: SideName): Design => {
  const cornerCell = fit.corner && cellOf('corner', fit.corner.seat);
  const frames = sideFrames(field, fit, alone);
  const sides = fit.sides.map((s, i): PlacedSide => {
    const frame = frames[i]!;
    const by = frame.length - s.run.length;
    return {
      run: s.run,
      fit: s,
      cell: cellOf(s.run.name, s.seat),
      motion: frame.motion,
      inset: fit.corner ? fit.corner.toCorner + s.seat.gap / 2 : 0,
      tear: by > 0 ? { after: Math.ceil(s.repeats / 2), by } : undefined,
    };
  });
  const halves = [
    ...sides.flatMap(sideHalves),
    ...(cornerCell && fit.corner ? cornerHalves(sides, fit.corner, cornerCell, frames) : []),
  ];
  const cells = [...sides.map((s) => s.cell), ...(cornerCell ? [cornerCell] : [])];
  const corner = cornerCell && fit.corner ? { fit: fit.corner, cell: cornerCell } : undefined;
  return { field, fit, cells, sides, corner, halves };
};

const cellOf = (name: string, seat: Seat): Cell => ({
  name,
  seat,
  motion: compose(turn(seat.pose.tilt), seat.shape.motion),
  path: laidPath(seat),
  join: -seat.gap / 2,
  crown: crownOf(seat),
  mirror: seat.mirror,
  centre: seat.centre,
});

interface Frame {
  readonly motion: Motion;
  /** mm of the start line as drawn: that of the longer of two opposite sides, or of the one that stands alone. */
  readonly length: number;
}

const sideFrames = (field: Field, fit: Fit, alone: SideName | undefined): readonly Frame[] => {
  if (field.corners === 'none') {
    return fit.sides.map(({ run, seat }) => ({
      motion: seat.centre ? uprightCrown(seat, seat.centre) : shift(0, field.startMargin),
      length: run.length,
    }));
  }
  const lengthOf = (name: SideName): number => field.runs.find((r) => r.name === name)!.length;
  const longer = (a: SideName, b: SideName): number =>
    alone === a || alone === b ? lengthOf(alone) : Math.max(lengthOf(a), lengthOf(b));
  const wide = longer('top', 'bottom');
  const high = longer('left', 'right');
  const out = field.from === 'outer' ? field.width - field.startMargin : field.startMargin;
  // Where the corner squares are left free the runs stop beside the inner corners, without reaching over.
  const over = field.corners === 'open' ? 0 : out;
  const w = wide - 2 * over;
  const h = high - 2 * over;
  const quarter = Math.PI / 2;
  const at = (x: number, y: number, angle: number): Motion => ({ flip: false, angle, x, y });
  // Seen from the inner seam a border runs clockwise, from the outer seam counterclockwise.
  const inner = {
    top: at(-over, h + out, 0),
    right: at(w + out, h + over, -quarter),
    bottom: at(w + over, -out, 2 * quarter),
    left: at(-out, -over, quarter),
  };
  const outer = {
    top: at(w + over, h + out, 2 * quarter),
    right: at(w + out, -over, quarter),
    bottom: at(-over, -out, 0),
    left: at(-out, h + over, -quarter),
  };
  const frames = field.from === 'outer' ? outer : inner;
  return field.runs.map((r) => {
    const name = r.name as keyof typeof frames;
    return { motion: frames[name], length: name === 'top' || name === 'bottom' ? wide : high };
  });
};

/** From the cell's frame of a round run's first swag: the centre at the origin, the crown straight above it. */
const uprightCrown = (seat: Seat, centre: Point): Motion => {
  const up = angleOf(subtract(crownOf(seat), centre));
  return compose(turn(Math.PI / 2 - up), shift(-centre.x, -centre.y));
};

/** A half that runs to the right from x, and one that runs to the left from x. */
const rightFrom = (x: number): Motion => shift(x, 0);
const leftFrom = (x: number): Motion => ({ flip: true, angle: Math.PI, x, y: 0 });

const sideHalves = (side: PlacedSide): readonly Placed[] => {
  const { run, fit, cell, motion } = side;
  const placed: Placed[] = [];
  const circle = circlingOf(cell.centre, cell.crown);
  for (let i = 0; i < fit.repeats; i++) {
    const repeat = `${run.name} ${i + 1}`;
    const shared = { cell, repeat, side: run.name };
    if (circle) {
      // Outward swags follow one another clockwise, as on a border, inward ones counterclockwise.
      const first = compose(turn((circle.sense * i * TURN) / fit.repeats), motion);
      placed.push({ ...shared, half: 'first', motion: first });
      placed.push({ ...shared, half: 'second', motion: compose(first, mirror(cell.crown, cell.mirror)) });
      continue;
    }
    const { start, stop } = repeatMarks(side, i);
    placed.push({ ...shared, half: 'first', motion: compose(motion, rightFrom(start)) });
    placed.push({ ...shared, half: 'second', motion: compose(motion, leftFrom(stop)) });
  }
  return placed;
};

/** Where a repeat's start, centre and stop lie as drawn, mm along the side's start line from its left end. */
export const repeatMarks = (
  side: PlacedSide,
  index: number,
): { start: number; centre: number; stop: number } => {
  const { pose, gap } = side.fit.seat;
  const share = 2 * pose.halfSpan + gap;
  const moved = side.tear && index >= side.tear.after ? side.tear.by : 0;
  const start = side.inset + index * share + gap / 2 + moved;
  return { start, centre: start + pose.halfSpan, stop: start + 2 * pose.halfSpan };
};

/** Each corner's first half ends the side on its left (seen from the seam), its second half begins the next. */
const cornerHalves = (
  sides: readonly PlacedSide[],
  corner: CornerFit,
  cell: Cell,
  frames: readonly Frame[],
): readonly Placed[] => {
  const placed: Placed[] = [];
  const count = sides.length;
  const back = corner.toCorner;
  for (let i = 0; i < count; i++) {
    const side = sides[i]!;
    const next = sides.find((s) => sameCorner(side, frames[i]!, s))!;
    const repeat = `corner ${cornerName(side.run.name, next.run.name)}`;
    placed.push({
      cell,
      repeat,
      half: 'first',
      motion: compose(side.motion, rightFrom(frames[i]!.length - back)),
      side: side.run.name,
    });
    placed.push({
      cell,
      repeat,
      half: 'second',
      motion: compose(next.motion, leftFrom(back)),
      side: next.run.name,
    });
  }
  return placed;
};

/** The side that starts, as seen from the seam, where this one ends. */
const sameCorner = (side: PlacedSide, frame: Frame, other: PlacedSide): boolean => {
  const end = compose(side.motion, shift(frame.length, 0));
  return other !== side && Math.hypot(end.x - other.motion.x, end.y - other.motion.y) < SAME_CORNER;
};

/** Corners of a drawn border are whole inches apart, so a micrometre tells them apart. */
const SAME_CORNER = 1e-3;

const cornerName = (a: SideName, b: SideName): string =>
  a === 'top' || a === 'bottom' ? `${a} ${b}` : `${b} ${a}`;

/** The part of a stretch of contact that a cell uses: for telling a person where the foot pauses or cannot reach. */
export const cellContacts = (cell: Cell): readonly Contact[] => {
  const { shape } = cell.seat;
  const { stitched } = shape.stitching;
  const from = shape.from.along;
  const to = shape.to.along;
  const used: Contact[] = [];
  let before = 0;
  stitched.path.pieces.forEach((piece, i) => {
    const length = pathLength({ pieces: [piece], closed: false });
    const contact = stitched.contacts[i]!;
    const t0 = Math.max(0, (from - before) / length);
    const t1 = Math.min(1, (to - before) / length);
    before += length;
    if (!(t1 > t0)) return;
    const span = contact.to - contact.from;
    used.push({ from: contact.from + span * t0, to: contact.from + span * t1 });
  });
  return used;
};

/** The needle's way of one placed half on the quilt, from its start mark to the crown. */
export const placedPath = (placed: Placed): Path => movePath(placed.cell.path, placed.motion);

/** The needle's way over a stretch of lengths, on the quilt. */
export const placedStretch = (placed: Placed, from: number, to: number): Path =>
  movePath(slicePath(placed.cell.path, from, to), placed.motion);
