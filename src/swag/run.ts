/**
 * A run: the line that the swags of one side start on, straight or bent in one curvature. Places on it are distances
 * along it, and levels are distances square to it, positive into the band.
 */

import {
  angleOf,
  arc,
  closedPath,
  compose,
  type Motion,
  move,
  movePath,
  openPath,
  type Path,
  polyline,
  shift,
  subtract,
  turn,
} from '../geometry/index.ts';

export interface Run {
  readonly name: string;
  /** mm of the line that the swags of this side start on, corner to corner. */
  readonly length: number;
  /** mm of the seam beside it. */
  readonly seam: number;
  /** mm kept clear before it and after it, where its seam is longer: a tape along it is laid from the seam's own end. */
  readonly ends: number;
  /** 1/mm: 0 for a straight run, positive where the centre that it is bent about lies in the band. */
  readonly curvature: number;
  /** What the place is called that its marks are measured from: `top left`. */
  readonly begins: string;
  /** The run that begins where this one ends: itself where it is closed. */
  readonly next: string | undefined;
  /** From its own frame (x along it from its beginning, y into the band) to the quilt's. */
  readonly place: Motion;
  /** The same where it is drawn by itself, at its own length. */
  readonly alone: Motion;
  /** mm of it as drawn, which is more where the side opposite is longer. */
  readonly drawn: number;
}

/** A straight run by itself, its seam beside it below, longer by what is kept clear at both ends. */
export const straightRun = (name: string, length: number, startMargin: number, ends = 0): Run => ({
  name,
  length,
  seam: length + 2 * ends,
  ends,
  curvature: 0,
  begins: 'left end',
  next: undefined,
  place: shift(ends, startMargin),
  alone: shift(ends, startMargin),
  drawn: length,
});

export const isClosed = ({ name, next }: Run): boolean => next === name;

/** mm along a run from the crown to the marks of a swag that is `span` mm wide, straight from start to stop. */
export const reachAlong = ({ curvature }: Run, span: number): number => {
  const bend = Math.abs(curvature);
  return bend === 0 ? span / 2 : Math.asin(Math.min(1, (bend * span) / 2)) / bend;
};

/** From a run's frame, carried `along` mm along it, to the quilt's. */
export const frameAt = ({ curvature, place }: Run, along: number): Motion => {
  if (curvature === 0) return compose(place, shift(along, 0));
  const centre = 1 / curvature;
  return compose(place, compose(compose(shift(0, centre), turn(curvature * along)), shift(0, -centre)));
};

/** A level between two places along a run, on the quilt. */
export const levelPath = (run: Run, level: number, from: number, to: number): Path => {
  const { curvature, place } = run;
  if (curvature === 0)
    return movePath(
      polyline([
        { x: from, y: level },
        { x: to, y: level },
      ]),
      place,
    );
  const centre = move(place, { x: 0, y: 1 / curvature });
  const radius = Math.abs(1 / curvature - level);
  if (isClosed(run) && to - from >= run.length)
    return closedPath([arc(centre, radius, 0, Math.PI), arc(centre, radius, Math.PI, Math.PI)]);
  const first = move(frameAt(run, from), { x: 0, y: level });
  return openPath([arc(centre, radius, angleOf(subtract(first, centre)), curvature * (to - from))]);
};
