/**
 * Paths cut at a region's edge: what is left is as long as sampling says, hangs together, and is made of the lines and
 * circles that it was cut from. Corners of the paths lie on the edge, or a hair off it.
 */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { closedPath, openPath, type Path, pathLength, polyline } from '../../src/geometry/path.ts';
import { arc, arcByRise, type Piece } from '../../src/geometry/piece.ts';
import { distance, type Point, point } from '../../src/geometry/point.ts';
import { clipperOf, regionOf } from '../../src/geometry/region.ts';
import { runs } from '../support/runs.ts';
import { pointOn } from './curve-helpers.ts';
import { distanceToPieces, lengthOf, totalLength } from './foot-checks.ts';

/** A square of 40 mm with a round hole, and whether a point is in it: by its coordinates. */
const HALF = 20;
const HOLE = 7;
const ring = arc(point(0, 0), HOLE, 0, 2 * Math.PI);
const square = polyline(
  [point(-HALF, -HALF), point(HALF, -HALF), point(HALF, HALF), point(-HALF, HALF)],
  true,
);
const region = regionOf([square, closedPath([{ ...ring, to: ring.from }])]);
/** How far (mm) a point is inside; what lies within rounding of the edge may be counted either way. */
const depthOf = ({ x, y }: Point): number =>
  Math.min(HALF - Math.abs(x), HALF - Math.abs(y), Math.hypot(x, y) - HOLE);
const IN_DOUBT = 2e-6;

test('a corner a rounding off the edge does not stretch the piece before it', () => {
  // Out of the square, on to its upper side, and back in: the second line's first 1e-13 mm lie outside, and the first
  // line, which is outside all along, came back as a line to the second one's end.
  for (const off of [0, 1e-13, -1e-13, 1e-10, -1e-10, 1e-9, -1e-9]) {
    const corner = point(13, HALF + off);
    const [before, after] = [point(2, 10), point(-15, 10)];
    const parts = clipperOf(region)(polyline([before, corner, after]));
    const pieces = parts.flatMap((p) => p.pieces);
    expect(pieces).toHaveLength(2);
    expect(distance(pieces[0]!.from, before)).toBe(0);
    expect(distance(pieces[0]!.to, corner)).toBeLessThan(1e-8);
    expect(distance(pieces[1]!.from, corner)).toBeLessThan(1e-8);
    expect(distance(pieces[1]!.to, after)).toBe(0);
    const bent = clipperOf(region)(
      openPath([arcByRise(before, corner, -2), arcByRise(corner, after, 3)]),
    ).flatMap((p) => p.pieces);
    expect(bent).toHaveLength(2);
    for (const p of bent)
      for (const [t, end] of [[0, p.from] as const, [1, p.to] as const])
        expect(distance(pointOn(p, t), end)).toBeLessThan(1e-8);
  }
});

const hair = fc.constantFrom(0, 0, 1e-13, -1e-13, 1e-10, -1e-10, 1e-9, -1e-9, 1e-8, 1e-6, -1e-6);
const anywhere = fc.double({ min: -30, max: 30, noNaN: true });
const along = fc.double({ min: -HALF, max: HALF, noNaN: true });
const places: fc.Arbitrary<Point> = fc.oneof(
  fc.tuple(anywhere, anywhere).map(([x, y]) => point(x, y)),
  fc
    .tuple(fc.oneof(along, fc.constantFrom(HALF, -HALF)), hair, fc.integer({ min: 0, max: 3 }))
    .map(([s, off, side]) => {
      const h = HALF + off;
      return [point(s, h), point(s, -h), point(h, s), point(-h, s)][side]!;
    }),
  fc
    .tuple(fc.double({ min: 0, max: 6.28, noNaN: true }), hair)
    .map(([a, off]) => point((HOLE + off) * Math.cos(a), (HOLE + off) * Math.sin(a))),
);
const rises = fc.oneof(
  fc.constant(0),
  fc.double({ min: 0.01, max: 9, noNaN: true }),
  fc.double({ min: -9, max: -0.01, noNaN: true }),
);
const paths: fc.Arbitrary<Path> = fc
  .tuple(places, fc.array(fc.tuple(places, rises), { minLength: 1, maxLength: 6 }), fc.boolean())
  .map(([start, steps, closed]) => {
    const pieces: Piece[] = [];
    let at = start;
    for (const [to, rise] of closed ? [...steps, [start, 0] as const] : steps) {
      if (distance(at, to) > 1e-3) {
        pieces.push(arcByRise(at, to, rise));
        at = to;
      }
    }
    return closed ? closedPath(pieces) : openPath(pieces);
  })
  // A path that ends a hair from its start is not closed.
  .filter(({ pieces, closed }) => pieces.length > 0 && (!closed || pieces.at(-1)!.to === pieces[0]!.from));

test('what is left is as long as sampling says, on the same lines and circles', () => {
  const STEP = 0.01;
  let kept = 0;
  fc.assert(
    fc.property(paths, (path) => {
      const parts = clipperOf(region)(path);
      const pieces = parts.flatMap((p) => p.pieces);
      let [least, most, slack] = [0, 0, 1e-6];
      for (const p of path.pieces) {
        const count = Math.ceil(lengthOf(p) / STEP);
        let before = Number.NaN;
        for (let i = 0; i < count; i++) {
          const depth = depthOf(pointOn(p, (i + 0.5) / count));
          if (depth > IN_DOUBT) least += lengthOf(p) / count;
          if (depth > -IN_DOUBT) most += lengthOf(p) / count;
          if (!(Math.sign(depth) === Math.sign(before))) slack += STEP;
          before = depth;
        }
      }
      expect(totalLength(pieces)).toBeGreaterThan(least - slack);
      expect(totalLength(pieces)).toBeLessThan(most + slack);
      kept += least;
      for (const part of parts) {
        expect(pathLength(part)).toBeGreaterThan(0);
        part.pieces.forEach((p, i) => {
          // Both the angles and the ends that are kept beside them.
          for (const [t, end] of [[0, p.from] as const, [1, p.to] as const])
            expect(distance(pointOn(p, t), end)).toBeLessThan(1e-9);
          if (i > 0) expect(distance(part.pieces[i - 1]!.to, p.from)).toBe(0);
          for (const t of [0, 0.37, 1]) {
            expect(distanceToPieces(pointOn(p, t), path.pieces)).toBeLessThan(1e-9);
            expect(depthOf(pointOn(p, t))).toBeGreaterThan(-IN_DOUBT);
          }
        });
      }
    }),
    runs(500, 5120417),
  );
  expect(kept).toBeGreaterThan(5000);
});
