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

/**
 * As flat arrays throughout: every point is asked for what lies near it in every round. Plain sums and no pairs taken
 * apart, because this runs long before a machine has made it fast.
 */
const oneRound = (
  points: readonly Point[],
  walls: readonly Point[],
  spacing: number,
  step: number,
  fromWalls: number,
): Point[] => {
  const count = points.length;
  const reach = REACH * spacing;
  const { xs, ys, ids, columns, start, at } = cellsOf(points, walls, reach);
  const neighbours = Math.ceil((NEIGHBOURS * spacing) / step);
  const most = MOST_MOVE * step;
  const wave = (2 * Math.PI) / (SWELL_LENGTH * spacing);
  const moved: Point[] = [];
  for (let i = 0; i < count; i++) {
    const b2 = points[i < 2 ? i + count - 2 : i - 2]!;
    const b1 = points[i === 0 ? count - 1 : i - 1]!;
    const a1 = points[i + 1 < count ? i + 1 : 0]!;
    const a2 = points[i + 2 < count ? i + 2 : i + 2 - count]!;
    const px = points[i]!.x;
    const py = points[i]!.y;
    let x =
      SHORTEN * ((b1.x + a1.x) / 2 - px) -
      STIFF * (b2.x - 4 * b1.x + 6 * px - 4 * a1.x + a2.x) +
      SWELL * step * Math.sin(wave * py);
    let y =
      SHORTEN * ((b1.y + a1.y) / 2 - py) -
      STIFF * (b2.y - 4 * b1.y + 6 * py - 4 * a1.y + a2.y) +
      SWELL * step * Math.cos(wave * px);
    const middle = at(px, py);
    for (let row = -columns; row <= columns; row += columns) {
      const end = start[middle + row + 2]!;
      for (let k = start[middle + row - 1]!; k < end; k++) {
        const dx = px - xs[k]!;
        const dy = py - ys[k]!;
        const square = dx * dx + dy * dy;
        const j = ids[k]!;
        const far = j < count ? reach : fromWalls;
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
    }
    const far = Math.sqrt(x * x + y * y);
    const share = far > most ? most / far : 1;
    moved.push({ x: px + x * share, y: py + y * share });
  }
  return moved;
};

/** The points, and after them the walls, cell by cell. */
interface Cells {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  /** Which point each is, or which wall after them. */
  readonly ids: Int32Array;
  readonly columns: number;
  /** Where each cell begins. */
  readonly start: Int32Array;
  /** The cell of a place. */
  readonly at: (x: number, y: number) => number;
}

const cellsOf = (points: readonly Point[], walls: readonly Point[], cell: number): Cells => {
  const all = [...points, ...walls];
  const count = all.length;
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const p of all) {
    if (p.x < minX) minX = p.x;
    if (p.x > maxX) maxX = p.x;
    if (p.y < minY) minY = p.y;
    if (p.y > maxY) maxY = p.y;
  }
  const columns = Math.floor((maxX - minX) / cell) + 3;
  const rows = Math.floor((maxY - minY) / cell) + 3;
  const at = (x: number, y: number): number =>
    (Math.floor((y - minY) / cell) + 1) * columns + Math.floor((x - minX) / cell) + 1;
  const start = new Int32Array(columns * rows + 2);
  for (const p of all) start[at(p.x, p.y) + 1]!++;
  for (let c = 0; c <= columns * rows; c++) start[c + 1]! += start[c]!;
  const filled = start.slice();
  const xs = new Float64Array(count);
  const ys = new Float64Array(count);
  const ids = new Int32Array(count);
  for (let k = 0; k < count; k++) {
    const p = all[k]!;
    const place = filled[at(p.x, p.y)]!++;
    xs[place] = p.x;
    ys[place] = p.y;
    ids[place] = k;
  }
  return { xs, ys, ids, columns, start, at };
};
