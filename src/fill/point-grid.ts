/** A grid of square cells for "what lies near here?": constant time for things spread about evenly. */

import type { Point } from '../geometry/index.ts';

export interface PointGrid<T> {
  readonly add: (at: Point, item: T) => void;
  /** Everything whose point may lie within `reach` of p, and a little beyond. */
  readonly near: (p: Point, reach: number) => T[];
}

/** Cells are numbered from −HALF to HALF each way; both numbers together make one exact integer. */
const HALF = 2 ** 25;

export const gridOf = <T>(cell: number): PointGrid<T> => {
  const cells = new Map<number, T[]>();
  const index = (v: number): number => Math.floor(v / cell);
  const keyOf = (i: number, j: number): number => (i + HALF) * 2 * HALF + (j + HALF);
  return {
    add: (at, item) => {
      const key = keyOf(index(at.x), index(at.y));
      const there = cells.get(key);
      if (there) there.push(item);
      else cells.set(key, [item]);
    },
    near: (p, reach) => {
      const found: T[] = [];
      for (let i = index(p.x - reach); i <= index(p.x + reach); i++)
        for (let j = index(p.y - reach); j <= index(p.y + reach); j++) {
          const there = cells.get(keyOf(i, j));
          if (there) found.push(...there);
        }
      return found;
    },
  };
};
