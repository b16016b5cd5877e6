/** Fair curves and arc splines, against circles, lines and what they promise. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  arcSpline,
  cubicToArcs,
  fairCurve,
  nearnessOf,
  openPath,
  type Path,
  type Point,
  pieceDirection,
  pieceLength,
  pointAlong,
  turnBetween,
} from '../../src/geometry/index.ts';
import { runs } from '../support/runs.ts';

const circle = (radius: number, from: number, to: number, count: number): Point[] =>
  Array.from({ length: count }, (_, i) => {
    const a = from + ((to - from) * i) / (count - 1);
    return { x: radius * Math.cos(a), y: radius * Math.sin(a) };
  });

const alongPath = (path: Path, step: number): Point[] => {
  const length = path.pieces.reduce((s, p) => s + pieceLength(p), 0);
  const count = Math.ceil(length / step);
  return Array.from({ length: count + 1 }, (_, i) => pointAlong(path, (length * i) / count)!);
};

describe('the fewest lines and arcs', () => {
  test('of a circle are one arc with its radius, at any tolerance', () => {
    for (const tolerance of [1, 0.1, 0.01, 0.001]) {
      const { pieces, deviation } = arcSpline(circle(30, 0, 2.5, 400), { tolerance });
      expect(pieces.length).toBe(1);
      const [piece] = pieces;
      if (piece?.kind !== 'arc') throw new Error('no arc');
      expect(piece.radius).toBeCloseTo(30, 3);
      expect(piece.sweep).toBeCloseTo(2.5, 4);
      expect(deviation).toBeLessThan(1e-3);
    }
  });

  test('of a row of points on a line are that line', () => {
    const { pieces } = arcSpline(
      Array.from({ length: 100 }, (_, i) => ({ x: i, y: i / 3 })),
      { tolerance: 0.01 },
    );
    expect(pieces).toEqual([{ kind: 'line', from: { x: 0, y: 0 }, to: { x: 99, y: 33 } }]);
  });

  test('keep a flat a flat, though an arc would swallow its end', () => {
    const bend = circle(40, -Math.PI / 2, 0, 400).map((p) => ({ x: p.x + 50, y: p.y + 40 }));
    const flat = Array.from({ length: 250 }, (_, i) => ({ x: i / 5, y: 0 }));
    for (const tolerance of [0.02, 0.1, 0.3]) {
      const [first] = arcSpline([...flat, ...bend], { tolerance }).pieces;
      expect(first?.kind).toBe('line');
      // The flat may reach into the bend by as far as that leaves it by 0.02 mm or half the tolerance: √(2rt).
      const reach = Math.sqrt(2 * 40 * 2 * Math.min(tolerance / 2, 0.02));
      expect(Math.abs(pieceLength(first!) - 50)).toBeLessThan(reach + 0.4);
    }
  });

  const coordinate = fc.double({ min: 0, max: 100, noNaN: true });
  test('stay within the tolerance, join end to end, and turn little at joints, for any cubic', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ x: coordinate, y: coordinate }), { minLength: 4, maxLength: 4 }),
        fc.constantFrom(0.02, 0.1),
        ([a, b, c, d], tolerance) => {
          const curve = openPath(cubicToArcs(a!, b!, c!, d!));
          const length = curve.pieces.reduce((s, p) => s + pieceLength(p), 0);
          // Sharper bends than 2 mm want denser points than these.
          const isTame = curve.pieces.every((p) => p.kind === 'line' || p.radius > 2);
          const isSmooth = curve.pieces.every((p, i) => {
            const next = curve.pieces[i + 1];
            return !next || Math.abs(turnBetween(pieceDirection(p, 1), pieceDirection(next, 0))) < 0.01;
          });
          fc.pre(length > 20 && isTame && isSmooth);
          const points = alongPath(curve, 0.1);
          const { pieces, deviation } = arcSpline(points, { tolerance });
          expect(deviation).toBeLessThanOrEqual(tolerance);
          const near = nearnessOf(pieces);
          for (const p of points) expect(near.distance(p)).toBeLessThanOrEqual(tolerance + 1e-9);
          pieces.forEach((p, i) => {
            const next = pieces[i + 1];
            if (!next) return;
            expect(next.from).toEqual(p.to);
            const kink = Math.abs(turnBetween(pieceDirection(p, 1), pieceDirection(next, 0)));
            expect(kink).toBeLessThan((4 * Math.PI) / 180);
          });
        },
      ),
      runs(60, 4),
    );
  });

  test('get fewer as the tolerance grows, about with its cube root', () => {
    const curve = openPath(cubicToArcs({ x: 0, y: 0 }, { x: 60, y: 0 }, { x: 60, y: 60 }, { x: 140, y: 60 }));
    const points = alongPath(curve, 0.05);
    const count = (tolerance: number): number =>
      arcSpline(points, { tolerance, kink: 0.1, flat: 1000 }).pieces.length;
    // An arc leaves a curve of even change of curvature by the third power of its length.
    const [fine, coarse] = [count(0.001), count(0.064)];
    expect(fine / coarse).toBeGreaterThan(2.5);
    expect(fine / coarse).toBeLessThan(6);
  });

  test('nothing, or one point, gives nothing', () => {
    expect(arcSpline([], { tolerance: 0.1 }).pieces).toEqual([]);
    expect(arcSpline([{ x: 1, y: 1 }], { tolerance: 0.1 }).pieces).toEqual([]);
  });
});

describe('a fair curve', () => {
  test('shrinks a circle of radius r by r·(Λ/r)⁶, and no more', () => {
    // Many turns, so that the ends do not show; the middle turn is looked at.
    for (const [radius, fairness] of [
      [3, 0.9],
      [2, 0.8],
      [5, 1],
    ] as const) {
      const points = circle(radius, 0, 6 * Math.PI, 1500);
      const curve = fairCurve(points, { step: 0.05, fairness, heldEnds: false });
      const { x, y } = curve[Math.floor(curve.length / 2)]!;
      const share = (fairness / radius) ** 6;
      const wanted = radius - radius / (1 + share);
      expect(radius - Math.hypot(x, y)).toBeGreaterThan(wanted * 0.9 - 1e-4);
      expect(radius - Math.hypot(x, y)).toBeLessThan(wanted * 1.1 + 1e-4);
    }
  });

  test('leaves a parabola in its length alone, and goes through held ends', () => {
    const points = Array.from({ length: 60 }, (_, i) => ({ x: i, y: 5 }));
    const curve = fairCurve(points, { step: 0.5, fairness: 5, heldEnds: true });
    for (const p of curve) expect(Math.abs(p.y - 5)).toBeLessThan(1e-6);
    expect(curve[0]).toEqual(points[0]);
    expect(curve.at(-1)).toEqual(points.at(-1));
  });

  test('takes noise away', () => {
    let state = 7;
    const random = (): number => {
      state = (state * 16807) % 2147483647;
      return state / 2147483647 - 0.5;
    };
    const points = circle(30, 0, 2, 1000).map((p) => ({ x: p.x + 0.1 * random(), y: p.y + 0.1 * random() }));
    const curve = fairCurve(points, { step: 0.2, fairness: 0.5, heldEnds: false });
    const off = curve.map((p) => Math.abs(Math.hypot(p.x, p.y) - 30));
    expect(Math.max(...off)).toBeLessThan(0.04);
  });

  test('of too few points is none, and a step of nothing is refused', () => {
    expect(fairCurve([{ x: 0, y: 0 }], { step: 1, fairness: 1, heldEnds: true })).toEqual([]);
    const points = [
      { x: 0, y: 0 },
      { x: 9, y: 0 },
    ];
    expect(() => fairCurve(points, { step: Number.NaN, fairness: 1, heldEnds: true })).toThrow(RangeError);
    expect(() => fairCurve(points, { step: 1e-9, fairness: 1, heldEnds: true })).toThrow(RangeError);
  });
});
