/**
 * A lens that bends straight lines, and the view of a flat sheet through it: from pixels to mm on the sheet.
 *
 * The lens is Fitzgibbon's division model of one parameter ("Simultaneous linear estimation of multiple view
 * geometry and lens distortion", CVPR 2001): a place at the distance r from the picture's middle belongs at
 * r/(1 + λr²), with r in half diagonals of the picture. Both ways are closed forms. Each λ has its best
 * homography; the λ that leaves the marks least off is sought by golden section (Kiefer, "Sequential minimax search
 * for a maximum", Proc. AMS 4, 1953).
 */

import type { Point } from '../geometry/index.ts';
import { applyHomography, findHomography, inverseHomography } from './homography.ts';

export interface SheetView {
  /** From pixels (y down) to mm on the sheet (y up). */
  readonly toSheet: (p: Point) => Point;
  readonly toPicture: (p: Point) => Point;
  /** The lens's λ; 0 where it does not bend lines. */
  readonly bend: number;
  /** How far each mark lies from its place, mm. */
  readonly offs: readonly number[];
}

/** The lens's own middle (pixels), and half the picture's diagonal. */
export interface LensFrame {
  readonly middle: Point;
  readonly half: number;
}

/** Beyond this a lens is a fish-eye, and the model tells nothing. */
const MOST_BEND = 0.4;
/** Places at which λ is tried before the best is made finer. */
const TRIED = 17;
const FINE = 1e-6;

/** Undefined where the pairs settle no homography. */
export const viewThroughLens = (
  seen: readonly Point[],
  places: readonly Point[],
  frame: LensFrame,
): SheetView | undefined => {
  const cost = (bend: number): number =>
    viewAt(seen, places, frame, bend)?.offs.reduce((sum, d) => sum + d * d, 0) ?? Number.POSITIVE_INFINITY;
  const step = (2 * MOST_BEND) / (TRIED - 1);
  let best = 0;
  for (let i = 0; i < TRIED; i++) {
    const bend = -MOST_BEND + i * step;
    if (cost(bend) < cost(best)) best = bend;
  }
  return viewAt(seen, places, frame, least(cost, best - step, best + step));
};

const least = (cost: (at: number) => number, from: number, to: number): number => {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [a, b] = [high - golden * (high - low), low + golden * (high - low)];
  let [ca, cb] = [cost(a), cost(b)];
  while (high - low > FINE) {
    if (ca < cb) {
      [high, b, cb] = [b, a, ca];
      a = high - golden * (high - low);
      ca = cost(a);
    } else {
      [low, a, ca] = [a, b, cb];
      b = low + golden * (high - low);
      cb = cost(b);
    }
  }
  return (low + high) / 2;
};

/** The view with a given λ. */
const viewAt = (
  seen: readonly Point[],
  places: readonly Point[],
  { middle, half }: LensFrame,
  bend: number,
): SheetView | undefined => {
  const straight = (p: Point): Point => {
    const [x, y] = [(p.x - middle.x) / half, (p.y - middle.y) / half];
    const k = 1 / (1 + bend * (x * x + y * y));
    return { x: k * x, y: k * y };
  };
  const bentAgain = ({ x, y }: Point): Point => {
    // The smaller root of λ·s·r² − r + s = 0, for s the straight distance.
    const k = 2 / (1 + Math.sqrt(Math.max(0, 1 - 4 * bend * (x * x + y * y))));
    return { x: middle.x + half * k * x, y: middle.y + half * k * y };
  };
  const map = findHomography(seen.map(straight), places);
  const back = map && inverseHomography(map);
  if (!map || !back) return undefined;
  const toSheet = (p: Point): Point => applyHomography(map, straight(p));
  return {
    toSheet,
    toPicture: (p) => bentAgain(applyHomography(back, p)),
    bend,
    offs: seen.map((p, i) => Math.hypot(toSheet(p).x - places[i]!.x, toSheet(p).y - places[i]!.y)),
  };
};
