/**
 * Rigid motions of the plane: turn, move, and turn over. Never stretch, because acrylic does not.
 *
 * A motion takes p to R·F·p + t, where F mirrors in the x axis when `flip` is true and R turns by
 * `angle` (radians, counterclockwise).
 */

import type { Point } from './point.ts';

export interface Motion {
  readonly flip: boolean;
  readonly angle: number;
  readonly x: number;
  readonly y: number;
}

export const STAY: Motion = { flip: false, angle: 0, x: 0, y: 0 };

export const shift = (x: number, y: number): Motion => ({ flip: false, angle: 0, x, y });
export const turn = (angle: number): Motion => ({ flip: false, angle, x: 0, y: 0 });

/** The mirror in the line through `at` that runs at `angle`. */
export const mirror = (at: Point, angle: number): Motion => {
  const toOrigin = shift(-at.x, -at.y);
  return compose(shift(at.x, at.y), compose({ flip: true, angle: 2 * angle, x: 0, y: 0 }, toOrigin));
};

/** A motion as a function, with its sine and cosine taken once. */
export const mover = (m: Motion): ((p: Point) => Point) => {
  const c = exactCos(m.angle);
  const s = exactSin(m.angle);
  const f = m.flip ? -1 : 1;
  return (p) => ({ x: c * p.x - s * f * p.y + m.x, y: s * p.x + c * f * p.y + m.y });
};

export const move = (m: Motion, p: Point): Point => mover(m)(p);

/** First `inner`, then `outer`. */
export const compose = (outer: Motion, inner: Motion): Motion => {
  const at = move(outer, { x: inner.x, y: inner.y });
  return {
    flip: outer.flip !== inner.flip,
    angle: outer.angle + (outer.flip ? -inner.angle : inner.angle),
    x: at.x,
    y: at.y,
  };
};

export const inverse = (m: Motion): Motion => {
  const angle = m.flip ? m.angle : -m.angle;
  const back: Motion = { flip: m.flip, angle, x: 0, y: 0 };
  const at = move(back, { x: -m.x, y: -m.y });
  return { ...back, x: at.x, y: at.y };
};

/** The motion as the six numbers a b c d e f of an SVG or PDF matrix (y up). */
export const matrixOf = (m: Motion): readonly [number, number, number, number, number, number] => {
  const c = exactCos(m.angle);
  const s = exactSin(m.angle);
  const f = m.flip ? -1 : 1;
  return [c, s, -s * f, c * f, m.x, m.y];
};

/** Quarter turns are common here (the sides of a border), and must not leave 6e-17 behind. */
const QUARTER_NOISE = 1e-15;
const exactCos = (a: number): number => clean(Math.cos(a));
const exactSin = (a: number): number => clean(Math.sin(a));
const clean = (v: number): number => (Math.abs(v) < QUARTER_NOISE ? 0 : v);
