import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  arc,
  arcByRise,
  line,
  openPath,
  type Path,
  pathLength,
  pathsApart,
  pointAlong,
} from '../../src/geometry/index.ts';

const at = (x: number, y: number) => ({ x, y });
const path = (...pieces: Path['pieces'][number][]): Path => openPath(pieces);

describe('how near two paths come', () => {
  test('two lines side by side, two that cross, and one that ends before the other', () => {
    const level = path(line(at(0, 0), at(10, 0)));
    expect(pathsApart(level, path(line(at(-5, 3), at(20, 3))))).toBe(3);
    expect(pathsApart(level, path(line(at(5, -1), at(6, 7))))).toBe(0);
    expect(pathsApart(level, path(line(at(13, 4), at(20, 9))))).toBe(5);
  });

  test('a circle above a line is nearest below its centre, two circles on the line through their centres', () => {
    const whole = path(arc(at(5, 8), 3, 0, 2 * Math.PI));
    expect(pathsApart(path(line(at(-100, 0), at(100, 0))), whole)).toBeCloseTo(5, 12);
    expect(pathsApart(whole, path(line(at(-100, 0), at(100, 0))))).toBeCloseTo(5, 12);
    // 3-4-5: the centres are 25 apart, and the radii 3 and 7.
    expect(pathsApart(path(arc(at(20, 28), 7, -3, 2)), whole)).toBeCloseTo(15, 12);
    // One inside the other: 20 - 3 - 5 on the far side is more than 20 - 3 - (centres apart).
    expect(pathsApart(path(arc(at(5, 3), 20, 0, 6.2)), whole)).toBeCloseTo(20 - 3 - 5, 12);
  });

  test('no two places of random paths are nearer, and two are as near', () => {
    const part = fc.record({
      dx: fc.double({ min: -9, max: 9, noNaN: true }),
      dy: fc.double({ min: -9, max: 9, noNaN: true }),
      rise: fc.double({ min: -2, max: 2, noNaN: true }),
    });
    const drawn = (x: number, parts: readonly { dx: number; dy: number; rise: number }[]): Path => {
      let from = at(x, x / 2);
      return path(
        ...parts
          .filter(({ dx, dy }) => Math.hypot(dx, dy) > 0.5)
          .map(({ dx, dy, rise }) => {
            const to = at(from.x + dx, from.y + dy);
            const piece = Math.abs(rise) < 0.1 ? line(from, to) : arcByRise(from, to, rise);
            from = to;
            return piece;
          }),
      );
    };
    const some = fc.array(part, { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(some, some, fc.double({ min: 0, max: 30, noNaN: true }), (one, two, away) => {
        const [a, b] = [drawn(0, one), drawn(away, two)];
        if (a.pieces.length === 0 || b.pieces.length === 0) return;
        const exact = pathsApart(a, b);
        // By places on both, so close together that the nearest pair is overlooked by less than a step.
        const places = (p: Path) =>
          Array.from({ length: 301 }, (_, i) => pointAlong(p, (i / 300) * pathLength(p))!);
        let least = Number.POSITIVE_INFINITY;
        for (const p of places(a))
          for (const q of places(b)) least = Math.min(least, Math.hypot(p.x - q.x, p.y - q.y));
        expect(exact).toBeLessThanOrEqual(least + 1e-9);
        expect(exact).toBeGreaterThan(least - (pathLength(a) + pathLength(b)) / 300);
        expect(pathsApart(a, b, 1e-3)).toBeCloseTo(Math.min(exact, 1e-3), 12);
      }),
      { numRuns: 60 },
    );
  });
});
