/**
 * Frames: n swags closed round a circle. The same cell as on a border, with another angle between its mirrors.
 *
 * The join mirror stands upright half a gap before the start, the centre mirror leans by π/n from it, and both
 * go through the frame's centre. With the crown on the centre mirror, h and d as always and g the gap, the
 * start lies (h + g/2)/tan(π/n) ∓ d from the centre along the join mirror (− where the swags point outward, +
 * where they point inward). Of the rises that this leaves, a frame takes those at which it closes round the
 * motif as tightly as it may: the stitching's nearest point lies just on the circle to be kept clear.
 */

import { farthestFrom, movePath, type Nearness, nearnessOf, type Point, turn } from '../geometry/index.ts';
import { cutShape } from './cut.ts';
import { FIT_NOISE, fits, type Misfit, misses, type Result } from './misfit.ts';
import { type Pose, pastMirror, tiltedPose } from './pose.ts';
import { gapFor, type Seat } from './seat.ts';
import type { Way } from './setting.ts';
import type { Shape } from './shape.ts';

export interface Ring {
  readonly count: number;
  /** mm from the frame's centre to the circle that is kept clear. */
  readonly clear: number;
  /** mm from the centre that nothing may pass; Infinity where the plan sets no limit. */
  readonly within: number;
  /** The swags leave the inner circle and point outward, or the outer one and point inward. */
  readonly from: 'inner' | 'outer';
  /** mm that outward channels reach beyond the stitching. */
  readonly outward: number;
  readonly gap: number | 'auto';
}

export interface RingFit {
  readonly way: Way;
  readonly ring: Ring;
  readonly seat: Seat;
  /** The centre mirror's angle to the start line, radians. */
  readonly mirror: number;
  /** The frame's centre, in the cell's frame: half a gap back from the start, below it or above it. */
  readonly centre: Point;
  /** mm from the centre to the nearest and to the farthest stitching. */
  readonly nearest: number;
  readonly farthest: number;
}

export interface RingTried {
  readonly fits: readonly RingFit[];
  readonly misfit: Misfit | undefined;
}

/** All frames of one way: none, one, or a few poses that close just as tightly. */
export const fitRing = (way: Way, ring: Ring): RingTried => {
  const near = nearnessOf(way.shape.path.pieces);
  return way.tilt === undefined ? ringByCrown(way, ring, near) : ringByTilt(way, way.tilt, ring);
};

/** Half of a swag's share of the full turn: the angle between its mirrors. */
const wedge = (ring: Ring): number => Math.PI / ring.count;

/** mm from the centre that stitching keeps: the outward channels of swags that point inward lie towards the motif. */
const keptClear = (ring: Ring): number => ring.clear + (ring.from === 'outer' ? ring.outward : 0);

const mirrorOf = (ring: Ring): number =>
  ring.from === 'inner' ? Math.PI / 2 - wedge(ring) : Math.PI / 2 + wedge(ring);

/** The centre for which a pose's crown lies on the centre mirror. */
const centreFor = (pose: Pick<Pose, 'halfSpan' | 'depth'>, ring: Ring, gap: number): Point => {
  const along = (pose.halfSpan + gap / 2) / Math.tan(wedge(ring));
  return { x: -gap / 2, y: ring.from === 'inner' ? pose.depth - along : pose.depth + along };
};

/** Rises are looked at this closely for where the frame touches the clear circle (radians). */
const RISE_STEP = Math.PI / 720;
const BISECTIONS = 60;

const ringByCrown = (way: Way, ring: Ring, near: Nearness): RingTried => {
  const { shape } = way;
  const found: RingFit[] = [];
  let nearestMiss: Misfit | undefined;
  const note = (result: Result<RingFit>): void => {
    if (result.ok) found.push(result.value);
    else if (!nearestMiss || result.misfit.by < nearestMiss.by) nearestMiss = result.misfit;
  };
  // How far the stitching keeps from the clear circle when it is laid at a rise; negative when it is inside it.
  const spare = (rise: number): number => {
    const { gap, centre } = gapAt(way, ring, rise);
    if (!(gap >= 0)) return Number.NaN;
    return distanceFrom(near, centre, rise - shape.chordAngle) - keptClear(ring);
  };
  let before = RISE_STEP;
  let spareBefore = spare(before);
  let most = spareBefore;
  for (let rise = 2 * RISE_STEP; rise < Math.PI / 2; rise += RISE_STEP) {
    const s = spare(rise);
    if (!(s <= most)) most = s;
    if (spareBefore >= 0 !== s >= 0 && Number.isFinite(spareBefore) && Number.isFinite(s)) {
      note(layRing(way, ring, tightRise(spare, before, rise)));
    }
    before = rise;
    spareBefore = s;
  }
  if (found.length > 0) return { fits: found, misfit: undefined };
  // Even laid flattest, the swags do not reach round the motif; or even laid steepest, they stand off from it.
  if (!nearestMiss)
    nearestMiss = most < 0 ? { kind: 'too-short', by: -most } : { kind: 'past-centre', by: most };
  return { fits: [], misfit: nearestMiss };
};

/** Bisects for the rise at which nothing is spare, ending on the side where the motif is clear. */
const tightRise = (spare: (rise: number) => number, a: number, b: number): number => {
  let [clear, inside] = spare(a) >= 0 ? [a, b] : [b, a];
  for (let i = 0; i < BISECTIONS; i++) {
    const mid = (clear + inside) / 2;
    if (spare(mid) >= 0) clear = mid;
    else inside = mid;
  }
  return clear;
};

/** The gap of a pose, and the frame's centre with it. */
const gapAt = (way: Way, ring: Ring, rise: number): { gap: number; centre: Point; pose: Pose } => {
  const pose = tiltedPose(way.shape, rise - way.shape.chordAngle);
  const gap = ring.gap === 'auto' ? gapFor(pose) : ring.gap;
  return { gap, centre: centreFor(pose, ring, gap), pose };
};

/** The distance from a point of the cell's frame to the shape laid at a tilt. */
const distanceFrom = (near: Nearness, at: Point, tilt: number): number => {
  const c = Math.cos(tilt);
  const s = Math.sin(tilt);
  return near.distance({ x: c * at.x + s * at.y, y: c * at.y - s * at.x });
};

const layRing = (way: Way, ring: Ring, rise: number): Result<RingFit> => {
  const { gap, centre, pose } = gapAt(way, ring, rise);
  return checkRing(way, way.shape, ring, pose, gap, centre);
};

const checkRing = (
  way: Way,
  shape: Shape,
  ring: Ring,
  pose: Pose,
  gap: number,
  centre: Point,
): Result<RingFit> => {
  const wanted = gapFor(pose);
  if (wanted > gap + FIT_NOISE) return misses({ kind: 'bulges', by: wanted - gap, bulge: pose.bulge });
  if (gap >= 2 * pose.halfSpan) return misses({ kind: 'too-wide-gap', by: gap - 2 * pose.halfSpan });
  // The motif lies below an outward swag's start, and above an inward one's.
  const beyond = ring.from === 'inner' ? centre.y : -centre.y;
  if (!(beyond < -FIT_NOISE)) return misses({ kind: 'past-centre', by: Math.max(FIT_NOISE, beyond) });
  if (!(pose.depth > FIT_NOISE)) return misses({ kind: 'dips', by: Math.max(FIT_NOISE, -pose.depth) });
  const past = pastMirror(shape, pose, mirrorOf(ring));
  if (past > FIT_NOISE) return misses({ kind: 'past-centre', by: past });
  const laid = movePath(shape.path, turn(pose.tilt));
  const nearest = nearnessOf(laid.pieces).distance(centre);
  if (nearest < keptClear(ring) - FIT_NOISE) return misses({ kind: 'dips', by: keptClear(ring) - nearest });
  const farthest = farthestFrom(laid, centre);
  // Outward channels lie beyond the swags: outside an outward frame, towards the motif in an inward one.
  const out = farthest + (ring.from === 'inner' ? ring.outward : 0);
  if (out > ring.within + FIT_NOISE) return misses({ kind: 'too-deep', by: out - ring.within });
  return fits({
    way,
    ring,
    seat: { way, shape, pose, gap },
    mirror: mirrorOf(ring),
    centre,
    nearest,
    farthest,
  });
};

/**
 * At a fixed tilt the frame's size follows from the clear circle alone. The way is followed to the centre
 * mirror, wherever on the edge that is; where it ends before, the rest of the turn is gap.
 */
const ringByTilt = (way: Way, tilt: number, ring: Ring): RingTried => {
  const { shape } = way;
  const near = nearnessOf(shape.path.pieces);
  const sense = ring.from === 'inner' ? -1 : 1;
  // The farther the centre, the more is spare: bisect for the centre at which nothing is.
  const whole = tiltedPose(shape, tilt);
  const gapFrom = (distance: number): number => {
    const toMirror = (distance - sense * whole.depth) * Math.tan(wedge(ring));
    return Math.max(0, 2 * (toMirror - whole.halfSpan));
  };
  const centreAt = (distance: number): Point => ({ x: -gapFrom(distance) / 2, y: sense * distance });
  const spare = (distance: number): number => distanceFrom(near, centreAt(distance), tilt) - keptClear(ring);
  const reach = ring.clear + 2 * farthestFrom(shape.path, { x: 0, y: 0 });
  let inside = 0;
  let away = reach;
  if (!(spare(away) >= 0)) return { fits: [], misfit: { kind: 'dips', by: -spare(away) } };
  for (let i = 0; i < BISECTIONS; i++) {
    const mid = (inside + away) / 2;
    if (spare(mid) >= 0) away = mid;
    else inside = mid;
  }
  const centre = centreAt(away);
  const angle = mirrorOf(ring);
  const gap = gapFrom(away);
  const cut = gap > 0 ? undefined : cutShape(shape, tilt, centre, { x: Math.cos(angle), y: Math.sin(angle) });
  const used = cut ?? shape;
  const tried = checkRing(way, used, ring, tiltedPose(used, tilt), gap, centre);
  return tried.ok ? { fits: [tried.value], misfit: undefined } : { fits: [], misfit: tried.misfit };
};
