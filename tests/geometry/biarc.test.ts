import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cubicToArcs } from '../../src/geometry/biarc.ts';
import { type Piece, pieceDirection, pieceLength } from '../../src/geometry/piece.ts';
import { distance, turnBetween } from '../../src/geometry/point.ts';
import { runs } from '../support/runs.ts';
import { curveToPieces, type Four, four, piecesToCurve, pointOn } from './curve-helpers.ts';

const TOLERANCE = 0.002;
const arcsOf = (c: Four, tolerance = TOLERANCE): Piece[] => cubicToArcs(c[0], c[1], c[2], c[3], tolerance);
const lengthOf = (pieces: readonly Piece[]): number => pieces.reduce((s, p) => s + pieceLength(p), 0);

const kinks = (pieces: readonly Piece[]): number[] =>
  pieces.slice(1).map((p, i) => Math.abs(turnBetween(pieceDirection(pieces[i]!, 1), pieceDirection(p, 0))));

const expectSound = (c: Four, pieces: readonly Piece[]): void => {
  expect(pieces[0]!.from).toEqual(c[0]);
  expect(pieces.at(-1)!.to).toEqual(c[3]);
  for (let i = 1; i < pieces.length; i++) expect(pieces[i]!.from).toEqual(pieces[i - 1]!.to);
  for (const p of pieces) {
    expect(Number.isFinite(pieceLength(p))).toBe(true);
    // Stored angles and stored ends must tell the same story.
    expect(distance(pointOn(p, 0), p.from)).toBeLessThan(1e-7);
    expect(distance(pointOn(p, 1), p.to)).toBeLessThan(1e-7);
  }
};

// Lengths and turnings in closed form or by quadrature at 25 digits (mpmath). The first is a
// Pythagorean-hodograph cubic of length 200 exactly and turning −π; the second curve's published length is
// 213.8 ± 0.1 (svg-path-properties, test/length.test.ts).
const KNOWN = [
  { name: 'a bow of exact length', c: four(0, 0, 0, 100, 100, 100, 100, 0), length: 200, turning: -Math.PI },
  {
    name: 'a general curve',
    c: four(100, 25, 10, 90, 110, 100, 150, 195),
    length: 213.862063126467,
    turning: -1.34383373222209,
  },
  { name: 'an S', c: four(0, 0, 100, 0, 0, 100, 100, 100), length: 167.654262742029, turning: 0 },
] as const;

describe('curves of known length', () => {
  for (const { name, c, length, turning } of KNOWN) {
    for (const tolerance of [0.1, 0.002, 0.0001]) {
      it(`${name} within ${tolerance} mm, both ways`, () => {
        const pieces = arcsOf(c, tolerance);
        expectSound(c, pieces);
        expect(curveToPieces(c, pieces, 500)).toBeLessThan(tolerance);
        expect(piecesToCurve(c, pieces, 9)).toBeLessThan(tolerance);
        // Two curves with equal ends and tangents: lengths differ by less than the distance times the
        // turning, and by much less where it is to and fro.
        expect(Math.abs(lengthOf(pieces) - length)).toBeLessThan(tolerance * 4);
        const turned = pieces.reduce((s, p) => s + (p.kind === 'arc' ? p.sweep : 0), 0);
        expect(turned).toBeCloseTo(turning, 5);
        // One tangent throughout, but that an arc which rises less than 1e-7 mm becomes a line.
        for (const kink of kinks(pieces)) expect(kink).toBeLessThan(1e-5);
      });
    }
  }

  it('needs pieces as the cube root of the tolerance: an eighth takes twice as many', () => {
    const counts = [0.016, 0.002, 0.00025].map((t) => arcsOf(KNOWN[0].c, t).length);
    expect(counts[1]! / counts[0]!).toBeGreaterThan(1.6);
    expect(counts[1]! / counts[0]!).toBeLessThan(2.6);
    expect(counts[2]! / counts[1]!).toBeGreaterThan(1.6);
    expect(counts[2]! / counts[1]!).toBeLessThan(2.4);
  });
});

const NASTY: readonly { name: string; c: Four; sharp?: boolean }[] = [
  { name: 'no handle at the start', c: four(0, 0, 0, 0, 50, 100, 100, 0) },
  { name: 'no handle at the end', c: four(0, 0, 50, 100, 100, 0, 100, 0) },
  { name: 'a cusp', c: four(0, 0, 100, 100, 0, 100, 100, 0), sharp: true },
  { name: 'almost a cusp, with a small loop', c: four(0, 0, 100.001, 100, 0, 100, 100, 0), sharp: true },
  { name: 'almost a cusp, without a loop', c: four(0, 0, 99.999, 100, 0, 100, 100, 0), sharp: true },
  { name: 'a loop', c: four(0, 0, 200, 100, -100, 100, 100, 0) },
  { name: 'a loop back to the start', c: four(0, 0, 100, 100, -100, 100, 0, 0) },
  { name: 'nearly straight', c: four(0, 0, 30, 0.001, 60, -0.001, 100, 0) },
  { name: 'a hairpin', c: four(0, 0, 100, 0.1, 100, -0.1, 0, 0.05), sharp: true },
  {
    // From the tests of a Rust curve library (linebender/kurbo, offset.rs), where it broke a solver.
    name: 'a long curve with a tight end',
    c: four(
      -1236.3746269978635,
      152.17981429574826,
      -1175.18662093517,
      108.04721798590596,
      -1152.142883879584,
      105.76260301083356,
      -1151.842639804639,
      105.73040758939104,
    ),
  },
];

describe('nasty curves', () => {
  for (const { name, c, sharp } of NASTY) {
    it(name, () => {
      const pieces = arcsOf(c);
      expectSound(c, pieces);
      expect(pieces.length).toBeLessThan(80);
      expect(curveToPieces(c, pieces, 800)).toBeLessThan(TOLERANCE);
      expect(piecesToCurve(c, pieces, 7)).toBeLessThan(TOLERANCE);
      const corners = kinks(pieces).filter((k) => k > 1e-4).length;
      expect(corners).toBeLessThanOrEqual(sharp ? 4 : 0);
    });
  }

  it('one point gives nothing', () => {
    expect(arcsOf(four(5, 5, 5, 5, 5, 5, 5, 5))).toEqual([]);
  });

  it('a straight curve is one line', () => {
    const pieces = arcsOf(four(0, 0, 10, 0, 20, 0, 30, 0));
    expect(pieces).toEqual([{ kind: 'line', from: { x: 0, y: 0 }, to: { x: 30, y: 0 } }]);
    expect(arcsOf(four(0, 0, 0, 0, 30, 40, 30, 40))).toHaveLength(1);
    expect(arcsOf(four(0.1, 0.2, 0.2, 0.4, 0.3, 0.6, 0.4, 0.8))).toHaveLength(1);
  });

  it('a curve that doubles back on a line runs as far as it goes', () => {
    // x(t) = 0, 60, −30, 30 in Bernstein form: x′ = 0 at t = (1 ± 1/√5)/2, by hand from 3(60 − 300t + 300t²)
    // = 0.
    const x = (t: number): number => 3 * 60 * t * (1 - t) ** 2 - 3 * 30 * t * t * (1 - t) + 30 * t ** 3;
    const pieces = arcsOf(four(0, 0, 60, 0, -30, 0, 30, 0));
    expect(pieces.map((p) => p.kind)).toEqual(['line', 'line', 'line']);
    expect(pieces[0]!.to.x).toBeCloseTo(x((1 - Math.sqrt(0.2)) / 2), 9);
    expect(pieces[1]!.to.x).toBeCloseTo(x((1 + Math.sqrt(0.2)) / 2), 9);
  });

  it('huge and tiny curves end, and stay finite', () => {
    for (const size of [1e-9, 1e-6, 1e-3, 1e3, 1e6, 1e9, 1e15]) {
      const c = four(0, 0, 0, size, size, size, size, 0);
      const pieces = arcsOf(c);
      expect(pieces.length).toBeGreaterThan(0);
      expect(pieces.length).toBeLessThan(10_000);
      expect(lengthOf(pieces) / (2 * size)).toBeGreaterThan(0.49);
      expect(lengthOf(pieces) / (2 * size)).toBeLessThan(1.01);
    }
  });

  it('numbers that are not finite are an error of the caller', () => {
    expect(() => arcsOf(four(0, 0, Number.NaN, 0, 1, 1, 2, 2))).toThrow(RangeError);
    expect(() => arcsOf(four(0, 0, 1, 0, 1, 1, 2, 2), Number.NaN)).toThrow(RangeError);
  });
});

it('a centre so far away that its angles lose the ends makes a line', () => {
  // Found by a long run: an arc of 1e9 mm, whose angles said 1.2e-7 mm beside the ends that it is stored with.
  const c = four(0, 0, 0, 0, 0, 16, 3.3373e-6, -34.685);
  const pieces = arcsOf(c);
  expectSound(c, pieces);
  expect(curveToPieces(c, pieces, 400)).toBeLessThan(TOLERANCE);
  // Where such a curve is long enough to show (3 mm of rise over 2 km), it is followed by several lines.
  const long = four(0, 0, 7e5, 4, 1.3e6, 4, 2e6, 0);
  expectSound(long, arcsOf(long));
  expect(curveToPieces(long, arcsOf(long), 400)).toBeLessThan(TOLERANCE);
});

it('a start that bends without limit is followed within the tolerance between the samples too', () => {
  // Found by a long run: the first handle is all but without length, so that the curve sets out as y = x^1.5 does. Looked
  // at in eight places an arc, it was taken for 0.00186 mm away where it was 0.002008.
  const c = four(50, 0, 50 + 1e-9, 0, 56, 0, 0, 12);
  const pieces = arcsOf(c);
  expectSound(c, pieces);
  expect(pieces.length).toBeLessThanOrEqual(14);
  expect(curveToPieces(c, pieces, 4000)).toBeLessThan(TOLERANCE);
  expect(piecesToCurve(c, pieces, 40)).toBeLessThan(TOLERANCE);
});

describe('any curve', () => {
  const coordinate = fc.oneof(
    fc.integer({ min: -100, max: 100 }),
    fc.double({ min: -100, max: 100, noNaN: true }),
    fc.constantFrom(0, 1e-9, 50, 50 + 1e-9),
  );
  it('is followed within the tolerance, end to end', () => {
    fc.assert(
      fc.property(fc.array(coordinate, { minLength: 8, maxLength: 8 }), (n) => {
        const c = four(...n);
        const pieces = arcsOf(c);
        if (pieces.length === 0) {
          expect(Math.max(...c.map((p) => distance(p, c[0])))).toBeLessThan(1e-6);
          return;
        }
        expectSound(c, pieces);
        expect(curveToPieces(c, pieces, 100)).toBeLessThan(TOLERANCE);
        expect(piecesToCurve(c, pieces, 3)).toBeLessThan(TOLERANCE);
      }),
      runs(80, 20),
    );
  });
});
