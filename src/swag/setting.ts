/** The three ways in which people set a template, and the tilt that two of them give. */

import type { Path } from '../geometry/index.ts';
import type { AlignmentLine } from '../template/index.ts';
import type { Shape } from './shape.ts';
import type { Flat } from './stitching.ts';

export type Setting =
  /** Start and crown are put on their two lines; the tilt follows from the span. */
  | { readonly kind: 'crown-on-centre' }
  /** An etched line is laid on the start mark's line (square to the seam), or along the start line. */
  | { readonly kind: 'alignment-line'; readonly line: AlignmentLine; readonly laid: 'square' | 'along' }
  /** A straight stretch is laid along a line parallel to the seam. */
  | { readonly kind: 'flat-on-guide'; readonly flat: Flat };

/** One way to make a half swag: what stretch of what template, and how it is set. */
export interface Way {
  readonly shape: Shape;
  readonly setting: Setting;
  /** Radians that the shape is turned; undefined where the span decides it. */
  readonly tilt: number | undefined;
  /** With a fixed tilt: the path at that tilt, from the start at the origin. */
  readonly laid: Path | undefined;
  /** With a fixed tilt: whether it may also stop sooner, where the path comes to the centre line. Of ways that
   * differ in their end alone only the longest does, so that no swag is found twice. */
  readonly mayStopSooner: boolean;
}

/** The tilt (radians, of the shape's frame) that a setting gives, undefined where it leaves it to the span. */
export const tiltOf = (shape: Shape, setting: Setting): number | undefined => {
  // Crown-first the shape runs against the template's own axis, so it is laid half a turn round.
  const round = shape.direction === 'crown-first' ? Math.PI : 0;
  switch (setting.kind) {
    case 'crown-on-centre':
      return undefined;
    case 'alignment-line':
      return round + (setting.laid === 'square' ? 0 : Math.PI / 2);
    case 'flat-on-guide':
      return round + (shape.motion.flip ? setting.flat.angle : -setting.flat.angle);
    default:
      return setting satisfies never;
  }
};

/** How far the template's long axis leans from the seam, in (−π/2, π/2]: what a person sees of a tilt. */
export const leanOf = (tilt: number): number => {
  const a = tilt - Math.PI * Math.round(tilt / Math.PI);
  return a <= -Math.PI / 2 ? a + Math.PI : a;
};
