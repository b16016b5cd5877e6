/** Holes along lines: as far apart as asked, along all of them, on them, and none in another's way. */

import { expect, test } from 'vitest';
import { pounced, quiltingAlone, type StyledDrawing } from '../../src/drawing/index.ts';
import { arc, closedPath, openPath, type Path, point, polyline } from '../../src/geometry/index.ts';
import { BLACK, drawingOf } from '../output/svg/fixture.ts';

const drawn = (...paths: readonly Path[]): StyledDrawing =>
  drawingOf({ stitch: paths.map((path) => ({ kind: 'path', role: 'stitch', path, stroke: BLACK })) });

/** The middles of the holes, each of which is one circle of 1 mm. */
const middles = (drawing: StyledDrawing): { x: number; y: number }[] =>
  Object.values(drawing.layers)
    .flat()
    .map((item) => {
      if (item.kind !== 'path') throw new Error('Not a line');
      const [circle, ...more] = item.path.pieces;
      expect(more).toEqual([]);
      if (circle?.kind !== 'arc') throw new Error('Not a circle');
      expect(circle.radius).toBe(0.5);
      expect(Math.abs(circle.sweep)).toBeCloseTo(2 * Math.PI, 12);
      return circle.center;
    });

const apart = (a: { x: number; y: number }, b: { x: number; y: number }) => Math.hypot(a.x - b.x, a.y - b.y);

test('a straight line has a hole at both ends and one every 3 mm', () => {
  const holes = middles(pounced(drawn(polyline([point(0, 0), point(30, 0)])), 3));
  expect(holes.map(({ x }) => x)).toEqual(Array.from({ length: 11 }, (_, i) => expect.closeTo(3 * i, 9)));
});

test('what does not divide is divided evenly, a little less apart', () => {
  const holes = middles(pounced(drawn(polyline([point(0, 0), point(31, 0)])), 3));
  // 31 mm in eleven steps.
  expect(holes.map(({ x }) => x)).toEqual(
    Array.from({ length: 12 }, (_, i) => expect.closeTo((31 / 11) * i, 9)),
  );
});

test('a circle has holes all round it, the first not twice', () => {
  // 2π·10 mm in at least 62.8 / 3 steps: 21.
  const holes = middles(pounced(drawn(closedPath([arc(point(5, 5), 10, 1, 2 * Math.PI)])), 3));
  expect(holes.length).toBe(21);
  for (const at of holes) expect(apart(at, { x: 5, y: 5 })).toBeCloseTo(10, 9);
  holes.forEach((at, i) => {
    // The chord of a 21st of the circle.
    expect(apart(at, holes[(i + 1) % 21]!)).toBeCloseTo(20 * Math.sin(Math.PI / 21), 9);
  });
});

test('a corner has a hole of its own', () => {
  const holes = middles(pounced(drawn(polyline([point(0, 0), point(10, 0), point(10, 10)])), 4));
  expect(holes.some((at) => apart(at, { x: 10, y: 0 }) < 1e-9)).toBe(true);
  // Each side in three steps of 3.33 mm.
  expect(holes.length).toBe(7);
});

test('where lines meet or run over one another there is one hole, and the line that matters more has it', () => {
  const along = polyline([point(0, 0), point(30, 0)]);
  const twice = drawn(along, openPath(along.pieces));
  expect(middles(pounced(twice, 3)).length).toBe(11);
  const withFill = {
    ...twice,
    layers: {
      ...twice.layers,
      fill: [{ kind: 'path', path: polyline([point(0.4, 0), point(0.4, 30)]), stroke: BLACK }] as const,
    },
  };
  const { stitch, fill } = pounced(withFill, 3).layers;
  expect(stitch.length).toBe(11);
  // Of its own eleven the first lies in the way of the stitching's.
  expect(fill.length).toBe(10);
});

test('words and all that is not stitched are left out', () => {
  const { layers } = pounced(
    quiltingAlone(
      drawingOf({
        stitch: [{ kind: 'path', path: polyline([point(0, 0), point(9, 0)]), stroke: BLACK }],
        marks: [{ kind: 'path', path: polyline([point(0, 5), point(9, 5)]), stroke: BLACK }],
      }),
    ),
    3,
  );
  expect(layers.marks).toEqual([]);
  expect(layers.stitch.length).toBe(4);
});

test('holes that would tear the paper are a mistake of the caller', () => {
  expect(() => pounced(drawn(polyline([point(0, 0), point(9, 0)])), 1.9)).toThrow('apart');
});
