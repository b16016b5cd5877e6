/** Where corners have swags of their own the card tells of sides and corners each by themselves: followed, both must lead to the drawing. */

import { expect, test } from 'vitest';
import { summaryLines } from '../../src/output/card/summary-words.ts';
import { designOf } from '../../src/swag/index.ts';
import { patience } from '../support/runs.ts';
import { planOf, profile, search } from '../swag/fit-helpers.ts';
import { turnsOnMitre } from '../swag/laid.ts';
import { faultsOf } from './follow-card.ts';

const MILLIMETRES = 'units: mm\nmarks: { round: 0.1 }';
// Round a corner also to a sixty-fourth; across it, a line from one rounded mark to another leans by their rounding.
const INCHES = 'units: in\nmarks: { round: 1/64 }';

const OUTER = 'margin: { inner: 10 mm, outer: 14 mm }, from: outer';
const border = (more: string): string =>
  `border: { width: 150 mm, inner: { top: 600 mm, right: 700 mm, bottom: 590 mm, left: 704 mm }, ${more} }`;
const block = (more: string): string =>
  `frame: { block: { width: 400 mm, height: 460 mm }, clearance: 12 mm, within: 740 mm, ${more} }`;

test.each([
  ['turn, from inner', border('margin: 10 mm, corners: turn'), [MILLIMETRES, INCHES]],
  ['turn, from outer', border(`${OUTER}, corners: turn`), [MILLIMETRES, INCHES]],
  ['across', border(`${OUTER}, corners: across`), [MILLIMETRES]],
  ['turn, round a block', block('corners: turn'), [MILLIMETRES]],
  ['across, round a block', block('from: outer, corners: across'), [MILLIMETRES]],
] as const)(
  'the card of a corner of its own leads to its drawing: %s',
  (_, layout, all) => {
    let count = 0;
    for (const units of all)
      for (const corner of [
        '{ template: newel }',
        '{ side: outside }',
        '{ template: finial, direction: crown-first }',
        '{ template: [baluster, finial, newel], smooth: true }',
      ]) {
        const plan = planOf(
          `${units}\nlayout: { ${layout} }\nswag: { direction: heel-first, side: inside }\ncorner: ${corner}\n`,
        );
        const [best] = search(plan, plan.templates.map(profile)).results;
        if (!best) continue;
        count++;
        const design = designOf(best.field, best.fit);
        expect(faultsOf(design, plan), `${corner}, ${units}`).toEqual([]);
        const summary = summaryLines(design, plan).join(' ');
        expect(summary.includes('one smooth curve on the mitre'), summary).toBe(turnsOnMitre(design) < 1.001);
        expect(summary.includes('meeting in a point on the mitre')).toBe(turnsOnMitre(design) >= 1.001);
      }
    expect(count).toBeGreaterThan(1);
  },
  patience(120_000),
);
