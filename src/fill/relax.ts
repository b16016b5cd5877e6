/**
 * A closed line that wanders, made even: it gives way where it comes near itself or the edge, and straightens nowhere.
 *
 * The line resists being bent, which rounds corners, and every point is pushed away by all that lies nearer than a
 * spacing or so and is no neighbour, which fills what is bare and keeps the line from crossing itself (after H. Pedersen
 * and K. Singh, "Organic labyrinths and mazes", NPAR 2006, with a swell where they have chance).
 */

import { distance, type Point } from '../geometry/index.ts';
import { resample } from './smooth-path.ts';

export interface RelaxOptions {
  /** The distance (mm) that stretches beside one another aim for. */
  readonly spacing: number;
  /** Points are this far apart (mm). */
  readonly step: number;
  readonly rounds: number;
  /** How far (mm) the line aims to be from the walls. */
  readonly fromWalls: number;
}

/**
 * What moves a point in a round: how much it is drawn to its neighbours' middle, how much the line resists being bent
 * (both shares of what is missing), how strongly others push (in steps), and from how near (in spacings).
 */
const SHORTEN = 0.06;
const STIFF = 0.1;
const PUSH = 0.4;
const REACH = 1.15;
/** A slow swell over the area, in steps a round, that bends what would lie straight; its length is in spacings. */
const SWELL = 0.08;
const SWELL_LENGTH = 3.2;
/** No point moves farther than this share of a step in one round, so that none gets across a line. */
const MOST_MOVE = 0.45;
/** What is nearer along the line than this many spacings is a neighbour, and does not push. */
const NEIGHBOURS = 1.3;

/** The line after some rounds; `walls` are points about a step apart that push and stay. The first is not repeated. */
export const relaxedRound = (
  line: readonly Point[],
  walls: readonly Point[],
  { spacing, step, rounds, fromWalls }: RelaxOptions,
): Point[] => {
  let points = [...line];
  for (let round = 0; round < rounds; round++) {
    points = oneRound(points, walls, spacing, step, fromWalls);
    // Stretched here and crowded there, the points are laid out evenly again.
    if (round % 4 === 3) points = evenly(points, step);
  }
  return points;
};

const evenly = (points: readonly Point[], step: number): Point[] => {
  const length = points.reduce((sum, p, i) => sum + distance(p, points[(i + 1) % points.length]!), 0);
  return resample([...points, points[0]!], Math.max(12, 2 * Math.round(length / step / 2)) + 1).slice(0, -1);
};

/** As flat arrays throughout: every point is asked for what lies near it in every round. */
const oneRound = (
  points: readonly Point[],
  walls: readonly Point[],
  spacing: number,
  step: number,
  fromWalls: number,
): Point[] => {
  const count = points.length;
  const cells = cellsOf(points, walls, REACH * spacing);
  const { xs, ys, columns, start, order } = cells;
  const neighbours = Math.ceil((NEIGHBOURS * spacing) / step);
  const reach = REACH * spacing;
  const most = MOST_MOVE * step;
  const wave = (2 * Math.PI) / (SWELL_LENGTH * spacing);
  return points.map((p, i) => {
    const [b2, b1] = [i < 2 ? i + count - 2 : i - 2, i === 0 ? count - 1 : i - 1];
    const [a1, a2] = [i + 1 < count ? i + 1 : 0, i + 2 < count ? i + 2 : i + 2 - count];
    const [px, py] = [p.x, p.y];
    let x =
      SHORTEN * ((xs[b1]! + xs[a1]!) / 2 - px) -
      STIFF * (xs[b2]! - 4 * xs[b1]! + 6 * px - 4 * xs[a1]! + xs[a2]!) +
      SWELL * step * Math.sin(wave * py);
    let y =
      SHORTEN * ((ys[b1]! + ys[a1]!) / 2 - py) -
      STIFF * (ys[b2]! - 4 * ys[b1]! + 6 * py - 4 * ys[a1]! + ys[a2]!) +
      SWELL * step * Math.cos(wave * px);
    const middle = cells.at(px, py);
    for (let row = -columns; row <= columns; row += columns)
      for (let k = start[middle + row - 1]!; k < start[middle + row + 2]!; k++) {
        const j = order[k]!;
        const far = j < count ? reach : fromWalls;
        const [dx, dy] = [px - xs[j]!, py - ys[j]!];
        const square = dx * dx + dy * dy;
        if (square >= far * far || square === 0) continue;
        if (j < count) {
          const along = i > j ? i - j : j - i;
          if (along < neighbours || count - along < neighbours) continue;
        }
        const d = Math.sqrt(square);
        const push = (PUSH * step * (1 - d / far)) / d;
        x += dx * push;
        y += dy * push;
      }
    const far = Math.sqrt(x * x + y * y);
    const share = far > most ? most / far : 1;
    return { x: px + x * share, y: py + y * share };
  });
};

interface Cells {
  /** The points, and after them the walls. */
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly columns: number;
  /** Where each cell's points begin in `order`. */
  readonly start: Int32Array;
  readonly order: Int32Array;
  /** The cell of a place. */
  readonly at: (x: number, y: number) => number;
}

const cellsOf = (points: readonly Point[], walls: readonly Point[], cell: number): Cells => {
  const count = points.length + walls.length;
  const xs = new Float64Array(count);
  const ys = new Float64Array(count);
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let k = 0; k < count; k++) {
    const { x, y } = k < points.length ? points[k]! : walls[k - points.length]!;
    xs[k] = x;
    ys[k] = y;
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  const columns = Math.floor((maxX - minX) / cell) + 3;
  const rows = Math.floor((maxY - minY) / cell) + 3;
  const at = (x: number, y: number): number =>
    (Math.floor((y - minY) / cell) + 1) * columns + Math.floor((x - minX) / cell) + 1;
  const start = new Int32Array(columns * rows + 2);
  for (let k = 0; k < count; k++) start[at(xs[k]!, ys[k]!) + 1]!++;
  for (let c = 0; c <= columns * rows; c++) start[c + 1]! += start[c]!;
  const filled = start.slice();
  const order = new Int32Array(count);
  for (let k = 0; k < count; k++) order[filled[at(xs[k]!, ys[k]!)]!++] = k;
  return { xs, ys, columns, start, order, at };
};
