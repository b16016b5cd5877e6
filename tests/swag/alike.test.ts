/** What looks alike is shown once: the first eight kinds differ to the eye, and nothing is lost. */

import { describe, expect, test } from 'vitest';
import { flatten } from '../../src/geometry/index.ts';
import { depthsOf, kindsOf, type Ranked, spansOf } from '../../src/swag/index.ts';
import { laidPath } from '../../src/swag/seat.ts';
import { planOf, search } from './fit-helpers.ts';

const LAYOUTS = [
  'border: { width: 7, inner: { top: 61 3/8, right: 74, bottom: 61 1/8, left: 74 1/4 } }',
  'border: { width: 6, inner: { top: 60, right: 60, bottom: 60, left: 60 }, margin: 1/4, corners: turn }',
  'border: { width: 5, inner: { top: 40, right: 52, bottom: 40 1/4, left: 52 }, margin: 1/2, from: outer }',
  'strip: { length: 60, width: 6, margin: 1/2 }',
  'frame: { around: 9, clearance: 1/2, within: 16 }',
];

/** Heights of the first half at nine places across it, in shares of its depth. */
const outline = ({ fit }: Ranked): readonly number[] => {
  const { seat } = fit.sides[0]!;
  const points = flatten(laidPath(seat), 0.01);
  return [1, 2, 3, 4, 5, 6, 7, 8, 9].map((k) => {
    const x = (k / 10) * seat.pose.halfSpan;
    const after = points.findIndex((p) => p.x >= x);
    return points[Math.max(0, after)]!.y / seat.pose.depth;
  });
};

/** Whether an eye tells two designs apart: by a tenth of a size, by their corners or gaps, or by their lines. */
const differ = (a: Ranked, b: Ranked): boolean => {
  if (a.field.corners !== b.field.corners || a.score.gap > 0 !== b.score.gap > 0) return true;
  if (a.fit.sides.length === 1 && a.fit.sides[0]!.repeats !== b.fit.sides[0]!.repeats) return true;
  const far = (x: readonly number[], y: readonly number[], share: number): boolean =>
    x.some((v, i) => Math.abs(v - y[i]!) > share * Math.max(v, y[i]!));
  if (far(depthsOf(a.fit), depthsOf(b.fit), 0.1) || far(spansOf(a.fit), spansOf(b.fit), 0.15)) return true;
  const [one, other] = [outline(a), outline(b)];
  return one.some((y, i) => Math.abs(y - other[i]!) > 0.05);
};

describe.each(LAYOUTS)('%s', (layout) => {
  const { results } = search(planOf(`layout: { ${layout} }`));
  const kinds = kindsOf(results);

  test('the first eight differ to the eye', () => {
    const shown = kinds.slice(0, 8).map((kind) => kind.first);
    expect(shown).toHaveLength(8);
    for (let i = 0; i < 8; i++) for (let k = 0; k < i; k++) expect(differ(shown[i]!, shown[k]!)).toBe(true);
    expect(kinds.length).toBeLessThan(results.length);
    expect(kinds.some(({ like }) => like.length > 0)).toBe(true);
  });

  test('each result is of one kind, and the first of a kind is the best of it', () => {
    const all = kinds.flatMap(({ first, like }) => [first, ...like]);
    expect(all).toHaveLength(results.length);
    expect(new Set(all)).toEqual(new Set(results));
    const place = new Map(results.map((one, i) => [one, i]));
    const firsts = kinds.map(({ first }) => place.get(first)!);
    expect(firsts).toEqual([...firsts].sort((a, b) => a - b));
    for (const { first, like } of kinds)
      for (const one of like) expect(place.get(one)!).toBeGreaterThan(place.get(first)!);
  });

  test('what is another direction of the same part is of one kind where it is as large', () => {
    for (const { first, like } of kinds.slice(0, 20))
      for (const { fit } of like) {
        const sizes = [...depthsOf(fit)].map((d, i) => d / depthsOf(first.fit)[i]!);
        for (const share of sizes) expect(Math.abs(Math.log(share))).toBeLessThan(-Math.log(0.9) + 1e-9);
      }
  });
});
