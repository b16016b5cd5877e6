/** How a fill is sewn, as it is drawn on it. */

import { describe, expect, it } from 'vitest';
import { wayMarks } from '../../src/drawing/way-marks.ts';
import { point, polyline } from '../../src/geometry/index.ts';

const FACTS = { region: 'swag', fill: 'lines' };

describe('the way of a fill', () => {
  it('starts with a dot on the first place, and stops with a bar square to the last', () => {
    const line = polyline([point(10, 20), point(110, 20), point(110, 70)]);
    const items = wayMarks([line], FACTS, true, 1);
    const middles = items.map(({ path }) => {
      const ends = path.pieces.flatMap((p) => [p.from, p.to]);
      const xs = ends.map((p) => p.x);
      const ys = ends.map((p) => p.y);
      return {
        path,
        left: Math.min(...xs),
        right: Math.max(...xs),
        low: Math.min(...ys),
        high: Math.max(...ys),
      };
    });
    const dot = middles.find(({ path }) => path.pieces.some((p) => p.kind === 'arc'))!;
    expect(dot.path.pieces.filter((p) => p.kind === 'arc').map((p) => p.center)).toEqual([
      point(10, 20),
      point(10, 20),
    ]);
    const bar = middles.filter(({ path }) => path.pieces.length === 1);
    expect(bar).toHaveLength(1);
    expect([bar[0]!.low, bar[0]!.high]).toEqual([70, 70]);
    expect((bar[0]!.left + bar[0]!.right) / 2).toBeCloseTo(110, 9);
  });

  it('has arrows that point the way the line runs, and stand on it', () => {
    const there = wayMarks([polyline([point(0, 0), point(120, 0)])], FACTS, false, 1);
    const back = wayMarks([polyline([point(120, 0), point(0, 0)])], FACTS, false, 1);
    expect(there).toHaveLength(2);
    for (const [items, sign] of [
      [there, 1],
      [back, -1],
    ] as const)
      for (const { path } of items) {
        const [a, b] = path.pieces;
        // The tip lies on the line, both tails behind it, one on either side.
        expect(a!.to.y).toBeCloseTo(0, 9);
        expect(sign * (a!.to.x - a!.from.x)).toBeGreaterThan(1);
        expect(a!.from.y).toBeCloseTo(-b!.to.y, 9);
        expect(Math.abs(a!.from.y)).toBeGreaterThan(0.5);
      }
  });

  it('of many lines the first three and the last have an arrow, and what is cut off has no dot or bar', () => {
    const lines = Array.from({ length: 20 }, (_, k) => polyline([point(0, 5 * k), point(40, 5 * k)]));
    const tips = wayMarks(lines, FACTS, false, 1).map(({ path }) => path.pieces[0]!.to.y);
    expect(tips).toEqual([0, 5, 10, 95]);
  });
});
