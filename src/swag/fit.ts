/** What the search finds: a way to make the swags, laid into every side of a field, and how good it looks. */

import type { Run } from './run.ts';
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
}

/** How wide (mm) the swags of each side are, straight from start mark to stop mark. */
export const spansOf = (fit: Pick<Fit, 'sides'>): readonly number[] => fit.sides.map((s) => s.seat.span);

/** The depths (mm) that should look alike: every side's, and the corner's. */
export const depthsOf = (fit: Pick<Fit, 'sides' | 'corner'>): readonly number[] => {
  const depths = fit.sides.map((s) => s.seat.depth);
  return fit.corner ? [...depths, fit.corner.seat.depth] : depths;
};

/** Whether its runs are circles. */
export const isRound = (fit: Pick<Fit, 'sides'>): boolean =>
  fit.sides.some((s) => s.seat.centre !== undefined);
