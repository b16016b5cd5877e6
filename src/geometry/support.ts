/**
 * How far a path reaches in a direction: its support function, max over its points p of p·u.
 *
 * A path that is turned by an angle reaches as far up as the unturned path reaches in the direction turned
 * back. So one set of flat arrays answers every tilt, without building the turned path: the fit asks this
 * question hundreds of thousands of times.
 */

import type { Path } from './path.ts';

export type Support = (ux: number, uy: number) => number;

/** For unit directions the answer is in mm; −Infinity for an empty path. Exact for lines and arcs. */
export const supportOf = (path: Path): Support => {
  const ends = new Float64Array(2 * path.pieces.length + 2);
  const arcs = path.pieces.filter((p) => p.kind === 'arc');
  const round = new Float64Array(8 * arcs.length);
  path.pieces.forEach((p, i) => {
    ends.set([p.from.x, p.from.y], 2 * i);
    if (i === path.pieces.length - 1) ends.set([p.to.x, p.to.y], 2 * i + 2);
  });
  arcs.forEach((p, i) => {
    // The wedge is stored to go round counterclockwise, so that two cross products decide.
    const [a, b] = p.sweep > 0 ? [p.from, p.to] : [p.to, p.from];
    const { x, y } = p.center;
    const wide = Math.abs(p.sweep) > Math.PI ? 1 : 0;
    round.set([x, y, p.radius, a.x - x, a.y - y, b.x - x, b.y - y, wide], 8 * i);
  });
  return (ux, uy) => {
    if (path.pieces.length === 0) return Number.NEGATIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < ends.length; i += 2) {
      const reach = ends[i]! * ux + ends[i + 1]! * uy;
      if (reach > most) most = reach;
    }
    for (let i = 0; i < round.length; i += 8) {
      const reach = round[i]! * ux + round[i + 1]! * uy + round[i + 2]!;
      if (!(reach > most)) continue;
      const afterStart = round[i + 3]! * uy - round[i + 4]! * ux >= 0;
      const beforeEnd = ux * round[i + 6]! - uy * round[i + 5]! >= 0;
      if (round[i + 7] ? afterStart || beforeEnd : afterStart && beforeEnd) most = reach;
    }
    return most;
  };
};
