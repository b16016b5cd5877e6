/** One half of a swag that turns a corner: its crown on the mitre, its other half on the next side. */

import type { CorneredField, Field } from './field.ts';
import type { SideFit } from './fit.ts';
import { FIT_NOISE, fits, misses, type Result } from './misfit.ts';
import { bodyOf, leastNeck, neckOf } from './neck.ts';
import { type Pose, pastMirror } from './pose.ts';
import { gapFor, type Seat, type SeatRules, straightSeat } from './seat.ts';
import type { Way } from './setting.ts';

/** −1 where a corner swag's depth brings its start nearer to the corner, 1 where farther off. */
export const depthSign = (field: Field): number => (field.from === 'inner' ? -1 : 1);

/** mm from the start line's corner to a corner swag's start mark; negative where that lies beyond the corner. */
export const toCornerOf = (field: Field, { halfSpan, depth }: Pick<Pose, 'halfSpan' | 'depth'>): number =>
  halfSpan + depthSign(field) * depth;

/** Whether a half swag may turn a corner: between its join and the mitre, within the margins, its two halves apart. */
export const checkCorner = (
  way: Way,
  pose: Pose,
  gap: number,
  field: CorneredField,
  rules: SeatRules,
): Result<Seat> => {
  const { shape } = way;
  const wanted = gapFor(pose, rules.gap);
  if (wanted > gap + FIT_NOISE) return misses({ kind: 'bulges', by: wanted - gap, bulge: pose.bulge });
  if (!(pose.depth > FIT_NOISE)) return misses({ kind: 'dips', by: Math.max(FIT_NOISE, -pose.depth) });
  if (pose.dip > FIT_NOISE) return misses({ kind: 'dips', by: pose.dip });
  const toCorner = toCornerOf(field, pose);
  if (toCorner < -FIT_NOISE) return misses({ kind: 'beyond-corner', by: -toCorner });
  const past = pastMirror(shape, pose, field.mitre);
  if (past > FIT_NOISE) return misses({ kind: 'past-centre', by: past });
  if (pose.top > rules.room + FIT_NOISE) return misses({ kind: 'too-deep', by: pose.top - rules.room });
  const neck = neckOf(bodyOf(shape), pose, field.mitre);
  const least = leastNeck(shape);
  if (!(neck >= least - FIT_NOISE)) return misses({ kind: 'narrow-neck', by: least - neck, neck });
  return fits(straightSeat(way, shape, pose, gap, field.mitre));
};

/**
 * How far (mm) two sides that meet at a corner may lean over the same cloth; 0 or less where they cannot. Only
 * from the outer seam do they lean towards each other: each begins `toCorner` from the corner, and what reaches
 * no deeper than that keeps clear of the other.
 */
export const overNeighbour = (sides: readonly SideFit[], toCorner: number, { from }: Field): number =>
  from === 'inner'
    ? 0
    : Math.max(
        ...sides.map((side, i) => {
          const next = sides[(i + 1) % sides.length]!;
          return Math.min(side.seat.pose.top, next.seat.pose.top) - toCorner;
        }),
      );
