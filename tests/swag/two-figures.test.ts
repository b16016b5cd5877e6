/** Span and depth both given in figures: h² + d² = C² seldom holds for them, but a swag that prints as both is as asked. */

import { expect, test } from 'vitest';
import { planOf, profile, search } from './fit-helpers.ts';

const INCH = 25.4;
/** Half of a sixteenth, and rounding, mm: what is asked exactly is printed alike. */
const HALF = INCH / 32 + 1e-6;

// The finial's section 2 has a chord of 2.2204 in: 3 5/8 wide it is √(2.2204² − 1.8125²) = 1.2826 deep, less than half
// a sixteenth from 1 5/16; just 1 5/16 deep it would be 3.582 wide, which is more than that from 3 5/8.
test.each(['strip: { length: 60, width: 6 }', 'border: { width: 3, margin: 1/4, corners: turn, inner: 60 }'])(
  'a swag that prints as both is found, though it is neither to the last digit: %s',
  (layout) => {
    const plan = planOf(`layout: { ${layout} }\nswag: { span: 3 5/8, depth: 1 5/16 }`);
    const { results } = search(plan, [profile('finial')]);
    expect(results.length).toBeGreaterThan(3);
    for (const { fit } of results)
      for (const { seat } of fit.sides) {
        expect(Math.abs(seat.span - 3.625 * INCH)).toBeLessThanOrEqual(HALF);
        expect(Math.abs(seat.depth - 1.3125 * INCH)).toBeLessThanOrEqual(HALF);
      }
  },
);

test('a side that leaves its count open has the one that is found where it is given', () => {
  const asked = (left: string) =>
    search(
      planOf(
        `layout: { border: { width: 3, margin: 1/4, corners: turn, inner: { top: 77 3/4, right: 18 3/4, bottom: 77 9/16, left: 18 15/16 } } }\nswag: { span: 3 5/8, depth: 1 5/16, repeats: [14, 3, 14, ${left}] }`,
      ),
      [profile('finial')],
    ).results;
  const given = asked('3');
  expect(given.length).toBeGreaterThan(0);
  const open = asked('auto');
  expect(open.map(({ fit }) => fit.sides[3]!.repeats)).toContain(3);
  expect(open[0]!.score.cost).toBeLessThanOrEqual(given[0]!.score.cost + 1e-6);
});
