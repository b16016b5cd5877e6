/** A grid of square cells for "what lies near here?": constant time for things spread about evenly. */

import type { Point } from '../geometry/index.ts';

export interface PointGrid<T> {
  readonly add: (at: Point, item: T) => void;
  /** Everything whose point may lie within `reach` of p, and a little beyond. */
  readonly near: (p: Point, reach: number) => T[];
}

export const gridOf = <T>(cell: number): PointGrid<T> => {
  const cells = new Map<string, T[]>();
  const index = (v: number): number => Math.floor(v / cell);
  return {
    add: (at, item) => {
      const key = `${index(at.x)},${index(at.y)}`;
      const there = cells.get(key);
      if (there) there.push(item);
      else cells.set(key, [item]);
    },
    near: (p, reach) => {
      const found: T[] = [];
      for (let i = index(p.x - reach); i <= index(p.x + reach); i++)
        for (let j = index(p.y - reach); j <= index(p.y + reach); j++) {
          const there = cells.get(`${i},${j}`);
          if (there) found.push(...there);
        }
      return found;
    },
  };
};
