/** While the figures of one fill move, nothing is searched again, and no other fill is made again. */

import { expect, test, vi } from 'vitest';

vi.mock('../../src/swag/index.ts', async (original) => {
  const swag = await original<typeof import('../../src/swag/index.ts')>();
  return { ...swag, searchPlan: vi.fn(swag.searchPlan) };
});

vi.mock('../../src/drawing/index.ts', async (original) => {
  const drawing = await original<typeof import('../../src/drawing/index.ts')>();
  return { ...drawing, fillDesign: vi.fn(drawing.fillDesign) };
});

// Test files share their modules: those that were loaded before have not what counts here.
vi.resetModules();
const { fillDesign } = await import('../../src/drawing/index.ts');
const { searchPlan } = await import('../../src/swag/index.ts');
const { ask, inputOf } = await import('./ask.ts');

const planWith = (background: string): string =>
  `template: baluster
layout: { strip: { length: 24, width: 5, margin: 1/2 } }
channels: { outward: [1/4] }
fills: { swag: echo, background: ${background}, channels: [pearls] }
`;

const fillsOf = (background: string) =>
  ask({ kind: 'fills', input: inputOf(planWith(background)), side: 'strip' });

test('one search serves all figures, and each fill is made anew only when its own figures move', async () => {
  const searches = vi.mocked(searchPlan).mock.calls;
  const made = vi.mocked(fillDesign).mock.calls;
  const first = await fillsOf('lines');
  expect(searches.length).toBe(1);
  const before = made.length;
  const next = await fillsOf('{ kind: lines, spacing: 1/2 }');
  expect(searches.length).toBe(1);
  expect(
    made.slice(before).map(([, , { fills }]) => [fills.swag, fills.background?.kind, fills.channels]),
  ).toEqual([[undefined, 'lines', []]]);
  expect(next.problems).toEqual([]);
  const changed = next.quilt.filter(({ d }, i) => d !== first.quilt[i]!.d);
  expect(changed).toHaveLength(1);
  expect(next.swag).not.toBe(first.swag);
  // What is in the way of one fill is in the way of all, as it is on paper; and it is gone when that is.
  const fine = await fillsOf('steam');
  expect(fine.problems.map(({ key }) => key)).toEqual(['fills.background']);
  expect([fine.quilt, fine.swag]).toEqual([[], '']);
  expect(await fillsOf('lines')).toEqual(first);
  expect(searches.length).toBe(1);
});
