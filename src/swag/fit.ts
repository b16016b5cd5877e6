/** What the search finds: a way to make the swags, laid into every side of a field, and how good it looks. */

import type { Run } from './field.ts';
import type { RingFit } from './ring.ts';
import type { Seat } from './seat.ts';
import type { Way } from './setting.ts';

export interface SideFit {
  readonly run: Run;
  readonly repeats: number;
  readonly seat: Seat;
}

export interface CornerFit {
  /** The corner's half swag, its crown on the mitre. */
  readonly seat: Seat;
  /** mm from the start line's corner to the corner swag's start mark. */
  readonly toCorner: number;
  /** mm from the start line's corner to the corner swag's join mirror: half a gap more. */
  readonly offset: number;
}

export interface Fit {
  readonly way: Way;
  readonly sides: readonly SideFit[];
  readonly corner: CornerFit | undefined;
  /** How a frame closes round its motif: it has one side, which is bent by the same angle at every join. */
  readonly ring?: RingFit;
}

/** How wide (mm) the swags of each side are, straight from start mark to stop mark. */
export const spansOf = (fit: Pick<Fit, 'sides' | 'ring'>): readonly number[] =>
  fit.ring ? [fit.ring.span] : fit.sides.map((s) => 2 * s.seat.pose.halfSpan);

/** The depths (mm) that should look alike: every side's, and the corner's. */
export const depthsOf = (fit: Pick<Fit, 'sides' | 'corner' | 'ring'>): readonly number[] => {
  if (fit.ring) return [fit.ring.depth];
  const depths = fit.sides.map((s) => s.seat.pose.depth);
  return fit.corner ? [...depths, fit.corner.seat.pose.depth] : depths;
};

export const spreadOf = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
