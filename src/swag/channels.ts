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
  shift,
} from '../geometry/index.ts';
import type { Channels } from '../plan/index.ts';
import {
  cellArea,
  cellSides,
  type MirrorLine,
  type MitredEnds,
  mitredEnds,
  mitreOf,
  NO_MITRES,
  SPECK,
  swagArea,
  wholeSwag,
} from './cell-areas.ts';
import { type Cell, type Design, type Placed, rowsShown } from './design.ts';
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

/** The half beyond, and the line in which it is mirrored from its own cell: a join, or a corner's mitre. */
interface Neighbour {
  readonly cell: Cell;
  readonly line: MirrorLine;
  /** mm by which it is moved along the start line first, where its own join lies elsewhere than the line. */
  readonly moved: number;
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
  const area = cellArea(cell, design, ends, neighbour?.line);
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
const withNeighbour = (swag: Path, { cell, line: { at, angle }, moved }: Neighbour): readonly Path[] => {
  const half = reversePath(movePath(cell.path, compose(mirror(at, angle), shift(moved, 0))));
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
    const key = [...cells, neighbour?.line.at.x, ends.own, ends.other].join(' ');
    const found = known.get(key) ?? channelsOf(half.cell, design, channels, around);
    known.set(key, found);
    return [half, found];
  });
  return new Map(entries);
};

/** The corner's half beside a side's first and last, the side's half beside a corner's, the next side's over a mitre. */
const surroundingsOf = (half: Placed, design: Design): Surroundings => {
  const { sides } = design;
  const corner = cornerSwag(design);
  const side = sides.find((s) => s.run.name === half.side);
  const ends = mitredEnds(half, design);
  if (!side) return { ends };
  const { gap } = side.fit.seat;
  const join: MirrorLine = { at: { x: -gap / 2, y: 0 }, angle: Math.PI / 2 };
  const isFirst = half.half === 'first';
  const isLast = half.repeat === `${half.side} ${isFirst ? 1 : side.fit.repeats}`;
  if (corner && half.cell === corner.cell)
    return { neighbour: { cell: side.cell, line: join, moved: 0 }, ends };
  if (corner && isLast) return { neighbour: { cell: corner.cell, line: join, moved: 0 }, ends };
  const next = sides.find(({ run }) => (isFirst ? run.next === half.side : run.name === side.run.next));
  if (!ends.own || !next) return { ends };
  const moved = half.cell.join - next.cell.join;
  return { neighbour: { cell: next.cell, line: mitreOf(half.cell, design), moved }, ends };
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
