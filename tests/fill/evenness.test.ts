/**
 * What every fill owes: nothing bare, and no two lines too near, in the areas of swags and in areas that nobody drew them
 * for. By a raster that shares nothing with the fills (tests/support/raster.ts).
 */

import { describe, expect, it } from 'vitest';
import { FILLS } from '../../src/fill/index.ts';
import { point, polyline, type Region, regionOf } from '../../src/geometry/index.ts';
import { subtractRegion } from '../../src/geometry/region-boolean.ts';
import { largestBare, nearestStretches, sharpTurns, straightest } from '../support/raster.ts';
import { few } from '../support/runs.ts';
import { sample } from './checks.ts';
import { disc, rect, SWAG_REGIONS } from './sample-regions.ts';

const S = 6.35;
const CELL = S / 24;

/** A closed curve about a point, its radius a sum of waves: areas with waists, bays and noses. */
const blob = (size: number, waves: readonly (readonly [number, number, number])[]): Region =>
  regionOf([
    polyline(
      Array.from({ length: 240 }, (_, i) => {
        const a = (2 * Math.PI * i) / 240;
        const r = size * waves.reduce((sum, [n, share, phase]) => sum + share * Math.cos(n * a + phase), 1);
        return point(r * Math.cos(a), 0.7 * r * Math.sin(a));
      }),
      true,
    ),
  ]);

/** What lies between two arcs through the same two tips. */
const crescent = (width: number, upper: number, lower: number): Region => {
  const arc = (rise: number, from: number, to: number): { x: number; y: number }[] =>
    Array.from({ length: 60 }, (_, i) => {
      const x = from + ((to - from) * i) / 60;
      return point(x, rise * (1 - (2 * x) ** 2 / width ** 2));
    });
  return regionOf([
    polyline([...arc(lower, -width / 2, width / 2), ...arc(upper, width / 2, -width / 2)], true),
  ]);
};

const UNSEEN: Readonly<Record<string, Region>> = {
  bean: blob(60, [
    [2, 0.25, 0.4],
    [3, 0.1, 1],
  ]),
  clover: blob(65, [[3, 0.22, 0.7]]),
  star: blob(70, [
    [5, 0.2, 0],
    [2, 0.1, 1],
  ]),
  crescent: crescent(220, 90, 25),
  triangle: regionOf([polyline([point(-90, 0), point(80, -10), point(20, 95)], true)]),
};

/** Of the areas that are taken each time and now and then. */
const AREAS = few(Object.entries({ ...SWAG_REGIONS, ...UNSEEN }), ([name]) =>
  ['swag', 'background', 'corner', 'clover', 'crescent'].includes(name),
);

const named = (name: string): (typeof FILLS)[number] => FILLS.find((f) => f.name === name)!;

/** Fills for areas that leave nothing bare. */
const EVEN = [
  'feather',
  'double feather',
  'stipple',
  'loops',
  'leaves',
  'swirls',
  'pebbles',
  'clamshell',
  'crosshatch',
  'curved crosshatch',
  'lines',
  'piano keys',
] as const;

describe.each(EVEN)('%s', (name) => {
  it.each(AREAS)('in %s no disc larger than 1.2 spacings is bare', (_, region) => {
    const { paths } = named(name).fill(region, { spacing: S, seed: 5 });
    const { radius, at } = largestBare(region, paths, CELL);
    expect({ radius: radius / S, at }).toMatchObject({ radius: expect.toSatisfy((r: number) => r < 1.2) });
  });
});

/** Lines that touch nowhere: stipple. Where a swirl grows from another the line bends away from itself, and turns. */
describe.each([
  ['stipple', 0.4],
  ['loops', 0.4],
  // A stem that passes a bud comes a little nearer than is aimed at.
  ['swirls', 0.38],
] as const)('%s', (name, kept) => {
  it.each(AREAS)(`in %s keeps ${kept} spacings from itself, and has no corner`, (_, region) => {
    const { paths } = named(name).fill(region, { spacing: S, seed: 5 });
    const { gap, at } = nearestStretches(paths, {
      reach: 0.4 * S,
      apart: 1.2 * S,
      // A loop lies against its line, so that near its foot the two are near.
      beside: (name === 'loops' ? 0.75 : 0.5) * S,
      step: 0.05 * S,
    });
    // Between two places of the raster a line may lie nearer by half a step's bulge: a hundredth of a spacing.
    const least = kept - 0.01;
    expect({ gap: gap / S, at }).toMatchObject({ gap: expect.toSatisfy((g: number) => g > least) });
    expect(sharpTurns(paths, 0.06)).toEqual([]);
  });
});

describe('stipple', () => {
  it('does not square off along straight edges and in their corners', () => {
    const oblong = regionOf([rect(0, 0, 32 * S, 9 * S)]);
    const straight = [1, 2, 3].map((seed) =>
      Math.max(
        ...named('stipple')
          .fill(oblong, { spacing: S, seed })
          .paths.map((p) => straightest(p, 0.2, 1) / S),
      ),
    );
    // Fingers are some three spacings long; along an edge it would run farther.
    expect(Math.max(...straight)).toBeLessThan(3.3);
  });

  it.each([
    // Under a tip the line came no nearer than where its branches would stand too close.
    [2, 4, 1.7],
    [2, 5, 1.8],
    [3, 4, 1.8],
    [4, 3, 1.7],
  ])(
    'leaves nothing bare beside a lobe of radius %d, %d from the end and %d from the edge',
    (r, from, neck) => {
      const whole = regionOf([rect(0, 0, (from + r + 4) * S, (neck + r + 1) * S)]);
      const region = subtractRegion(whole, regionOf([disc((from + r / 2) * S, (neck + r) * S, r * S)]));
      for (let seed = 1; seed <= 8; seed++) {
        const { paths } = named('stipple').fill(region, { spacing: S, seed });
        expect(largestBare(region, paths, S / 16).radius / S).toBeLessThan(1.2 + 0.75 / 16);
        const { gap } = nearestStretches(paths, { reach: 0.4 * S, apart: 1.2 * S, beside: 0, step: S / 24 });
        expect(gap / S).toBeGreaterThan(0.39);
      }
    },
  );
});

describe('feather', () => {
  /** A corner as two runs leave it: the same on both sides of the mitre, which the spine goes across. */
  const corner = regionOf([
    polyline(
      [
        point(0, 0),
        point(60, 0),
        point(60, 35),
        point(105, 35),
        point(105, 95),
        point(165, 165),
        point(95, 105),
        point(35, 105),
        point(35, 60),
        point(0, 60),
      ],
      true,
    ),
  ]);

  it('is alike on both sides of a corner', () => {
    const axis = { at: point(0, 0), angle: Math.PI / 4 };
    const { paths } = named('feather').fill(corner, { spacing: S, seed: 1 }, { axis });
    // Every eleventh place and its image in the mitre: something is stitched there too.
    const points = paths.flatMap((p) => sample(p, 1));
    const images = points.filter((_, i) => i % 11 === 0).map((p) => point(p.y, p.x));
    const far = images.map((p) => Math.min(...points.map((q) => Math.hypot(q.x - p.x, q.y - p.y))));
    expect(Math.max(...far)).toBeLessThan(0.8);
    expect(largestBare(corner, paths, CELL).radius / S).toBeLessThan(1.2);
  });
});

describe('patterns with an upright', () => {
  const oblong = regionOf([rect(0, 0, 30 * S, 12 * S)]);

  it('clamshell is rows of half circles, each on the joins of the row below', () => {
    const { paths } = named('clamshell').fill(oblong, { spacing: S, seed: 1 });
    const arcs = paths.flatMap((p) => p.pieces).filter((p) => p.kind === 'arc');
    expect(new Set(arcs.map((a) => (a.radius / S).toFixed(6)))).toEqual(new Set(['1.500000']));
    // Closed form: the largest disc between an arc of radius r and the two below it has the radius 2r/3.
    const { radius } = largestBare(oblong, paths, CELL);
    expect(radius / S).toBeGreaterThan(0.95);
    expect(radius / S).toBeLessThan(1.03);
    // A crown of one row is a join of the next: half a shell aside, one radius up.
    const joins = arcs.flatMap((a) => [a.from, a.to]);
    const crowns = arcs
      .map((a) => point(a.center.x, a.center.y + a.radius))
      .filter((c) => c.x > S && c.x < 29 * S && c.y < 11 * S);
    expect(crowns.length).toBeGreaterThan(40);
    for (const c of crowns)
      expect(Math.min(...joins.map((j) => Math.hypot(j.x - c.x, j.y - c.y)))).toBeLessThan(1e-6);
  });

  it('curved crosshatch has the radius that it is given, moved along by equal steps, both ways', () => {
    const { paths } = named('curved crosshatch').fill(oblong, { spacing: S, seed: 1 }, { radius: 250 });
    const arcs = paths.flatMap((p) => p.pieces).filter((p) => p.kind === 'arc');
    expect(new Set(arcs.map((a) => a.radius.toFixed(6)))).toEqual(new Set(['250.000000']));
    for (const way of [1, -1]) {
      const xs = arcs
        .filter((a) => Math.sign(a.center.x - 15 * S) === way)
        .map((a) => a.center.x)
        .sort((a, b) => a - b);
      expect(xs.length).toBeGreaterThan(15);
      for (let i = 1; i < xs.length; i++) {
        const step = (xs[i]! - xs[i - 1]!) / (S * Math.SQRT2);
        expect(Math.abs(step - Math.round(step))).toBeLessThan(1e-6);
      }
    }
  });

  it('piano keys stand square to both seams of a corner, and meet on the mitre', () => {
    // A band 6 spacings wide along x from 0, and along y, as a corner from outside has it.
    const w = 6 * S;
    const corner = regionOf([
      polyline(
        [
          point(-20 * S, 0),
          point(0, 0),
          point(0, -20 * S),
          point(-w, -20 * S),
          point(-w, -w),
          point(-20 * S, -w),
        ].reverse(),
        true,
      ),
    ]);
    const axis = { at: point(-w, -w), angle: Math.PI / 4 };
    const { paths } = named('piano keys').fill(corner, { spacing: S, seed: 1 }, { axis });
    const ends = paths.map((p) => [p.pieces[0]!.from, p.pieces.at(-1)!.to] as const);
    const upright = ends.filter(([a, b]) => Math.abs(a.x - b.x) < 1e-9);
    const level = ends.filter(([a, b]) => Math.abs(a.y - b.y) < 1e-9);
    expect(upright.length + level.length).toBe(ends.length);
    expect(upright.length).toBe(level.length);
    for (const [a] of upright) expect(a.x).toBeLessThan(0);
    const onMitre = (of: typeof ends): string[] =>
      of
        .flat()
        .filter((p) => Math.abs(p.x - p.y) < 1e-6 && p.x > -w + 1e-6)
        .map((p) => p.x.toFixed(6))
        .sort();
    expect(onMitre(upright).length).toBe(6);
    expect(onMitre(level)).toEqual(onMitre(upright));
  });
});

describe('ribbon', () => {
  it('is one smooth line that touches both lines of its band, by turns', () => {
    const width = 2 * S;
    const { paths } = named('ribbon').fill(regionOf([rect(0, 0, 40 * S, width)]), { spacing: S, seed: 1 });
    expect(paths).toHaveLength(1);
    expect(sharpTurns(paths, 0.06)).toEqual([]);
    // Within a thread's width, above and below in turn: the last few at the band's ends are cut short.
    const touched: ('above' | 'below')[] = [];
    for (const { y } of sample(paths[0]!, 0.1, 0.02)) {
      const now = y > width - 0.1 ? 'above' : y < 0.1 ? 'below' : undefined;
      if (now && touched.at(-1) !== now) touched.push(now);
    }
    expect(touched.length).toBeGreaterThan(36);
  });
});
