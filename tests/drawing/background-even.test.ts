/**
 * The background as cloth sees it: nothing bare, no two lines too near, and a join like any other place. By a raster and
 * by counting, on samples and on borders that nobody wrote a line for; nothing is shared with the fills.
 */

import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fillOpenArea } from '../../src/drawing/index.ts';
import { FILLS } from '../../src/fill/index.ts';
import { move, type Path, type Point, regionBox } from '../../src/geometry/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import {
  type Design,
  designFromPlan,
  frameAt,
  openAreaOf,
  repeatMarks,
  rowsOf,
} from '../../src/swag/index.ts';
import { sample } from '../fill/checks.ts';
import { largestBare, nearestStretches } from '../support/raster.ts';
import { few, long, patience, runs } from '../support/runs.ts';
import { PROFILES } from '../swag/fit-helpers.ts';

const S = 12.7;
const CELL = S / 16;

const backgroundOf = (text: string, name: string) => {
  const reading = readPlan(text, name);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const { plan } = reading.parts[0];
  const made = designFromPlan(plan, PROFILES);
  if (!made.ok) return undefined;
  const row = rowsOf(made.design).at(-1)!;
  return { row, area: openAreaOf(row, plan.channels) };
};

const BORDERS: Readonly<Record<string, string>> = {
  ...Object.fromEntries(
    ['raffle-border', 'wreath-frame', 'medallion-frame', 'guild-strip'].map((name) => [
      name,
      readFileSync(`samples/${name}.yaml`, 'utf8'),
    ]),
  ),
  'from outside':
    'template: finial\nlayout: { border: { width: 7, inner: { top: 31, right: 22, bottom: 31 1/4, left: 22 }, margin: 1/2, from: outer, corners: turn } }\nchannels: { outward: [1/4] }',
  meeting:
    'template: newel\nlayout: { border: { width: 6, inner: { top: 33, right: 24, bottom: 33, left: 24 3/8 }, margin: 1/2, from: inner, corners: meet } }',
};

/** What the raster tells is known to three quarters of a cell. */
const BARE = 1.2 + 0.75 / 16;

const named = (name: string): (typeof FILLS)[number] => FILLS.find((f) => f.name === name)!;

/** Of the borders and fills that are tried each time and now and then. */
const CASES = few(
  Object.keys(BORDERS).flatMap((border) =>
    FILLS.filter((f) => f.suits === 'area').map(({ name }) => [name, border] as const),
  ),
  ([fill, border]) =>
    fill === 'crosshatch' ||
    fill === 'lines' ||
    (border !== 'raffle-border' && (fill === 'stipple' || fill === 'echo')),
);

const KEPT = new Map<string, ReturnType<typeof backgroundOf>>();
const known = (border: string): NonNullable<ReturnType<typeof backgroundOf>> => {
  if (!KEPT.has(border)) KEPT.set(border, backgroundOf(BORDERS[border]!, border));
  return KEPT.get(border)!;
};

describe('nothing is bare', () => {
  test.each(CASES)('%s, %s', (fill, border) => {
    const { area } = known(border);
    const { paths } = fillOpenArea(named(fill), area, { spacing: S });
    const { radius, at } = largestBare(area.region, paths, CELL);
    expect({ radius: radius / S, at }).toMatchObject({
      radius: expect.toSatisfy((r: number) => r < BARE),
    });
  });

  test('a long line of the stipple keeps its place beside the one that is laid before it', () => {
    const { area } = backgroundOf(
      'template: finial\nlayout: { border: { width: 8, inner: { top: 53, right: 46, bottom: 53 3/8, left: 46 }, margin: 1/2, corners: open } }',
      'two long lines',
    )!;
    const { paths } = fillOpenArea(named('stipple'), area, { spacing: S });
    expect(largestBare(area.region, paths, CELL).radius / S).toBeLessThan(BARE);
    const { gap } = nearestStretches(paths, { reach: 0.4 * S, apart: 1.2 * S, beside: 0, step: S / 24 });
    expect(gap / S).toBeGreaterThan(0.37);
  });

  long('on borders at random', { timeout: patience(120_000) }, () => {
    let tried = 0;
    fc.assert(
      fc.property(
        fc.record({
          template: fc.constantFrom('baluster', 'finial', 'newel'),
          width: fc.constantFrom(5, 6, 7, 8),
          top: fc.integer({ min: 24, max: 60 }),
          right: fc.integer({ min: 20, max: 50 }),
          more: fc.integer({ min: 0, max: 4 }),
          corners: fc.constantFrom('turn', 'meet', 'open'),
          channel: fc.constantFrom('', 'channels: { outward: [1/4] }'),
        }),
        fc.constantFrom('crosshatch', 'lines', 'echo', 'stipple'),
        ({ template, width, top, right, more, corners, channel }, fill) => {
          const inner = `{ top: ${top}, right: ${right}, bottom: ${top + more / 8}, left: ${right} }`;
          const layout = `{ border: { width: ${width}, inner: ${inner}, margin: 1/2, corners: ${corners} } }`;
          const made = backgroundOf(`template: ${template}\nlayout: ${layout}\n${channel}`, 'random');
          if (!made) return;
          tried++;
          const { paths } = fillOpenArea(named(fill), made.area, { spacing: S });
          expect(largestBare(made.area.region, paths, CELL).radius / S).toBeLessThan(BARE);
        },
      ),
      runs(12, 90210),
    );
    expect(tried).toBeGreaterThan(4);
  });
});

describe('one line', () => {
  // At every crown what lies outside is narrower than half a spacing: thirty lines, or one along the middle alone.
  const asked = few(
    ['stipple', 'loops', 'leaves', 'swirls'].flatMap((fill) =>
      ['medallion-frame', 'from outside', 'guild-strip'].map((border) => [fill, border] as const),
    ),
    ([fill, border]) => border === 'medallion-frame' && fill !== 'leaves',
  );
  test.each(asked)('%s, %s', (fill, border) => {
    const { area } = known(border);
    const { paths, continuous } = fillOpenArea(named(fill), area, { spacing: S / 2 });
    expect(paths).toHaveLength(1);
    expect(continuous).toBe(true);
    expect(largestBare(area.region, paths, CELL / 2).radius / (S / 2)).toBeLessThan(BARE);
  });

  // Points on nearly one line gave a circle of a hand's width for a bare place, and a swirl of that size was put there.
  test('what is put into bare places lies inside', () => {
    const { area } = known('from outside');
    const { paths } = fillOpenArea(named('swirls'), area, { spacing: S });
    const box = regionBox(area.region);
    expect(paths).toHaveLength(1);
    for (const { x, y } of sample(paths[0]!, 1)) {
      expect(Math.min(x - box.minX, box.maxX - x)).toBeGreaterThan(0);
      expect(Math.min(y - box.minY, box.maxY - y)).toBeGreaterThan(0);
    }
    expect(largestBare(area.region, paths, CELL).radius / S).toBeLessThan(BARE);
  });
});

describe('no two lines are nearer than 0.4 spacings', () => {
  test.each(CASES.filter(([fill]) => fill === 'stipple' || fill === 'echo'))('%s, %s', (fill, border) => {
    const { area } = known(border);
    const { paths } = fillOpenArea(named(fill), area, { spacing: S });
    // Where an echo turns sharply at a join its two legs come from one point.
    const apart = fill === 'echo' ? 2.5 * S : 1.2 * S;
    // Through a narrow place a stipple goes there and back on one line.
    const beside = fill === 'echo' ? 0 : 0.75 * S;
    const { gap, at } = nearestStretches(paths, { reach: 0.4 * S, apart, beside, step: S / 24 });
    expect({ gap: gap / S, at }).toMatchObject({ gap: expect.toSatisfy((g: number) => g > 0.37) });
  });
});

/** How often lines cross the uprights through some places along a run, in the band. */
const crossingsAt = ({ sides, field }: Design, paths: readonly Path[], aside: number): number => {
  const dense = paths.map((path) => sample(path, 1));
  let count = 0;
  for (const side of sides)
    for (let i = 1; i < side.places; i++) {
      const frame = frameAt(side.run, repeatMarks(side, i).join + aside);
      const [low, high] = [move(frame, { x: 0, y: field.near }), move(frame, { x: 0, y: field.far })];
      for (const points of dense)
        for (let k = 1; k < points.length; k++) if (cross(points[k - 1]!, points[k]!, low, high)) count++;
    }
  return count;
};

const cross = (a: Point, b: Point, c: Point, d: Point): boolean => {
  const side = (p: Point, q: Point, r: Point): boolean =>
    (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x) > 0;
  return side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
};

describe('a line crosses a join as it crosses any other place', () => {
  const joins = few(
    ['stipple', 'swirls', 'pebbles', 'crosshatch', 'echo'].flatMap((fill) =>
      ['raffle-border', 'from outside', 'meeting', 'guild-strip'].map((border) => [fill, border] as const),
    ),
    ([fill, border]) => border === 'meeting' && fill !== 'pebbles' && fill !== 'swirls',
  );
  test.each(joins)('%s, %s', (fill, border) => {
    const { row, area } = known(border);
    const { paths } = fillOpenArea(named(fill), area, { spacing: S / 2 });
    const at = crossingsAt(row, paths, 0.13);
    // Beside the join the area is as high, but for a step in the swag's edge.
    const beside = [-1.5 * S, -0.9 * S, 0.9 * S, 1.5 * S].map((aside) => crossingsAt(row, paths, aside));
    const usual = beside.reduce((sum, n) => sum + n, 0) / beside.length;
    expect(usual).toBeGreaterThan(8);
    expect(at).toBeGreaterThan(0.6 * usual);
    expect(at).toBeLessThan(2.5 * usual);
  });
});
