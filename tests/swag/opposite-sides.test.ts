/**
 * Opposite sides of a quilt look each other in the face: where they are as long to an eye, they take as many swags
 * (common practice, no source).
 */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lopsidedCounts } from '../../src/swag/counts.ts';
import { fewRuns, patience } from '../support/runs.ts';
import { PROFILES, planOf, search } from './fit-helpers.ts';

const side = fc.integer({ min: 700, max: 2200 });
const off = fc.integer({ min: -12, max: 12 });

describe('opposite sides', () => {
  test(
    'that differ by less than half a swag have as many swags, in all that the search finds',
    () => {
      const made = fewRuns(8, 25, 20261125);
      let found = 0;
      fc.assert(
        fc.property(
          fc.tuple(side, side, off, off),
          fc.constantFrom('turn', 'meet'),
          fc.constantFrom('inner', 'outer'),
          fc.integer({ min: 110, max: 220 }),
          (sides, corners, from, width) => {
            const [top, right, wide, tall] = sides;
            const plan = planOf(
              `layout: { border: { width: ${width} mm, inner: { top: ${top} mm, right: ${right} mm, bottom: ${top + wide} mm, left: ${right + tall} mm }, from: ${from}, corners: ${corners} } }`,
            );
            for (const { fit } of search(plan, PROFILES).results) {
              found++;
              const [a, b, c, d] = fit.sides.map((s) => ({ n: s.repeats, length: s.run.length }));
              for (const [one, other] of [
                [a!, c!],
                [b!, d!],
              ] as const) {
                const swag = Math.min(one.length / one.n, other.length / other.n);
                if (Math.abs(one.length - other.length) < swag / 2) expect(one.n).toBe(other.n);
              }
            }
          },
        ),
        made,
      );
      expect(found / made.numRuns).toBeGreaterThan(1000 / 25);
    },
    patience(60_000),
  );

  test('have the counts that a plan gives them all the same', () => {
    const plan = planOf(
      'layout: { border: { width: 6 in, inner: { top: 60 in, right: 72 in, bottom: 60 in, left: 72 in }, corners: meet } }\nswag: { repeats: [9, 11, 10, 11] }',
    );
    const counts = search(plan, PROFILES).results.map(({ fit }) => fit.sides.map((s) => s.repeats));
    expect(counts.length).toBeGreaterThan(0);
    for (const each of counts) expect(each).toEqual([9, 11, 10, 11]);
  });

  test('may differ by a swag where they differ by more than half of one', () => {
    const open = Array.from({ length: 4 }, () => ({ upTo: 40 }));
    expect(lopsidedCounts([1000, 1200, 1060, 1200], open)([9, 11, 10, 11])).toBe(false);
    expect(lopsidedCounts([1000, 1200, 1040, 1200], open)([9, 11, 10, 11])).toBe(true);
    expect(lopsidedCounts([1000, 1200, 1000, 1210], open)([9, 11, 9, 12])).toBe(true);
    expect(lopsidedCounts([1000], [{ upTo: 40 }])([9])).toBe(false);
  });
});
