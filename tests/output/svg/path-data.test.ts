import fc from 'fast-check';
import { svgPathProperties } from 'svg-path-properties';
import { describe, expect, it } from 'vitest';
import { arc, arcByRise, closedPath, openPath, point, polyline } from '../../../src/geometry/index.ts';
import { formatNumber } from '../../../src/output/svg/number.ts';
import { pathData } from '../../../src/output/svg/path-data.ts';
import { runs } from '../../support/runs.ts';
import { readPath } from './read-path.ts';

describe('numbers', () => {
  it.each([
    [0, '0'],
    [-0, '0'],
    [-1e-12, '0'],
    [1e-7, '0.0000001'],
    [-2.5, '-2.5'],
    [1234567, '1234567'],
    [100, '100'],
    [0.1 + 0.2, '0.3'],
    [999999999, '999999999'],
  ])('%d is written %s', (value, text) => {
    expect(formatNumber(value)).toBe(text);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e21])('refuses %d', (value) => {
    expect(() => formatNumber(value)).toThrow('cannot hold');
  });

  it('never writes an exponent, and comes back within 1e-9', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        const text = formatNumber(value);
        expect(text).toMatch(/^-?\d+(\.\d*[1-9])?$/);
        expect(text).not.toBe('-0');
        expect(Math.abs(Number(text) - value)).toBeLessThan(1e-9);
      }),
      runs(100, 1),
    );
  });
});

describe('path data', () => {
  it('writes lines with y turned over', () => {
    expect(pathData(polyline([point(0, 0), point(10, 5), point(20, -5)]))).toBe('M 0 0 L 10 -5 L 20 5');
  });

  it('closes a path without repeating its start', () => {
    const square = polyline([point(0, 0), point(10, 0), point(10, 10), point(0, 10)], true);
    expect(pathData(square)).toBe('M 0 0 L 10 0 L 10 -10 L 0 -10 Z');
  });

  it('keeps a path that is one point as a dot, and writes nothing for a path without pieces', () => {
    expect(pathData(openPath([{ kind: 'line', from: point(3, 4), to: point(3, 4) }]))).toBe('M 3 -4 L 3 -4');
    expect(pathData(openPath([]))).toBe('');
  });

  it('writes an arc that is too flat for a browser as a line', () => {
    // Found on the screen: 6.5e-7 mm of a circle of 242.5 mm came out as the whole circle. In single precision
    // numbers near 250 are 1.5e-5 apart (IEEE 754).
    const speck = arc(point(0, 0), 242.506617189, 1, 2.7e-9);
    expect(pathData(openPath([speck]))).toMatch(/^M \S+ \S+ L \S+ \S+$/);
    // A chord of 0.1 mm rises by 0.1² / (8 · 242.5) = 5e-6 mm, and stays an arc.
    expect(pathData(openPath([arc(point(0, 0), 242.506617189, 1, 0.1 / 242.506617189)]))).toContain(' A ');
  });

  it('turns a counterclockwise arc counterclockwise to the eye', () => {
    // From the right over the top to the left, seen with y up: the middle is the top.
    const [run] = readPath(pathData(openPath([arc(point(0, 0), 10, 0, Math.PI)])));
    const first = run?.[0];
    expect(first?.kind).toBe('arc');
    if (first?.kind !== 'arc') return;
    expect(first.turn).toBeCloseTo(-90, 6);
    expect(first.to[1]).toBeCloseTo(-10, 9);
  });

  it('writes a full turn as parts of the same circle that end where they began', () => {
    const d = pathData(closedPath([arc(point(5, 7), 12.7, 0.3, 2 * Math.PI)]));
    const [run] = readPath(d);
    expect(run?.length).toBe(3);
    expect(run?.at(-1)?.to).toEqual(run?.[0]?.from);
    // 2·π·r; the reader's arcs are good to about 5e-6 of their length.
    expect(new svgPathProperties(d).getTotalLength()).toBeCloseTo(2 * Math.PI * 12.7, 3);
  });

  it('refuses a hole between pieces and a number that is not finite', () => {
    const hole = openPath([
      { kind: 'line', from: point(0, 0), to: point(1, 0) },
      { kind: 'line', from: point(1, 0.001), to: point(2, 0) },
    ]);
    expect(() => pathData(hole)).toThrow('hole');
    expect(() => pathData(polyline([point(0, 0), point(Number.NaN, 0)]))).toThrow('cannot hold');
  });

  it('gives back the centre, radius and turn of any arc within 1e-7 mm', () => {
    const coordinate = fc.double({ min: -2000, max: 2000, noNaN: true });
    const sweep = fc.oneof(
      fc.double({ min: 1e-3, max: 2 * Math.PI, noNaN: true }),
      // Half turns and full turns, exactly and by a hair, are where arcs in SVG go wrong.
      fc.constantFrom(Math.PI, Math.PI - 1e-9, Math.PI + 1e-9, 2 * Math.PI, 2 * Math.PI - 1e-9),
    );
    fc.assert(
      fc.property(
        coordinate,
        coordinate,
        fc.double({ min: 1, max: 500, noNaN: true }),
        fc.double({ min: -7, max: 7, noNaN: true }),
        sweep,
        fc.boolean(),
        (x, y, radius, start, size, left) => {
          const turn = left ? size : -size;
          const [run] = readPath(pathData(openPath([arc(point(x, y), radius, start, turn)])));
          let total = 0;
          for (const s of run!) {
            if (s.kind !== 'arc') throw new Error('an arc became a line');
            expect(Math.abs(s.turn)).toBeLessThan(180);
            // Seen along the curve, not at its centre: a short arc's middle hardly depends on its centre.
            const middle = ((start + ((total - s.turn / 2) * Math.PI) / 180) % (2 * Math.PI)) as number;
            const expected = [x + radius * Math.cos(middle), -(y + radius * Math.sin(middle))];
            const a = Math.atan2(s.from[1] - s.center[1], s.from[0] - s.center[0]);
            const b = a + ((s.turn / 2) * Math.PI) / 180;
            expect(Math.abs(s.center[0] + s.radius * Math.cos(b) - expected[0]!)).toBeLessThan(1e-7);
            expect(Math.abs(s.center[1] + s.radius * Math.sin(b) - expected[1]!)).toBeLessThan(1e-7);
            total -= s.turn;
          }
          expect(total).toBeCloseTo((turn * 180) / Math.PI, 3);
        },
      ),
      runs(100, 2),
    );
  });

  it("agrees with another reader about an arc's length, given by chord and rise", () => {
    // Machinery's Handbook, 31st ed., p. 79: c = 59.8665 and h = 8 belong to r = 60; the arc's length is
    // r·4·atan(2h/c), the closed form on the same page.
    const chord = 59.866518;
    const d = pathData(openPath([arcByRise(point(0, 0), point(chord, 0), 8)]));
    const expected = 60 * 4 * Math.atan(16 / chord);
    expect(new svgPathProperties(d).getTotalLength()).toBeCloseTo(expected, 2);
    const top = new svgPathProperties(d).getPointAtLength(expected / 2);
    expect(top.y).toBeCloseTo(-8, 3);
  });
});
