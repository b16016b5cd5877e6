/** Closed lines that become one through narrow places, in areas whose narrow places are known. */

import { describe, expect, it } from 'vitest';
import { linked } from '../../src/fill/linked.ts';
import { arc, closedPath, type Path, pathLength, type Region, regionOf } from '../../src/geometry/index.ts';
import { uniteRegions } from '../../src/geometry/region-boolean.ts';
import { nearestStretches, sharpTurns } from '../support/raster.ts';
import { crossingsOf, depthIn, polygonsOf, sample, segmentsOf } from './checks.ts';
import { disc, rect } from './sample-regions.ts';

const S = 6.35;

/** Discs in a row, 16 spacings apart, and what joins them, so many spacings wide. */
const row = (discs: number, neck: number): Region =>
  Array.from({ length: discs }, (_, i) => regionOf([disc(16 * i * S, 0, 5 * S)])).reduce(
    uniteRegions,
    regionOf([rect(0, (-neck / 2) * S, 16 * (discs - 1) * S, neck * S)]),
  );

const circle = (x: number, y: number, r: number, way: 1 | -1 = 1): Path =>
  closedPath([arc({ x: x * S, y: y * S }, r * S, 0.3, way * 2 * Math.PI)]);

/** Where a line crosses the upright at x, from below. */
const levelsAt = (paths: readonly Path[], x: number): number[] =>
  paths
    .flatMap((path) => {
      const points = sample(path, 0.2);
      return points.flatMap((q, i) => {
        const p = points[i - 1];
        return p && p.x < x !== q.x < x ? [p.y + ((q.y - p.y) * (x - p.x)) / (q.x - p.x)] : [];
      });
    })
    .sort((a, b) => a - b);

describe('two lines with a narrow place between them', () => {
  const ways = [
    [1, 1],
    [1, -1],
    [-1, -1],
  ] as const;

  it.each(ways)('are one line that goes there and back on one line (%d, %d)', (first, second) => {
    const region = row(2, 0.5);
    const lines = [circle(0, 0, 4, first), circle(16, 0, 4, second)];
    const made = linked(lines, region, S);
    expect(made).toHaveLength(1);
    expect(made[0]!.closed).toBe(true);
    expect(sharpTurns(made, 1e-3)).toEqual([]);
    const [below, above] = levelsAt(made, 8 * S);
    expect(levelsAt(made, 8 * S)).toHaveLength(2);
    expect(above! - below!).toBeLessThan(1e-6);
    // In the middle of a straight neck.
    expect(Math.abs(above!)).toBeLessThan(0.03 * S);
    // Both lines all round, but for what is left open, and the way between them twice.
    const whole = lines.reduce((sum, line) => sum + pathLength(line), 0) + 2 * 8 * S;
    expect(pathLength(made[0]!) / whole).toBeGreaterThan(0.97);
    expect(pathLength(made[0]!) / whole).toBeLessThan(1);
  });

  it.each(ways)('go there and back on two lines where there is room (%d, %d)', (first, second) => {
    const region = row(2, 1.4);
    const made = linked([circle(0, 0, 4, first), circle(16, 0, 4, second)], region, S);
    expect(made).toHaveLength(1);
    expect(sharpTurns(made, 1e-3)).toEqual([]);
    const [below, above] = levelsAt(made, 8 * S);
    expect((above! - below!) / S).toBeCloseTo(0.46, 2);
    expect(crossingsOf(segmentsOf(made, 0.5), 0.5)).toEqual([]);
    const { gap } = nearestStretches(made, { reach: 0.5 * S, apart: 1.2 * S, beside: 0, step: S / 24 });
    expect(gap / S).toBeGreaterThan(0.39);
  });

  it('stay two where no thread would go through', () => {
    const lines = [circle(0, 0, 4), circle(16, 0, 4)];
    expect(linked(lines, row(2, 0.08), S)).toEqual(lines);
  });

  it('keep from the edge', () => {
    const region = row(2, 0.3);
    const made = linked([circle(0, 0, 4), circle(16, 0, 4)], region, S);
    expect(made).toHaveLength(1);
    const polygons = polygonsOf(region);
    const least = Math.min(...sample(made[0]!, 0.5).map((p) => depthIn(polygons, p)));
    expect(least / S).toBeGreaterThan(0.05);
  });
});

describe('many lines', () => {
  it('are one, each as far round as its ways leave it', () => {
    const lines = [circle(0, 0, 4), circle(16, 0, 4, -1), circle(32, 0, 4), circle(48, 0, 4)];
    const made = linked(lines, row(4, 0.5), S);
    expect(made).toHaveLength(1);
    for (const x of [8, 24, 40]) expect(levelsAt(made, x * S)).toHaveLength(2);
    for (const x of [0, 16, 32, 48]) expect(levelsAt(made, x * S)).toHaveLength(2);
  });

  it('side by side go over into each other by two bends, and nothing is sewn twice', () => {
    const region = regionOf([rect(-5 * S, -5 * S, 19 * S, 10 * S)]);
    const made = linked([circle(0, 0, 4), circle(9, 0, 4)], region, S);
    expect(made).toHaveLength(1);
    expect(sharpTurns(made, 1e-3)).toEqual([]);
    const levels = levelsAt(made, 4.5 * S);
    expect(levels).toHaveLength(2);
    expect((levels[1]! - levels[0]!) / S).toBeGreaterThan(0.4);
  });

  it('that lie in parts of their own stay as they are', () => {
    const region = regionOf([disc(0, 0, 5 * S), disc(16 * S, 0, 5 * S)]);
    const lines = [circle(0, 0, 4), circle(16, 0, 4)];
    expect(linked(lines, region, S)).toEqual(lines);
  });
});
