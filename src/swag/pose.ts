/**
 * A shape laid in its cell: tilted so that it starts at the origin on the start line (the x axis) and reaches
 * its crown at (h, d), and how far it then reaches beyond where it should stay.
 *
 * The template is rigid, so the chord C between start and crown is fixed, and h² + d² = C²: the half span
 * decides the tilt, and the tilt decides the depth.
 */

import type { Shape } from './shape.ts';

export interface Pose {
  /** Radians, the turn of the shape's frame. */
  readonly tilt: number;
  /** mm along the start line from the start to the crown. */
  readonly halfSpan: number;
  /** mm from the start line to the crown. */
  readonly depth: number;
  /** How far the stitching reaches, mm from the start line. */
  readonly top: number;
  /** How far it bulges back past its start, mm (0 where it does not). */
  readonly bulge: number;
  /** How far it passes below the start line, mm. */
  readonly dip: number;
}

/** The pose with the crown `halfSpan` along from the start; undefined where the chord is too short for it. */
export const crownPose = (shape: Shape, halfSpan: number): Pose | undefined => {
  if (!(halfSpan > 0 && halfSpan <= shape.chord)) return undefined;
  const depth = depthFor(shape, halfSpan);
  return withReach(shape, Math.atan2(depth, halfSpan) - shape.chordAngle, halfSpan, depth);
};

/** How high (radians) the chord rises over the start line to bring the crown `halfSpan` along, at most the chord. */
export const riseFor = (shape: Shape, halfSpan: number): number =>
  Math.atan2(depthFor(shape, halfSpan), halfSpan);

/** How deep (mm) a swag is whose crown is `halfSpan` along, at most the chord. */
export const depthFor = ({ chord }: Shape, halfSpan: number): number =>
  Math.sqrt((chord - halfSpan) * (chord + halfSpan));

/**
 * How far (mm) a shape whose chord rises by `rise` (radians) reaches back past its start, square to a line through it at
 * an angle to the start line (radians, upright unless said); negative where it keeps ahead of it.
 */
export const bulgeAt = ({ chordAngle, support }: Shape, rise: number, line = Math.PI / 2): number => {
  const lean = line - (rise - chordAngle);
  return support(-Math.sin(lean), Math.cos(lean));
};

/** How far (mm) it reaches square to a line through its start that is turned back from its own start line (radians). */
export const reachAt = ({ chordAngle, support }: Shape, rise: number, turned = 0): number => {
  const tilt = rise - chordAngle + turned;
  return support(Math.sin(tilt), Math.cos(tilt));
};

/** The pose at a given tilt, with its crown at the shape's end. */
export const tiltedPose = (shape: Shape, tilt: number): Pose => {
  const angle = shape.chordAngle + tilt;
  return withReach(shape, tilt, shape.chord * Math.cos(angle), shape.chord * Math.sin(angle));
};

const withReach = (shape: Shape, tilt: number, halfSpan: number, depth: number): Pose => {
  const c = Math.cos(tilt);
  const s = Math.sin(tilt);
  return {
    tilt,
    halfSpan,
    depth,
    top: shape.support(s, c),
    bulge: Math.max(0, shape.support(-c, s)),
    dip: Math.max(0, shape.support(-s, -c)),
  };
};

/** How far a pose passes a mirror line that goes through its crown at `angle` (radians) to the start line, mm. */
export const pastMirror = (shape: Shape, pose: Pose, angle: number): number => {
  // Beyond the mirror is the side away from the start: the normal that turns right from the mirror's direction.
  const nx = Math.sin(angle);
  const ny = -Math.cos(angle);
  const c = Math.cos(pose.tilt);
  const s = Math.sin(pose.tilt);
  const reach = shape.support(c * nx + s * ny, c * ny - s * nx);
  return Math.max(0, reach - (pose.halfSpan * nx + pose.depth * ny));
};
