/** The corner squares that sides leave free take a fill. Where they lie is worked out by hand from the border's measures. */

import { describe, expect, test } from 'vitest';
import { drawPlan, fillDesign, fillLengths, scopeOf } from '../../src/drawing/index.ts';
import { pathLength } from '../../src/geometry/index.ts';
import { fillBlocks } from '../../src/output/card/fill-words.ts';
import { designOf } from '../../src/swag/index.ts';
import { planOf, pointsAlong, search } from '../swag/fit-helpers.ts';

const made = (layout: string, fill: string) => {
  const plan = planOf(`units: mm\nlayout: { border: { ${layout} } }\nfills: { corner: ${fill} }\n`);
  const [best] = search(plan).results;
  if (!best) throw new Error('nothing fits');
  return { plan, design: designOf(best.field, best.fit) };
};

/** A border 150 mm wide round 1500 by 1800, whose lower left inner corner is the origin; kept clear inside and outside. */
const SIDES = 'width: 150, inner: { top: 1500, right: 1800, bottom: 1500, left: 1800 }';
const CASES = [
  ['half', 'inner', 12, 12],
  ['open', 'inner', 10, 20],
  ['half', 'outer', 20, 10],
  ['open', 'outer', 12, 12],
] as const;

describe.each(CASES)('%s, from the %s seam, %i mm and %i mm clear', (corners, from, inner, outer) => {
  const layout = `${SIDES}, margin: { inner: ${inner}, outer: ${outer} }, from: ${from}, corners: ${corners}`;
  const { plan, design } = made(layout, '{ kind: crosshatch, spacing: 8 }');
  const filling = fillDesign(design, design.halves, plan);

  test('each square is filled from margin to margin, and nothing beyond', () => {
    const squares = filling.open.filter(({ kind }) => kind === 'corner square');
    // From the inner corner outward, to the right and up where the corner lies there.
    const spans = { right: [1500 + inner, 1650 - outer], up: [1800 + inner, 1950 - outer] };
    const low = [-150 + outer, -inner];
    const expected = [
      [spans.right, spans.up],
      [spans.right, low],
      [low, low],
      [low, spans.up],
    ];
    expect(squares).toHaveLength(4);
    const found = squares.map(({ paths }) => {
      const points = paths.flatMap((path) => pointsAlong(path, 5));
      const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
      return [xs, ys].map((all) => [Math.min(...all), Math.max(...all)]);
    });
    // The lines of a hatch end on the edges, and so reach all four of them.
    for (const square of expected)
      expect(found).toContainEqual(square.map((span) => span.map((at) => expect.closeTo(at!, 1))));
  });

  test('all four are alike, their thread is counted, and a side alone shows none', () => {
    const squares = filling.open.filter(({ kind }) => kind === 'corner square');
    const lengths = squares.map(({ paths }) => paths.reduce((sum, path) => sum + pathLength(path), 0));
    for (const length of lengths) expect(length).toBeCloseTo(lengths[0]!, 6);
    const counted = [...fillLengths(filling, design).values()].reduce((sum, length) => sum + length, 0);
    expect(counted).toBeCloseTo(4 * lengths[0]!, 4);
    const linesIn = (what: string): number => {
      const scoped = scopeOf(design, what);
      if (!scoped.ok) throw new Error(what);
      const { drawing } = drawPlan(scoped.design, plan, scoped.scope);
      return drawing.layers.fill.filter((item) => item.kind === 'path').length;
    };
    expect(linesIn('side')).toBe(0);
    expect(linesIn('repeat')).toBe(0);
    expect(linesIn('all')).toBe(4 * linesIn('corner'));
    expect(linesIn('corner')).toBeGreaterThan(10);
  });

  test('the card tells how they are sewn', () => {
    expect(JSON.stringify(fillBlocks(plan, design))).toMatch(/Corner squares, crosshatch, spacing 8 mm: /);
    expect(filling.messages).toEqual([]);
  });
});

test('where the sides meet there is no square, and that is said', () => {
  const { plan, design } = made(`${SIDES}, margin: 12, corners: meet`, 'stipple');
  const { open, messages } = fillDesign(design, design.halves, plan);
  expect(open).toEqual([]);
  expect(messages.join()).toContain('fills.corner: it is not used');
});

test('a spacing that is too fine for the squares is refused', () => {
  const { plan, design } = made(`${SIDES}, margin: 12, corners: open`, '{ kind: feather, spacing: 0.8 }');
  expect(fillDesign(design, design.halves, plan).problems).toMatchObject([{ key: 'fills.corner.spacing' }]);
});
