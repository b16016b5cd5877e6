/** Corners with swags of their own by the fast search against the slow and plain one, over a grid of the corner's tilts. */

import fc from 'fast-check';
import { expect } from 'vitest';
import { fieldsOf } from '../../src/swag/index.ts';
import { long, patience, runs } from '../support/runs.ts';
import { PROFILES, planOf, search, spreadOfFit } from './fit-helpers.ts';
import { anyPart, CLEARANCE, NAMES, partOf } from './random-parts.ts';
import { type SlowGround, slowLeast, slowWay } from './slow-search.ts';

/** Radians between tilts of the corner: a quarter of a degree. */
const STEP = Math.PI / 720;
/** What the fast search's last step may leave, mm. */
const GRID = 0.01;

const question = fc.record({
  side: anyPart,
  corner: anyPart,
  ground: fc.constantFrom(
    { corners: 'turn', from: 'inner' } as const,
    { corners: 'turn', from: 'outer' } as const,
    { corners: 'across', from: 'outer' } as const,
  ),
  width: fc.integer({ min: 120, max: 240 }),
  sides: fc.tuple(
    fc.integer({ min: 500, max: 1500 }),
    fc.integer({ min: 500, max: 1500 }),
    fc.double({ min: 0.95, max: 1, noNaN: true }),
  ),
  gap: fc.constantFrom(0, 0, 10),
  share: fc.double({ min: 0.4, max: 1, noNaN: true }),
  smooth: fc.boolean(),
});

long(
  'no tilt of a fine grid makes a corner of its own more like the sides',
  () => {
    let valid = 0;
    let smooth = 0;
    let invalid = 0;
    fc.assert(
      fc.property(question, (q) => {
        const [side, corner] = [partOf(q.side), partOf(q.corner)];
        if (!side || !corner) return;
        const { corners, from } = q.ground;
        const [across, up, less] = q.sides;
        const inner = [across, up, Math.round(across * less), Math.round(up * less)] as const;
        const pitch = 2 * q.share * side.shape.chord + q.gap;
        const counts = inner.map((_, i) => Math.max(1, Math.round((inner[i % 2]! - 2 * q.width) / pitch)));
        const plan = planOf(
          `units: mm
layout: { border: { width: ${q.width}, inner: { top: ${inner[0]}, right: ${inner[1]}, bottom: ${inner[2]}, left: ${inner[3]} }, from: ${from}, corners: ${corners} } }
swag: { gap: ${q.gap}, repeats: [${counts}], ${side.words} }
corner: { template: ${corner.template}, ${corner.words}, smooth: ${q.smooth} }`,
        );
        const templates = [side.template, ...(corner.template === side.template ? [] : [corner.template])];
        const named = {
          ...plan,
          templates,
          swag: { ...plan.swag, templates: [side.template] },
        };
        if (plan.layout.kind !== 'border') throw new Error('a border');
        const field = fieldsOf(plan.layout)[0]!;
        const ground: SlowGround = {
          lengths: field.runs.map((r) => r.length),
          corner: corners,
          from,
          room: field.room,
          gap: q.gap,
          smooth: q.smooth,
        };
        const [way, over] = [side, corner].map(({ shape }) => slowWay(shape.path, CLEARANCE));
        const slow = slowLeast(way!, ground, counts, STEP, () => 0, over);
        const fast = search(
          named,
          templates.map((name) => PROFILES[NAMES.indexOf(name)]!),
        ).results.map(spreadOfFit);
        if (!slow) {
          invalid++;
          return;
        }
        valid++;
        if (q.smooth) smooth++;
        if (fast.length === 0) throw new Error(`nothing found, but the grid has a spread of ${slow.spread}`);
        expect(Math.min(...fast)).toBeLessThanOrEqual(slow.spread + GRID);
      }),
      runs(300, 20261129),
    );
    expect(valid).toBeGreaterThan(12);
    expect(invalid).toBeGreaterThan(12);
    expect(smooth).toBeGreaterThan(3);
  },
  patience(240_000),
);
