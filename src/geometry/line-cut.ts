/** Where a path meets an endless straight line. */

import { crossings } from './crossing.ts';
import { type Path, pathBox } from './path.ts';
import { line, type Piece, pieceAt, pieceDirection, pieceLength } from './piece.ts';
import { add, cross, norm, type Point, scale, subtract, unit } from './point.ts';

export interface LineMeeting {
  /** mm along the path from its start. */
  readonly along: number;
  readonly point: Point;
  /** Whether the path passes from the line's right to its left there. */
  readonly leftward: boolean;
}

/** All meetings with the line through `at` along `direction`, in the order of the path. */
export const meetingsWithLine = (path: Path, at: Point, direction: Point): readonly LineMeeting[] => {
  if (path.pieces.length === 0) return [];
  const box = pathBox(path);
  const corners = [box.minX, box.maxX].flatMap((x) => [box.minY, box.maxY].map((y) => ({ x, y })));
  const reach = 1 + Math.max(...corners.map((c) => norm(subtract(c, at))));
  const u = unit(direction);
  const probe = line(add(at, scale(u, -reach)), add(at, scale(u, reach)));
  const found: LineMeeting[] = [];
  let before = 0;
  for (const p of path.pieces) {
    const length = pieceLength(p);
    if (isClear(p, at, u)) {
      before += length;
      continue;
    }
    for (const c of crossings(p, probe)) {
      const going = cross(u, pieceDirection(p, c.a));
      found.push({ along: before + c.a * length, point: pieceAt(p, c.a), leftward: going > 0 });
    }
    before += length;
  }
  return found.sort((a, b) => a.along - b.along);
};

/** Whether a piece lies wholly on one side of a line through `at` along the unit vector `u`: most do, and then nothing need be solved. */
const isClear = (p: Piece, at: Point, u: Point): boolean => {
  const off = (q: Point): number => u.x * (q.y - at.y) - u.y * (q.x - at.x);
  if (p.kind === 'arc') return Math.abs(off(p.center)) > p.radius + CLEAR;
  const [from, to] = [off(p.from), off(p.to)];
  return Math.min(Math.abs(from), Math.abs(to)) > CLEAR && from > 0 === to > 0;
};

/** What comes nearer than this (mm) is looked at closely: far more than `TOUCH`, far less than would cost time. */
const CLEAR = 1e-3;
