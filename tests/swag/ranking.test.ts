/** The order of what fits, and what is left out of it. The order is a judgement (common practice, no source): only what a person would insist on is held here. */

import { describe, expect, test } from 'vitest';
import { flatten, movePath, turn } from '../../src/geometry/index.ts';
import type { Ranked } from '../../src/swag/index.ts';
import { planOf, profile, search } from './fit-helpers.ts';

/** The first swag as points, 40 to a path, however its pieces are cut. */
const lineOf = ({ fit }: Ranked): string => {
  const { shape, pose } = fit.sides[0]!.seat;
  const points = flatten(movePath(shape.path, turn(pose.tilt)), 1e-4);
  const lengths = points.map((p, i) =>
    i === 0 ? 0 : Math.hypot(p.x - points[i - 1]!.x, p.y - points[i - 1]!.y),
  );
  const total = lengths.reduce((a, b) => a + b, 0);
  let run = 0;
  const marks: string[] = [];
  points.forEach((p, i) => {
    run += lengths[i]!;
    while (marks.length < 8 && run >= ((marks.length + 0.5) / 8) * total)
      marks.push(`${Math.round(p.x)},${Math.round(p.y)}`);
  });
  return `${fit.sides.map((s) => s.repeats)} ${marks.join(' ')}`;
};

describe('what is found', () => {
  const plan = planOf('layout: { strip: { length: 60, width: 6, margin: 1/2 } }\nswag: { from: 1, to: 1 }');

  test('says a line once that two ways stitch alike, and says the plainer way', () => {
    // The baluster's first lobe is one arc, its own mirror image: heel-first and crown-first are the same line.
    const { results } = search(plan, [profile('baluster')]);
    const byCrown = results.filter((r) => r.fit.way.setting.kind === 'crown-on-centre');
    expect(byCrown.length).toBeGreaterThan(5);
    expect(byCrown.every((r) => r.fit.way.shape.direction === 'heel-first')).toBe(true);
    const lines = byCrown.map(lineOf);
    expect(new Set(lines).size).toBe(lines.length);
  });

  test('comes in the order of its cost', () => {
    const costs = search(plan).results.map((r) => r.score.cost);
    expect(costs.length).toBeGreaterThan(20);
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
    expect(costs.every(Number.isFinite)).toBe(true);
  });
});

test('an etched line may be asked for together with the section that it crosses', () => {
  const at = (from: string) =>
    search(
      planOf(
        `layout: { strip: { length: 60, width: 6, margin: 1/2 } }\nswag: { from: ${from}, to: crown, setting: alignment-line, laid: square }`,
      ),
      [profile('newel')],
    ).results.map((r) => r.fit.sides[0]!.seat.pose.depth);
  expect(at('1').length).toBeGreaterThan(0);
  expect(at('1')).toEqual(at('A'));
  expect(at('2')).toEqual([]);
});
