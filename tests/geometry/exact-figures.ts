/**
 * Edges in which one measure is exactly another, or off by a hair: coves of the foot's own radius between corners,
 * slots of just its width, beads and bends whose parallels shrink to a point.
 */

import fc from 'fast-check';
import { type Arc, line, type Piece } from '../../src/geometry/piece.ts';
import { point } from '../../src/geometry/point.ts';

export const C = 6.35;

export interface Step {
  readonly turn: number;
  readonly length: number;
  /** 0 for a line; positive bends to the left. */
  readonly radius: number;
}

/** The edge that a list of steps walks; an arc never turns farther than 5.5 rad. */
export const walk = (list: readonly Step[]): Piece[] => {
  const pieces: Piece[] = [];
  let at = point(0, 0);
  let direction = 0.4;
  for (const s of list) {
    direction += s.turn;
    const sweep = s.radius === 0 ? 0 : Math.sign(s.radius) * Math.min(5.5, s.length / Math.abs(s.radius));
    const r = Math.abs(s.radius);
    const chord = s.radius === 0 ? s.length : 2 * r * Math.sin(Math.abs(sweep) / 2);
    const heading = direction + sweep / 2;
    const to = point(at.x + chord * Math.cos(heading), at.y + chord * Math.sin(heading));
    if (s.radius === 0) pieces.push(line(at, to));
    else {
      const start = direction - (Math.sign(sweep) * Math.PI) / 2;
      const center = point(at.x - r * Math.cos(start), at.y - r * Math.sin(start));
      pieces.push({ kind: 'arc', center, radius: r, start, sweep, from: at, to } satisfies Arc);
    }
    at = to;
    direction += sweep;
  }
  return pieces;
};

const RIGHT = Math.PI / 2;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const hair = fc.constantFrom(0, 0, 1e-9, -1e-9, 1e-6, -1e-6, 1e-3, -1e-3);
const sweeps = fc.oneof(fc.constantFrom(Math.PI, RIGHT), between(0.3, 4));

const cove = fc
  .tuple(hair, fc.oneof(fc.constantFrom(RIGHT, RIGHT / 2), between(0.2, 2.5)), sweeps, between(0.2, 2.5))
  .map(([h, into, sweep, out]): Step[] => [
    { turn: -into, length: (C + h) * sweep, radius: C + h },
    { turn: -out, length: 8, radius: 0 },
  ]);

const slot = fc.tuple(hair, fc.oneof(between(1, 20), fc.constantFrom(C, 2 * C))).map(([h, deep]): Step[] => [
  { turn: -RIGHT, length: deep, radius: 0 },
  { turn: RIGHT, length: 2 * C + h, radius: 0 },
  { turn: RIGHT, length: deep, radius: 0 },
  { turn: -RIGHT, length: 9, radius: 0 },
]);

const bead = fc
  .tuple(hair, sweeps, fc.constantFrom(C, 2 * C, 3 * C), fc.oneof(fc.constantFrom(0, RIGHT), between(-1, 1)))
  .map(([h, sweep, r, turn]): Step[] => [{ turn, length: (r + h) * Math.min(3, sweep), radius: -(r + h) }]);

const straight = fc
  .tuple(fc.constantFrom(0, 0.3, -0.3), between(1, 40))
  .map(([turn, length]): Step[] => [{ turn, length, radius: 0 }]);

const bend = fc
  .tuple(between(-1, 1), between(1, 40), between(1, 30), fc.boolean())
  .map(([turn, length, r, left]): Step[] => [{ turn, length, radius: left ? r : -r }]);

export const exactSteps: fc.Arbitrary<readonly Step[]> = fc
  .array(fc.oneof(cove, slot, bead, straight, bend), { minLength: 1, maxLength: 4 })
  .map((figures) => figures.flat());
