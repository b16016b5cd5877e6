/** One half of a swag over a corner: its crown on the mitre, its other half on the next side. */

import { gapBefore, linesBeside } from './beside.ts';
import type { CorneredField, Field } from './field.ts';
import type { CornerFit, SideFit } from './fit.ts';
import { FIT_NOISE, fits, misses, type Result } from './misfit.ts';
import { bodyOf, leastNeck, neckOf } from './neck.ts';
import { bulgeAt, type Pose, pastMirror, reachAt } from './pose.ts';
import { type Seat, type SeatRules, straightSeat } from './seat.ts';
import type { Way } from './setting.ts';
import type { Shape } from './shape.ts';

/** How a corner's half swag lies to the side that it ends. */
export interface Lay {
  readonly kind: CornerFit['kind'];
  /** Its start mark lies so many half spans and depths from the start line's corner. */
  readonly ofSpan: number;
  readonly ofDepth: number;
  /** Its own start line is turned back from the side's by this angle (radians), so that its depth leads away from the corner. */
  readonly turned: number;
  /** The mitre's angle to its own start line, radians. */
  readonly mirror: number;
}

/** −1 where the depth of a corner swag that keeps to both sides brings its start nearer to the corner, 1 where farther off. */
export const depthSign = ({ from }: Pick<Field, 'from'>): number => (from === 'inner' ? -1 : 1);

/**
 * Turning a corner, each half keeps to its own side, and from the inner seam its depth brings the start nearer to the
 * corner. Across it, the swag stands on its chord as on a side: both ends as far from the corner, the chord square to
 * the mitre.
 */
export const layOf = ({ corners, from, mitre }: CorneredField): Lay => {
  if (corners !== 'across')
    return { kind: 'turn', ofSpan: 1, ofDepth: depthSign({ from }), turned: 0, mirror: mitre };
  // Half the angle between the two start lines.
  const half = Math.PI - mitre;
  const upright = Math.PI / 2;
  return { kind: 'across', ofSpan: 1 / Math.sin(half), ofDepth: 0, turned: upright - half, mirror: upright };
};

/** mm from the start line's corner to a corner swag's start mark; negative where that lies beyond the corner. */
export const toCornerOf = (field: CorneredField, pose: Pick<Pose, 'halfSpan' | 'depth'>): number => {
  const { ofSpan, ofDepth } = layOf(field);
  return ofSpan * pose.halfSpan + ofDepth * pose.depth;
};

/** Whether a half swag may lie over a corner: between its join and the mitre, within the margins, its two halves apart. */
export const checkCorner = (
  way: Way,
  pose: Pose,
  gap: number,
  field: CorneredField,
  rules: SeatRules,
): Result<Seat> => {
  const { shape } = way;
  const { kind, mirror, turned } = layOf(field);
  const rise = pose.tilt + shape.chordAngle;
  for (const line of linesBeside(field)) {
    const wanted = gapBefore(line, shape, rise, rules.gap);
    if (wanted > gap + FIT_NOISE)
      return misses({ kind: 'bulges', by: wanted - gap, bulge: bulgeAt(shape, rise, line) });
  }
  if (!(pose.depth > FIT_NOISE)) return misses({ kind: 'dips', by: Math.max(FIT_NOISE, -pose.depth) });
  if (pose.dip > FIT_NOISE) return misses({ kind: 'dips', by: pose.dip });
  const toCorner = toCornerOf(field, pose);
  if (toCorner < -FIT_NOISE) return misses({ kind: 'beyond-corner', by: -toCorner });
  const past = pastMirror(shape, pose, mirror);
  if (past > FIT_NOISE) return misses({ kind: 'past-centre', by: past });
  const top = reachAt(shape, rise, turned);
  if (top > rules.room + FIT_NOISE) return misses({ kind: 'too-deep', by: top - rules.room });
  const seated = straightSeat(way, shape, pose, gap, mirror);
  // Between upright mirrors two halves are as far apart as on a side.
  if (kind === 'across') return fits(seated);
  const neck = neckOf(bodyOf(shape), pose, mirror);
  const least = leastNeck(shape);
  if (!(neck >= least - FIT_NOISE)) return misses({ kind: 'narrow-neck', by: least - neck, neck });
  return fits(seated);
};

/**
 * How far (mm) two sides that meet at a corner may lean over the same cloth; 0 or less where they cannot. Only
 * from the outer seam do they lean towards each other: each begins `toCorner` from the corner, and what reaches
 * no deeper than that keeps clear of the other. Where a swag stands across the corner, each keeps to its own side of
 * the mitre beyond that one.
 */
export const overNeighbour = (sides: readonly SideFit[], toCorner: number, field: Field): number =>
  field.corners === 'across'
    ? Math.max(
        ...sides.map(({ seat: { shape, pose, gap } }) =>
          overMitre(shape, pose.tilt + shape.chordAngle, toCorner + gap, field),
        ),
      )
    : leansOver(
        sides.map((side) => side.seat.pose.top),
        toCorner,
        field,
      );

/** How far (mm) a shape that rises so (radians) from `along` mm beside the corner of the start lines passes the mitre; less than 0 where it does not. */
export const overMitre = (
  shape: Shape,
  rise: number,
  along: number,
  { mitre }: Pick<CorneredField, 'mitre'>,
): number => bulgeAt(shape, rise, Math.PI - mitre) - along * Math.sin(mitre);

/** The same where a swag turns the corner, for how far (mm) each side reaches from its start line. */
export const leansOver = (
  tops: readonly number[],
  toCorner: number,
  { from }: Pick<CorneredField, 'from'>,
): number =>
  from === 'inner'
    ? 0
    : Math.max(...tops.map((top, i) => Math.min(top, tops[(i + 1) % tops.length]!) - toCorner));
