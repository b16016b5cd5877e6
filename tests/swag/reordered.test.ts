/** The first answer to a slider's move: of what fits whatever its size, the nearest to what is asked, reckoned by hand. */

import { describe, expect, test } from 'vitest';
import { reordered, withoutSizes } from '../../src/swag/index.ts';
import { planOf, search } from './fit-helpers.ts';

const BORDER =
  'layout: { border: { width: 7, inner: { top: 61 3/8, right: 74, bottom: 61 1/8, left: 74 1/4 }, margin: 1/2, corners: meet } }';
const IN = 25.4;

const of = (swag: string) => {
  const plan = planOf(`${BORDER}\nswag: ${swag}`);
  const any = search(withoutSizes(plan)).results;
  return { plan, any, results: reordered(any, plan) };
};

describe('what fits, in the order of a wish', () => {
  test.each([6, 9, 12.5, 20])('about %d in wide', (inches) => {
    const { any, results } = of(`{ span: about ${inches} }`);
    expect(results).toHaveLength(any.length);
    // A twentieth beside it is as good as asked for; of all sides the farthest counts.
    const off = (r: (typeof any)[number]): number =>
      Math.max(...r.fit.sides.map(({ seat }) => Math.max(0, Math.abs(seat.span / (inches * IN) - 1) - 0.05)));
    // What else ranks counts for less than a hundredth.
    expect(off(results[0]!) - Math.min(...any.map(off))).toBeLessThan(0.01);
    expect(results[0]!.answers.map(({ key }) => key)).toEqual(['span']);
    for (const { fit } of results.slice(0, 5)) expect(any.some((r) => r.fit === fit)).toBe(true);
  });

  test('at least 3 in deep: those that are come first, as they came before', () => {
    const { any, results } = of('{ depth: at least 3, gap: 0 }');
    const isDeep = ({ fit }: (typeof any)[number]): boolean =>
      Math.min(...fit.sides.map(({ seat }) => seat.depth)) >= 3 * IN - 1e-6;
    const deep = any.filter(isDeep);
    expect(deep.length).toBeGreaterThan(3);
    expect(deep.length).toBeLessThan(any.length);
    expect(results.slice(0, deep.length).map(({ fit }) => fit)).toEqual(deep.map(({ fit }) => fit));
  });

  test('what ranked before ranks once', () => {
    const { any, results } = of('{ repeats: about 5, span: about 9 }');
    const before = new Map(any.map(({ fit, score }) => [fit, score.cost]));
    const shares = results.flatMap(({ fit, score }): number[] => {
      const off = Math.max(
        ...fit.sides.map(({ seat }) => Math.max(0, Math.abs(seat.span / (9 * IN) - 1) - 0.05)),
      );
      const more = score.cost - before.get(fit)!;
      if (off > 0) return [more / off];
      expect(more).toBe(0);
      return [];
    });
    expect(shares.length).toBeGreaterThan(20);
    expect(Math.max(...shares) / Math.min(...shares)).toBeCloseTo(1, 6);
  });

  test('nothing asked, and nothing but counts: as it was', () => {
    for (const swag of ['{}', '{ repeats: odd }']) {
      const { any, results } = of(swag);
      expect(results).toEqual(any);
    }
  });
});
