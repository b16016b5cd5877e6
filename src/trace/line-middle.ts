/** A drawn line has two sides; which of them is the template, or the middle between them. */

import type { Point } from '../geometry/index.ts';

export type LineSide = 'middle' | 'inner' | 'outer';

/** A line wider than this (mm) is no pencil's. */
const WIDEST = 4;

/**
 * For every point of the outer side the point half-way to the nearest of the inner side, and the mean width of the
 * line (mm). Both sides in mm. Points are sought in a grid of squares as wide as the widest line.
 */
export const lineMiddle = (
  outer: readonly Point[],
  inner: readonly Point[],
): { readonly points: readonly Point[]; readonly width: number } => {
  const cells = new Map<string, Point[]>();
  const key = (x: number, y: number): string => `${x},${y}`;
  for (const p of inner) {
    const k = key(Math.floor(p.x / WIDEST), Math.floor(p.y / WIDEST));
    const cell = cells.get(k);
    if (cell) cell.push(p);
    else cells.set(k, [p]);
  }
  const points: Point[] = [];
  const widths: number[] = [];
  for (const p of outer) {
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
    widths.push(Math.sqrt(best));
    const middle = { x: (p.x + nearest.x) / 2, y: (p.y + nearest.y) / 2 };
    const last = points.at(-1);
    // Round a corner many points share one nearest, and the middle hardly moves.
    if (!last || Math.hypot(middle.x - last.x, middle.y - last.y) > CLOSEST) points.push(middle);
  }
  widths.sort((a, b) => a - b);
  return { points, width: widths[Math.floor(widths.length / 2)] ?? 0 };
};

/** mm */
const CLOSEST = 0.03;
