/**
 * Two kinds that take turns by the fast search against a slow and plain one, which goes through a grid of tilts of the
 * first kind, lays both point by point, and finds nothing better by the program's own order.
 */

import fc from 'fast-check';
import { expect } from 'vitest';
import { long, patience, runs } from '../support/runs.ts';
import { anyPart } from './random-parts.ts';
import { kindsBothWays } from './slow-kinds.ts';

/** What the program's last step in the difference in width may cost more. */
const GRID = 1e-4;

const question = fc.record({
  first: anyPart,
  second: anyPart,
  width: fc.integer({ min: 120, max: 240 }),
  sides: fc.tuple(
    fc.integer({ min: 700, max: 1500 }),
    fc.integer({ min: 700, max: 1500 }),
    fc.double({ min: 0.95, max: 1, noNaN: true }),
  ),
  gap: fc.constantFrom(0, 0, 10),
  share: fc.double({ min: 0.4, max: 0.95, noNaN: true }),
});

long(
  'no tilt of a fine grid makes two kinds in turn that cost less',
  () => {
    let valid = 0;
    let invalid = 0;
    fc.assert(
      fc.property(question, (q) => {
        const costs = kindsBothWays(q);
        if (!costs) return;
        const { found, slow } = costs;
        if (slow === undefined) {
          invalid++;
          return;
        }
        valid++;
        if (found === undefined) throw new Error(`nothing found, but the grid has a cost of ${slow}`);
        expect(found).toBeLessThanOrEqual(slow + GRID);
      }),
      runs(60, 20261129),
    );
    expect(valid).toBeGreaterThan(15);
    expect(invalid).toBeGreaterThan(15);
  },
  patience(240_000),
);
