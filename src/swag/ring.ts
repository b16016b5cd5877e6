/**
 * Frames: n swags closed round a circle. The same cell as on a border, with another angle between its mirrors.
 *
 * The join mirror stands upright half a gap before the start, the centre mirror leans by w = π/n from it, and
 * both go through the frame's centre. With the crown (h, d) on the centre mirror and the gap g, the start lies
 * (h + g/2)/tan w ∓ d from the centre along the join mirror (− where the swags point outward, + where they
 * point inward). Of the rises that this leaves, a frame takes those at which it closes round the motif as
 * tightly as it may: the stitching's nearest point, or that of its channels, lies just on the circle to be kept
 * clear. On a border an inward channel ends at the seam that the swags leave from; a circle is only thought of,
 * and a channel that broke off there would end nowhere, so room is made for it.
 *
 * Swags that point outward have their crowns farther from the centre than their starts, those that point
 * inward nearer. Both are equally far where start, crown and centre make an isosceles triangle of a regular
 * polygon of 2n sides; that is where the rises begin that are looked at.
 */

import {
  compose,
  distance,
  farthestFrom,
  meetingsWithLine,
  movePath,
  type Nearness,
  nearnessOf,
  norm,
  ORIGIN,
  PIVOT_LIMIT,
  type Point,
  polar,
  shift,
  subtract,
  TURN,
  turn,
} from '../geometry/index.ts';
import { FEWEST_IN_FRAME, type Frame, MOST_IN_FRAME } from '../plan/index.ts';
import { cutShape } from './cut.ts';
import type { BandLine, Field } from './field.ts';
import { ALIKE, type Fit, WITHOUT_SWAG } from './fit.ts';
import { FIT_NOISE, fits, type Misfit, misses, type Result } from './misfit.ts';
import { type Pose, pastMirror, tiltedPose } from './pose.ts';
import type { Run } from './run.ts';
import type { Miss } from './runs.ts';
import { gapFor, keepsGap, type Seat } from './seat.ts';
import type { Way } from './setting.ts';
import { reachOf, type Shape } from './shape.ts';

/** What a plan asks of a round frame. */
export interface Ring {
  readonly count: number;
  /** mm from the frame's centre to the motif's edge. */
  readonly motif: number;
  /** mm from the frame's centre to the circle that is kept clear. */
  readonly clear: number;
  /** mm from the centre that nothing may pass; Infinity where the plan sets no limit. */
  readonly within: number;
  /** The swags leave the inner circle and point outward, or the outer one and point inward. */
  readonly from: 'inner' | 'outer';
  /** mm that outward channels reach beyond the stitching, and inward ones on its other side. */
  readonly outward: number;
  readonly inward: number;
  readonly gap: number | 'auto';
  /** How wide (mm) swags are at most where a wider gap can keep them so, and how wide that may be; undefined where it is not asked. */
  readonly widestSpan: number | undefined;
  readonly widestGap: number | undefined;
}

/** What a plan asks for, for each count that it leaves open. `outward` and `inward` are the channels' reaches, mm. */
export const ringsOf = (
  layout: Frame,
  outward: number,
  inward: number,
  { gap, widestSpan, widestGap }: Pick<Ring, 'gap' | 'widestSpan' | 'widestGap'>,
): readonly Ring[] => {
  const [fewest, most] = layout.count ? [layout.count, layout.count] : [FEWEST_IN_FRAME, MOST_IN_FRAME];
  return Array.from({ length: most - fewest + 1 }, (_, i) => ({
    count: fewest + i,
    motif: layout.around / 2,
    clear: layout.around / 2 + layout.clearance,
    within: layout.within === undefined ? Number.POSITIVE_INFINITY : layout.within / 2,
    from: layout.from,
    outward,
    inward,
    gap,
    widestSpan,
    widestGap,
  }));
};

interface RingSeat {
  readonly seat: Seat;
  /** The band that it makes round its motif. */
  readonly field: Field;
}

/** Half of a swag's share of the full turn: the angle between its mirrors. */
const wedgeOf = ({ count }: Pick<Ring, 'count'>): number => Math.PI / count;

/** All frames of one way: for each count none, one, or a few poses that close just as tightly. */
export const fitRings = (way: Way, rings: readonly Ring[]) => {
  const near = nearnessOf(way.shape.path.pieces);
  const fits: { readonly field: Field; readonly fit: Fit }[] = [];
  const misses: Miss[] = [];
  for (const ring of rings) {
    const tried =
      way.tilt === undefined
        ? [...ringByCrown(way, ring, near), ...ringBySpan(way, ring, near)]
        : [ringByTilt(way, way.tilt, ring, near)];
    let misfit: Misfit | undefined;
    let isFound = false;
    for (const result of tried) {
      if (result.ok) {
        const { seat, field } = result.value;
        const sides = [{ run: field.runs[0]!, repeats: ring.count, seat }];
        fits.push({ field, fit: { way, sides, corner: WITHOUT_SWAG, pattern: ALIKE } });
        isFound = true;
      } else if (!misfit || result.misfit.by < misfit.by) misfit = result.misfit;
    }
    if (misfit && !isFound)
      misses.push({ way, run: ringRun(ring.count, 1 / ring.clear), repeats: ring.count, misfit });
  }
  return { fits, misses: () => misses, tried: rings.length };
};

/** mm that channels reach from the stitching towards the motif, and away from it. */
const towardsMotif = ({ from, outward, inward }: Ring): number => (from === 'inner' ? inward : outward);
const awayFromMotif = ({ from, outward, inward }: Ring): number => (from === 'inner' ? outward : inward);

/** mm from the centre that stitching keeps, so that the channels on that side are whole: they keep clear too. */
const keptClear = (ring: Ring): number => ring.clear + towardsMotif(ring);

/** −1 where the centre lies below the start, 1 where above it. */
const senseOf = (ring: Ring): 1 | -1 => (ring.from === 'inner' ? -1 : 1);

const mirrorOf = (ring: Ring): number => Math.PI / 2 + senseOf(ring) * wedgeOf(ring);

/** The centre for which a crown lies on the centre mirror. */
const centreFor = (crown: Point, ring: Ring, gap: number): Point => {
  const along = (crown.x + gap / 2) / Math.tan(wedgeOf(ring));
  return { x: -gap / 2, y: crown.y + senseOf(ring) * along };
};

/** Rises are looked at this closely for where the frame touches the clear circle (radians): 2°. */
const RISE_STEP = Math.PI / 90;
/** Halvings of a step down to the last digit of a rise. */
const BISECTIONS = 54;
/** A frame touches its clear circle to this (mm); where it only jumps past it, as a gap opens, it does not close there. */
const TIGHT = 1e-7;

const ringByCrown = (way: Way, ring: Ring, near: Nearness): readonly Result<RingSeat>[] => {
  const { shape } = way;
  const kept = keptClear(ring);
  const w = wedgeOf(ring);
  // No start comes farther from the centre than in the polygon of 2n sides, but for what a gap adds.
  const widestGap = ring.gap === 'auto' ? 2 * reachOf(shape) + 2 : ring.gap;
  const farthestStart = shape.chord / (2 * Math.sin(w / 2)) + widestGap / (2 * Math.tan(w));
  if (farthestStart < kept) return [misses({ kind: 'motif-too-large', by: kept - farthestStart })];
  // How far the stitching keeps from the clear circle when it is laid at a rise; negative when it is inside it.
  const spare = (rise: number): number => spareAt(shape, ring, near, rise, gapAt(shape, ring, rise));
  const found: Result<RingSeat>[] = [];
  let before = senseOf(ring) * (w / 2) + FLATTEST;
  let spareBefore = spare(before);
  let most = Number.isFinite(spareBefore) ? spareBefore : Number.NEGATIVE_INFINITY;
  let least = Number.isFinite(spareBefore) ? spareBefore : Number.POSITIVE_INFINITY;
  for (let rise = before + RISE_STEP; rise < Math.PI / 2; rise += RISE_STEP) {
    const s = spare(rise);
    if (s > most) most = s;
    if (s < least) least = s;
    if (spareBefore >= 0 !== s >= 0 && Number.isFinite(spareBefore) && Number.isFinite(s)) {
      const tight = tightRise(spare, before, rise);
      if (spare(tight) <= TIGHT) found.push(layRing(way, ring, tight));
    }
    before = rise;
    spareBefore = s;
  }
  if (found.length > 0) return found;
  // Even where they reach widest the swags do not reach round the motif; or even laid steepest they stand off.
  return [
    misses(
      most < 0
        ? { kind: 'motif-too-large', by: Number.isFinite(most) ? -most : kept }
        : { kind: 'stands-off', by: Math.max(FIT_NOISE, Number.isFinite(least) ? least : kept) },
    ),
  ];
};

/** How far (mm) a shape that rises so, with such a gap, keeps from the clear circle: less than 0 inside it, nothing where it is no swag. */
const spareAt = (shape: Shape, ring: Ring, near: Nearness, rise: number, gap: number): number => {
  const crown = polar(rise, shape.chord);
  const centre = centreFor(crown, ring, gap);
  const pointing = senseOf(ring) * (norm(centre) - distance(centre, crown));
  if (!(pointing > -FIT_NOISE && senseOf(ring) * centre.y > 0)) return Number.NaN;
  return distanceFrom(near, centre, rise - shape.chordAngle) - keptClear(ring);
};

/**
 * The frame whose swags are as wide as they may be, where a gap that is left open is widened for that. A chord C that
 * makes an angle of m − r with the centre mirror spans 2·C·sin(m − r), whatever the gap; the wider the gap, the farther
 * the frame keeps from its motif, so that one closes it.
 */
const ringBySpan = (way: Way, ring: Ring, near: Nearness): readonly Result<RingSeat>[] => {
  const { shape } = way;
  const { widestSpan, widestGap } = ring;
  if (ring.gap !== 'auto' || widestSpan === undefined || widestGap === undefined) return [];
  const rise = mirrorOf(ring) - Math.asin(Math.min(1, widestSpan / (2 * shape.chord)));
  const spare = (gap: number): number => spareAt(shape, ring, near, rise, gap);
  let inside = gapAt(shape, ring, rise);
  let clear = Math.min(widestGap, widestSpan);
  if (!(spare(inside) < 0 && spare(clear) >= 0)) return [];
  for (let i = 0; i < BISECTIONS; i++) {
    const mid = (inside + clear) / 2;
    if (spare(mid) >= 0) clear = mid;
    else inside = mid;
  }
  return spare(clear) <= TIGHT ? [layRing(way, ring, rise, clear)] : [];
};

/** Start and crown equally far from the centre make no swag; this (radians) beyond there they begin to. */
const FLATTEST = 1e-6;

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

/** The gap (mm) that a rise needs, or that the plan gives. */
const gapAt = (shape: Shape, ring: Ring, rise: number): number => {
  if (ring.gap !== 'auto') return ring.gap;
  const tilt = rise - shape.chordAngle;
  return gapFor({ bulge: Math.max(0, shape.support(-Math.cos(tilt), Math.sin(tilt))) });
};

/** The distance from a point of the cell's frame to the shape laid at a tilt. */
const distanceFrom = (near: Nearness, at: Point, tilt: number): number => {
  const c = Math.cos(tilt);
  const s = Math.sin(tilt);
  return near.distance({ x: c * at.x + s * at.y, y: c * at.y - s * at.x });
};

const layRing = (
  way: Way,
  ring: Ring,
  rise: number,
  gap = gapAt(way.shape, ring, rise),
): Result<RingSeat> => {
  const { shape } = way;
  const pose = tiltedPose(shape, rise - shape.chordAngle);
  const centre = centreFor({ x: pose.halfSpan, y: pose.depth }, ring, gap);
  return checkRing(way, { shape, pose, gap, centre }, ring);
};

interface Laid {
  readonly shape: Shape;
  readonly pose: Pose;
  readonly gap: number;
  readonly centre: Point;
}

const checkRing = (way: Way, { shape, pose, gap, centre }: Laid, ring: Ring): Result<RingSeat> => {
  const wanted = gapFor(pose, ring.gap);
  if (wanted > gap + FIT_NOISE) return misses({ kind: 'bulges', by: wanted - gap, bulge: pose.bulge });
  if (!keepsGap(gap, ring)) return misses({ kind: 'gap-left', by: gap - Number(ring.gap), gap });
  const crown = { x: pose.halfSpan, y: pose.depth };
  const startRadius = norm(centre);
  const crownRadius = distance(centre, crown);
  const depth = senseOf(ring) * (startRadius - crownRadius);
  if (!(depth > FIT_NOISE)) {
    const wanted = ring.from === 'inner' ? 'outward' : 'inward';
    return misses({ kind: 'points-away', by: Math.max(FIT_NOISE, -depth), wanted });
  }
  const beyond = -senseOf(ring) * centre.y;
  if (!(beyond < -FIT_NOISE)) return misses({ kind: 'past-centre', by: Math.max(FIT_NOISE, beyond) });
  const mirror = mirrorOf(ring);
  const past = pastMirror(shape, pose, mirror);
  if (past > FIT_NOISE) return misses({ kind: 'past-centre', by: past });
  // Start and stop lie as far from the centre mirror on either side.
  const span = 2 * (pose.halfSpan * Math.sin(mirror) - pose.depth * Math.cos(mirror));
  if (gap >= span) return misses({ kind: 'too-wide-gap', by: gap - span });
  const laid = movePath(shape.path, turn(pose.tilt));
  const nearest = nearnessOf(laid.pieces).distance(centre);
  if (nearest < keptClear(ring) - FIT_NOISE)
    return misses({ kind: 'motif-too-large', by: keptClear(ring) - nearest });
  const farthest = farthestFrom(laid, centre);
  const under = gap > 0 ? passesBehindStart(laid, centre, ring) : 0;
  if (under > 0) return misses({ kind: 'bulges', by: under, bulge: under });
  const out = farthest + awayFromMotif(ring);
  if (out > ring.within + FIT_NOISE) return misses({ kind: 'too-wide', by: out - ring.within });
  return fits({
    seat: { way, shape, pose, gap, mirror, centre, span, depth },
    field: bandOf(ring, startRadius, nearest, farthest),
  });
};

/** Some cloth beyond the outermost channel, mm. */
const BEYOND = 1;

/** The band of a frame: levels are measured from the circle that its swags start on. */
const bandOf = (ring: Ring, startRadius: number, nearest: number, farthest: number): Field => {
  const { from, motif, clear, within, count } = ring;
  const isLimited = Number.isFinite(within);
  const outward = from === 'inner';
  const levelOf = (radius: number): number => senseOf(ring) * (startRadius - radius);
  // An inward frame's ground ends at the clear circle, an outward one's at the limit, or beyond all channels.
  const farRadius = !outward ? clear : isLimited ? within : farthest + PIVOT_LIMIT * ring.outward + BEYOND;
  const nearRadius = outward ? clear : farthest + ring.inward;
  const circle = (role: BandLine['role'], name: string, radius: number): BandLine => ({
    role,
    name,
    level: levelOf(radius),
  });
  const width = farthest - clear;
  return {
    name: 'frame',
    runs: [ringRun(count, senseOf(ring) / startRadius)],
    corners: 'none',
    from,
    width,
    startMargin: 0,
    marksAt: 0,
    farMargin: 0,
    room: width,
    around: {
      kind: 'motif',
      count,
      radius: motif,
      clear,
      within,
      nearest,
      farthest,
      towards: towardsMotif(ring),
      away: awayFromMotif(ring),
    },
    lines: [
      circle('motif', 'motif', motif),
      ...(clear > motif ? [circle('clear', 'clear circle', clear)] : []),
      ...(isLimited ? [circle('limit', 'limit', within)] : []),
    ],
    across: { from: levelOf(motif), to: levelOf(farthest + awayFromMotif(ring)) },
    near: levelOf(nearRadius),
    far: levelOf(farRadius),
    isBounded: !outward || isLimited,
  };
};

/** The one run of a frame: its centre at the quilt's origin, its first crown straight above it. */
const ringRun = (count: number, curvature: number): Run => {
  const length = TURN / Math.abs(curvature);
  const up = curvature < 0 ? 0 : Math.PI;
  const place = compose(turn(up - (curvature * length) / (2 * count)), shift(0, -1 / curvature));
  return {
    name: 'frame',
    length,
    seam: length,
    ends: 0,
    curvature,
    begins: 'first centre line',
    next: 'frame',
    place,
    alone: place,
    drawn: length,
  };
};

/**
 * How far (mm) from its start stitching crosses the ray through the start on the side that the swag turns its
 * back to: there the swag would not be told from the gap. 0 where it does not.
 */
const passesBehindStart = (laid: Shape['path'], centre: Point, ring: Ring): number => {
  const meetings = meetingsWithLine(laid, centre, subtract(ORIGIN, centre));
  const start = norm(centre);
  const behind = meetings
    .map((m) => senseOf(ring) * (distance(m.point, centre) - start))
    .filter((by) => by > TIGHT && by < start);
  return behind.length > 0 ? Math.max(...behind) : 0;
};

/**
 * At a fixed tilt the frame's size follows from the clear circle alone. What the whole way leaves of the turn
 * is gap; where there is not so much of the turn, the way is followed to the centre mirror, wherever on the edge
 * that is.
 */
const ringByTilt = (way: Way, tilt: number, ring: Ring, near: Nearness): Result<RingSeat> => {
  const { shape } = way;
  const sense = senseOf(ring);
  const kept = keptClear(ring);
  const tan = Math.tan(wedgeOf(ring));
  const pose = tiltedPose(shape, tilt);
  const fixed = ring.gap === 'auto' ? 0 : ring.gap;
  const narrowest = Math.max(fixed, gapFor(pose, ring.gap));
  const whole = (along: number): Laid => {
    const gap = Math.max(narrowest, 2 * ((along - sense * pose.depth) * tan - pose.halfSpan));
    return { shape, pose, gap, centre: { x: -gap / 2, y: sense * along } };
  };
  const spare = ({ centre }: Laid): number => distanceFrom(near, centre, tilt) - kept;
  // Nearer to the centre than this the whole way does not fit between its mirrors.
  const closest = Math.max(0, (pose.halfSpan + narrowest / 2) / tan + sense * pose.depth);
  if (!(spare(whole(closest)) > 0)) {
    const along = tightAlong(
      (a) => spare(whole(a)),
      closest,
      closest + kept + 2 * reachOf(shape) + narrowest / Math.sin(wedgeOf(ring)),
    );
    return along === undefined
      ? misses({ kind: 'motif-too-large', by: -spare(whole(closest)) })
      : checkRing(way, whole(along), ring);
  }
  if (!way.mayStopSooner) return misses({ kind: 'stands-off', by: spare(whole(closest)) });
  return cutRing(way, tilt, ring, closest, fixed);
};

const cutRing = (way: Way, tilt: number, ring: Ring, most: number, fixed: number): Result<RingSeat> => {
  const kept = keptClear(ring);
  const angle = mirrorOf(ring);
  const direction = { x: Math.cos(angle), y: Math.sin(angle) };
  const cut = (along: number): Laid | undefined => {
    let gap = fixed;
    for (let round = 0; round < GAP_ROUNDS; round++) {
      const centre = { x: -gap / 2, y: senseOf(ring) * along };
      const shape = way.laid && cutShape(way.shape, way.laid, centre, direction);
      if (!shape) return undefined;
      const pose = tiltedPose(shape, tilt);
      const wanted = gapFor(pose, ring.gap);
      if (wanted <= gap + FIT_NOISE || ring.gap !== 'auto') return { shape, pose, gap, centre };
      gap = wanted;
    }
    return undefined;
  };
  const spare = (along: number): number => {
    const laid = cut(along);
    return laid ? distanceFrom(nearnessOf(laid.shape.path.pieces), laid.centre, tilt) - kept : Number.NaN;
  };
  // Mostly nothing is nearer to the centre than the start itself.
  const byStart = Math.sqrt(Math.max(0, kept * kept - (fixed * fixed) / 4));
  const along =
    Math.abs(spare(byStart)) <= TIGHT
      ? byStart
      : tightAlong((a) => spare(a), byStart, Math.max(most, byStart));
  const laid = along === undefined ? undefined : cut(along);
  return laid
    ? checkRing(way, laid, ring)
    : misses({ kind: 'stands-off', by: Math.max(FIT_NOISE, most - kept) });
};

/** What is left out of the way may be what bulges: the second gap serves, the third round says so. */
const GAP_ROUNDS = 3;

/** The distance along the join mirror at which nothing is spare: the farther the centre, the more is. */
const tightAlong = (spare: (along: number) => number, near: number, far: number): number | undefined => {
  let inside = near;
  let clear = far;
  if (!(spare(clear) >= 0)) return undefined;
  for (let i = 0; i < BISECTIONS; i++) {
    const mid = (inside + clear) / 2;
    if (spare(mid) >= 0) clear = mid;
    else inside = mid;
  }
  return spare(clear) <= TIGHT ? clear : undefined;
};
