/**
 * At which rises may a shape be laid? The rise is the angle of its chord over the start line: depth = C·sin,
 * half span = C·cos. What may not be (below the start line, past a mirror, into the margin) depends on the
 * rise alone, so it is found once for a shape, and every count and corner is then a comparison of numbers.
 *
 * Method. Each condition compares support functions, which change by at most the shape's radius R for each
 * radian of turn. So a stretch of rises of width w whose middle misses by more than R·w/2 holds no valid
 * rise, and the rest is halved until it is narrower than SLIVER. Ends are then bisected.
 */

import { norm } from '../geometry/index.ts';
import { FIT_NOISE } from './misfit.ts';
import type { Shape } from './shape.ts';

/** Rises from `from` to `to`, radians in (0, π/2). */
export interface Window {
  readonly from: number;
  readonly to: number;
}

export interface WindowRules {
  /** mm that the stitching may reach from the start line. */
  readonly room: number;
  /** mm that it may bulge back past its start; Infinity where the gap is made to suit. */
  readonly bulge: number;
  /** Angle (radians) of the mirror through the crown: upright on a side, the mitre at a corner. */
  readonly mirror: number;
}

/** Valid rises on a narrower stretch than this (radians; a hundredth of a degree) nobody could set by hand. */
const SLIVER = 2e-4;
/** Stretches are looked at no wider than this, so that a short invalid one between valid ends is seen. */
const WIDEST = Math.PI / 128;
const BISECTIONS = 40;

export const windowsOf = (shape: Shape, rules: WindowRules): readonly Window[] => {
  const excess = excessOf(shape, rules);
  const radius = shape.path.pieces.reduce(
    (r, p) => Math.max(r, norm(p.from) + (p.kind === 'arc' ? 2 * p.radius : 0)),
    shape.chord,
  );
  const valid: Window[] = [];
  const look = (from: number, to: number): void => {
    const width = to - from;
    const mid = (from + to) / 2;
    const by = excess(mid);
    if (by > (2 * radius * width) / 2) return;
    if (width > WIDEST || (width > SLIVER && !(excess(from) <= 0 && by <= 0 && excess(to) <= 0))) {
      look(from, mid);
      look(mid, to);
      return;
    }
    if (!(by <= 0)) return;
    const last = valid.at(-1);
    if (last && from - last.to < SLIVER / 2) valid[valid.length - 1] = { from: last.from, to };
    else valid.push({ from, to });
  };
  look(FLATTEST, Math.PI / 2 - FLATTEST);
  return valid.map((w) => ({ from: edgeOf(excess, w.from, -1), to: edgeOf(excess, w.to, 1) }));
};

/** A swag without depth is a line, and one without span a spike. */
const FLATTEST = 1e-3;

/** Moves a window's end out, or in, to where the excess passes zero. */
const edgeOf = (excess: (rise: number) => number, end: number, outward: 1 | -1): number => {
  let inside = end - outward * SLIVER;
  let outside = end + outward * SLIVER;
  if (excess(end) <= 0) inside = end;
  else outside = end;
  for (let i = 0; i < BISECTIONS; i++) {
    const mid = (inside + outside) / 2;
    if (excess(mid) <= 0) inside = mid;
    else outside = mid;
  }
  return inside;
};

/** By how much (mm) the worst condition is missed at a rise; at most 0 where all hold. */
const excessOf =
  (shape: Shape, rules: WindowRules) =>
  (rise: number): number => {
    const tilt = rise - shape.chordAngle;
    const c = Math.cos(tilt);
    const s = Math.sin(tilt);
    const nx = Math.sin(rules.mirror);
    const ny = -Math.cos(rules.mirror);
    const crown = shape.chord * (Math.cos(rise) * nx + Math.sin(rise) * ny);
    return (
      Math.max(
        shape.support(s, c) - rules.room,
        shape.support(-s, -c),
        shape.support(c * nx + s * ny, c * ny - s * nx) - crown,
        Number.isFinite(rules.bulge) ? shape.support(-c, s) - rules.bulge : Number.NEGATIVE_INFINITY,
      ) - FIT_NOISE
    );
  };

/** How far (radians) a rise lies from the nearest window; 0 inside one. */
export const outsideBy = (windows: readonly Window[], rise: number): number => {
  let least = Number.POSITIVE_INFINITY;
  for (const w of windows) least = Math.min(least, Math.max(0, w.from - rise, rise - w.to));
  return least;
};
