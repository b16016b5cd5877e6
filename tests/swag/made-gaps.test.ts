/** A gap that is not given in figures follows from what is asked: n spans and n gaps make the side. */

import { describe, expect, test } from 'vitest';
import { cornerSwag } from '../../src/swag/index.ts';
import { planOf, profile, search } from './fit-helpers.ts';

const INCH = 25.4;
/** Rounding, mm. */
const NOISE = 1e-6;
/** Half of a sixteenth: what is asked exactly is printed alike. */
const HALF = INCH / 32;

describe('a gap that is not given in figures follows from what is asked', () => {
  const STRIP = 'layout: { strip: { length: 60, width: 6 } }';
  // n spans and n gaps make the strip: g = L/n − span.
  test.each([
    ['span: 11, repeats: 5', 11, 1],
    ['span: 11, gap: 1/2 to 2', 11, 1],
    ['span: 11, gap: at most 1', 11, 1],
    ['span: 9 to 10 1/2, repeats: 5, gap: at least 1/4', 10.5, 1.5],
    ['span: about 10, gap: 0 to 3, repeats: 5', 10.5, 1.5],
    ['span: about 10, gap: 0 to 1, repeats: 5', 11, 1],
    ['span: 11, gap: about 1/2', 11, 1],
  ])('%s', (asked, span, gap) => {
    const { results } = search(planOf(`${STRIP}\nswag: { ${asked} }`), [profile('finial')]);
    const crowned = results.filter(({ fit }) => fit.way.setting.kind === 'crown-on-centre');
    expect(crowned.length).toBeGreaterThan(1);
    for (const { seat, repeats } of [results[0]!, crowned[0]!].map(({ fit }) => fit.sides[0]!)) {
      expect(repeats).toBe(5);
      expect(seat.span).toBeCloseTo(span * INCH, 6);
      expect(seat.gap).toBeCloseTo(gap * INCH, 6);
    }
  });

  test('and a depth that is asked for has the gap that it takes', () => {
    const plan = planOf(`${STRIP}\nswag: { depth: 4, repeats: 5, setting: crown-on-centre }`);
    const { sides, way } = search(plan, [profile('finial')]).results[0]!.fit;
    const { seat } = sides[0]!;
    // h² + d² = C², and a gap fills up what that leaves.
    expect(seat.depth).toBeCloseTo(4 * INCH, 6);
    expect(seat.span).toBeCloseTo(2 * Math.sqrt(way.shape.chord ** 2 - (4 * INCH) ** 2), 6);
    expect(seat.gap).toBeCloseTo(12 * INCH - seat.span, 6);
  });

  test.each([
    ['turn', 'inner', 11],
    ['meet', 'inner', 11],
    ['across', 'outer', 9],
  ])('on every side of a border whose corners %s', (corners, from, wide) => {
    const border = `width: 6, inner: { top: 60 1/8, right: 72, bottom: 60, left: 72 1/4 }, margin: 1/2, from: ${from}, corners: ${corners}`;
    const { results } = search(
      planOf(`layout: { border: { ${border} } }\nswag: { span: ${wide}, gap: 0 to 2 }`),
    );
    const crowned = results.filter(({ fit }) => fit.way.setting.kind === 'crown-on-centre');
    expect(crowned.length).toBeGreaterThan(2);
    for (const { fit } of crowned)
      for (const { run, repeats, seat } of fit.sides) {
        expect(Math.abs(seat.span - wide * INCH)).toBeLessThanOrEqual(HALF + NOISE);
        expect(seat.gap).toBeLessThanOrEqual(2 * INCH + NOISE);
        const corner = cornerSwag(fit);
        const filled = repeats * (seat.span + seat.gap) + (corner ? 2 * corner.toCorner + seat.gap : 0);
        expect(filled).toBeCloseTo(run.length, 5);
      }
  });

  test('but one that is given in figures, or nothing that is asked for, makes none', () => {
    const { results } = search(
      planOf(`${STRIP}\nswag: { span: about 11, setting: crown-on-centre, side: inside }`),
    );
    expect(Math.max(...results.slice(0, 3).map(({ score }) => score.gap))).toBe(0);
    expect(search(planOf(`${STRIP}\nswag: { span: 11, gap: 1/2 }`)).results).toEqual([]);
  });

  test('one that is given may be wider than the swags, whatever is asked about their span', () => {
    // 46 in for eight swags and eight gaps of 3 in: 46/8 − 3 = 2 3/4 in each.
    const strip = 'layout: { strip: { length: 46, width: 12 } }';
    for (const span of ['', ', span: about 2 3/4']) {
      const plan = planOf(`${strip}\nswag: { gap: 3, repeats: 8, setting: crown-on-centre${span} }`);
      const { results } = search(plan, [profile('newel')]);
      expect(results.length).toBeGreaterThan(0);
      for (const { fit } of results) expect(fit.sides[0]!.seat.span).toBeCloseTo(2.75 * INCH, 6);
    }
  });
});
