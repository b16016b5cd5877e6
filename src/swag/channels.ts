/**
 * Channels: echo lines at set distances outward and inward of the stitching, clipped to their cell.
 *
 * A run of swags is one mirror-symmetric figure, and inside a cell the distance to that figure is the distance
 * to the cell's own swag. So a channel is the parallel of the swag (the half and its mirror image in the centre
 * line, so that a crown's point is turned as the corner that it is), cut at the mirrors, the start line and the
 * far margin: exact where it is not cut. All that lies at the distance belongs to it: where a narrow neck parts
 * an inward channel in two, both parts are there.
 *
 * Where a side's last swag has a corner's for a neighbour the two are not quite mirror images. There the
 * distance to both counts, so that their channels meet between them.
 *
 * In a round frame the cell is a wedge, and the circles that bound it stand for the start line and the margin. Room
 * is left between the swags and the circle for inward channels, so that these run on from swag to swag.
 */

import {
  compose,
  containsPoint,
  type Motion,
  mirror,
  movePath,
  nearnessOf,
  openPath,
  type Path,
  type Point,
  parallelIn,
  pathEnd,
  pathLength,
  pathStart,
  pointAlong,
  reversePath,
  turn,
} from '../geometry/index.ts';
import type { Channels } from '../plan/index.ts';
import {
  cellArea,
  cellSides,
  type MitredEnds,
  mitredEnds,
  NO_MITRES,
  overMitre,
  SPECK,
  swagArea,
  wholeSwag,
} from './cell-areas.ts';
import { type Cell, cellAt, type Design, type Placed, rowsShown } from './design.ts';
import { cornerSwag } from './fit.ts';

export type ChannelSide = 'outward' | 'inward';

export interface Channel {
  readonly side: ChannelSide;
  /** Counted from 1, away from the stitching. */
  readonly number: number;
  /** mm from the line before it. */
  readonly width: number;
  /** mm from the stitching. */
  readonly distance: number;
  /** Its line in the cell's frame, from the start line to the centre mirror; in several parts where it is cut, none where nothing is left. */
  readonly paths: readonly Path[];
}

export const CHANNEL_SIDES: readonly ChannelSide[] = ['outward', 'inward'];

/** What lies beyond the start of a half where that is not its own mirror image in the join. */
export interface Surroundings {
  readonly neighbour?: Neighbour;
  /** Whether the repeat stops at a mitre at this half's own start, and at the far end of its other half. */
  readonly ends: MitredEnds;
}

/** The half beyond. */
interface Neighbour {
  readonly cell: Cell;
  /** From its own cell's frame to that of the cell whose neighbour it is. */
  readonly motion: Motion;
}

/** Of a plan's channels those that are a row's own: outward ones lie beyond the last row, inward ones within the first. */
export const ownChannels = (
  { row, beyond }: Pick<Design, 'row' | 'beyond'>,
  channels: Channels,
): Channels => ({
  ...channels,
  outward: beyond ? [] : channels.outward,
  inward: row > 1 ? [] : channels.inward,
});

/** All channels of a cell, outward ones first. */
export const channelsOf = (
  cell: Cell,
  design: Design,
  wanted: Channels,
  { neighbour, ends }: Surroundings = { ends: NO_MITRES },
): readonly Channel[] => {
  const channels = ownChannels(design, wanted);
  if (channels.outward.length + channels.inward.length === 0) return [];
  const area = cellArea(cell, design, ends);
  const inside = swagArea(cell, design);
  const swag = wholeSwag(cell);
  const stitching = neighbour ? withNeighbour(swag, neighbour) : [swag];
  const along = nearnessOf(cell.path.pieces);
  // Where the start lies off the near level, and beside a gap, a line at a distance may go round it.
  const sides = cell.join < 0 && design.field.near < 0 ? cellSides(cell, design) : undefined;
  return CHANNEL_SIDES.flatMap((side) => {
    const reaches = reachesOf(channels[side]);
    return channels[side].map((width, i): Channel => {
      // A line that meets its neighbour's between the two starts runs on there, and never comes round to the other side.
      const part = reaches[i]! < -cell.join ? sides?.[side] : undefined;
      const lines = parallelIn(stitching, reaches[i]!, part ?? area, channels.points)
        .filter((p) => pathLength(p) > CRUMB)
        .filter((p) => part !== undefined || containsPoint(inside, middleOf(p)) === (side === 'inward'));
      // What is farther from the stitching lies on a parallel's left: inward it runs from the crown to the start.
      const paths = side === 'inward' ? lines.map(reversePath) : lines;
      const place = (p: Path): number => along.nearest(middleOf(p));
      return {
        side,
        number: i + 1,
        width,
        distance: reaches[i]!,
        paths: paths.toSorted((a, b) => place(a) - place(b)),
      };
    });
  });
};

const middleOf = (path: Path): Point => pointAlong(path, pathLength(path) / 2)!;

/** A swag and the half beyond its start, as one path where they touch. */
const withNeighbour = (swag: Path, { cell, motion }: Neighbour): readonly Path[] => {
  const half = reversePath(movePath(cell.path, motion));
  const start = pathStart(swag)!;
  const end = pathEnd(half)!;
  return Math.hypot(end.x - start.x, end.y - start.y) > SPECK
    ? [half, swag]
    : [openPath([...half.pieces, ...swag.pieces])];
};

/** The channels of some halves of a first row and of those on their marks, each different case worked out once. */
export const placedChannels = (
  design: Design,
  channels: Channels,
  halves: readonly Placed[] = design.halves,
): ReadonlyMap<Placed, readonly Channel[]> =>
  new Map(rowsShown(design, halves).flatMap((shown) => [...rowChannels(shown.row, channels, shown.halves)]));

/** The same of one row. */
export const rowChannels = (
  design: Design,
  channels: Channels,
  halves: readonly Placed[],
): ReadonlyMap<Placed, readonly Channel[]> => {
  const known = new Map<string, readonly Channel[]>();
  const entries = halves.map((half): [Placed, readonly Channel[]] => {
    const around = surroundingsOf(half, design);
    const { neighbour, ends } = around;
    const cells = [half.cell, neighbour?.cell].map((cell) => (cell ? design.cells.indexOf(cell) : -1));
    const key = [...cells, half.cell.join, ends.own, ends.other, ends.joins?.own].join(' ');
    const found = known.get(key) ?? channelsOf(half.cell, design, channels, around);
    known.set(key, found);
    return [half, found];
  });
  return new Map(entries);
};

/** The other kind's half, the corner's half beside a side's first and last, the side's half beside a corner's, the next side's over a mitre. */
const surroundingsOf = (half: Placed, design: Design): Surroundings => {
  const { sides } = design;
  const corner = cornerSwag(design);
  const side = sides.find((s) => s.run.name === half.side);
  const ends = mitredEnds(half, design);
  if (!side) return { ends };
  const { gap } = side.fit.seat;
  const isFirst = half.half === 'first';
  const isLast = half.repeat === `${half.side} ${isFirst ? 1 : side.fit.repeats}`;
  if (corner && (half.cell === corner.cell || isLast)) {
    const isSide = half.cell !== corner.cell;
    const motion = besideCorner(gap, corner.turned, isSide);
    return { neighbour: { cell: isSide ? corner.cell : side.cells[0], motion }, ends };
  }
  const place = Number(half.repeat.slice(half.side.length + 1)) - 1;
  const beside = isFirst ? place - 1 : place + 1;
  if (side.cells.length > 1 && beside >= 0 && beside < side.places)
    return {
      neighbour: { cell: cellAt(side, beside), motion: besideCorner(gap, 0, true) },
      ends,
    };
  const next = sides.find(({ run }) => (isFirst ? run.next === half.side : run.name === side.run.next));
  if (ends.own !== 0 || !next) return { ends };
  const motion = overMitre(half.cell, next.cells[0], design);
  return { neighbour: { cell: next.cells[0], motion }, ends };
};

/**
 * How a half lies that starts a gap (mm) before another where one ends a side and one goes over its corner: mirrored in
 * their join, and turned as far as the corner's own start line is (radians). Seen from the side's half, or from the corner's.
 */
const besideCorner = (gap: number, turned: number, fromSide: boolean): Motion => {
  const join = mirror({ x: -gap / 2, y: 0 }, Math.PI / 2);
  return fromSide ? compose(join, turn(turned)) : compose(turn(-turned), join);
};

/** Shorter scraps of a channel (mm) are no line to stitch, only where it touches its own boundary. */
const CRUMB = 0.05;

/** The distances (mm) from the stitching of channels of these widths. */
export const reachesOf = (widths: readonly number[]): readonly number[] => {
  let reach = 0;
  return widths.map((w) => {
    reach += w;
    return reach;
  });
};
