/**
 * A row on the marks of another. Its swags are as wide as that row's and its gaps are that row's gaps, so its half span
 * h is given, and of a template with the chord C its depth is √(C² − h²). At a corner the start marks are shared and
 * both rows' crowns lie on the mitre: a row that starts `at` mm beyond, t mm along from the corner of the first one's
 * start lines, has h − d = t + at from the inner seam and h + d = t − at from the outer one, with h² + d² = C².
 *
 * Where a fixed setting gives the tilt, the edge is followed until it comes to the centre line, or to the mitre.
 */

import { compose, polar, shift } from '../geometry/index.ts';
import { besideNeighbour } from './beside.ts';
import { checkCorner, depthSign, overNeighbour } from './corner.ts';
import { cutShape } from './cut.ts';
import type { CorneredField, Field } from './field.ts';
import { ALIKE, type CornerFit, cornerSwag, type Fit, type SideFit } from './fit.ts';
import { FIT_NOISE, fits, type Misfit, misses, type Result } from './misfit.ts';
import { crownPose, type Pose, tiltedPose } from './pose.ts';
import { nearRows } from './rows-apart.ts';
import { gapFor, type Seat, type SeatRules, seat } from './seat.ts';
import type { Way } from './setting.ts';

/** What a row must keep to that starts `at` mm beyond another. */
export interface BeyondRules extends SeatRules {
  readonly at: number;
  /** mm between the two rows' stitching. */
  readonly apart: number;
}

/** The band as a row sees it whose start line lies `at` mm beyond another's; its marks are that one's. */
export const fieldBeyond = (field: Field, at: number): Field => {
  const moved = {
    startMargin: field.startMargin + at,
    marksAt: field.marksAt - at,
    room: field.room - at,
    lines: [
      ...field.lines.map((line) => ({ ...line, level: line.level - at })),
      ...(at > 0 ? [{ role: 'startLine' as const, name: 'start line 2', level: 0 }] : []),
    ],
    across: { from: field.across.from - at, to: field.across.to - at },
    near: 0,
    far: field.far - at,
  };
  const runOf = (run: Field['runs'][number]): Field['runs'][number] => ({
    ...run,
    place: compose(run.place, shift(0, at)),
    alone: compose(run.alone, shift(0, at)),
  });
  return field.corners === 'none'
    ? { ...field, ...moved, runs: [runOf(field.runs[0])] }
    : { ...field, ...moved, runs: field.runs.map(runOf) };
};

/** The row that a way makes on the marks of a fit; or what is in the way. */
export const rowBeyond = (way: Way, near: Fit, field: Field, rules: BeyondRules): Result<Fit> => {
  const sides: SideFit[] = [];
  for (let i = 0; i < near.sides.length; i++) {
    const side = near.sides[i]!;
    const tried = onMarks(way, side.seat, field, rules);
    if (!tried.ok) return tried;
    sides.push({ run: field.runs[i]!, repeats: side.repeats, seat: tried.value });
  }
  const below = cornerSwag(near);
  if (!below) {
    const misfit = overMitre(near, sides, field, rules);
    return misfit ? misses(misfit) : fits({ way, sides, corner: near.corner, pattern: ALIKE });
  }
  if (field.corners === 'none') throw new Error('A corner on a run without one');
  const corner = cornerOnMarks(way, below, sides[0]!.seat.depth, field, rules);
  if (!corner.ok) return corner;
  const over = overNeighbour(sides, cornerReach(below.toCorner, field), field);
  if (over > FIT_NOISE) return misses({ kind: 'beyond-corner', by: over });
  return fits({ way, sides, corner: corner.value, pattern: ALIKE });
};

/** mm from the corner of a row's own start line to its corner swag's start. */
export const cornerReach = (toCorner: number, field: CorneredField): number =>
  toCorner + depthSign(field) * field.marksAt;

const onMarks = (way: Way, below: Seat, field: Field, rules: BeyondRules): Result<Seat> => {
  const tried = seat(way, below.span + below.gap, { ...rules, gap: below.gap });
  if (!tried.ok) return tried;
  const wanted = gapFor(tried.value.pose, rules.gap);
  if (wanted > below.gap + FIT_NOISE)
    return misses({ kind: 'bulges', by: wanted - below.gap, bulge: tried.value.pose.bulge });
  const beside = besideNeighbour(tried.value, field);
  if (beside) return misses(beside);
  return apartFrom(below, tried.value, rules);
};

const apartFrom = (below: Seat, seated: Seat, { at, apart }: BeyondRules): Result<Seat> => {
  const by = nearRows(below, seated, at, apart);
  return by > 0 ? misses({ kind: 'rows-near', by }) : fits(seated);
};

/** From the outer seam sides that meet lean over the same cloth: there a row must keep off the next side's other one too. */
const overMitre = (
  near: Fit,
  sides: readonly SideFit[],
  { corners, from }: Field,
  { at, apart }: BeyondRules,
): Misfit | undefined => {
  if (corners !== 'meet' || from !== 'outer') return undefined;
  for (let i = 0; i < sides.length; i++)
    for (const k of [(i + 1) % sides.length, (i + sides.length - 1) % sides.length]) {
      const by = nearRows(near.sides[i]!.seat, sides[k]!.seat, at, apart);
      if (by > 0) return { kind: 'rows-near', by };
    }
  return undefined;
};

/** The corner's half on the marks of the first row's; of two that serve the one that is more nearly `deep` mm. */
const cornerOnMarks = (
  way: Way,
  below: CornerFit,
  deep: number,
  field: CorneredField,
  rules: BeyondRules,
): Result<CornerFit> => {
  const reach = cornerReach(below.toCorner, field);
  let nearest: Misfit | undefined;
  let best: Seat | undefined;
  for (const { made, pose } of cornerPoses(way, reach, field)) {
    const tried = checkCorner(made, pose, below.seat.gap, field, rules);
    const kept = tried.ok ? apartFrom(below.seat, tried.value, rules) : tried;
    if (!kept.ok) nearest ??= kept.misfit;
    else if (!best || Math.abs(kept.value.depth - deep) < Math.abs(best.depth - deep)) best = kept.value;
  }
  if (best) return fits({ ...below, seat: best });
  return misses(nearest ?? { kind: 'too-short', by: Math.abs(reach) / Math.SQRT2 - way.shape.chord });
};

/** The poses that bring a crown to the mitre, which passes the row's own start line `reach` mm from the start mark. */
const cornerPoses = (
  way: Way,
  reach: number,
  field: CorneredField,
): readonly { readonly made: Way; readonly pose: Pose }[] => {
  const { shape, tilt, laid } = way;
  if (tilt === undefined)
    return cornerHalfSpans(shape.chord, reach, field).flatMap((h) => {
      const pose = crownPose(shape, h);
      return pose ? [{ made: way, pose }] : [];
    });
  const whole = tiltedPose(shape, tilt);
  if (Math.abs(whole.halfSpan + depthSign(field) * whole.depth - reach) <= FIT_NOISE)
    return [{ made: way, pose: whole }];
  const cut = way.mayStopSooner && laid && cutShape(shape, laid, { x: reach, y: 0 }, polar(field.mitre));
  return cut ? [{ made: { ...way, shape: cut }, pose: tiltedPose(cut, tilt) }] : [];
};

/** The half spans h > 0 with h² + d² = C² and h ∓ d = reach, d > 0 (− from the inner seam, + from the outer). */
export const cornerHalfSpans = (chord: number, reach: number, field: CorneredField): readonly number[] => {
  const square = 2 * chord * chord - reach * reach;
  if (!(square >= 0)) return [];
  const root = Math.sqrt(square);
  const both = field.from === 'inner' ? [(reach + root) / 2] : [(reach + root) / 2, (reach - root) / 2];
  return both.filter((h) => h > 0 && depthSign(field) * (reach - h) > 0);
};
