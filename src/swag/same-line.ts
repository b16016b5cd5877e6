/** Different ways may stitch the same line: a lobe that is its own mirror image does heel-first what it does crown-first. */

import { distance, move, type Point, pathLength, pointAlong, turn } from '../geometry/index.ts';
import { type Fit, seatsOf } from './fit.ts';
import type { Seat } from './seat.ts';
import type { Shape } from './shape.ts';

/** Lines nearer than this (mm) are the same to a needle. */
const SAME = 1e-3;
/** Shares of a path's length at which two are compared: two different stretches of lines and arcs do not agree at all. */
const PROBES = [0.13, 0.37, 0.5, 0.71, 0.89];

/** Points along the shapes that have been looked at, before they are tilted. */
export type Probes = Map<Shape, readonly Point[]>;

/** Fits are looked up by the depth of their first side in steps of this (mm): what is the same lies in this step or the next. */
const STEP = 10 * SAME;

/** Keeps the first of all fits that stitch the same line on the same sides. */
export const withoutRepeats = <R extends { readonly fit: Fit; readonly field: { readonly corners: string } }>(
  ranked: readonly R[],
): readonly R[] => {
  const known = new Map<string, Map<number, Fit[]>>();
  const probes: Probes = new Map();
  return ranked.filter(({ fit, field }) => {
    const key = `${field.corners} ${fit.sides.map((s) => s.repeats).join(' ')}`;
    const alike = known.get(key) ?? new Map<number, Fit[]>();
    known.set(key, alike);
    const step = Math.round((fit.sides[0]?.seat.pose.depth ?? 0) / STEP);
    for (const near of [step - 1, step, step + 1])
      if (alike.get(near)?.some((other) => isSameLine(other, fit, probes))) return false;
    const here = alike.get(step);
    if (here) here.push(fit);
    else alike.set(step, [fit]);
    return true;
  });
};

const isSameLine = (a: Fit, b: Fit, probes: Probes): boolean => {
  const seats = seatsOf(a);
  const others = seatsOf(b);
  return seats.length === others.length && seats.every((seat, i) => isSameSeat(seat, others[i]!, probes));
};

const isSameSeat = (a: Seat, b: Seat, probes: Probes): boolean => {
  // Nearly all that differ do so here, before anything is built.
  if (Math.abs(a.pose.depth - b.pose.depth) > SAME) return false;
  if (Math.abs(a.pose.halfSpan - b.pose.halfSpan) > SAME) return false;
  const others = probesOf(b, probes);
  return probesOf(a, probes).every((p, k) => distance(p, others[k]!) <= SAME);
};

export const probesOf = (seat: Seat, known: Probes): readonly Point[] => {
  const { shape, pose } = seat;
  let points = known.get(shape);
  if (!points) {
    const length = pathLength(shape.path);
    points = PROBES.map((share) => pointAlong(shape.path, share * length)!);
    known.set(shape, points);
  }
  const laid = turn(pose.tilt);
  return points.map((p) => move(laid, p));
};
