/** What the tests of curves share: distances taken without the code under test. */

import { Bezier } from 'bezier-js';
import type { Piece } from '../../src/geometry/piece.ts';
import { distance, type Point } from '../../src/geometry/point.ts';

export type Four = readonly [Point, Point, Point, Point];

export const four = (...n: readonly number[]): Four => {
  const at = (i: number): Point => ({ x: n[2 * i]!, y: n[2 * i + 1]! });
  return [at(0), at(1), at(2), at(3)];
};

export const bezier = (c: Four): Bezier => new Bezier(c.flatMap((p) => [p.x, p.y]));

/** A point on a piece, from its stored angles and centre alone. */
export const pointOn = (p: Piece, t: number): Point =>
  p.kind === 'line'
    ? { x: p.from.x + t * (p.to.x - p.from.x), y: p.from.y + t * (p.to.y - p.from.y) }
    : {
        x: p.center.x + p.radius * Math.cos(p.start + t * p.sweep),
        y: p.center.y + p.radius * Math.sin(p.start + t * p.sweep),
      };

/** The distance from a point to a piece: the circle's where the arc faces the point, else the nearer end's. */
export const distanceTo = (q: Point, p: Piece): number => {
  const [a, b] = [pointOn(p, 0), pointOn(p, 1)];
  if (p.kind === 'line') {
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const d2 = dx * dx + dy * dy;
    const t = d2 > 0 ? Math.min(1, Math.max(0, ((q.x - a.x) * dx + (q.y - a.y) * dy) / d2)) : 0;
    return Math.hypot(q.x - a.x - t * dx, q.y - a.y - t * dy);
  }
  // Measured from the arc's middle, the arc faces half its sweep to either side.
  const middle = p.start + p.sweep / 2;
  const [dx, dy] = [q.x - p.center.x, q.y - p.center.y];
  const along = dx * Math.cos(middle) + dy * Math.sin(middle);
  const across = dy * Math.cos(middle) - dx * Math.sin(middle);
  if (Math.abs(Math.atan2(across, along)) <= Math.abs(p.sweep) / 2)
    return Math.abs(Math.hypot(dx, dy) - p.radius);
  return Math.min(distance(q, a), distance(q, b));
};

/** The largest distance from points of the curve, between its ends and everywhere, to the pieces. */
export const curveToPieces = (c: Four, pieces: readonly Piece[], samples: number): number => {
  const b = bezier(c);
  let worst = 0;
  for (let i = 0; i <= samples; i++) {
    const q = b.get(i / samples);
    worst = Math.max(worst, Math.min(...pieces.map((p) => distanceTo(q, p))));
  }
  return worst;
};

/**
 * The largest distance from points of the pieces to the curve. bezier-js's own project() stops at a step of
 * a ten-thousandth of the curve, which is too coarse here: its table of points gives the start, and a
 * golden-section search on its get() the end.
 */
export const piecesToCurve = (c: Four, pieces: readonly Piece[], perPiece: number): number => {
  const b = bezier(c);
  const table = b.getLUT(1000);
  let worst = 0;
  for (const p of pieces)
    for (let i = 0; i <= perPiece; i++) {
      const q = pointOn(p, i / perPiece);
      worst = Math.max(worst, nearest(q, b, table));
    }
  return worst;
};

const nearest = (q: Point, b: Bezier, table: readonly Point[]): number => {
  const far = table.map((p) => distance(p, q));
  const least = Math.min(...far);
  let best = least;
  const step = 1 / (table.length - 1);
  // Every dip of the table that could hide the nearest point, not only the deepest.
  far.forEach((d, i) => {
    if (d > (far[i - 1] ?? d) || d > (far[i + 1] ?? d) || d > least + 2) return;
    let low = Math.max(0, (i - 1) * step);
    let high = Math.min(1, (i + 1) * step);
    for (let k = 0; k < 60; k++) {
      const [u, v] = [high - (high - low) * GOLDEN, low + (high - low) * GOLDEN];
      if (distance(b.get(u), q) < distance(b.get(v), q)) high = v;
      else low = u;
    }
    best = Math.min(best, distance(b.get((low + high) / 2), q));
  });
  return best;
};

const GOLDEN = (Math.sqrt(5) - 1) / 2;
