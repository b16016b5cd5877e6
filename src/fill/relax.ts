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

const oneRound = (
  points: readonly Point[],
  walls: readonly Point[],
  spacing: number,
  step: number,
  fromWalls: number,
): Point[] => {
  const count = points.length;
  const near = bucketsOf(points, walls, REACH * spacing);
  const neighbours = Math.ceil((NEIGHBOURS * spacing) / step);
  const most = MOST_MOVE * step;
  const wave = (2 * Math.PI) / (SWELL_LENGTH * spacing);
  return points.map((p, i) => {
    const before = points[(i + count - 1) % count]!;
    const after = points[(i + 1) % count]!;
    const first = points[(i + count - 2) % count]!;
    const last = points[(i + 2) % count]!;
    let x =
      SHORTEN * ((before.x + after.x) / 2 - p.x) -
      STIFF * (first.x - 4 * before.x + 6 * p.x - 4 * after.x + last.x);
    let y =
      SHORTEN * ((before.y + after.y) / 2 - p.y) -
      STIFF * (first.y - 4 * before.y + 6 * p.y - 4 * after.y + last.y);
    x += SWELL * step * Math.sin(wave * p.y);
    y += SWELL * step * Math.cos(wave * p.x);
    near(p, (j, qx, qy) => {
      const isWall = j >= count;
      if (!isWall) {
        const along = Math.abs(i - j);
        if (Math.min(along, count - along) < neighbours) return;
      }
      const reach = isWall ? fromWalls : REACH * spacing;
      const [dx, dy] = [p.x - qx, p.y - qy];
      const d = Math.sqrt(dx * dx + dy * dy);
      if (!(d < reach && d > 0)) return;
      const push = (PUSH * step * (1 - d / reach)) / d;
      x += dx * push;
      y += dy * push;
    });
    const far = Math.hypot(x, y);
    const share = far > most ? most / far : 1;
    return { x: p.x + x * share, y: p.y + y * share };
  });
};

type Visit = (index: number, x: number, y: number) => void;

/** Points and walls in square cells one spacing wide, as flat arrays: they are asked for at every point of every round. */
const bucketsOf = (
  points: readonly Point[],
  walls: readonly Point[],
  cell: number,
): ((p: Point, visit: Visit) => void) => {
  const count = points.length + walls.length;
  const xs = new Float64Array(count);
  const ys = new Float64Array(count);
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let k = 0; k < count; k++) {
    const p = k < points.length ? points[k]! : walls[k - points.length]!;
    xs[k] = p.x;
    ys[k] = p.y;
    minX = Math.min(minX, p.x);
    minY = Math.min(minY, p.y);
    maxX = Math.max(maxX, p.x);
    maxY = Math.max(maxY, p.y);
  }
  const columns = Math.floor((maxX - minX) / cell) + 3;
  const rows = Math.floor((maxY - minY) / cell) + 3;
  const cellAt = (x: number, y: number): number =>
    (Math.floor((y - minY) / cell) + 1) * columns + Math.floor((x - minX) / cell) + 1;
  const start = new Int32Array(columns * rows + 1);
  for (let k = 0; k < count; k++) start[cellAt(xs[k]!, ys[k]!) + 1]!++;
  for (let c = 0; c < columns * rows; c++) start[c + 1]! += start[c]!;
  const filled = start.slice();
  const order = new Int32Array(count);
  for (let k = 0; k < count; k++) order[filled[cellAt(xs[k]!, ys[k]!)]!++] = k;
  return (p, visit) => {
    const middle = cellAt(p.x, p.y);
    for (let row = -1; row <= 1; row++) {
      const first = middle + row * columns - 1;
      for (let k = start[first]!; k < start[first + 3]!; k++)
        visit(order[k]!, xs[order[k]!]!, ys[order[k]!]!);
    }
  };
};
