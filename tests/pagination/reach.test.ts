import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arc, line, type Piece, pieceAt, point } from '../../src/geometry/index.ts';
import { pieceReaches } from '../../src/pagination/reach.ts';
import { runs } from '../support/runs.ts';

/**
 * The distance of a piece to a rectangle by brute force: many points of the piece, each against the rectangle.
 * It is too small by rounding at most, and too large by at most half the spacing of the points.
 */
const slowDistance = (piece: Piece, box: readonly number[], steps: number): number => {
  const [minX, minY, maxX, maxY] = box as [number, number, number, number];
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= steps; i++) {
    const p = pieceAt(piece, i / steps);
    const dx = Math.max(minX - p.x, 0, p.x - maxX);
    const dy = Math.max(minY - p.y, 0, p.y - maxY);
    least = Math.min(least, Math.hypot(dx, dy));
  }
  return least;
};

/**
 * A point (mm) of an arc of 0.01 mm round a rectangle that is a point came out 1e-16 mm too near, and the pen was exactly
 * as wide as that is far. Coordinates up to 57 mm are rounded by less than 1e-14.
 */
const ROUNDING = 1e-13;

const reaches = (piece: Piece, half: number, box: readonly number[]): boolean =>
  pieceReaches(piece, half, box[0]!, box[1]!, box[2]!, box[3]!);

const number = fc.double({ min: -20, max: 20, noNaN: true });
const box = fc
  .tuple(
    number,
    number,
    fc.double({ min: 0, max: 15, noNaN: true }),
    fc.double({ min: 0, max: 15, noNaN: true }),
  )
  .map(([x, y, w, h]) => [x, y, x + w, y + h]);
const anyLine = fc
  .tuple(number, number, number, number)
  .map(([a, b, c, d]): Piece => line(point(a, b), point(c, d)));
const anyArc = fc
  .tuple(
    number,
    number,
    fc.double({ min: 0.01, max: 25, noNaN: true }),
    fc.double({ min: -7, max: 7, noNaN: true }),
    fc.double({ min: -6.28, max: 6.28, noNaN: true }),
  )
  .map(([x, y, r, a, s]): Piece => arc(point(x, y), r, a, s));
const half = fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 4, noNaN: true }));

describe('a pen stroke reaches a rectangle', () => {
  it('agrees with the distance of thousands of points, for lines and arcs', () => {
    const steps = 4000;
    let yes = 0;
    let no = 0;
    fc.assert(
      fc.property(fc.oneof(anyLine, anyArc), half, box, (piece, h, b) => {
        const slow = slowDistance(piece, b, steps);
        // Points are at most 25 · 6.28 / 4000 or 57 / 4000 mm apart.
        const spacing = 0.04;
        const found = reaches(piece, h, b);
        if (found) yes++;
        else no++;
        if (slow < h - ROUNDING || (h === 0 && slow === 0)) expect(found).toBe(true);
        if (slow > h + spacing) expect(found).toBe(false);
      }),
      runs(3000, 11),
    );
    expect(Math.min(yes, no)).toBeGreaterThan(300);
  });

  it('sees an arc that bulges over a side between two ends that are far away', () => {
    // The top of a circle of radius 10 round the origin reaches y = 10; the rectangle begins at y = 9.9.
    const bulge = arc(point(0, 0), 10, Math.PI / 4, Math.PI / 2);
    expect(reaches(bulge, 0, [-3, 9.9, 3, 20])).toBe(true);
    expect(reaches(bulge, 0, [-3, 10.1, 3, 20])).toBe(false);
    expect(reaches(bulge, 0.2, [-3, 10.1, 3, 20])).toBe(true);
  });

  it('leaves out a rectangle inside the circle, and one beside a part that is not drawn', () => {
    expect(reaches(arc(point(0, 0), 10, 0, 2 * Math.PI), 1, [-3, -3, 3, 3])).toBe(false);
    expect(reaches(arc(point(0, 0), 10, 0, Math.PI / 2), 0.1, [-11, -1, -9, 1])).toBe(false);
  });

  it('takes a dot and a rectangle without area for what they are', () => {
    expect(reaches(line(point(1, 1), point(1, 1)), 0.5, [1.4, 1, 3, 1])).toBe(true);
    expect(reaches(line(point(1, 1), point(1, 1)), 0.5, [1.6, 1, 3, 1])).toBe(false);
  });

  it('is false, not true, where a number is missing', () => {
    expect(reaches(line(point(Number.NaN, 0), point(1, 1)), 1, [5, 5, 6, 6])).toBe(false);
  });
});
