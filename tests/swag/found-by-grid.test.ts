/** What the slow search (slow-search.ts) found over its grid of tilts, and the fast one once did not. */

import { expect, test } from 'vitest';
import type { Plan } from '../../src/plan/index.ts';
import { depthsOf, fieldsOf } from '../../src/swag/index.ts';
import { planOf, profile, search, spreadOfFit } from './fit-helpers.ts';
import { CLEARANCE, partOf } from './random-parts.ts';
import { type KindsQuestion, kindsBothWays } from './slow-kinds.ts';
import { type SlowGround, slowLeast, slowWay } from './slow-search.ts';

/** Radians between tilts of the corner: a quarter of a degree. */
const STEP = Math.PI / 720;

const part = (template: number, end: 0 | -1) =>
  partOf({ template, start: 0, end, side: 'inside', direction: 'heel-first' })!;

/** The ground of a border whose swags leave from the outer seam, as the slow search takes it. */
const groundOf = ({ layout }: Plan, corner: SlowGround['corner'], gap: number): SlowGround => {
  if (layout.kind !== 'border') throw new Error('a border');
  const field = fieldsOf(layout)[0]!;
  return { lengths: field.runs.map((r) => r.length), corner, from: 'outer', room: field.room, gap };
};

test('a flat swag turns a corner although its neck was too narrow if it were flatter', () => {
  // Half swags 57 mm long between sides 52 mm deep: as little depth as can be had is asked for, so the corner is to be flat.
  const { shape } = part(0, 0);
  const plan = planOf(
    `units: mm
layout: { border: { width: 53, inner: 400, from: outer, corners: turn } }
swag: { from: 1, to: 1, side: inside, direction: heel-first, setting: crown-on-centre, gap: 8, repeats: [7, 7, 7, 7], depth: about 8.58 }`,
  );
  const ground = { ...groundOf(plan, 'turn', 8), asksDepth: true };
  const off = (depths: readonly number[]): number => Math.max(...depths.map((d) => Math.abs(d / 8.58 - 1)));
  const slow = slowLeast(slowWay(shape.path, CLEARANCE), ground, [7, 7, 7, 7], STEP, ({ depths }) =>
    off(depths),
  )!;
  const [best] = search(plan, [profile('baluster')]).results;
  expect(off(depthsOf(best!.fit))).toBeLessThanOrEqual(slow.missed);
});

test('beside a corner of its own that runs along its neighbours one that does not is found', () => {
  const [side, corner] = [part(2, -1), part(2, 0)];
  const plan = planOf(
    `units: mm
layout: { border: { width: 120, inner: { top: 578, right: 578, bottom: 549, left: 549 }, from: outer, corners: across } }
swag: { gap: 0, repeats: [3, 3, 3, 3], from: 1, to: 2, side: inside, direction: heel-first }
corner: { template: newel, from: 1, to: 1, side: inside, direction: heel-first }`,
  );
  const ground = groundOf(plan, 'across', 0);
  const [way, over] = [side, corner].map(({ shape }) => slowWay(shape.path, CLEARANCE));
  const slow = slowLeast(way!, ground, [3, 3, 3, 3], STEP, () => 0, over)!;
  const named = { ...plan, templates: ['newel'], swag: { ...plan.swag, templates: ['newel'] } };
  const [best] = search(named, [profile('newel')]).results;
  expect(spreadOfFit(best!)).toBeLessThanOrEqual(slow.spread);
});

/** As in the long check: what the search's last step in the difference in width may cost more. */
const LAST_STEP = 1e-4;

const newelWhole = { template: 2, start: 0, end: -1, side: 'inside', direction: 'heel-first' } as const;
const KINDS: readonly (KindsQuestion & { readonly as: string })[] = [
  {
    as: 'two differences in width that are nearly as good lie between two samples',
    first: { template: 1, start: 0, end: 1, side: 'inside', direction: 'crown-first' },
    second: newelWhole,
    width: 167,
    sides: [1388, 700, 0.9614553314121037],
    gap: 10,
    share: 0.46369027387736206,
  },
  {
    as: 'only the least of all differences in width is far enough from one kind at a sample',
    first: newelWhole,
    second: newelWhole,
    width: 157,
    sides: [1138, 700, 0.95],
    gap: 0,
    share: 0.5926849838543162,
  },
];

test.each(KINDS)('two kinds in turn cost no more than over the grid where $as', (q) => {
  const { found, slow } = kindsBothWays(q)!;
  expect(found).toBeLessThanOrEqual(slow! + LAST_STEP);
});
