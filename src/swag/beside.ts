/** What keeps a swag from standing beside its neighbour: along a run, and at a corner where the two lean over the same cloth. */

import { type Point, pathLength, pointAlong } from '../geometry/index.ts';
import type { Field } from './field.ts';
import { FIT_NOISE, type Misfit } from './misfit.ts';
import { bulgeAt } from './pose.ts';
import { gapFor, NEIGHBOUR_ROOM, type Seat } from './seat.ts';
import type { Shape } from './shape.ts';

const UPRIGHT = Math.PI / 2;

/**
 * From the outer seam, neighbours at a corner lean over the same cloth. The angle (radians) to their start lines of the
 * line that parts them: the mitre where two runs meet, and where a swag goes across the corner, the line that halves
 * the angle between its chord and the side's. Undefined where none lean.
 */
export const partedAt = (field: Field): number | undefined => {
  if (field.corners === 'none' || field.from === 'inner') return undefined;
  // Half the angle between two start lines, and so the mitre's to each of them.
  const mitre = Math.PI - field.mitre;
  return field.corners === 'meet' ? mitre : field.corners === 'across' ? UPRIGHT / 2 + mitre / 2 : undefined;
};

/** The angles (radians) to the start line of all lines that a half may come to beyond its start, half a gap before it. */
export const linesBeside = (field: Field): readonly number[] => {
  const line = partedAt(field);
  return line === undefined ? [UPRIGHT] : [UPRIGHT, line];
};

/** The least gap (mm) with which a shape whose chord rises so (radians) keeps before such a line. */
export const gapBefore = (line: number, shape: Shape, rise: number, gap?: number | 'auto'): number =>
  gapFor({ bulge: bulgeAt(shape, rise, line) }, gap) / Math.sin(line);

/** What keeps a swag from standing beside its neighbour's, along the run and at a corner that they share. */
export const besideNeighbour = (seated: Seat, field: Field): Misfit | undefined => {
  const line = partedAt(field);
  const over = overEnd(seated, field);
  if (over > FIT_NOISE) return { kind: 'past-centre', by: over };
  const beside = Math.max(
    doubledAlong(seated, UPRIGHT),
    line === undefined ? 0 : doubledAlong(seated, line, field.marksAt),
  );
  return beside > MOST_DOUBLED ? { kind: 'doubled', by: beside - MOST_DOUBLED, along: beside } : undefined;
};

/** How far (mm) a swag that starts so far along from the first one of its side passes the line that parts sides; 0 where it does not. */
export const overEnd = ({ shape, pose, gap }: Seat, field: Field, along = 0): number => {
  const line = partedAt(field);
  if (line === undefined) return 0;
  const room = (along + gap / 2) * Math.sin(line) + field.marksAt * Math.cos(line);
  return Math.max(0, bulgeAt(shape, pose.tilt + shape.chordAngle, line) - room);
};

/** Whether it keeps so close to the join for so long that it and its like would be one thick line. */
export const doubledBeside = (seated: Seat): boolean => doubledAlong(seated, UPRIGHT) > MOST_DOUBLED;

/**
 * Two swags that start in one place and set out side by side make one thick line until they part. As long as this
 * (mm, an inch) it looks like a slip. Common practice, no source.
 */
const MOST_DOUBLED = 25.4;
/** The stitching is looked at this closely for where it parts from its neighbour's, mm. */
const DOUBLED_STEP = 0.5;

/** The points of a shape that are half as far along it as may be doubled, and as far; none where it is shorter. */
const inchMarks = (shape: Shape): readonly Point[] => {
  let marks = INCH_MARKS.get(shape);
  if (!marks) {
    const end = pointAlong(shape.path, MOST_DOUBLED);
    marks = end ? [end, pointAlong(shape.path, MOST_DOUBLED / 2) ?? end] : [];
    INCH_MARKS.set(shape, marks);
  }
  return marks;
};

/** A shape is laid in many poses. */
const INCH_MARKS = new WeakMap<Shape, readonly Point[]>();

/**
 * How far (mm along it) a swag keeps closer to its neighbour's than a thick line is wide. The neighbour is its mirror
 * image in a line through the join, at an angle (radians) to the start line, which it passes at a level (mm); looked at
 * as far as it matters.
 */
const doubledAlong = (seated: Seat, angle: number, level = 0): number => {
  const { shape, pose, gap } = seated;
  if (gap >= NEIGHBOUR_ROOM) return 0;
  const [nx, ny] = [Math.sin(angle), -Math.cos(angle)];
  const [c, s] = [Math.cos(pose.tilt), Math.sin(pose.tilt)];
  // From the mirror to a point that lies along the path, untilted: its own normal is turned instead.
  const away = ({ x, y }: Point): number =>
    Math.abs((c * x - s * y + gap / 2) * nx + (s * x + c * y - level) * ny);
  const marks = inchMarks(shape);
  if (marks.length > 0 && marks.every((p) => away(p) > NEIGHBOUR_ROOM / 2)) return 0;
  const length = pathLength(shape.path);
  for (let at = DOUBLED_STEP; at < length; at += DOUBLED_STEP) {
    const p = pointAlong(shape.path, at);
    if (p && away(p) > NEIGHBOUR_ROOM / 2) return at;
  }
  return length;
};
