/** Different ways may stitch the same line: a lobe that is its own mirror image does heel-first what it does crown-first. */

import { distance, move, type Point, pathLength, pointAlong, turn } from '../geometry/index.ts';
import type { Fit } from './fit.ts';
import type { Seat } from './seat.ts';

/** Lines nearer than this (mm) are the same to a needle. */
const SAME = 1e-3;
/** Shares of a path's length at which two are compared: two different stretches of lines and arcs do not agree at all. */
const PROBES = [0.13, 0.37, 0.5, 0.71, 0.89];

/** Keeps the first of all fits that stitch the same line on the same sides. */
export const withoutRepeats = <R extends { readonly fit: Fit; readonly field: { readonly corners: string } }>(
  ranked: readonly R[],
): readonly R[] => {
  const known = new Map<string, R[]>();
  const probes = new Map<Seat, readonly Point[]>();
  return ranked.filter((r) => {
    const key = `${r.field.corners} ${r.fit.sides.map((s) => s.repeats).join(' ')}`;
    const others = known.get(key);
    if (!others) {
      known.set(key, [r]);
      return true;
    }
    if (others.some((o) => isSameLine(o.fit, r.fit, probes))) return false;
    others.push(r);
    return true;
  });
};

const isSameLine = (a: Fit, b: Fit, probes: Map<Seat, readonly Point[]>): boolean => {
  const seats = (fit: Fit): readonly Seat[] => [
    ...fit.sides.map((s) => s.seat),
    ...(fit.corner ? [fit.corner.seat] : []),
  ];
  const others = seats(b);
  return seats(a).every((s, i) => {
    const other = others[i];
    if (!other) return false;
    if (Math.abs(s.pose.depth - other.pose.depth) > SAME) return false;
    if (Math.abs(s.pose.halfSpan - other.pose.halfSpan) > SAME) return false;
    const mine = probesOf(s, probes);
    return probesOf(other, probes).every((p, k) => distance(p, mine[k]!) <= SAME);
  });
};

const probesOf = (seat: Seat, known: Map<Seat, readonly Point[]>): readonly Point[] => {
  let points = known.get(seat);
  if (!points) {
    const { path } = seat.shape;
    const length = pathLength(path);
    const laid = turn(seat.pose.tilt);
    points = PROBES.map((share) => move(laid, pointAlong(path, share * length)!));
    known.set(seat, points);
  }
  return points;
};
