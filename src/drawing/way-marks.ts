/**
 * How a fill is sewn, drawn on it: a dot where it starts, arrows along the way, and a bar where it stops. Of a fill of many
 * lines the first few and the last have an arrow: the others lie between them as these do.
 */

import {
  add,
  arc,
  directionAlong,
  leftOf,
  type Path,
  type Point,
  pathEnd,
  pathLength,
  pathStart,
  pointAlong,
  polyline,
  scale,
  TURN,
} from '../geometry/index.ts';
import type { Facts, PathItem } from './drawing.ts';

/** mm: half of the dot's width, of the bar's length, and of an arrow's width; an arrow's length. */
const DOT = 0.9;
const BAR = 1.6;
const ARROW = 0.8;
const ARROW_LENGTH = 1.8;

/** Arrows stand this far (mm) apart, but there are no more of them than this on a line. */
const ARROWS_APART = 60;
const MOST_ARROWS = 8;
/** Lines that have arrows, counted from the first one; and the last one. */
const FIRST_LINES = 3;

/** `size` is 1 at true size, and larger for small copies. `isWhole` tells whether all lines are there from their beginnings to their ends; else there are arrows alone. */
export const wayMarks = (
  paths: readonly Path[],
  facts: Facts,
  isWhole: boolean,
  size: number,
): readonly PathItem[] => {
  const [first, last] = [paths[0], paths.at(-1)];
  if (!first || !last) return [];
  const lines = paths.filter((_, i) => i < FIRST_LINES || i === paths.length - 1);
  const marks = [
    ...lines.flatMap((line) => arrowsOn(line, size)),
    ...(isWhole ? [dotAt(pathStart(first)!, size), barAt(last, size)] : []),
  ];
  return marks.map((path): PathItem => ({ kind: 'path', path, role: 'way', facts }));
};

const arrowsOn = (line: Path, size: number): readonly Path[] => {
  const length = pathLength(line);
  if (length < 4 * size * ARROW_LENGTH) return [];
  const count = Math.min(MOST_ARROWS, Math.max(1, Math.round(length / (size * ARROWS_APART))));
  return Array.from({ length: count }, (_, k) => {
    const at = ((k + 0.5) * length) / count;
    const [tip, along] = [pointAlong(line, at)!, directionAlong(line, at)!];
    const back = add(tip, scale(along, -size * ARROW_LENGTH));
    const aside = scale(leftOf(along), size * ARROW);
    return polyline([add(back, aside), tip, add(back, scale(aside, -1))]);
  });
};

/** Two circles, so close that they print as one dot. */
const dotAt = (at: Point, size: number): Path => {
  const [outer, inner] = [arc(at, size * DOT, 0, TURN), arc(at, (size * DOT) / 2, 0, TURN)];
  return {
    pieces: [
      { ...outer, to: outer.from },
      { kind: 'line', from: outer.from, to: inner.from },
      { ...inner, to: inner.from },
    ],
    closed: false,
  };
};

const barAt = (line: Path, size: number): Path => {
  const [at, along] = [pathEnd(line)!, directionAlong(line, pathLength(line))!];
  const aside = scale(leftOf(along), size * BAR);
  return polyline([add(at, aside), add(at, scale(aside, -1))]);
};
