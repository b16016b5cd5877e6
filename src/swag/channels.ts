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
 */

import {
  closedPath,
  containsPoint,
  line,
  mirror,
  move,
  movePath,
  nearnessOf,
  openPath,
  type Path,
  type Piece,
  type Point,
  parallelIn,
  pathEnd,
  pathLength,
  pathStart,
  pointAlong,
  type Region,
  regionOf,
  reversePath,
} from '../geometry/index.ts';
import type { Channels } from '../plan/index.ts';
import type { Cell, Design, Placed } from './design.ts';

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

/** The half beyond a cell's join where it is not the cell's own mirror image, and the gap to it, mm. */
export interface Neighbour {
  readonly cell: Cell;
  readonly gap: number;
}

/** All channels of a cell, outward ones first. */
export const channelsOf = (
  cell: Cell,
  design: Design,
  channels: Channels,
  neighbour?: Neighbour,
): readonly Channel[] => {
  if (channels.outward.length + channels.inward.length === 0) return [];
  const join = neighbour ? -neighbour.gap / 2 : joinOf(cell, design);
  const area = cellArea(cell, design, join);
  const inside = swagArea(cell);
  const stitching = neighbour ? withNeighbour(wholeSwag(cell), neighbour) : [wholeSwag(cell)];
  const along = nearnessOf(cell.path.pieces);
  return CHANNEL_SIDES.flatMap((side) => {
    const reaches = reachesOf(channels[side]);
    return channels[side].map((width, i): Channel => {
      const lines = parallelIn(stitching, reaches[i]!, area, channels.points)
        .filter((p) => pathLength(p) > CRUMB)
        .filter((p) => containsPoint(inside, middleOf(p)) === (side === 'inward'));
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
const withNeighbour = (swag: Path, { cell, gap }: Neighbour): readonly Path[] => {
  const half = reversePath(movePath(cell.path, mirror({ x: -gap / 2, y: 0 }, Math.PI / 2)));
  return gap > SPECK ? [half, swag] : [openPath([...half.pieces, ...swag.pieces])];
};

/** The channels of every half of a design, each different case worked out once. */
export const placedChannels = (
  design: Design,
  channels: Channels,
  halves: readonly Placed[] = design.halves,
): ReadonlyMap<Placed, readonly Channel[]> => {
  const known = new Map<string, readonly Channel[]>();
  const entries = halves.map((half): [Placed, readonly Channel[]] => {
    const neighbour = neighbourOf(half, design);
    const key = [half.cell, neighbour?.cell]
      .map((cell) => (cell ? design.cells.indexOf(cell) : -1))
      .concat(neighbour?.gap ?? -1)
      .join(' ');
    const found = known.get(key) ?? channelsOf(half.cell, design, channels, neighbour);
    known.set(key, found);
    return [half, found];
  });
  return new Map(entries);
};

/** The corner's half beside a side's first and last, and the side's half beside a corner's. */
const neighbourOf = (half: Placed, { corner, sides }: Design): Neighbour | undefined => {
  const side = sides.find((s) => s.run.name === half.side);
  if (!corner || !side) return undefined;
  const { gap } = side.fit.seat;
  if (half.cell === corner.cell) return { cell: side.cell, gap };
  const last = half.half === 'first' ? 1 : side.fit.repeats;
  return half.repeat === `${half.side} ${last}` ? { cell: corner.cell, gap } : undefined;
};

/**
 * Where a cell ends beyond its start: halfway to its neighbour. A corner's swags stand as far from their
 * neighbours as those stand from one another, and where sides differ, at least so far.
 */
const joinOf = (cell: Cell, { corner, sides }: Design): number =>
  cell === corner?.cell ? -Math.min(...sides.map((s) => s.fit.seat.gap)) / 2 : cell.join;

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

/** The mirror in a cell's centre line, in the cell's frame. */
export const centreMirror = (cell: Cell) => mirror(cell.crown, cell.mirror);

/** The whole swag, in the frame of its first half: the half and its mirror image. */
export const wholeSwag = (cell: Cell): Path => {
  const second = reversePath(movePath(cell.path, centreMirror(cell)));
  return openPath([...cell.path.pieces, ...second.pieces]);
};

/** Where the centre mirror leaves the start line: at a corner, where the start lines of its two sides meet. */
export const footOfMirror = ({ crown: { x, y }, mirror: angle }: Cell): Point => ({
  x: x - (y * Math.cos(angle)) / Math.sin(angle),
  y: 0,
});

/** Where the centre mirror meets the far margin. */
const headOfMirror = (cell: Cell, { field: { room } }: Design): Point => {
  const { x, y } = cell.crown;
  return { x: x + ((room - y) * Math.cos(cell.mirror)) / Math.sin(cell.mirror), y: room };
};

/** Between the stitching and the start line (round the corner, at a corner). */
export const swagArea = (cell: Cell): Region => {
  const swag = wholeSwag(cell);
  const foot = footOfMirror(cell);
  return outlined([line(pathStart(swag)!, foot), line(foot, pathEnd(swag)!), ...reversePath(swag).pieces]);
};

/** What a cell holds: from the join mirror to the centre mirror, from the start line to the far margin. */
export const cellArea = (cell: Cell, design: Design, join = joinOf(cell, design)): Region => {
  const top = design.field.room;
  const corners = [{ x: join, y: 0 }, footOfMirror(cell), headOfMirror(cell, design), { x: join, y: top }];
  return outlined(corners.map((p, i) => line(p, corners[(i + 1) % corners.length]!)));
};

/** Both cells of a repeat but for its swag: between the stitching and the far margin. */
export const groundArea = (cell: Cell, design: Design): Region => {
  const swag = wholeSwag(cell);
  const { room } = design.field;
  const over = (p: Point): Point => move(centreMirror(cell), p);
  const join = joinOf(cell, design);
  const low = { x: join, y: 0 };
  const high = { x: join, y: room };
  const corners = [
    pathEnd(swag)!,
    over(low),
    over(high),
    headOfMirror(cell, design),
    high,
    low,
    pathStart(swag)!,
  ];
  return outlined([...swag.pieces, ...corners.slice(1).map((p, i) => line(corners[i]!, p))]);
};

/** Lines without length, where two corners of an outline fall on one place, are no part of it. */
const outlined = (pieces: readonly Piece[]): Region =>
  regionOf([
    closedPath(
      pieces.filter((p) => p.kind === 'arc' || !(Math.hypot(p.to.x - p.from.x, p.to.y - p.from.y) <= SPECK)),
    ),
  ]);

/** Corners of an outline nearer than this (mm) are one. */
const SPECK = 1e-9;
