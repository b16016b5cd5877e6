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
  compose,
  containsPoint,
  cross,
  intersectRegions,
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
  polar,
  type Region,
  regionOf,
  reversePath,
  shift,
  subtract,
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

/** What lies beyond the start of a half where that is not its own mirror image in the join. */
export interface Surroundings {
  readonly neighbour?: Neighbour;
  /** Whether the repeat stops at a mitre at this half's own start, and at the far end of its other half. */
  readonly ends: MitredEnds;
}

/** The half beyond, and the line in which it is mirrored from its own cell: a join, or a corner's mitre. */
export interface Neighbour {
  readonly cell: Cell;
  readonly line: MirrorLine;
  /** mm by which it is moved along the start line first, where its own join lies elsewhere than the line. */
  readonly moved: number;
}

export interface MirrorLine {
  readonly at: Point;
  /** To the start line, radians. */
  readonly angle: number;
}

/** Where runs meet at their corners, the first and the last repeat end at a mitre. */
export interface MitredEnds {
  readonly own: boolean;
  readonly other: boolean;
}

export const NO_MITRES: MitredEnds = { own: false, other: false };

/** All channels of a cell, outward ones first. */
export const channelsOf = (
  cell: Cell,
  design: Design,
  channels: Channels,
  { neighbour, ends }: Surroundings = { ends: NO_MITRES },
): readonly Channel[] => {
  if (channels.outward.length + channels.inward.length === 0) return [];
  const area = cellArea(cell, design, ends, neighbour?.line);
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
const withNeighbour = (swag: Path, { cell, line: { at, angle }, moved }: Neighbour): readonly Path[] => {
  const half = reversePath(movePath(cell.path, compose(mirror(at, angle), shift(moved, 0))));
  const start = pathStart(swag)!;
  const end = pathEnd(half)!;
  return Math.hypot(end.x - start.x, end.y - start.y) > SPECK
    ? [half, swag]
    : [openPath([...half.pieces, ...swag.pieces])];
};

/** The channels of every half of a design, each different case worked out once. */
export const placedChannels = (
  design: Design,
  channels: Channels,
  halves: readonly Placed[] = design.halves,
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
  const { corner, sides, field } = design;
  const index = sides.findIndex((s) => s.run.name === half.side);
  const side = sides[index];
  const ends = mitredEnds(half, design);
  if (!side) return { ends };
  const { gap } = side.fit.seat;
  const join: MirrorLine = { at: { x: -gap / 2, y: 0 }, angle: Math.PI / 2 };
  const isFirst = half.half === 'first';
  const isLast = half.repeat === `${half.side} ${isFirst ? 1 : side.fit.repeats}`;
  if (corner && half.cell === corner.cell)
    return { neighbour: { cell: side.cell, line: join, moved: 0 }, ends };
  if (corner && isLast) return { neighbour: { cell: corner.cell, line: join, moved: 0 }, ends };
  if (!ends.own) return { ends };
  // Sides come in the order top, right, bottom, left, which from the outer seam is against the way they run.
  const step = isFirst === (field.from === 'inner') ? -1 : 1;
  const next = sides[(index + step + sides.length) % sides.length]!;
  const moved = half.cell.join - next.cell.join;
  return { neighbour: { cell: next.cell, line: mitreOf(half.cell, design), moved }, ends };
};

/** Where the runs of a border meet at its corners, a side's outermost halves end at a mitre. */
export const mitredEnds = (half: Placed, { field, sides }: Design): MitredEnds => {
  const side = sides.find((s) => s.run.name === half.side);
  if (field.corners !== 'meet' || !side) return NO_MITRES;
  const first = half.repeat === `${half.side} 1`;
  const last = half.repeat === `${half.side} ${side.fit.repeats}`;
  return half.half === 'first' ? { own: first, other: last } : { own: last, other: first };
};

/** The mitre at a cell's own start, where runs meet. */
const mitreOf = (cell: Cell, { field }: Design): MirrorLine => ({
  at: { x: cell.join, y: 0 },
  angle: Math.PI - field.mitre,
});

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

/** What a cell holds: from the join or the mitre to the centre mirror, from the start line to the far margin. */
export const cellArea = (
  cell: Cell,
  design: Design,
  ends: MitredEnds = NO_MITRES,
  line?: MirrorLine,
): Region => {
  const join = line?.at.x ?? joinOf(cell, design);
  const corners = [
    { x: join, y: 0 },
    footOfMirror(cell),
    headOfMirror(cell, design),
    startEdge(design, join, ends.own),
  ];
  return outlined(linesThrough(withinMitres(corners, cell, design, ends)));
};

/** Both cells of a repeat but for its swag: between the stitching and the far margin. */
export const groundArea = (cell: Cell, design: Design, ends: MitredEnds = NO_MITRES): Region => {
  const swag = wholeSwag(cell);
  const join = joinOf(cell, design);
  const over = (p: Point): Point => move(centreMirror(cell), p);
  const low = { x: join, y: 0 };
  const corners = [
    pathEnd(swag)!,
    over(low),
    over(startEdge(design, join, ends.other)),
    headOfMirror(cell, design),
    startEdge(design, join, ends.own),
    low,
    pathStart(swag)!,
  ];
  const ground = outlined([...swag.pieces, ...corners.slice(1).map((p, i) => line(corners[i]!, p))]);
  if (design.field.from === 'inner' || !(ends.own || ends.other)) return ground;
  const whole = [low, over(low), over({ x: join, y: design.field.room }), { x: join, y: design.field.room }];
  return intersectRegions(ground, outlined(linesThrough(withinMitres(whole, cell, design, ends))));
};

/** The end of a cell's edge at the far margin. Seen from the inner seam a mitre leans away from the cell. */
const startEdge = ({ field }: Design, join: number, mitred: boolean): Point => ({
  x: mitred && field.from === 'inner' ? join - field.room / Math.tan(field.mitre) : join,
  y: field.room,
});

/** Seen from the outer seam mitres lean over the cells: what is left of a convex polygon between them. */
const withinMitres = (
  polygon: readonly Point[],
  cell: Cell,
  design: Design,
  ends: MitredEnds,
): readonly Point[] => {
  if (design.field.from === 'inner') return polygon;
  const { at, angle } = mitreOf(cell, design);
  const along = polar(angle);
  const beside = (p: Point): number => cross(subtract(p, at), along);
  const own = ends.own ? cutPolygon(polygon, beside) : polygon;
  return ends.other ? cutPolygon(own, (p) => beside(move(centreMirror(cell), p))) : own;
};

/** The part of a convex polygon on which a linear measure is not negative (Sutherland and Hodgman, 1974). */
const cutPolygon = (polygon: readonly Point[], measure: (p: Point) => number): readonly Point[] =>
  polygon.flatMap((p, i) => {
    const before = polygon.at(i - 1)!;
    const [a, b] = [measure(before), measure(p)];
    const t = a / (a - b);
    const crossing = { x: before.x + t * (p.x - before.x), y: before.y + t * (p.y - before.y) };
    if (b >= 0) return a < 0 ? [crossing, p] : [p];
    return a > 0 ? [crossing] : [];
  });

const linesThrough = (corners: readonly Point[]): readonly Piece[] =>
  corners.map((p, i) => line(p, corners[(i + 1) % corners.length]!));

/** Lines without length, where two corners of an outline fall on one place, are no part of it. */
const outlined = (pieces: readonly Piece[]): Region =>
  regionOf([
    closedPath(
      pieces.filter((p) => p.kind === 'arc' || !(Math.hypot(p.to.x - p.from.x, p.to.y - p.from.y) <= SPECK)),
    ),
  ]);

/** Corners of an outline nearer than this (mm) are one. */
const SPECK = 1e-9;
