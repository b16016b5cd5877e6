/**
 * One repeat of a run: a way to make a half swag, laid into a share of the side's length.
 *
 * With the crown on the centre the share gives the half span and so the tilt. With a fixed tilt the half span
 * is given too: what is left of the share is gap, and where the way is longer than the share it is followed
 * only to the centre line, wherever on the edge that is.
 */

import { distance, movePath, norm, type Path, type Point, turn } from '../geometry/index.ts';
import type { Wishes } from './asked.ts';
import { cutShape } from './cut.ts';
import { FIT_NOISE, fits, misses, type Result } from './misfit.ts';
import { bulgeAt, crownPose, type Pose, pastMirror, riseFor, tiltedPose } from './pose.ts';
import type { Way } from './setting.ts';
import type { Shape } from './shape.ts';

export interface Seat {
  readonly way: Way;
  /** The way's own shape, or what is left of it where it is followed to the centre line only. */
  readonly shape: Shape;
  readonly pose: Pose;
  /** mm between the swag's stop mark and its neighbour's start mark. */
  readonly gap: number;
  /** The centre mirror's angle to the start line, radians. */
  readonly mirror: number;
  /** The centre of the circle that the swags start on, in the cell's frame; undefined on a straight run. */
  readonly centre: Point | undefined;
  /** mm straight from start mark to stop mark. */
  readonly span: number;
  /** mm from the start line to the crown, square to it. */
  readonly depth: number;
}

/** A seat on a straight run, or on one half of its corner, whose mirror is the mitre. */
export const straightSeat = (
  way: Way,
  shape: Shape,
  pose: Pose,
  gap: number,
  mirror: number = UPRIGHT,
): Seat => ({
  way,
  shape,
  pose,
  gap,
  mirror,
  centre: undefined,
  span: 2 * pose.halfSpan,
  depth: pose.depth,
});

/** The crown, in the cell's frame: on the centre mirror. */
export const crownOf = ({ pose }: Pick<Seat, 'pose'>): Point => ({ x: pose.halfSpan, y: pose.depth });

/** How a swag on a circle lies to the circle's centre. */
export interface Circling {
  readonly centre: Point;
  /** mm from the centre to start and stop marks, and to the crown. */
  readonly startRadius: number;
  readonly crownRadius: number;
  /** -1 where the swags point away from the centre, 1 where towards it. */
  readonly sense: 1 | -1;
}

/** Undefined on a straight run. */
export const circlingOf = (centre: Point | undefined, crown: Point): Circling | undefined =>
  centre && {
    centre,
    startRadius: norm(centre),
    crownRadius: distance(centre, crown),
    sense: centre.y < 0 ? -1 : 1,
  };

export interface SeatRules {
  /** mm that stitching may reach from the start line. */
  readonly room: number;
  /** mm between neighbours, or as little as serves. */
  readonly gap: number | 'auto';
  /** What else the plan asks of its swags. */
  readonly wishes?: Wishes | undefined;
  /** Whether the halves over a corner are one smooth curve where they meet. */
  readonly smoothCorners?: boolean | undefined;
  /** Whether swags that are all but flat are laid whatever is asked. */
  readonly mayBeFlat?: boolean | undefined;
  /** How wide a gap (mm) may be made so that swags are as asked; undefined where it is given in figures. */
  readonly widestGap?: number | undefined;
  /** How wide (mm) swags are at most where a wider gap can keep them so; undefined where that is not asked. */
  readonly widestSpan?: number | undefined;
  /** Where those are still as asked in print (mm), so that no gap is made wider for them. */
  readonly widestPrinted?: number | undefined;
}

/** Of `rest` mm for some swags and some gaps, the least gap (mm) that leaves no swag wider than is asked. */
export const gapAsked = (
  rest: number,
  swags: number,
  gaps: number,
  least: number,
  { widestSpan, widestGap, widestPrinted }: Pick<SeatRules, 'widestSpan' | 'widestGap' | 'widestPrinted'>,
): number => {
  if (widestSpan === undefined || widestGap === undefined) return least;
  if (widestPrinted !== undefined && rest - gaps * least <= swags * widestPrinted) return least;
  return Math.max(least, Math.min(widestGap, (rest - swags * widestSpan) / gaps));
};

/**
 * Neighbours that bulge towards each other across a gap keep this much cloth between their stitching (mm).
 * Common practice, no source: two lines of stitching nearer than 1/16 in read as one thick line.
 */
export const NEIGHBOUR_ROOM = 1.5875;

const UPRIGHT = Math.PI / 2;

/** Lays a way into `share` mm of a side, or says what is in the way. */
export const seat = (way: Way, share: number, rules: SeatRules): Result<Seat> =>
  way.tilt === undefined ? seatByCrown(way, share, rules) : seatByTilt(way, way.tilt, share, rules);

const seatByCrown = (way: Way, share: number, rules: SeatRules): Result<Seat> => {
  const least = rules.gap === 'auto' ? 0 : rules.gap;
  const asked = gapAsked(share, 1, 1, least, rules);
  if (asked > least) {
    // What a bulge needs in any case may leave what is printed as it is asked.
    const bulging = seatFromGap(way, share, least, rules);
    if (bulging.ok && isPrintedAsAsked(bulging.value.span, rules)) return bulging;
  }
  return seatFromGap(way, share, asked, rules);
};

/** Whether a span (mm) is in print as wide as is asked. */
export const isPrintedAsAsked = (
  span: number,
  { widestPrinted }: Pick<SeatRules, 'widestPrinted'>,
): boolean => widestPrinted !== undefined && span <= widestPrinted;

/** With the least gap (mm) from `asked` upward that leaves room for what bulges. */
const seatFromGap = (way: Way, share: number, asked: number, rules: SeatRules): Result<Seat> => {
  const { shape } = way;
  const least = rules.gap === 'auto' ? 0 : rules.gap;
  let gap = asked;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const halfSpan = (share - gap) / 2;
    if (!(halfSpan > 0)) return misses({ kind: 'no-length', by: -2 * halfSpan });
    if (!(halfSpan <= shape.chord)) return misses({ kind: 'too-short', by: 2 * (halfSpan - shape.chord) });
    const bulge = bulgeAt(shape, riseFor(shape, halfSpan));
    const wanted = gapFor({ bulge }, rules.gap);
    if (wanted <= gap + FIT_NOISE) {
      // Made wider for what is asked, a gap as wide as a swag is none; a bulge may need one.
      if (gap === asked && asked > least && gap >= 2 * halfSpan)
        return misses({ kind: 'too-wide-gap', by: gap - 2 * halfSpan });
      return check(straightSeat(way, shape, crownPose(shape, halfSpan)!, gap), rules);
    }
    if (rules.gap !== 'auto') return misses({ kind: 'bulges', by: wanted - gap, bulge });
    // A wider gap makes a steeper tilt, and that never a smaller bulge: from below this finds the least gap.
    gap = wanted;
  }
  return misses({ kind: 'no-length', by: gap });
};

/** The gap settles geometrically; after this many rounds it does not settle at all. */
export const MOST_ROUNDS = 200;

/** Two halves that touch across their gap would be one line (mm). */
const APART = 1e-3;

/**
 * The least gap (mm) that a bulge past the start (mm) leaves possible: a gap that is made to suit leaves some
 * cloth between the neighbours, one that a person asked for need only keep them from touching.
 */
export const gapFor = ({ bulge }: Pick<Pose, 'bulge'>, gap: number | 'auto' = 'auto'): number =>
  bulge > FIT_NOISE ? 2 * bulge + (gap === 'auto' ? NEIGHBOUR_ROOM : APART) : 0;

/** What a gap (mm) leaves a bulge: the other way round. */
export const bulgeFor = (gap: number): number => Math.max(0, (gap - APART) / 2);

const seatByTilt = (way: Way, tilt: number, share: number, rules: SeatRules): Result<Seat> => {
  const least = rules.gap === 'auto' ? 0 : rules.gap;
  const whole = tiltedPose(way.shape, tilt);
  const narrowest = Math.max(least, gapFor(whole, rules.gap));
  if (whole.halfSpan > 0 && 2 * whole.halfSpan + narrowest <= share + FIT_NOISE) {
    const gap = Math.max(0, share - 2 * whole.halfSpan);
    if (!keepsGap(gap, rules)) return misses({ kind: 'gap-left', by: gap - least, gap });
    if (gap >= 2 * whole.halfSpan) return misses({ kind: 'too-wide-gap', by: gap - 2 * whole.halfSpan });
    return check(straightSeat(way, way.shape, whole, gap), rules);
  }
  if (!way.mayStopSooner && !(whole.halfSpan > 0))
    return misses({ kind: 'past-centre', by: Math.max(FIT_NOISE, -whole.halfSpan) });
  if (!way.mayStopSooner) return misses({ kind: 'no-length', by: 2 * whole.halfSpan + narrowest - share });
  // What is left out of the path may be what bulges, so the gap is worked out for what is left of it.
  let gap = least;
  for (let round = 0; round < TILT_ROUNDS; round++) {
    const halfSpan = (share - gap) / 2;
    if (!(halfSpan > 0)) return misses({ kind: 'no-length', by: -2 * halfSpan });
    const shape = shapeToLine(way, halfSpan);
    if (!shape) return misses({ kind: 'past-centre', by: Math.max(FIT_NOISE, whole.halfSpan - halfSpan) });
    const pose = tiltedPose(shape, tilt);
    const wanted = gapFor(pose, rules.gap);
    if (wanted <= gap + FIT_NOISE)
      return check(straightSeat(way, shape, pose, Math.max(0, share - 2 * pose.halfSpan)), rules);
    if (rules.gap !== 'auto') return misses({ kind: 'bulges', by: wanted - gap, bulge: pose.bulge });
    gap = wanted;
  }
  return misses({ kind: 'no-length', by: gap });
};

/** A gap (mm) that a plan gives in figures is kept: what is left over of a side is not added to it. */
export const keepsGap = (gap: number, { gap: asked }: Pick<SeatRules, 'gap'>): boolean =>
  asked === 'auto' || Math.abs(gap - asked) <= GAP_KEPT;

/** No one sees a hundredth of a millimetre, and written figures have six digits. */
const GAP_KEPT = 1e-2;

/** A wider gap leaves less of the path and never a larger bulge: the second gap serves, the third round says so. */
const TILT_ROUNDS = 3;

/** The shape followed at its tilt until it first comes to the line `at` mm from its start, square to the start line. */
const shapeToLine = ({ shape, laid }: Way, at: number): Shape | undefined =>
  laid && cutShape(shape, laid, { x: at, y: 0 }, { x: 0, y: 1 });

const check = (s: Seat, rules: SeatRules): Result<Seat> => {
  const { pose, shape } = s;
  if (!(pose.depth > FIT_NOISE)) return misses({ kind: 'dips', by: Math.max(FIT_NOISE, -pose.depth) });
  if (pose.dip > FIT_NOISE) return misses({ kind: 'dips', by: pose.dip });
  const past = pastMirror(shape, pose, UPRIGHT);
  if (past > FIT_NOISE) return misses({ kind: 'past-centre', by: past });
  if (pose.top > rules.room + FIT_NOISE) return misses({ kind: 'too-deep', by: pose.top - rules.room });
  return fits(s);
};

/** The stretch of the needle's way that a seat stitches, laid in its cell: start at the origin. */
export const laidPath = (s: Seat): Path => movePath(s.shape.path, turn(s.pose.tilt));
