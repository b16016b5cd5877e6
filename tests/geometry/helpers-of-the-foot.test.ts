/** What the swags ask of a stitched edge: contacts, support, meetings with lines, nearness. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { endAlong, startAlong } from '../../src/geometry/contact.ts';
import { crossings } from '../../src/geometry/crossing.ts';
import { firstMeetingWithLine, meetingsWithLine } from '../../src/geometry/line-cut.ts';
import { linkLoops, runOf } from '../../src/geometry/loops.ts';
import { nearnessOf } from '../../src/geometry/nearness.ts';
import { openPath, polyline } from '../../src/geometry/path.ts';
import { arc, arcBetween, line, type Piece, reversePiece } from '../../src/geometry/piece.ts';
import { type Point, point } from '../../src/geometry/point.ts';
import { rollFoot } from '../../src/geometry/rolling-foot.ts';
import { supportOf } from '../../src/geometry/support.ts';
import { runs } from '../support/runs.ts';
import { distanceTo } from './curve-helpers.ts';
import { distanceToPieces, samplesOf } from './foot-checks.ts';

const SEED = 7;

const coordinate = fc.double({ min: -50, max: 50, noNaN: true });
const points = fc.record({ x: coordinate, y: coordinate });
const lines = fc
  .tuple(points, points)
  .filter(([a, b]) => Math.abs(a.x - b.x) + Math.abs(a.y - b.y) > 1e-3)
  .map(([a, b]) => line(a, b));
const arcs = fc
  .tuple(
    points,
    fc.double({ min: 0.1, max: 60, noNaN: true }),
    coordinate,
    fc.double({ min: -6.2, max: 6.2, noNaN: true }),
  )
  .filter(([, , , sweep]) => Math.abs(sweep) > 1e-3)
  .map(([center, radius, start, sweep]): Piece => arc(center, radius, start, sweep));
const pieces = fc.oneof(lines, arcs);

describe('contacts', () => {
  // A notch of 90° between two lines, then an outer corner of 90°: c = 1.
  const rolled = rollFoot(polyline([point(0, 0), point(10, 0), point(10, 10), point(20, 10)]), 1);
  if (!rolled.ok) throw new Error('no way');
  const s = rolled.value;
  // Along y = 1 to x = 9, up x = 9 to y = 10, round (10, 10), and along y = 11.
  const quarter = Math.PI / 2;
  test.each([
    ['the heel', 0, 0, 0],
    ['within a stretch', 4, 4, 4],
    ['where the foot turns in the notch', 9, 9, 9],
    ['the notch itself, which it cannot reach', 10, 9, 9],
    ['beyond the notch', 12, 10, 10],
    ['the outer corner: stop before its arc, start after it', 20, 18, 18 + quarter],
    ['the crown end', 30, 28 + quarter, 28 + quarter],
  ])('%s', (_, place, stop, start) => {
    expect(endAlong(s, place)).toBeCloseTo(stop, 9);
    expect(startAlong(s, place)).toBeCloseTo(start, 9);
  });
});

test('crossings lie on both pieces', () => {
  let met = 0;
  fc.assert(
    fc.property(pieces, pieces, (a, b) => {
      for (const c of crossings(a, b)) {
        met++;
        // Beside a tangency the meeting may lie beyond an end by more than the slack.
        expect(distanceTo(c.point, a)).toBeLessThan(1e-7);
        expect(distanceTo(c.point, b)).toBeLessThan(1e-7);
      }
    }),
    runs(3000, SEED),
  );
  expect(met).toBeGreaterThan(500);
});

test('no crossing is passed over: where two lie on both sides of each other, there is one', () => {
  // A chord through an arc's middle, from its centre outward: it crosses once by construction.
  let met = 0;
  fc.assert(
    fc.property(arcs, fc.double({ min: 0.02, max: 0.98, noNaN: true }), (a, t) => {
      if (a.kind !== 'arc') return;
      const angle = a.start + a.sweep * t;
      const out = point(
        a.center.x + 2 * a.radius * Math.cos(angle),
        a.center.y + 2 * a.radius * Math.sin(angle),
      );
      const found = crossings(line(a.center, out), a);
      expect(found).toHaveLength(1);
      expect(found[0]!.b).toBeCloseTo(t, 9);
      met++;
    }),
    runs(500, SEED),
  );
  expect(met).toBe(runs(500, SEED).numRuns);
});

test('nearness is the least distance', () => {
  fc.assert(
    fc.property(fc.array(pieces, { minLength: 1, maxLength: 20 }), points, (all, p) => {
      const near = nearnessOf(all);
      const least = distanceToPieces(p, all);
      expect(near.distance(p)).toBeCloseTo(least, 9);
      expect(near.nearer(p, least + 1e-6)).toBe(true);
      if (least > 1e-6) expect(near.nearer(p, least - 1e-6)).toBe(false);
      expect(distanceTo(p, all[near.nearest(p)]!)).toBeCloseTo(least, 9);
    }),
    runs(500, SEED),
  );
  expect(nearnessOf([]).distance(point(0, 0))).toBe(Number.POSITIVE_INFINITY);
  expect(nearnessOf([]).nearest(point(0, 0))).toBe(-1);
});

test('support is the farthest reach of any point of the path', () => {
  fc.assert(
    fc.property(arcs, lines, coordinate, (a, b, angle) => {
      const path = openPath([a, line(a.to, b.to)]);
      const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
      const sampled = Math.max(...samplesOf(path.pieces, 0.2).map((p) => p.x * ux + p.y * uy));
      const reach = supportOf(path)(ux, uy);
      expect(reach).toBeGreaterThanOrEqual(sampled - 1e-9);
      // A chord of 0.2 mm of a circle of at least 0.1 mm hides less than its half.
      expect(reach).toBeLessThan(sampled + 0.1);
    }),
    runs(300, SEED),
  );
  expect(supportOf(openPath([]))(1, 0)).toBe(Number.NEGATIVE_INFINITY);
});

test('meetings with a line, in the order of the path, and the first beyond a place', () => {
  const half = openPath([arc(point(0, 0), 5, 0, Math.PI), line(point(-5, 0), point(5, -3))]);
  const found = meetingsWithLine(half, point(0, 0), point(0, 1));
  expect(found).toHaveLength(2);
  expect(found[0]!.along).toBeCloseTo((5 * Math.PI) / 2, 9);
  expect(found[0]!.point.y).toBeCloseTo(5, 9);
  expect(found[1]!.point.y).toBeCloseTo(-1.5, 9);
  expect(firstMeetingWithLine(half, point(0, 0), point(0, 1), 0)).toEqual(found[0]);
  expect(firstMeetingWithLine(half, point(0, 0), point(0, 1), found[0]!.along)).toEqual(found[1]);
  expect(firstMeetingWithLine(half, point(0, 0), point(0, 1), found[1]!.along)).toBeUndefined();
  expect(meetingsWithLine(openPath([]), point(0, 0), point(1, 0))).toEqual([]);
});

describe('linking stretches', () => {
  // At turned corners a swag's two halves come as near as the foot is wide, and a channel is as wide as half of it: its
  // lines touch in the neck, one leads straight back beside the other, and no direction tells on which side.
  test('lines that touch part what they enclose, whichever way they lie', () => {
    for (let k = 0; k < 200; k++) {
      const [cos, sin] = [Math.cos(k / 30), Math.sin(k / 30)];
      const at = (x: number, y: number): Point => point(cos * x - sin * y, sin * x + cos * y);
      // Two discs of radius 1 that touch, under a roof and over a floor: a room above and one below them.
      const room = (up: 1 | -1): Piece[] => [
        arcBetween(at(up, 0), at(0, 0), at(up, up), false),
        line(at(up, up), at(-up, up)),
        arcBetween(at(-up, 0), at(-up, up), at(0, 0), false),
      ];
      const linked = linkLoops(
        [...room(1), ...room(-1)].map((p) => runOf(p)),
        1e-6,
      );
      expect(linked).toEqual([
        [0, 1, 2],
        [3, 4, 5],
      ]);
      // What the discs and what is beside them fill hangs together at the place where they touch.
      const back = [...room(1), ...room(-1)].map((p) => runOf(reversePiece(p)));
      expect(linkLoops(back, 1e-6)).toEqual([[0, 5, 4, 3, 2, 1]]);
    }
  });
});
