import { Bezier } from 'bezier-js';
import { describe, expect, it } from 'vitest';
import { arc, closedPath, line, openPath, type Piece, point, polyline } from '../../../src/geometry/index.ts';
import { pathOperators } from '../../../src/output/pdf/paths.ts';

const asIs = (p: { x: number; y: number }) => p;

/** The cubics of a content stream as an independent library's curves. */
const cubicsOf = (operators: string): Bezier[] => {
  let at = [0, 0];
  const curves: Bezier[] = [];
  for (const text of operators.split('\n')) {
    const numbers = text.split(' ').slice(0, -1).map(Number);
    if (text.endsWith(' c')) curves.push(new Bezier([...at, ...numbers]));
    if (numbers.length >= 2) at = numbers.slice(-2);
  }
  return curves;
};

describe('paths in a page', () => {
  it('keep lines and start anew only where the path jumps', () => {
    const path = openPath([
      line(point(0, 0), point(1, 2)),
      line(point(1, 2), point(3, 4)),
      line(point(5, 5), point(6, 6)),
    ]);
    expect(pathOperators(path, asIs)).toBe('0 0 m\n1 2 l\n3 4 l\n5 5 m\n6 6 l');
    expect(pathOperators(polyline([point(0, 0), point(1, 0), point(1, 1)], true), asIs)).toBe(
      '0 0 m\n1 0 l\n1 1 l\n0 0 l\nh',
    );
    expect(pathOperators(closedPath([]), asIs)).toBe('');
  });

  it('leave out an arc that is a point as it is written, and go on where it stood', () => {
    // 1e-5 across, where coordinates are written to a thousandth.
    const speck = arc(point(1, 0), 1e-5, Math.PI, 0.5);
    const before = line(point(0, 0), speck.from);
    const after = line(speck.to, point(2, 1));
    expect(pathOperators(openPath([speck, after]), asIs)).toBe('1 0 m\n2 1 l');
    expect(pathOperators(openPath([before, speck, after]), asIs)).toBe('0 0 m\n1 0 l\n2 1 l');
    // By itself it may be meant: a dot of a round pen.
    expect(pathOperators(openPath([speck]), asIs)).toBe('1 0 m\n1 0 1 0 1 0 c');
  });

  it.each([
    ['a full turn', 2 * Math.PI, 8],
    ['a full turn the other way', -2 * Math.PI, 8],
    ['a quarter', Math.PI / 2, 2],
    ['a little more than 45°', 0.79, 2],
    ['a hair', 1e-4, 1],
  ])('follow an arc of %s within 4.3e-6 radii', (_name, sweep, parts) => {
    const radius = 10_000;
    const piece: Piece = arc(point(3, -2), radius, 0.4, sweep);
    const curves = cubicsOf(pathOperators(openPath([piece]), asIs));
    expect(curves).toHaveLength(parts);
    let worst = 0;
    for (const curve of curves)
      for (let i = 0; i <= 200; i++) {
        const p = curve.get(i / 200);
        worst = Math.max(worst, Math.abs(Math.hypot(p.x - 3, p.y + 2) - radius));
      }
    // Coordinates are rounded to 0.001, so the radius is large: 0.043 is 4.3e-6 radii.
    expect(worst).toBeLessThan(4.3e-6 * radius + 0.001);
    const end = curves.at(-1)!.get(1);
    expect(Math.abs(end.x - piece.to.x)).toBeLessThanOrEqual(0.0006);
    expect(Math.abs(end.y - piece.to.y)).toBeLessThanOrEqual(0.0006);
  });

  it('reach that error at 45° parts, so that the bound is not idle', () => {
    const [curve] = cubicsOf(pathOperators(openPath([arc(point(0, 0), 1e6, 0, Math.PI / 4)]), asIs));
    const off = Array.from({ length: 1000 }, (_, i) => {
      const p = curve!.get(i / 1000);
      return Math.hypot(p.x, p.y) - 1e6;
    });
    expect(Math.max(...off)).toBeGreaterThan(4);
    expect(Math.max(...off)).toBeLessThan(4.3);
    expect(Math.min(...off)).toBeGreaterThan(-0.01);
  });
});
