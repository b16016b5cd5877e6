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
}

export const cellLines = (cell: Cell, design: Design): CellLines => {
  const circle = circlingOf(cell.centre, cell.crown);
  return circle ? roundLines(cell, design, circle) : straightLines(cell, design);
};

const straightLines = (cell: Cell, design: Design): CellLines => {
  const over = centreMirror(cell);
  const join = joinOf(cell, design);
  const { x, y } = cell.crown;
  return {
    join: (level) => ({ x: join, y: level }),
    farJoin: (level) => move(over, { x: join, y: level }),
    middle: (level) => ({ x: x + ((level - y) * Math.cos(cell.mirror)) / Math.sin(cell.mirror), y: level }),
    start: (level) => ({ x: 0, y: level }),
    stop: (level) => move(over, { x: 0, y: level }),
    along: (points) => points.slice(1).map((p, i) => line(points[i]!, p)),
    near: design.field.near,
    far: design.field.far,
  };
};

/**
 * Where a cell ends beyond its start: halfway to its neighbour. A corner's swags stand as far from their
 * neighbours as those stand from one another, and where sides differ, at least so far.
 */
export const joinOf = (cell: Cell, design: Design): number =>
  cell === cornerSwag(design)?.cell ? -Math.min(...design.sides.map((s) => s.fit.seat.gap)) / 2 : cell.join;

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
  };
};
