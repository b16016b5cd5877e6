/** Where a path meets an endless straight line. */

import { crossings } from './crossing.ts';
import type { Path } from './path.ts';
import { line, type Piece, pieceAt, pieceLength } from './piece.ts';
import { add, distance, type Point, scale, unit } from './point.ts';

export interface LineMeeting {
  /** mm along the path from its start. */
  readonly along: number;
  readonly point: Point;
}

/** All meetings with the line through `at` along `direction`, in the order of the path. */
export const meetingsWithLine = (path: Path, at: Point, direction: Point): readonly LineMeeting[] => {
  const all: LineMeeting[] = [];
  walk(path, at, direction, (meeting) => {
    all.push(meeting);
    return false;
  });
  return all;
};

/** The first of the meetings that lies beyond `after` mm of the path; what comes later is not looked at. */
export const firstMeetingWithLine = (
  path: Path,
  at: Point,
  direction: Point,
  after: number,
): LineMeeting | undefined => {
  let first: LineMeeting | undefined;
  walk(path, at, direction, (meeting) => {
    if (meeting.along > after) first = meeting;
    return first !== undefined;
  });
  return first;
};

/** Shows one meeting after the other, until one is the last to be seen; each piece is solved only when it is come to. */
const walk = (path: Path, at: Point, direction: Point, isLast: (meeting: LineMeeting) => boolean): void => {
  const u = unit(direction);
  let before = 0;
  for (const p of path.pieces) {
    const length = pieceLength(p);
    if (!isClear(p, at, u) && meetingsOfPiece(p, length, before, at, u).some(isLast)) return;
    before += length;
  }
};

/** The meetings of one piece, which begins `before` mm along its path and is `length` mm long, in order. */
const meetingsOfPiece = (
  p: Piece,
  length: number,
  before: number,
  at: Point,
  u: Point,
): readonly LineMeeting[] => {
  // As much of the endless line as the piece can come to.
  const reach = 1 + distance(p.from, at) + length;
  const probe = line(add(at, scale(u, -reach)), add(at, scale(u, reach)));
  return crossings(p, probe)
    .map((c) => ({ along: before + c.a * length, point: pieceAt(p, c.a) }))
    .sort((a, b) => a.along - b.along);
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
