/**
 * The lines that bound a cell, in the cell's frame: its mirrors, each as the place on it at a level, and the way
 * along a level from one to the other. A level is a distance (mm) square to the line that the swags start on,
 * positive into the band. On a straight run levels are lines and mirrors stand upright, but for a corner's mitre;
 * on a round one levels are circles about its centre, and mirrors are rays.
 */

import {
  angleOf,
  arcBetween,
  line,
  move,
  ORIGIN,
  type Piece,
  type Point,
  polar,
  subtract,
  turn,
} from '../geometry/index.ts';
import { type Cell, centreMirror, type Design } from './design.ts';
import { cornerSwag } from './fit.ts';
import { type Circling, circlingOf } from './seat.ts';

export interface CellLines {
  /** On the join mirror, on its image in the centre mirror, and on the centre mirror. */
  readonly join: (level: number) => Point;
  readonly farJoin: (level: number) => Point;
  readonly middle: (level: number) => Point;
  /** Square to the start line through the start mark, and through the stop mark. */
  readonly start: (level: number) => Point;
  readonly stop: (level: number) => Point;
  /** From one point of a level to another through points of it between; forward is from start to stop. */
  readonly along: (points: readonly Point[], way: 'forward' | 'backward') => readonly Piece[];
  /** Between which levels cloth is quilted: swags leave the near one, or hold to it with their inward channels. */
  readonly near: number;
  readonly far: number;
  /** Up to which level the join bounds the cell, and its image: at a corner both may come to the mitre before the far level. */
  readonly own: number;
  readonly other: number;
}

/** Where a cell ends beyond its start, and where beyond its stop: mm along its start line, 0 or less. */
export interface Joins {
  readonly own: number;
  readonly other: number;
}

export const cellLines = (cell: Cell, design: Design, joins: Joins = joinsOf(cell, design)): CellLines => {
  const circle = circlingOf(cell.centre, cell.crown);
  if (circle) return roundLines(cell, design, circle);
  return isAcross(cell, design) ? acrossLines(cell, design, joins) : straightLines(cell, design, joins);
};

/** Whether it is the cell of a swag that stands across a corner. */
const isAcross = (cell: Cell, design: Design): boolean => {
  const corner = cornerSwag(design);
  return corner?.kind === 'across' && corner.cell === cell;
};

/**
 * Where a cell ends: halfway to its neighbour. A corner's swags stand as far from their neighbours as those stand from
 * one another, and where sides differ, at least so far.
 */
export const joinsOf = (cell: Cell, design: Design): Joins => {
  const gaps = design.sides.map((s) => s.fit.seat.gap);
  const join = cell === cornerSwag(design)?.cell ? -Math.min(...gaps) / 2 : cell.join;
  return { own: join, other: join };
};

const straightLines = (cell: Cell, design: Design, { own, other }: Joins): CellLines => {
  const over = centreMirror(cell);
  const { x, y } = cell.crown;
  const { field } = design;
  const slope = Math.cos(cell.mirror) / Math.sin(cell.mirror);
  // From the outer seam a corner's mitre comes to its joins: beyond are the two sides.
  const isLeaning = cell === cornerSwag(design)?.cell && field.from === 'outer';
  const apexOf = (join: number): number =>
    isLeaning ? Math.min(field.far, y + (join - x) / slope) : field.far;
  const [ownFar, otherFar] = [apexOf(own), apexOf(other)];
  return {
    join: (level) => ({ x: own, y: level }),
    farJoin: (level) => move(over, { x: other, y: level }),
    middle: (level) => ({ x: x + (level - y) * slope, y: level }),
    start: (level) => ({ x: 0, y: level }),
    stop: (level) => move(over, { x: 0, y: level }),
    along: (points) => points.slice(1).map((p, i) => line(points[i]!, p)),
    near: field.near,
    far: Math.max(ownFar, otherFar),
    own: ownFar,
    other: otherFar,
  };
};

/**
 * Across a corner levels are still the side's: they are turned from the swag's own start line, down to the corner of the
 * two start lines. Beyond its start the cell ends at the line that parts it from the side's last swag (beside.ts). It
 * comes to a point on the mitre where that line does; beyond are the two sides.
 */
const acrossLines = (cell: Cell, { field, corner }: Design, { own, other }: Joins): CellLines => {
  const over = centreMirror(cell);
  const turned = corner.kind === 'across' ? corner.turned : 0;
  const side = turn(-turned);
  const sideLine = (at: Point): Point => move(side, at);
  // Seen from its own side the line leans back by half of what the chord is turned.
  const lean = Math.tan(turned / 2);
  const { x } = cell.crown;
  const [c, s] = [Math.cos(turned), Math.sin(turned)];
  const [ownFar, otherFar] = [own, other].map((join) => Math.min(field.far, apexOf(x, join, turned)));
  return {
    join: (level) => sideLine({ x: own - lean * level, y: level }),
    farJoin: (level) => move(over, sideLine({ x: other - lean * level, y: level })),
    middle: (level) => ({ x, y: (level - x * s) / c }),
    start: (level) => sideLine({ x: 0, y: level }),
    stop: (level) => move(over, sideLine({ x: 0, y: level })),
    along: (points) => points.slice(1).map((p, i) => line(points[i]!, p)),
    near: field.near,
    far: Math.max(ownFar!, otherFar!),
    own: ownFar!,
    other: otherFar!,
  };
};

/** The level at which the lines beside a swag across a corner meet on the mitre, `half` mm from its start along its chord. */
const apexOf = (half: number, join: number, turned: number): number => {
  const [c, s] = [Math.cos(turned), Math.sin(turned)];
  // On the mitre x is `half`; a place on the line, at a level, has x = (join − lean·level)·c + level·s.
  return (half - join * c) / (s - Math.tan(turned / 2) * c);
};

const roundLines = (cell: Cell, { field }: Design, { centre, startRadius, sense }: Circling): CellLines => {
  const over = centreMirror(cell);
  const radiusAt = (level: number): number => startRadius - sense * level;
  const ray = (angle: number) => (level: number) => {
    const p = polar(angle, radiusAt(level));
    return { x: centre.x + p.x, y: centre.y + p.y };
  };
  // The join mirror stands upright through the centre.
  const join = (level: number): Point => ({ x: centre.x, y: centre.y - sense * radiusAt(level) });
  const start = ray(angleOf(subtract(ORIGIN, centre)));
  return {
    join,
    farJoin: (level) => move(over, join(level)),
    middle: ray(angleOf(subtract(cell.crown, centre))),
    start,
    stop: (level) => move(over, start(level)),
    // One arc from the first to the last: a circle has no corner on its way.
    along: (points, way) => [
      arcBetween(centre, points[0]!, points.at(-1)!, (way === 'forward') === sense > 0),
    ],
    near: field.near,
    far: field.far,
    own: field.far,
    other: field.far,
  };
};
