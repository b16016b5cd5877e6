/** The rolling foot against closed forms: Steiner's formula, corner rules, curves whose parallels are known exactly. */

import { describe, expect, test } from 'vitest';
import { cubicToArcs } from '../../src/geometry/biarc.ts';
import { closedPath, openPath, type Path, polyline, reversePath } from '../../src/geometry/path.ts';
import { arc, line, type Piece } from '../../src/geometry/piece.ts';
import { point } from '../../src/geometry/point.ts';
import { rollFoot, rollFootRound, type StitchedEdge } from '../../src/geometry/rolling-foot.ts';
import { bezier, distanceTo, four, piecesToCurve, pointOn } from './curve-helpers.ts';
import { areaOf, deviation, totalLength } from './foot-checks.ts';

const points = (...n: readonly number[]) =>
  Array.from({ length: n.length / 2 }, (_, i) => point(n[2 * i]!, n[2 * i + 1]!));

const rolled = (edge: Path, c: number, roundEnd = 0): StitchedEdge => {
  const r = rollFoot(edge, c, { roundEnd });
  if (!r.ok) throw new Error(`no way: ${r.fault.kind}`);
  return r.value;
};

const rolledRound = (outline: Path, c: number): StitchedEdge => {
  const r = rollFootRound(outline, c);
  if (!r.ok) throw new Error(`no way: ${r.fault.kind}`);
  expect(r.value).toHaveLength(1);
  return r.value[0]!;
};

const PI = Math.PI;

/** Counterclockwise; the foot goes outside the reverse. */
const SQUARE = polyline(points(0, 0, 10, 0, 10, 10, 0, 10), true);
const RECTANGLE = polyline(points(0, 0, 6, 0, 6, 4, 0, 4), true);
const TRIANGLE = polyline(points(0, 0, 4, 0, 0, 3), true);
const L_SHAPE = polyline(points(0, 0, 4, 0, 4, 2, 2, 2, 2, 4, 0, 4), true);

describe('closed outlines', () => {
  // Steiner: L(r) = L + 2πr, A(r) = A + Lr + πr² for convex outlines (do Carmo, Differential Geometry of Curves
  // and Surfaces, exercise 1-7.6, number from memory), evaluated to ten decimals.
  const outside: readonly (readonly [string, Path, number, number, number])[] = [
    ['square', SQUARE, 1, 46.2831853072, 143.1415926536],
    ['square', SQUARE, 0.25, 41.5707963268, 110.1963495408],
    ['rectangle', RECTANGLE, 1, 26.2831853072, 47.1415926536],
    ['triangle', TRIANGLE, 1, 18.2831853072, 21.1415926536],
    ['triangle', TRIANGLE, 0.25, 13.5707963268, 9.1963495408],
    // A corner that turns inward adds no arc: A = 12 + 16r + 5π/4·r² − r², L = 16 + 5π/2·r − 2r.
    ['L-shape', L_SHAPE, 0.25, 17.4634954085, 16.1829369261],
  ];
  test.each(outside)('outside a %s (case %#)', (_, outline, c, length, area) => {
    const edge = reversePath(outline);
    const { path } = rolledRound(edge, c);
    expect(totalLength(path.pieces)).toBeCloseTo(length, 9);
    expect(-areaOf(path.pieces)).toBeCloseTo(area, 9);
    expect(deviation(path.pieces, edge.pieces, c)).toBeLessThan(1e-10);
  });

  const inside: readonly (readonly [string, Path, number, number, number])[] = [
    // Straight sides lose c at each end.
    ['square', SQUARE, 1, 32, 64],
    // Incircle radius 1; similar triangle smaller by 1 − c.
    ['triangle', TRIANGLE, 0.25, 9, 3.375],
    // A = 12 − 16r + 5r² − π/4·r², L = 16 − 10r + π/2·r.
    ['L-shape', L_SHAPE, 0.25, 13.8926990817, 8.2634126148],
  ];
  test.each(inside)('inside a %s (case %#)', (_, outline, c, length, area) => {
    const { path } = rolledRound(outline, c);
    expect(totalLength(path.pieces)).toBeCloseTo(length, 9);
    expect(areaOf(path.pieces)).toBeCloseTo(area, 9);
  });

  test('all cases ran', () => {
    expect(outside).toHaveLength(6);
    expect(inside).toHaveLength(3);
  });

  test('a circle gives a concentric circle, and none where the foot has no room', () => {
    const circle = closedPath([arc(point(2, 1), 10, 0.3, PI), arc(point(2, 1), 10, 0.3 + PI, PI)]);
    expect(totalLength(rolledRound(circle, 4).path.pieces)).toBeCloseTo(12 * PI, 9);
    expect(totalLength(rolledRound(reversePath(circle), 4).path.pieces)).toBeCloseTo(28 * PI, 9);
    for (const c of [10, 10 + 1e-9, 11]) expect(rollFootRound(circle, c)).toEqual({ ok: true, value: [] });
  });

  test('a dumbbell with a neck too narrow has a way round in each of its ends', () => {
    const dumbbell = polyline(
      points(0, 0, 20, 0, 20, 8, 40, 8, 40, 0, 60, 0, 60, 20, 40, 20, 40, 12, 20, 12, 20, 20, 0, 20),
      true,
    );
    const r = rollFootRound(dumbbell, 3);
    expect(r.ok && r.value.length).toBe(2);
    const narrow = rollFootRound(dumbbell, 1.5);
    expect(narrow.ok && narrow.value.length).toBe(1);
  });
});

describe('open edges', () => {
  test('both sides of a segment of 10, with caps, at 1', () => {
    // Segment ⊕ disc: L = 20 + 2π, the Steiner formula for a segment.
    const segment = polyline(points(0, 0, 10, 0));
    const [left, right] = [rolled(segment, 1, PI), rolled(reversePath(segment), 1, PI)];
    const loop = [...left.path.pieces, ...right.path.pieces];
    expect(totalLength(loop)).toBeCloseTo(26.2831853072, 9);
    expect(-areaOf(loop)).toBeCloseTo(23.1415926536, 9);
  });

  test('the path ends on the ends’ own normals, and a cap goes as far as asked', () => {
    const edge = polyline(points(0, 0, 10, 0));
    expect(rolled(edge, 2).path).toEqual(polyline(points(0, 2, 10, 2)));
    for (const turn of [0.1, 1, PI / 2, PI, 4]) {
      const end = rolled(edge, 2, turn).path.pieces[1]!;
      expect(totalLength([end])).toBeCloseTo(2 * Math.min(turn, PI), 12);
    }
  });

  // An outer corner that turns φ adds an arc of length cφ (elementary).
  test.each([0.001, 0.3, PI / 2, 2, 3.1])('round an outer corner of %d', (turn) => {
    const edge = polyline(points(0, 0, 20, 0, 20 + 20 * Math.cos(turn), -20 * Math.sin(turn)));
    const s = rolled(edge, 6.35);
    expect(totalLength(s.path.pieces)).toBeCloseTo(40 + 6.35 * turn, 9);
    expect(s.contacts[1]).toEqual({ from: 20, to: 20 });
    expect(s.unreached).toEqual([]);
  });

  // In a notch of angle β the centre sits c/sin(β/2) from the vertex and touches the sides c/tan(β/2) from it;
  // the disc leaves c²(cot(β/2) − (π − β)/2) unreached: elementary.
  test.each([170, 120, 90, 60, 30, 5, 1, 0.5])('in a notch of %d degrees', (degrees) => {
    const beta = (degrees * PI) / 180;
    const c = 6.35;
    const side = 20 + c / Math.tan(beta / 2);
    const far = point(side - side * Math.cos(beta), side * Math.sin(beta));
    const s = rolled(openPath([line(point(0, 0), point(side, 0)), line(point(side, 0), far)]), c);
    expect(s.path.pieces).toHaveLength(2);
    expect(totalLength(s.path.pieces)).toBeCloseTo(40, 6);
    expect(s.unreached).toHaveLength(1);
    const [u] = s.unreached;
    expect(u!.away).toBeCloseTo(c / Math.sin(beta / 2), 6);
    expect(u!.from).toBeCloseTo(20, 6);
    expect(u!.to).toBeCloseTo(2 * side - 20, 6);
    expect(Math.hypot(u!.deepest.x - side, u!.deepest.y)).toBeLessThan(1e-9);
    const corner = openPath([
      line(point(20, 0), point(side, 0)),
      line(point(side, 0), pointOn(line(point(side, 0), far), (side - 20) / side)),
    ]);
    const [a, b, t] = [corner.pieces[0]!.from, corner.pieces[1]!.to, u!.turn];
    const kite = areaOf([...corner.pieces, line(b, t), line(t, a)]);
    const left = kite - (c * c * (PI - beta)) / 2;
    expect(left).toBeCloseTo(c * c * (1 / Math.tan(beta / 2) - (PI - beta) / 2), 4);
  });

  // The parallel of an arc keeps its angle: l′ = l(R ± c)/R; none where c ≥ R on the inside.
  test('along an arc', () => {
    for (const sweep of [0.5, 2, 4]) {
      const left = rolled(openPath([arc(point(0, 0), 10, 0, sweep)]), 3);
      expect(totalLength(left.path.pieces)).toBeCloseTo(7 * sweep, 9);
      const right = rolled(openPath([arc(point(0, 0), 10, 0, -sweep)]), 3);
      expect(totalLength(right.path.pieces)).toBeCloseTo(13 * sweep, 9);
    }
    expect(rollFoot(openPath([arc(point(0, 0), 10, 0, 2)]), 10)).toMatchObject({ ok: false });
  });
});

describe('cubics, through arcs within the tolerance', () => {
  const along = (...n: readonly number[]): Piece[] => {
    const [a, b, c, d] = four(...n);
    return cubicToArcs(a, b, c, d);
  };
  // The arcs lie within 0.002 mm of the curve; the length of a parallel of some 200 mm then agrees to this.
  const LENGTH_NOISE = 0.01;

  // (0,0)(0,100)(100,100)(100,0) has the speed 300(1 − 2t + 2t²) (a Pythagorean hodograph: Farouki and Sakkalis
  // 1990, from memory), length 200, and turns −π: its parallels are 200 ± πd long, on the inside up to d = 37.5.
  const ARCH = [0, 0, 0, 100, 100, 100, 100, 0] as const;
  test.each([1, 6.35, 10, 30])('outside and inside an arch at %d', (d) => {
    const outside = rolled(openPath(along(...ARCH)), d);
    expect(Math.abs(totalLength(outside.path.pieces) - (200 + PI * d))).toBeLessThan(LENGTH_NOISE);
    const inside = rolled(reversePath(openPath(along(...ARCH))), d);
    expect(Math.abs(totalLength(inside.path.pieces) - (200 - PI * d))).toBeLessThan(LENGTH_NOISE);
    expect(inside.unreached).toEqual([]);
    for (const s of [outside, inside]) expect(trueDeviation(ARCH, s.path.pieces, d)).toBeLessThan(0.003);
  });

  test('the arch over its chord, grown by 10', () => {
    // A + Ld + πd² with A = 6000 and L = 200 + 100: 9314.1592653590. Its area is off by at most 0.002 mm × L.
    const outline = closedPath([...along(...ARCH), line(point(100, 0), point(0, 0))]);
    const { path } = rolledRound(outline, 10);
    expect(Math.abs(-areaOf(path.pieces) - 9314.159265359)).toBeLessThan(0.002 * 370);
  });

  test('a general cubic', () => {
    // Length L − d·(turning) to the left: quadrature of the exact speed and curvature to fifteen digits. The curve
    // itself is in the tests of svg-path-properties (test/length.test.ts), length 213.8 ± 0.1.
    const curve = [100, 25, 10, 90, 110, 100, 150, 195] as const;
    const edge = openPath(along(...curve));
    for (const [d, length] of [
      [5, 220.5812317876],
      [10, 227.3004004487],
      [-5, 207.1428944654],
      [-10, 200.4237258042],
    ] as const) {
      const s = d > 0 ? rolled(edge, d) : rolled(reversePath(edge), -d);
      expect(Math.abs(totalLength(s.path.pieces) - length)).toBeLessThan(LENGTH_NOISE);
      expect(trueDeviation(curve, s.path.pieces, Math.abs(d))).toBeLessThan(0.003);
    }
  });

  test('an S-curve without total turning: every parallel has its length', () => {
    // Turning 0, so L − d·0 = 167.654262742029 for |d| < 26.82 (quadrature to fifteen digits).
    const edge = openPath(along(0, 0, 100, 0, 0, 100, 100, 100));
    for (const d of [1, 6.35, 12.7, 25])
      for (const e of [edge, reversePath(edge)])
        expect(Math.abs(totalLength(rolled(e, d).path.pieces) - 167.654262742)).toBeLessThan(LENGTH_NOISE);
  });

  test('a parabola tighter than the foot: the stitching turns where its two branches cross', () => {
    // y = x² from −1 to 1 at d = 1: the parallel crosses itself on the axis at (0, 1.25), from contacts at
    // x = ±√3/2 (√(1 + 4x²) = 2d, y = x² + 1/2). As a cubic: (−1,1)(−1/3,−1/3)(1/3,−1/3)(1,1).
    const edge = openPath(
      cubicToArcs(point(-1, 1), point(-1 / 3, -1 / 3), point(1 / 3, -1 / 3), point(1, 1), 1e-7),
    );
    const s = rolled(edge, 1);
    expect(s.unreached).toHaveLength(1);
    const [u] = s.unreached;
    expect(Math.abs(u!.turn.x)).toBeLessThan(1e-5);
    expect(u!.turn.y).toBeCloseTo(1.25, 5);
    expect(u!.deepest.y).toBeCloseTo(0, 3);
    // Arc length x√(1 + 4x²)/2 + asinh(2x)/4 from 0 to √3/2 and on to 1 (1.478942857544597 in all).
    const half = (x: number): number => (x * Math.sqrt(1 + 4 * x * x)) / 2 + Math.asinh(2 * x) / 4;
    expect(u!.from).toBeCloseTo(half(1) - half(Math.sqrt(3) / 2), 4);
    expect(u!.to).toBeCloseTo(half(1) + half(Math.sqrt(3) / 2), 4);
  });

  test('the very tightness that the foot can just follow is no cusp', () => {
    // The arch's tightest radius is 37.5, in its middle, where its curvature is extreme: at d = 37.5 the parallel
    // has an extraordinary point, not a pair of cusps (Farouki and Neff, CAGD 7, 1990). The whole inside is reached
    // but for what 0.002 mm of approximation may cost: the contact misses less than a few mm of the middle.
    const s = rolled(reversePath(openPath(along(...ARCH))), 37.5);
    for (const u of s.unreached) expect(u.away).toBeLessThan(37.5 + 0.01);
    expect(Math.abs(totalLength(s.path.pieces) - (200 - 37.5 * PI))).toBeLessThan(0.05);
  });

  /** | dist(point, true curve) − d |, by projection on the cubic itself. */
  const trueDeviation = (curve: readonly number[], path: readonly Piece[], d: number): number => {
    const c = bezier(four(...curve));
    const table = c.getLUT(4000);
    let worst = 0;
    for (const p of path)
      for (let i = 0; i <= 4; i++) {
        const q = pointOn(p, i / 4);
        let least = Number.POSITIVE_INFINITY;
        for (let k = 1; k < table.length; k++)
          least = Math.min(least, distanceTo(q, line(table[k - 1]!, table[k]!)));
        worst = Math.max(worst, Math.abs(least - d));
      }
    return worst;
  };
});

test('what the helpers of these tests measure is what they say', () => {
  expect(areaOf(closedPath([arc(point(0, 0), 2, 0, PI), arc(point(0, 0), 2, PI, PI)]).pieces)).toBeCloseTo(
    4 * PI,
    12,
  );
  expect(piecesToCurve(four(0, 0, 1, 0, 2, 0, 3, 0), [line(point(0, 1), point(3, 1))], 3)).toBeCloseTo(1, 9);
});
