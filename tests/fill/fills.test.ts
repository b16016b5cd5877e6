import { describe, expect, it } from 'vitest';
import { ofParts } from '../../src/fill/fill.ts';
import { FILLS, fillNamed } from '../../src/fill/index.ts';
import {
  distance,
  EMPTY_REGION,
  pathLength,
  point,
  polyline,
  type Region,
} from '../../src/geometry/index.ts';
import { depthIn, polygonsOf, sample } from './checks.ts';
import { HARD_REGIONS, SWAG_REGIONS } from './sample-regions.ts';

const SPACING = 6.35;
const ALL: Readonly<Record<string, Region>> = { ...SWAG_REGIONS, ...HARD_REGIONS };

/** Fills that stay clear of the edge; the others end on it, or touch it. */
const ON_EDGE = new Set(['clamshell', 'crosshatch', 'curved crosshatch', 'lines', 'piano keys', 'ribbon']);

describe.each(FILLS.map((f) => [f.name, f] as const))('%s', (name, fill) => {
  it.each(Object.entries(ALL))('in %s: inside, in order, finite, and the same again', (_, region) => {
    const polygons = polygonsOf(region);
    const start = performance.now();
    const result = fill.fill(region, { spacing: SPACING, seed: 7 });
    // Well under a second each; the bound leaves room for a busy machine.
    expect(performance.now() - start).toBeLessThan(4000);
    expect(result.paths.length + result.messages.length).toBeGreaterThan(0);
    const least = ON_EDGE.has(name) ? -0.02 : 0.02;
    const outside: unknown[] = [];
    const broken: unknown[] = [];
    for (const path of result.paths) {
      path.pieces.forEach((p, i) => {
        const before = path.pieces[i === 0 ? path.pieces.length - 1 : i - 1]!;
        const joined = i > 0 || path.closed ? distance(p.from, before.to) : 0;
        if (!(joined < 1e-6) || !(pathLength(path) > 0)) broken.push(p);
      });
      // The polygon stands 0.01 mm off the region's arcs at most.
      for (const p of sample(path, 2, 0.4)) {
        const depth = depthIn(polygons, p);
        if (!(depth > least)) outside.push({ p, depth });
      }
    }
    expect(broken).toEqual([]);
    expect(outside).toEqual([]);
    expect(fill.fill(region, { spacing: SPACING, seed: 7 })).toEqual(result);
  });

  it('is changed by what it takes, and by nothing else', () => {
    const changedBy = (more: { readonly seed?: number; readonly angle?: number }): boolean =>
      [SWAG_REGIONS.swag, SWAG_REGIONS.background].some((region) => {
        const usual = { spacing: SPACING, seed: 7 };
        const plain = JSON.stringify(fill.fill(region, usual));
        return JSON.stringify(fill.fill(region, { ...usual, ...more })) !== plain;
      });
    expect({ seed: changedBy({ seed: 8 }), angle: changedBy({ angle: 0.3 }) }).toEqual({
      seed: fill.takes.includes('seed'),
      angle: fill.takes.includes('angle'),
    });
  });

  it('says why when there is nothing to fill, and refuses a spacing that is none', () => {
    expect(fill.fill(EMPTY_REGION, { spacing: SPACING, seed: 1 })).toEqual({
      paths: [],
      continuous: true,
      messages: ['nothing to fill'],
    });
    for (const spacing of [0, -1, 0.01, Number.NaN, Number.POSITIVE_INFINITY])
      expect(fill.fill(SWAG_REGIONS.swag, { spacing, seed: 1 }).messages).toEqual([
        'the spacing of a fill must be at least 0.5 mm',
      ]);
  });

  it('fills a swag', () => {
    const result = fill.fill(SWAG_REGIONS.swag, { spacing: SPACING, seed: 3 });
    expect(result.paths.reduce((sum, p) => sum + pathLength(p), 0)).toBeGreaterThan(250);
  });
});

describe('names', () => {
  it('finds a fill by name, whatever the case', () => {
    expect(fillNamed(' Feather ')).toMatchObject({ name: 'feather' });
    expect(new Set(FILLS.map((f) => f.name)).size).toBe(FILLS.length);
  });

  it('lists the names there are for one that is not', () => {
    expect(fillNamed('feathre')).toEqual({
      code: 'unknown-fill',
      message: 'no fill named "feathre"',
      expected: `one of ${FILLS.map((f) => f.name).join(', ')}`,
    });
  });
});

describe('what is said of a region in parts', () => {
  const path = polyline([point(0, 0), point(1, 0)]);

  it('a part that takes two lines is not made up for by one that stays empty', () => {
    expect(ofParts([[path], [path]], 'area', 'a line')).toMatchObject({ continuous: true, messages: [] });
    expect(ofParts([[], [path]], 'area', 'a line')).toMatchObject({
      continuous: true,
      messages: ['1 of 2 parts are too narrow for a line at this spacing'],
    });
    expect(ofParts([[], [path, path]], 'area', 'a line')).toMatchObject({
      continuous: false,
      messages: [
        '1 of 2 parts are too narrow for a line at this spacing',
        '2 lines, because narrow places part the area',
      ],
    });
    expect(ofParts([[], []], 'band', 'a pearl')).toEqual({
      paths: [],
      continuous: true,
      messages: ['the band is too narrow for a pearl at this spacing'],
    });
  });
});
