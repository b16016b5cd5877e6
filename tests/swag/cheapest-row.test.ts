/**
 * Of all rows that keep to a first one's marks the search takes the one that costs least: whatever is asked of how the
 * second row is made, no first row then has a cheaper one than where all is left open.
 */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { HowMade, Plan } from '../../src/plan/index.ts';
import { type Ranked, spansOf } from '../../src/swag/index.ts';
import type { Way } from '../../src/swag/setting.ts';
import { fewRuns, patience } from '../support/runs.ts';
import { planOf, search } from './fit-helpers.ts';

const question = fc.record({
  corners: fc.constantFrom('turn', 'meet', 'open'),
  from: fc.constantFrom('inner', 'outer'),
  width: fc.integer({ min: 7, max: 13 }),
  at: fc.constantFrom(0, 0.5, 1),
  long: fc.integer({ min: 20, max: 60 }),
  wide: fc.integer({ min: 20, max: 60 }),
});

const PINS: readonly Partial<HowMade>[] = [
  { side: 'inside' },
  { side: 'outside' },
  { direction: 'heel-first' },
  { direction: 'crown-first' },
  { setting: 'crown-on-centre' },
  { setting: 'alignment-line' },
  { setting: 'flat-on-guide' },
];

const pinned = (plan: Plan, pin: Partial<HowMade>): Plan => ({
  ...plan,
  rows: plan.rows.map((row) => ({ ...row, swag: { ...row.swag, ...pin } })),
});

const wayWords = ({ shape, setting }: Way): string =>
  [shape.stitching.template.name, shape.from.label, shape.to.label, shape.side, shape.direction]
    .concat(JSON.stringify(setting))
    .join(' ');

/** What each first row costs with the best row beyond it. */
const costs = (results: readonly Ranked[]): ReadonlyMap<string, number> =>
  new Map(
    results.map(({ field, fit, score }) => [
      `${field.corners} ${wayWords(fit.way)} ${fit.sides.map(({ repeats }) => repeats)} ${spansOf(fit)}`,
      score.cost,
    ]),
  );

test(
  'what is asked of how a second row is made never gives a cheaper one',
  () => {
    let compared = 0;
    fc.assert(
      fc.property(question, ({ corners, from, width, at, long, wide }) => {
        const plan = planOf(
          `layout: { border: { width: ${width}, inner: { top: ${long} 1/8, right: ${wide}, bottom: ${long}, left: ${wide} 1/4 }, margin: 1/2, corners: ${corners}, from: ${from} } }\nrows: [{ at: ${at} }]\n`,
        );
        const free = costs(search(plan).results);
        for (const pin of PINS)
          for (const [first, cost] of costs(search(pinned(plan, pin)).results)) {
            compared++;
            expect(free.get(first), `${first}, ${JSON.stringify(pin)}`).toBeLessThanOrEqual(cost + 1e-9);
          }
      }),
      fewRuns(6, 40, 41),
    );
    expect(compared).toBeGreaterThan(1000);
  },
  patience(240_000),
);
