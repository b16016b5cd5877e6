/** A drawn line has two sides; which of them is the template, or the middle between them. */

import type { Point } from '../geometry/index.ts';

export type LineSide = 'middle' | 'inner' | 'outer';

/** A line wider than this (mm) is no pencil's. */
const WIDEST = 4;
/** By more than this (mm), or as much again as it is wide, a line is not wider in one place than in another. */
const WIDER = 0.75;
/** Where two sides meet in a point the line is wider for so long (mm) at most. */
const POINTED = 10;

export interface LineMiddle {
  readonly points: readonly Point[];
  /** mm */
  readonly width: number;
  /** Where the two sides are of two lines: other lines touch this one, and it has no middle. */
  readonly parted: Point | undefined;
}

/**
 * For every point of the outer side the point half-way to the nearest of the inner side, and the mean width of the
 * line (mm). Both sides in mm. Points are sought in a grid of squares as wide as the widest line.
 */
export const lineMiddle = (outer: readonly Point[], inner: readonly Point[]): LineMiddle => {
  const cells = new Map<string, Point[]>();
  const key = (x: number, y: number): string => `${x},${y}`;
  for (const p of inner) {
    const k = key(Math.floor(p.x / WIDEST), Math.floor(p.y / WIDEST));
    const cell = cells.get(k);
    if (cell) cell.push(p);
    else cells.set(k, [p]);
  }
  const points: Point[] = [];
  const widthOf = outer.map(() => Number.POSITIVE_INFINITY);
  for (const [i, p] of outer.entries()) {
    const cx = Math.floor(p.x / WIDEST);
    const cy = Math.floor(p.y / WIDEST);
    let best = WIDEST * WIDEST;
    let nearest: Point | undefined;
    for (let x = cx - 1; x <= cx + 1; x++)
      for (let y = cy - 1; y <= cy + 1; y++)
        for (const q of cells.get(key(x, y)) ?? []) {
          const d = (p.x - q.x) ** 2 + (p.y - q.y) ** 2;
          if (d < best) {
            best = d;
            nearest = q;
          }
        }
    if (!nearest) continue;
    widthOf[i] = Math.sqrt(best);
    const middle = { x: (p.x + nearest.x) / 2, y: (p.y + nearest.y) / 2 };
    const last = points.at(-1);
    // Round a corner many points share one nearest, and the middle hardly moves.
    if (!last || Math.hypot(middle.x - last.x, middle.y - last.y) > CLOSEST) points.push(middle);
  }
  const widths = widthOf.filter(Number.isFinite).sort((a, b) => a - b);
  const width = widths[Math.floor(widths.length / 2)] ?? 0;
  return { points, width, parted: partedIn(outer, widthOf, width + Math.max(width, WIDER)) };
};

/** The middle of the longest stretch of a ring along which a line is wider than `most` (mm), where it is no point. */
const partedIn = (ring: readonly Point[], widthOf: readonly number[], most: number): Point | undefined => {
  const narrow = widthOf.findIndex((w) => w <= most);
  if (narrow < 0) return ring[0];
  let longest = POINTED;
  let parted: Point | undefined;
  let stretch: Point[] = [];
  let long = 0;
  for (let k = 1; k <= ring.length; k++) {
    const i = (narrow + k) % ring.length;
    const p = ring[i]!;
    if (widthOf[i]! <= most) {
      if (long > longest) [longest, parted] = [long, stretch[stretch.length >> 1]];
      [stretch, long] = [[], 0];
      continue;
    }
    const last = stretch.at(-1);
    if (last) long += Math.hypot(p.x - last.x, p.y - last.y);
    stretch.push(p);
  }
  return parted;
};

/** mm */
const CLOSEST = 0.03;
