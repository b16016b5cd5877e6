/** Regions that lie side by side become one: areas by closed forms, outlines by counting. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  arc,
  chainPaths,
  closedPath,
  joinRegions,
  line,
  moveRegion,
  openPath,
  type Path,
  pathLength,
  polyline,
  type Region,
  regionArea,
  regionOf,
  reversePath,
} from '../../src/geometry/index.ts';
import { runs } from '../support/runs.ts';

const rectangle = (x: number, y: number, width: number, height: number): Region =>
  regionOf([
    polyline(
      [
        { x, y },
        { x: x + width, y },
        { x: x + width, y: y + height },
        { x, y: y + height },
      ],
      true,
    ),
  ]);

const piecesIn = ({ loops }: Region): number => loops.reduce((sum, l) => sum + l.pieces.length, 0);

describe('regions side by side', () => {
  test('two rectangles that share an edge are one with four sides', () => {
    const joined = joinRegions([rectangle(0, 0, 30, 20), rectangle(30, 0, 12, 20)]);
    expect([joined.loops.length, piecesIn(joined)]).toEqual([1, 4]);
    expect(regionArea(joined)).toBeCloseTo(840, 9);
  });

  test('an edge shared in part leaves a step on either side', () => {
    const joined = joinRegions([rectangle(0, 0, 30, 20), rectangle(30, 5, 12, 25)]);
    expect([joined.loops.length, piecesIn(joined)]).toEqual([1, 8]);
    expect(regionArea(joined)).toBeCloseTo(900, 9);
  });

  test('four round a hole keep it, and two halves of a disc make it whole', () => {
    const frame = [
      rectangle(0, 0, 40, 10),
      rectangle(0, 40, 40, 10),
      rectangle(0, 10, 10, 30),
      rectangle(30, 10, 10, 30),
    ];
    const joined = joinRegions(frame);
    expect([joined.loops.length, piecesIn(joined)]).toEqual([2, 8]);
    expect(regionArea(joined)).toBeCloseTo(2000 - 600, 9);
    const half = (from: number): Region => {
      const bow = arc({ x: 0, y: 0 }, 8, from, Math.PI);
      return regionOf([closedPath([bow, line(bow.to, bow.from)])]);
    };
    const disc = joinRegions([half(0), half(Math.PI)]);
    expect(disc.loops.length).toBe(1);
    expect(regionArea(disc)).toBeCloseTo(Math.PI * 64, 9);
  });

  test('what touches nothing comes back as it is, and turned over keeps its area', () => {
    const apart = [rectangle(0, 0, 3, 4), rectangle(10, 0, 5, 6)];
    expect(regionArea(joinRegions(apart))).toBeCloseTo(42, 9);
    const over = moveRegion(rectangle(1, 2, 3, 4), { flip: true, angle: 0.3, x: 5, y: 7 });
    expect(regionArea(over)).toBeCloseTo(12, 9);
  });

  test('a rectangle cut into rectangles at random is whole again, wherever it lies', () => {
    const cut = (r: readonly number[], depth: number, next: () => number): number[][] => {
      const [x, y, w, h] = r as [number, number, number, number];
      if (depth === 0) return [[...r]];
      const t = 0.2 + 0.6 * next();
      const halves =
        next() < 0.5
          ? [
              [x, y, w * t, h],
              [x + w * t, y, w * (1 - t), h],
            ]
          : [
              [x, y, w, h * t],
              [x, y + h * t, w, h * (1 - t)],
            ];
      return halves.flatMap((half) => cut(half, depth - 1, next));
    };
    fc.assert(
      fc.property(
        fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (stream, angle) => {
          const numbers = stream[Symbol.iterator]();
          const next = (): number => numbers.next().value as number;
          const parts = cut([0, 0, 300, 200], 5, next).map(([x, y, w, h]) =>
            moveRegion(rectangle(x!, y!, w!, h!), { flip: false, angle, x: 40, y: -70 }),
          );
          const joined = joinRegions(parts);
          expect([joined.loops.length, piecesIn(joined)]).toEqual([1, 4]);
          expect(regionArea(joined)).toBeCloseTo(60000, 5);
        },
      ),
      runs(60, 4711),
    );
  });
});

describe('paths that follow on one another', () => {
  const side = (i: number, count: number): Path => {
    const at = (k: number) => ({
      x: 10 * Math.cos((2 * Math.PI * k) / count),
      y: 10 * Math.sin((2 * Math.PI * k) / count),
    });
    return openPath([line(at(i), at(i + 1))]);
  };

  test('the sides of a polygon, in any order, are one closed path; without one of them an open one', () => {
    const sides = [3, 0, 5, 1, 4, 2].map((i) => side(i, 6));
    const [round, ...more] = chainPaths(sides);
    expect([more.length, round!.closed, round!.pieces.length]).toEqual([0, true, 6]);
    expect(pathLength(round!)).toBeCloseTo(60, 9);
    const [open, ...rest] = chainPaths(sides.slice(1));
    expect([rest.length, open!.closed, open!.pieces.length]).toEqual([0, false, 5]);
  });

  test('ends that only come near one another stay apart, and no path is turned round', () => {
    const a = openPath([line({ x: 0, y: 0 }, { x: 1, y: 0 })]);
    const b = openPath([line({ x: 1.001, y: 0 }, { x: 2, y: 0 })]);
    expect(chainPaths([a, b]).length).toBe(2);
    expect(chainPaths([a, reversePath(openPath([line({ x: 1, y: 0 }, { x: 2, y: 0 })]))]).length).toBe(2);
  });
});
