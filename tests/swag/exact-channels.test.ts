/**
 * Channels of templates in which one measure is exactly another, or off by a hair: a cove or a slot of just the foot's
 * size, a channel as wide as a bend is tight. None may be lost, and what can be filled makes up the repeat.
 */

import { describe, expect, test } from 'vitest';
import { pathLength, regionArea } from '../../src/geometry/index.ts';
import { groundArea, swagArea } from '../../src/swag/cell-areas.ts';
import {
  type Channel,
  channelsOf,
  cornerSwag,
  designOf,
  regionsOf,
  wholeSwag,
} from '../../src/swag/index.ts';
import { patience } from '../support/runs.ts';
import { planOf, pointsAlong, search, templateOf } from './fit-helpers.ts';
import { distanceToPiece } from './laid.ts';

const C = 6.35;
const HAIRS = [0, 1e-9, -1e-9, 1e-6, -1e-6];
const mm = (v: number): string => v.toFixed(10);
const edge = (...steps: string[]): string =>
  `units: mm\nthickness: 6\nedge:\n  - start: [0, 0]\n${steps.map((s) => `  - ${s}\n`).join('')}`;

/** Invented edges, each with one measure that is `h` (mm) more than the foot's own. */
const EDGES: Record<string, (h: number) => string> = {
  'a cove with a rise of the clearance': (h) =>
    edge(
      'arc: { to: [50.8, 25.4], rise: 6.35 }',
      `arc: { to: [63.5, 25.4], rise: ${mm(-(C + h))} }`,
      'arc: { to: [127, 44.45], rise: 12.7 }',
    ),
  'a half round of the clearance': (h) =>
    edge(
      'arc: { to: [50.8, 25.4], rise: 6.35 }',
      `arc: { to: [${mm(50.8 + 2 * (C + h))}, 25.4], rise: ${mm(-(C + h))} }`,
      'arc: { to: [127, 44.45], rise: 12.7 }',
    ),
  'a fillet of the clearance': (h) =>
    edge(
      'line: { to: [40, 0] }',
      `arc: { to: [${mm(40 + C + h)}, ${mm(C + h)}], rise: ${mm(-(C + h) * (1 - Math.SQRT1_2))} }`,
      `line: { to: [${mm(40 + C + h)}, 30] }`,
      'arc: { to: [110, 60], rise: 12 }',
    ),
  'a slot as wide as the foot': (h) =>
    edge(
      'line: { to: [40, 10] }',
      'line: { to: [40, 0] }',
      `line: { to: [${mm(40 + 2 * C + h)}, 0] }`,
      `line: { to: [${mm(40 + 2 * C + h)}, 20] }`,
      'arc: { to: [110, 60], rise: 12 }',
    ),
  'a bead and a cove of the clearance': (h) =>
    edge(
      'line: { to: [40, 10] }',
      `arc: { to: [${mm(40 + 2 * (C + h))}, 10], rise: ${mm(C + h)} }`,
      `arc: { to: [${mm(40 + 4 * (C + h))}, 10], rise: ${mm(-(C + h))} }`,
      'arc: { to: [130, 50], rise: 12 }',
    ),
  'a cove of twice the clearance': (h) =>
    edge(
      'line: { to: [40, 10] }',
      `arc: { to: [${mm(40 + 2 * (2 * C + h))}, 10], rise: ${mm(-(2 * C + h))} }`,
      'arc: { to: [120, 50], rise: 12 }',
    ),
};
const SIDES = '{ top: 900, right: 1100, bottom: 900, left: 1100 }';
const LAYOUTS: Record<string, string> = {
  'in a strip': 'layout: { strip: { length: 1016, width: 200, margin: 6 } }\nswag: { repeats: 4 }',
  'with gaps of two channels':
    'layout: { strip: { length: 1016, width: 200, margin: 6 } }\nswag: { repeats: 4, gap: 12.7 }',
  'round corners': `layout: { border: { width: 170, inner: ${SIDES}, margin: 6, corners: turn } }`,
};
const CHANNELS = 'channels: { outward: [6.35, 6.35], inward: [6.35, 6.35] }';

const lengthsOf = (channels: readonly Channel[]): number[] =>
  channels.map((c) => c.paths.reduce((sum, p) => sum + pathLength(p), 0));

describe.each(Object.entries(EDGES))('%s', (_, edgeOf) => {
  test('what is filled at a turned corner makes it up, whatever the swag is', () => {
    // Rather deep ones come as near to themselves at the corner as the foot is wide, and a channel is half as wide.
    const plan = planOf(`units: mm\nfoot: { clearance: 6.35 }\n${LAYOUTS['round corners']}\n${CHANNELS}`);
    const { results } = search(plan, [templateOf(edgeOf(0), 'invented')]);
    expect(results.length).toBeGreaterThan(25);
    for (const { field, fit } of results.slice(0, 25)) {
      const design = designOf(field, fit);
      const corner = cornerSwag(design)!.cell;
      const filled = regionsOf(corner, design, plan.channels).map((r) => regionArea(r.region));
      const whole = regionArea(groundArea(corner, design)) + regionArea(swagArea(corner, design));
      expect(filled.reduce((a, b) => a + b, 0)).toBeCloseTo(whole, 3);
    }
  });

  test.each(Object.entries(LAYOUTS))(
    '%s',
    (_, layout) => {
      let cells = 0;
      for (const h of HAIRS) {
        const plan = planOf(`units: mm\nfoot: { clearance: 6.35 }\n${layout}\n${CHANNELS}`);
        const { results } = search(plan, [templateOf(edgeOf(h), 'invented')]);
        // Drapes with sides alike: deep spikes with four channels beside them close up at the corners.
        const drapes = results.filter(
          ({ fit, score }) =>
            fit.way.shape.direction === 'heel-first' &&
            fit.sides.every((s) => 2 * s.seat.depth < s.seat.span) &&
            score.spread < 3,
        );
        for (const { field, fit } of drapes.slice(0, 4)) {
          const design = designOf(field, fit);
          for (const cell of new Set(design.cells)) {
            cells++;
            const channels = channelsOf(cell, design, plan.channels);
            expect(channels).toHaveLength(4);
            for (const length of lengthsOf(channels).slice(0, 3)) expect(length).toBeGreaterThan(10);
            const swag = wholeSwag(cell).pieces;
            for (const { paths, distance } of channels)
              for (const p of paths.flatMap((path) => pointsAlong(path, 4))) {
                const away = Math.min(...swag.map((piece) => distanceToPiece(piece, p)));
                expect(Math.abs(away - distance)).toBeLessThan(1e-6);
              }
            // Nothing is in two bands or in none: they add up to what lies inside and outside of the swag.
            const filled = regionsOf(cell, design, plan.channels).map((r) => regionArea(r.region));
            const whole = regionArea(groundArea(cell, design)) + regionArea(swagArea(cell, design));
            expect(filled.reduce((a, b) => a + b, 0)).toBeCloseTo(whole, 3);
          }
        }
      }
      expect(cells).toBeGreaterThanOrEqual(HAIRS.length);
    },
    patience(60_000),
  );
});
