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
  type Contact,
  compose,
  type Motion,
  mirror,
  movePath,
  type Path,
  type Point,
  pathLength,
  shift,
  turn,
} from '../geometry/index.ts';
import { layOf } from './corner.ts';
import type { CorneredField, Field } from './field.ts';
import {
  type CornerFit,
  cornerSwag,
  type Fit,
  HALVES,
  kindsIn,
  ownCorner,
  type SideFit,
  WITHOUT_SWAG,
  type WithoutSwag,
} from './fit.ts';
import { frameAt, type Run, reachAlong } from './run.ts';
import { crownOf, laidPath, type Seat } from './seat.ts';

type Half = 'first' | 'second';

/** A half swag between its two mirrors: x along the start line, y into the border, the start at the origin. */
export interface Cell {
  readonly name: string;
  /** Which of the kinds along a side it is, counted from 1. */
  readonly kind: number;
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

/** The mirror in a cell's centre line, in the cell's frame. */
export const centreMirror = (cell: Cell): Motion => mirror(cell.crown, cell.mirror);

/** One copy of a cell on the quilt. */
export interface Placed {
  readonly cell: Cell;
  /** `top 1`, `strip 3`, `frame 8`, `corner top right`. */
  readonly repeat: string;
  readonly half: Half;
  /** From the cell's frame to the quilt's. */
  readonly motion: Motion;
  readonly side: string;
}

export interface PlacedSide {
  readonly run: Run;
  readonly fit: SideFit;
  /** Of each kind one, in the order in which they take turns. */
  readonly cells: readonly [Cell, ...Cell[]];
  /** mm along the start line that a swag of each kind takes, its half of the gaps beside it included. */
  readonly shares: readonly [number, ...number[]];
  /** How many places for a swag there are: one more than swags where the first and the last hold half of one. */
  readonly places: number;
  /**
   * mm along the start line before the first place's join: the corner's offset, or 0; less than 0 where a side begins at
   * the crown.
   */
  readonly inset: number;
  /** Where opposite sides differ: how far the rest of a shorter side is moved on, and after which repeat. */
  readonly tear: { readonly after: number; readonly by: number } | undefined;
}

/** The swag over each corner. */
export interface LaidCorner {
  readonly kind: CornerFit['kind'];
  readonly fit: CornerFit;
  readonly cell: Cell;
  /** How far (radians) its start line is turned back from the side's. */
  readonly turned: number;
}

export interface Design {
  readonly field: Field;
  readonly fit: Fit;
  readonly cells: readonly Cell[];
  readonly sides: readonly PlacedSide[];
  readonly corner: WithoutSwag | LaidCorner;
  readonly halves: readonly Placed[];
  /** Counted from the line that marks are measured along. */
  readonly row: number;
  /** The row beyond it, on the same marks. */
  readonly beyond: Design | undefined;
}

/** What is of a row, by its name; with the row's where it is not the first. */
export const ofRow = ({ row }: Pick<Design, 'row'>, name: string): string =>
  row > 1 ? `row ${row} ${name}` : name;

/** What is of a cell, by its name; with the kind's and the row's where there are several. */
export const nameOf = (design: Design, { name, kind }: Cell): string =>
  ofRow(design, design.fit.pattern.kind === 'in turn' ? `kind ${kind} ${name}` : name);

/**
 * All that a design is made with, each by itself: how it is made, its cells, and the halves that are of it. These are
 * its kinds; and where the corners have swags of their own, the sides and the corners.
 */
export const kindDesigns = (design: Design): readonly [Design, ...Design[]] => {
  const corner = cornerSwag(design);
  const own = ownCorner(design.fit);
  if (corner && own) {
    const only = (isCorner: boolean): Pick<Design, 'cells' | 'halves'> => ({
      cells: design.cells.filter((cell) => (cell === corner.cell) === isCorner),
      halves: design.halves.filter(({ cell }) => (cell === corner.cell) === isCorner),
    });
    const sides = { ...design, fit: { ...design.fit, corner: WITHOUT_SWAG }, corner: WITHOUT_SWAG };
    return [
      { ...sides, ...only(false) },
      { ...design, fit: { ...design.fit, way: own }, ...only(true) },
    ];
  }
  const [first, ...others] = kindsIn(design.fit).map((fit, k): Design => {
    const cells = design.cells.filter(({ kind }) => kind === k + 1);
    return { ...design, fit, cells, halves: design.halves.filter(({ cell }) => cells.includes(cell)) };
  });
  return [first!, ...others];
};

/** A design's rows, from the first. */
export const rowsOf = (design: Design): readonly [Design, ...Design[]] => [
  design,
  ...(design.beyond ? rowsOf(design.beyond) : []),
];

/**
 * Lays a fit on the quilt. A side that is asked for alone is laid at its own length, however long the side opposite
 * is; the other sides are then not to be drawn.
 */
export const designOf = (field: Field, fit: Fit, alone?: string, row = 1): Design => {
  const swag = cornerSwag(fit);
  const hasHalves = fit.corner.kind === 'half';
  const sides = fit.sides.map((s, i): PlacedSide => {
    const run = s.run.name === alone ? { ...s.run, place: s.run.alone, drawn: s.run.length } : s.run;
    const by = run.drawn - run.length;
    const places = s.repeats + (hasHalves ? 1 : 0);
    const first = cellOf(run.name, s.seat);
    const others = fit.pattern.kind === 'in turn' ? [fit.pattern.sides[i]!.seat] : [];
    const even = swag ? swag.toCorner + s.seat.gap / 2 : 0;
    const shares: PlacedSide['shares'] =
      others.length > 0 ? [shareOf(s.seat), ...others.map(shareOf)] : [(run.length - 2 * even) / s.repeats];
    const inset = hasHalves ? -shares[0] / 2 : even;
    return {
      run,
      fit: s,
      cells: [first, ...others.map((seat) => cellOf(run.name, seat, 2))],
      shares,
      places,
      inset,
      tear: by > 0 ? { after: Math.ceil(places / 2), by } : undefined,
    };
  });
  const corner = swag && field.corners !== 'none' ? laidCorner('corner', field, swag) : undefined;
  const halves = [...sides.flatMap(sideHalves), ...(corner ? cornerHalves(sides, corner) : [])];
  const cells = [...sides.flatMap((s) => s.cells), ...(corner ? [corner.cell] : [])];
  const beyond = fit.beyond && designOf(fit.beyond.field, fit.beyond.fit, alone, row + 1);
  return {
    field,
    fit,
    cells,
    sides,
    corner: corner ?? (hasHalves ? HALVES : WITHOUT_SWAG),
    halves,
    row,
    beyond,
  };
};

const laidCorner = (name: string, field: CorneredField, fit: CornerFit): LaidCorner => ({
  kind: fit.kind,
  fit,
  cell: cellOf(name, fit.seat),
  turned: layOf(field).turned,
});

const shareOf = ({ span, gap }: Seat): number => span + gap;

/** What stands in a place of a side, counted from 0. */
export const cellAt = ({ cells }: Pick<PlacedSide, 'cells'>, place: number): Cell =>
  cells[place % cells.length]!;

const cellOf = (name: string, seat: Seat, kind = 1): Cell => ({
  name,
  kind,
  seat,
  motion: compose(turn(seat.pose.tilt), seat.shape.motion),
  path: laidPath(seat),
  join: -seat.gap / 2,
  crown: crownOf(seat),
  mirror: seat.mirror,
  centre: seat.centre,
});

/** Of each row the halves that lie on the marks of some of the first one's. */
export const rowsShown = (
  design: Design,
  halves: readonly Placed[],
): readonly { readonly row: Design; readonly halves: readonly Placed[] }[] => {
  const keyOf = ({ repeat, half }: Placed): string => `${repeat} ${half}`;
  const keys = new Set(halves.map(keyOf));
  return rowsOf(design).map((row) => ({
    row,
    halves: row === design ? halves : row.halves.filter((half) => keys.has(keyOf(half))),
  }));
};

/** A half that runs to the right from x, and one that runs to the left from x. */
const rightFrom = (x: number): Motion => shift(x, 0);
const leftFrom = (x: number): Motion => ({ flip: true, angle: Math.PI, x, y: 0 });

const sideHalves = (side: PlacedSide): readonly Placed[] => {
  const { run, places } = side;
  return Array.from({ length: places }, (_, i) => i).flatMap((i): readonly Placed[] => {
    const shared = { cell: cellAt(side, i), repeat: `${run.name} ${i + 1}`, side: run.name };
    const [first, second] = repeatMotions(side, i);
    const both: readonly Placed[] = [
      { ...shared, half: 'first', motion: first },
      { ...shared, half: 'second', motion: second },
    ];
    return both.filter(({ half }) => halvesAt(side, i).includes(half));
  });
};

/** Which halves a place of a side holds: beside a free corner square only the one that lies on the side. */
export const halvesAt = ({ places, fit }: PlacedSide, index: number): readonly Half[] =>
  places === fit.repeats
    ? ['first', 'second']
    : index === 0
      ? ['second']
      : index === places - 1
        ? ['first']
        : ['first', 'second'];

/** Where a repeat's two halves lie: from their cell's frame to the quilt's. */
export const repeatMotions = (side: PlacedSide, index: number): readonly [Motion, Motion] => {
  const { run } = side;
  const cell = cellAt(side, index);
  // On a bent run the cell's frame lies square to the join, and its start on the run as well.
  const dip = cell.centre ? 1 / run.curvature - cell.centre.y : 0;
  const first = compose(frameAt(run, repeatMarks(side, index).join), shift(-cell.join, dip));
  return [first, compose(first, centreMirror(cell))];
};

/** mm along a side that its first places take, so many of them. */
export const sharesBefore = ({ shares }: Pick<PlacedSide, 'shares'>, places: number): number =>
  shares.reduce((sum, share, k) => sum + Math.ceil((places - k) / shares.length) * share, 0);

/** Where a repeat's join, start, centre and stop lie as drawn, mm along the side's run from its beginning. */
export const repeatMarks = (
  side: PlacedSide,
  index: number,
): { join: number; start: number; centre: number; stop: number } => {
  const { run, inset, tear } = side;
  const join = inset + sharesBefore(side, index) + (tear && index >= tear.after ? tear.by : 0);
  const centre = join + side.shares[index % side.shares.length]! / 2;
  const reach = reachAlong(run, cellAt(side, index).seat.span);
  return { join, start: centre - reach, centre, stop: centre + reach };
};

/** Each corner's first half ends the side on its left (seen from the seam), its second half begins the next. */
const cornerHalves = (
  sides: readonly PlacedSide[],
  { fit: { toCorner }, cell, turned }: LaidCorner,
): readonly Placed[] =>
  sides.flatMap(({ run }): readonly Placed[] => {
    const next = sides.find((s) => s.run.name === run.next)!.run;
    const shared = { cell, repeat: `corner ${next.begins}` };
    const [ends, begins] = [rightFrom(run.drawn - toCorner), leftFrom(toCorner)].map((from) =>
      compose(from, turn(turned)),
    ) as [Motion, Motion];
    return [
      { ...shared, half: 'first', motion: compose(run.place, ends), side: run.name },
      { ...shared, half: 'second', motion: compose(next.place, begins), side: next.name },
    ];
  });

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
