/**
 * With corners of their own what may cost least is tried first, and the rest never. So each pair of ways is also searched
 * by itself, with all that may be: what the common search finds is the best of that, in its order.
 */

import { expect, test } from 'vitest';
import { wishesOf } from '../../src/swag/asked.ts';
import { fieldsOf, stitchTemplate } from '../../src/swag/index.ts';
import { fitOwnCorners } from '../../src/swag/search-own-corners.ts';
import { waysOf } from '../../src/swag/ways.ts';
import { wishedScore } from '../../src/swag/wished.ts';
import { few, patience } from '../support/runs.ts';
import { planOf, profile } from './fit-helpers.ts';

const TURN = 'margin: 1/2, corners: turn';
const ROUND = 'margin: 1/2, from: outer, corners: turn';
const ACROSS = 'margin: 1/2, from: outer, corners: across';
const CASES = [
  [TURN, '', 'auto'],
  [ACROSS, 'span: about 9, depth: about 3', 0],
  [TURN, 'use: about 3/4', 'auto'],
  [TURN, 'span: about 10', 0],
  [TURN, 'depth: at least 3', 'auto'],
  [TURN, 'repeats: odd, depth: about 2 1/2', 'auto'],
  [TURN, 'span: about 9, gap: about 1/2', 'auto'],
  [ROUND, '', 'auto'],
  [ROUND, 'use: about 3/4', 0],
  [ROUND, 'span: about 9, gap: about 1/2', 12.7],
  [ACROSS, '', 'auto'],
  [ACROSS, 'repeats: 8, use: about 60 %', 'auto'],
] as const;

test.each(few(CASES, (one) => one === CASES[0]))(
  'no pair of ways has better by itself: %s; %s; gap %s',
  (corners, swag, gap) => {
    const plan = planOf(
      `layout: { border: { width: 6, inner: { top: 40 1/8, right: 52, bottom: 40, left: 52 1/4 }, ${corners} } }\nswag: { ${swag} }`,
    );
    if (plan.layout.kind !== 'border') throw new Error('a border');
    const field = fieldsOf(plan.layout)[0]!;
    if (field.corners === 'none') throw new Error('a border has corners');
    const wishes = wishesOf(plan);
    const rules = {
      room: field.room,
      gap,
      wishes,
      ...(gap === 'auto' && { widestGap: Number.POSITIVE_INFINITY }),
    };
    const grounds = [{ field, rules, counts: field.runs.map(() => ({ upTo: 40 })) }];
    const [sides, over] = ['baluster', 'finial'].map((name) => {
      const stitched = stitchTemplate(profile(name), 6.35);
      if (!stitched.ok) throw new Error(name);
      return waysOf(stitched.stitching, { swag: { ...plan.swag, setting: 'crown-on-centre' } });
    });
    const together = fitOwnCorners([sides!, over!], grounds, 0).found;
    // Of each way for the sides and each count of the longest side the best.
    const least = new Map<string, number>();
    for (const [i, side] of sides!.entries())
      for (const corner of over!)
        for (const { fit } of fitOwnCorners([[side], [corner]], grounds, 0).found) {
          const key = `${i} ${fit.sides[3]!.repeats}`;
          const { cost } = wishedScore(fit, field, 0, wishes)!;
          least.set(key, Math.min(cost, least.get(key) ?? cost));
        }
    const costs = [...least.values()].sort((a, b) => a - b);
    expect(together.length).toBeGreaterThan(3);
    expect(together.map(({ fit }) => wishedScore(fit, field, 0, wishes)!.cost)).toEqual(
      costs.slice(0, together.length).map((cost) => expect.closeTo(cost, 6)),
    );
  },
  patience(60_000),
);
