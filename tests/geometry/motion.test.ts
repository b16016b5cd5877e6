/** Motions by what they are: one after the other, back again, and mirrors in two lines. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  compose,
  distance,
  inverse,
  type Motion,
  matrixOf,
  mirror,
  move,
  point,
} from '../../src/geometry/index.ts';
import { runs } from '../support/runs.ts';

const number = fc.double({ min: -300, max: 300, noNaN: true });
const motions: fc.Arbitrary<Motion> = fc.record({
  flip: fc.boolean(),
  angle: fc.oneof(fc.double({ min: -7, max: 7, noNaN: true }), fc.constantFrom(0, Math.PI / 2, -Math.PI)),
  x: number,
  y: number,
});
const points = fc.tuple(number, number).map(([x, y]) => point(x, y));

describe('any motions', () => {
  test('composed do what one after the other does', () => {
    fc.assert(
      fc.property(motions, motions, points, (outer, inner, p) => {
        expect(distance(move(compose(outer, inner), p), move(outer, move(inner, p)))).toBeLessThan(1e-9);
      }),
      runs(500, 1),
    );
  });

  test('are undone by their inverse, and keep distances', () => {
    fc.assert(
      fc.property(motions, points, points, (m, p, q) => {
        expect(distance(move(inverse(m), move(m, p)), p)).toBeLessThan(1e-9);
        expect(distance(move(m, p), move(m, q))).toBeCloseTo(distance(p, q), 9);
      }),
      runs(500, 2),
    );
  });

  test('are the matrices that files hold', () => {
    // x' = a·x + c·y + e, y' = b·x + d·y + f (ISO 32000-1, 8.3.4, number from memory; SVG 2 has the same).
    fc.assert(
      fc.property(motions, points, (m, p) => {
        const [a, b, c, d, e, f] = matrixOf(m);
        expect(distance(move(m, p), point(a * p.x + c * p.y + e, b * p.x + d * p.y + f))).toBeLessThan(1e-9);
      }),
      runs(200, 3),
    );
  });
});

describe('mirrors', () => {
  test('in x = 4, as svgpath 2.6.0 mirrors "M0 0 C1 2 3 2 4 0"', () => {
    const seen = [point(0, 0), point(1, 2), point(3, 2), point(4, 0)].map((p) =>
      move(mirror(point(4, 17), Math.PI / 2), p),
    );
    [point(8, 0), point(7, 2), point(5, 2), point(4, 0)].forEach((p, i) => {
      expect(distance(seen[i]!, p)).toBeLessThan(1e-12);
    });
  });

  test('at the join and at the centre, half a repeat apart, make a step of one repeat', () => {
    // The border with upright mirrors: two reflections make the translation (frieze groups, from memory).
    const step = compose(mirror(point(37.5, 0), Math.PI / 2), mirror(point(0, 0), Math.PI / 2));
    expect(step.flip).toBe(false);
    expect(distance(move(step, point(3, 8)), point(78, 8))).toBeLessThan(1e-12);
  });
});
