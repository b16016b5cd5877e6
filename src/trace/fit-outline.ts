/** From the points of an outline, as pixels show it, to a closed path of few lines and arcs with sharp corners. */

import {
  arcByRise,
  arcSpline,
  closedPath,
  distance,
  fairCurve,
  line,
  nearnessOf,
  type Path,
  type Piece,
  type Point,
  pieceAt,
  pieceLength,
  reversePiece,
  riseThrough,
} from '../geometry/index.ts';
import { type Corner, findCorners, type Ring, ringLength, ringOf, sharpCornerNear } from './corners.ts';

export interface Outline {
  /** Closed. */
  readonly path: Path;
  /** In order along the path; each is a joint of it. */
  readonly corners: readonly OutlineCorner[];
  /** The farthest that the points lie from the path, corners left out, and the usual distance (mm). */
  readonly deviation: number;
  /** Where they lie farthest. */
  readonly farthest: Point | undefined;
  readonly roughness: number;
}

export interface OutlineCorner {
  /** Along the path, mm. */
  readonly at: number;
  readonly point: Point;
}

export interface FitOptions {
  /** The farthest that the smoothed outline may lie from its lines and arcs, mm. */
  readonly tolerance: number;
  /** mm on either side of a corner that pixels or a pen round off. */
  readonly gap: number;
  /** How far the points lie off by noise, mm. */
  readonly noise: number;
  /** The steps that the points go in, as pixels of line art do (mm); 0 for greys. */
  readonly steps: number;
  /** Waves much shorter than this (mm) are noise. */
  readonly fairness: number;
}

/** The points of the smoothed outline, apart (mm): dense for a curve of 1 mm radius. */
const STEP = 0.2;

/** How far a ring without corners is followed beyond its own end, so that the two ends meet smoothly (mm). */
const OVERLAP = 8;

/** Lines and arcs stay within half of this (mm) of what a picture shows, unless a corner was taken for a tight curve. */
export const DEVIANT = 0.15;
/** Corners that are looked for again, one after the other. */
const MOST_SHARP = 6;

export const fitOutline = (points: readonly Point[], options: FitOptions): Outline => {
  const ring = ringOf(points);
  const corners = [...findCorners(ring, options)];
  let fitted = fitBetween(ring, corners, options);
  for (let i = 0; i < MOST_SHARP && fitted.farthest && fitted.deviation > DEVIANT; i++) {
    const sharp = sharpCornerNear(ring, fitted.farthest, options, corners);
    if (!sharp) break;
    corners.push(sharp);
    corners.sort((a, b) => a.at - b.at);
    fitted = fitBetween(ring, corners, options);
  }
  return fitted;
};

const fitBetween = (ring: Ring, corners: readonly Corner[], options: FitOptions): Outline => {
  const pieces: Piece[] = [];
  const joints: OutlineCorner[] = [];
  let length = 0;
  const believed: Point[] = [];
  if (corners.length === 0) pieces.push(...fitRound(ring, options, believed));
  for (const [i, corner] of corners.entries()) {
    joints.push({ at: length, point: corner.point });
    const next = corners[(i + 1) % corners.length]!;
    const run = fitRun(ring, corner, next, options, believed);
    for (const p of run) length += pieceLength(p);
    pieces.push(...run);
  }
  const near = nearnessOf(pieces);
  let most = 0;
  let farthest: Point | undefined;
  let sum = 0;
  for (const p of believed) {
    const d = near.distance(p);
    if (d > most) {
      most = d;
      farthest = p;
    }
    sum += d * d;
  }
  return {
    path: closedPath(pieces),
    corners: joints,
    deviation: most,
    farthest,
    roughness: Math.sqrt(sum / Math.max(1, believed.length)),
  };
};

const fitRun = (ring: Ring, from: Corner, to: Corner, options: FitOptions, believed: Point[]): Piece[] => {
  const whole = ringLength(ring);
  const length = to.at > from.at ? to.at - from.at : to.at - from.at + whole;
  const inner = between(ring, from.at + from.gap, from.at + length - to.gap);
  for (const p of inner) believed.push(p);
  // Points on top of a corner would bend the curve on its first step.
  const clear = inner.filter(
    (p) => distance(p, from.point) > from.gap / 2 && distance(p, to.point) > to.gap / 2,
  );
  if (clear.length < 3) return [line(from.point, to.point)];
  const fair = fairCurve([from.point, ...clear, to.point], {
    step: STEP,
    fairness: options.fairness,
    heldEnds: true,
  });
  const { pieces } = arcSpline(fair, { tolerance: options.tolerance });
  const ended = withoutStub(pieces, options);
  // Seen from the other end, what a run begins with is what it ends with.
  return [...backwards(withoutStub(backwards(ended), options))];
};

const backwards = (pieces: readonly Piece[]): readonly Piece[] => pieces.map(reversePiece).reverse();

/**
 * A last piece that hardly leaves the stretch beside a corner in which the outline cannot be believed tells of the
 * corner's own error, not of the edge: the piece before it runs on to the corner, where it can within the tolerance.
 */
const withoutStub = (pieces: readonly Piece[], { gap, tolerance }: FitOptions): readonly Piece[] => {
  const last = pieces.at(-1);
  const before = pieces.at(-2);
  if (!last || !before || !(pieceLength(last) <= STUB_GAPS * gap)) return pieces;
  const [a, b] = [before.from, last.to];
  const middle = pieceAt(before, 0.5);
  // A flat stays a flat; of an arc, the one through its start, its middle and the corner.
  const joined = before.kind === 'line' ? line(a, b) : arcByRise(a, b, riseThrough(a, middle, b));
  const near = nearnessOf([joined]);
  const off = Math.max(...SAMPLES.map((t) => near.distance(pieceAt(before, t))));
  return off <= tolerance ? [...pieces.slice(0, -2), joined] : pieces;
};

/** Times the stretch beside a corner that is not believed. */
const STUB_GAPS = 2;
/** Places on a piece at which another is held against it: two arcs that agree there agree everywhere. */
const SAMPLES = [0, 0.25, 0.5, 0.75, 1];

const fitRound = (ring: Ring, options: FitOptions, believed: Point[]): Piece[] => {
  const whole = ringLength(ring);
  for (const p of ring.points) believed.push(p);
  const overlap = Math.min(OVERLAP, whole / 4);
  const open = between(ring, -overlap, whole + overlap);
  const steps = Math.ceil(whole / STEP);
  const step = whole / steps;
  // The same grid on both ends, so that the first and the last kept point are one.
  const fair = fairCurve(open, { step, fairness: options.fairness, heldEnds: false });
  const first = Math.round(((fair.length - 1) * overlap) / (whole + 2 * overlap));
  const kept = fair.slice(first, first + steps);
  kept.push(kept[0]!);
  return [...arcSpline(kept, { tolerance: options.tolerance }).pieces];
};

/** The ring's points between two lengths, going round as often as needed. */
const between = ({ points, lengths }: Ring, from: number, to: number): Point[] => {
  const whole = lengths.at(-1)!;
  const found: Point[] = [];
  for (let turn = Math.floor(from / whole); turn * whole <= to; turn++)
    for (let i = 0; i < points.length; i++) {
      const at = lengths[i]! + turn * whole;
      if (at >= from && at <= to) found.push(points[i]!);
    }
  return found;
};
