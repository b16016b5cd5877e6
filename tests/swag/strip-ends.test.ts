/** What is kept clear at both ends of a strip: by hand, the swags share its length less twice that. */

import { describe, expect, test } from 'vitest';
import { drawDesign, wholeScope } from '../../src/drawing/index.ts';
import { movePath } from '../../src/geometry/index.ts';
import { MM_TENTH } from '../../src/length/index.ts';
import { type Design, designOf, marksOf, regionsOf } from '../../src/swag/index.ts';
import { planOf, pointsAlong, search } from './fit-helpers.ts';

const LENGTH = 900;
const ENDS = 23.7;

const plan = planOf(
  `units: mm\nlayout: { strip: { length: ${LENGTH}, width: 150, margin: 10, ends: ${ENDS} } }\nchannels: { outward: 6 }\n`,
);
const designs = search(plan)
  .results.slice(0, 20)
  .map((r): Design => designOf(r.field, r.fit));

describe('a strip whose ends are kept clear', () => {
  test('has swags that share what is left of its length', () => {
    expect(designs).toHaveLength(20);
    for (const { fit } of designs)
      for (const { repeats, seat } of fit.sides)
        expect(repeats * (seat.span + seat.gap)).toBeCloseTo(LENGTH - 2 * ENDS, 6);
  });

  test('is measured from its own end to its own end', () => {
    for (const design of designs) {
      const [side] = marksOf(design, MM_TENTH);
      const { gap } = design.fit.sides[0]!.seat;
      const [first] = side!.marks;
      const last = side!.marks.findLast((m) => m.kind === 'stop');
      expect(side!.length).toBeCloseTo(LENGTH, 9);
      expect(first!.at).toBeCloseTo(ENDS + gap / 2, 6);
      expect(last!.at).toBeCloseTo(LENGTH - ENDS - gap / 2, 6);
      expect(side!.marks.at(-1)).toMatchObject({ kind: 'end', at: side!.length });
    }
  });

  test('is drawn from end to end, its stitching and what may be filled between the margins', () => {
    for (const design of designs) {
      const { layers } = drawDesign(design, wholeScope(design), { title: '' });
      const across = (items: readonly unknown[]): readonly number[] =>
        (items as (typeof layers)['border'])
          .flatMap((item) => (item.kind === 'path' ? pointsAlong(item.path, 2) : []))
          .map((p) => p.x);
      expect(Math.min(...across(layers.border))).toBeCloseTo(0, 6);
      expect(Math.max(...across(layers.border))).toBeCloseTo(LENGTH, 6);
      const stitched = across([...layers.stitch, ...layers.channel]);
      expect(Math.min(...stitched)).toBeGreaterThan(ENDS - 1e-6);
      expect(Math.max(...stitched)).toBeLessThan(LENGTH - ENDS + 1e-6);
      const margins = layers.border.filter((item) => {
        const { line } = (item.kind === 'path' && item.facts) || {};
        return line === 'end margin';
      });
      expect(margins).toHaveLength(2);
      const first = design.halves[0]!;
      const areas = regionsOf(first.cell, design, plan.channels).flatMap(({ region }) =>
        region.loops.flatMap((loop) => pointsAlong(movePath(loop, first.motion), 2)),
      );
      expect(Math.min(...areas.map((p) => p.x))).toBeCloseTo(ENDS, 3);
    }
  });
});
