/** How far a traced outline is from the truth: by this folder's own arithmetic. */

import type { Place } from '../camera.ts';
import type { Shape } from './shapes.ts';

interface TracedPiece {
  readonly kind: 'line' | 'arc';
  readonly from: Place;
  readonly to: Place;
  readonly center?: Place;
  readonly radius?: number;
  readonly start?: number;
  readonly sweep?: number;
}

const STEP = 0.1;

/** Points on lines and arcs, so far apart at most (mm). */
const pointsOn = (pieces: readonly TracedPiece[]): Place[] =>
  pieces.flatMap(({ from, to, center, radius, start, sweep }) => {
    const long = center ? Math.abs(sweep!) * radius! : Math.hypot(to.x - from.x, to.y - from.y);
    const count = Math.max(1, Math.ceil(long / STEP));
    return Array.from({ length: count }, (_, i) => {
      const t = i / count;
      if (!center) return { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t };
      const a = start! + sweep! * t;
      return { x: center.x + radius! * Math.cos(a), y: center.y + radius! * Math.sin(a) };
    });
  });

/** A ring of points with no two farther apart than the step. */
const dense = (ring: readonly Place[]): Place[] =>
  ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const count = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / STEP));
    return Array.from({ length: count }, (_, k) => ({
      x: a.x + ((b.x - a.x) * k) / count,
      y: a.y + ((b.y - a.y) * k) / count,
    }));
  });

/** The farthest that a point lies from a ring of dense points: from the stretches beside the nearest of them. */
const farthest = (points: readonly Place[], ring: readonly Place[]): { far: number; at: Place } => {
  let far = 0;
  let at = points[0]!;
  for (const p of points) {
    let best = Number.POSITIVE_INFINITY;
    let index = 0;
    for (let i = 0; i < ring.length; i++) {
      const q = ring[i]!;
      const d = (p.x - q.x) ** 2 + (p.y - q.y) ** 2;
      if (d < best) {
        best = d;
        index = i;
      }
    }
    const b = ring[index]!;
    const d = Math.min(
      toStretch(p, ring.at(index - 1)!, b),
      toStretch(p, b, ring[(index + 1) % ring.length]!),
    );
    if (d > far) {
      far = d;
      at = p;
    }
  }
  return { far, at };
};

const toStretch = (p: Place, a: Place, b: Place): number => {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square)) : 0;
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
};

/** What a ring holds, mm² (the shoelace formula). */
const areaOf = (ring: readonly Place[]): number =>
  Math.abs(
    ring.reduce((sum, a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      return sum + a.x * b.y - b.x * a.y;
    }, 0) / 2,
  );

const roundOf = (ring: readonly Place[]): number =>
  ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return sum + Math.hypot(b.x - a.x, b.y - a.y);
  }, 0);

export interface Judged {
  /** The farthest that either outline lies from the other, mm, and where, in the shape's frame. */
  readonly error: number;
  readonly at: Place;
  /** How far the traced outline lies inside the true one as a whole: what it holds less, by its length, mm. */
  readonly inset: number;
  /** True corners that no corner of the trace lies within `CORNER` of, and traced ones that are none. */
  readonly missed: readonly Place[];
  readonly added: readonly Place[];
}

/** mm */
const CORNER = 0.5;

/** `place` brings a traced point to the shape's own frame. */
export const judged = (
  pieces: readonly TracedPiece[],
  corners: readonly Place[],
  shape: Shape,
  place: (p: Place) => Place,
): Judged => {
  const traced = pointsOn(pieces).map(place);
  const truth = dense(shape.ring);
  const [a, b] = [farthest(truth, traced), farthest(traced, truth)];
  const found = corners.map(place);
  const lacks = (from: readonly Place[], in_: readonly Place[]): readonly Place[] =>
    from.filter((p) => !in_.some((q) => Math.hypot(p.x - q.x, p.y - q.y) <= CORNER));
  const worse = a.far > b.far ? a : b;
  return {
    error: worse.far,
    at: worse.at,
    inset: (areaOf(truth) - areaOf(traced)) / roundOf(truth),
    missed: lacks(shape.corners, found),
    added: lacks(found, shape.corners),
  };
};
