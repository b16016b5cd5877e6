/** Parts of the sample templates at random, as a plan says them and as they are laid, for searches made over again. */

import fc from 'fast-check';
import { endStops, type Shape, shapeOf, startStops, stitchTemplate } from '../../src/swag/index.ts';
import { PROFILES } from './fit-helpers.ts';

/** mm */
export const CLEARANCE = 6.35;

export const anyPart = fc.record({
  template: fc.integer({ min: 0, max: 2 }),
  start: fc.constantFrom(0, 0, 0, 1),
  // The last section as often as not.
  end: fc.constantFrom(-1, -1, 0, 1),
  side: fc.constantFrom('inside' as const, 'inside' as const, 'outside' as const),
  direction: fc.constantFrom('heel-first' as const, 'crown-first' as const),
});

export type AnyPart = typeof anyPart extends fc.Arbitrary<infer T> ? T : never;

/** Undefined where such a part makes no half swag. */
export const partOf = (q: AnyPart) => {
  const stitched = stitchTemplate(PROFILES[q.template]!, CLEARANCE);
  if (!stitched.ok) throw new Error('the profiles can be stitched');
  const starts = startStops(stitched.stitching);
  const first = q.start % starts.length;
  const from = starts[first]!;
  const to = endStops(stitched.stitching).at(q.end < 0 ? -1 : first + (q.end % (starts.length - first)))!;
  const shape = shapeOf(stitched.stitching, from, to, q.side, q.direction);
  const words = `from: ${from.section}, to: ${to.section}, side: ${q.side}, direction: ${q.direction}`;
  return shape && { shape, words, template: NAMES[q.template]! };
};

/** In the order of the profiles. */
export const NAMES = ['baluster', 'finial', 'newel'];

export const crownOnCentre = (shape: Shape) => ({
  shape,
  setting: { kind: 'crown-on-centre' } as const,
  tilt: undefined,
  laid: undefined,
  mayStopSooner: false,
});
