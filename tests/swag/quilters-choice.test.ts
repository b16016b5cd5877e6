/**
 * What a quilter puts first, on borders of our own invention, with the three templates that come along. The order is a
 * judgement (common practice, no source): each row says what comes first and why, and all hold to what she looks for
 * before anything else. The weights (swag/weights.ts) were set beside this table.
 */

import { describe, expect, test } from 'vitest';
import { depthsOf, kindsOf, type Ranked, spansOf } from '../../src/swag/index.ts';
import { planOf, search } from './fit-helpers.ts';

interface Row {
  readonly border: string;
  /** Of the first: how many swags on each side, and what happens at the corners. */
  readonly counts: readonly number[];
  readonly corners?: 'turn' | 'meet' | 'open';
  readonly why: string;
}

const row = (border: string, counts: readonly number[], why: string, corners?: Row['corners']): Row => ({
  border,
  counts,
  why,
  ...(corners && { corners }),
});

const sides = (top: string, right: string, bottom = top, left = right): string =>
  `inner: { top: ${top}, right: ${right}, bottom: ${bottom}, left: ${left} }`;

// Of the templates' whole edges a swag is some 10 in wide and 5 in deep, or some 12 by 4; shorter stretches make 6 to 8 by 3 to 4.
const BORDERS: readonly Row[] = [
  row(
    `width: 7, ${sides('61 3/8', '74', '61 1/8', '74 1/4')}`,
    [6, 7, 6, 7],
    'about 10 by 5, and the corners turn',
    'turn',
  ),
  row(
    `width: 7, ${sides('61 3/8', '74', '61 1/8', '74 1/4')}, corners: meet`,
    [8, 10, 8, 10],
    'without corners to turn, deeper ones of the same look',
  ),
  row(
    `width: 6, ${sides('60 1/8', '72', '60', '72 1/4')}, margin: 1/2`,
    [6, 7, 6, 7],
    '10 in goes into 60 six times, and fills 5 in',
  ),
  row(
    `width: 6, ${sides('60', '60')}, margin: 1/4, corners: turn`,
    [6, 6, 6, 6],
    'a square quilt has four sides alike',
  ),
  row(
    `width: 5, ${sides('48', '60', '48 1/8', '60 1/8')}, margin: 1/4, corners: meet`,
    [8, 10, 8, 10],
    '6 in goes into 48 and into 60',
  ),
  row(
    `width: 4, ${sides('36 1/2', '36 1/4', '36 1/2', '36 3/8')}, margin: 1/4`,
    [4, 4, 4, 4],
    'an eighth of an inch is not seen',
  ),
  row(
    `width: 3, ${sides('30', '40', '30 1/8', '39 7/8')}`,
    [3, 4, 3, 4],
    '10 in goes into 30 and into 40',
    'turn',
  ),
  row(
    `width: 2 1/2, ${sides('24', '24')}, margin: 1/4, corners: turn`,
    [2, 2, 2, 2],
    'a narrow border wants flat drapes, not small ones',
  ),
  row(
    `width: 8, ${sides('80', '96', '80 1/4', '96 1/8')}, margin: 1/2`,
    [10, 12, 10, 12],
    '8 in goes into 80 and 96',
  ),
  row(
    `width: 6, ${sides('40', '52', '40 1/4', '52')}, margin: 1/2, from: outer`,
    [3, 4, 3, 4],
    'from outside too the corners turn',
    'turn',
  ),
  row(
    `width: 5, ${sides('70', '82', '70 1/8', '82 1/4')}, margin: 1/4, from: outer, corners: turn`,
    [6, 7, 6, 7],
    'drapes, two and a half times as wide as deep',
  ),
  row(`width: 6, ${sides('54', '66')}, margin: 1/2, corners: open`, [6, 7, 6, 7], '9 in into 54'),
  row(
    `width: 4 1/2, ${sides('43 3/4', '51', '44', '51 1/4')}, margin: 1/4, corners: open`,
    [6, 7, 6, 7],
    '7 1/4 in goes into all four sides',
  ),
  row(
    `width: 5 1/2, ${sides('20', '28')}, margin: 1/4`,
    [2, 3, 2, 3],
    'a small quilt has few large swags, and they touch',
  ),
  row(
    `width: 9, ${sides('45 1/8', '48', '45 3/8', '47 7/8')}, margin: 1/4, corners: turn`,
    [4, 4, 4, 4],
    'as many on sides that are nearly as long',
  ),
  row(
    `width: 6, ${sides('90', '104', '90 1/4', '104 1/2')}, margin: 1/2, corners: meet`,
    [10, 12, 10, 12],
    '9 in into 90',
  ),
  row(
    `width: 3 1/2, ${sides('57 5/8', '79 5/8', '57 1/2', '79 1/2')}, margin: 1/4, corners: turn`,
    [8, 11, 8, 11],
    '7 1/8 in into both sides and the corners',
  ),
  row(
    `width: 150 mm, ${sides('1500 mm', '1800 mm', '1502 mm', '1797 mm')}, margin: 10 mm`,
    [6, 7, 6, 7],
    '25 cm into 150',
    'turn',
  ),
  row(
    `width: 120 mm, ${sides('1000 mm', '1000 mm')}, margin: 6 mm, corners: turn`,
    [3, 3, 3, 3],
    '30 cm by 10, alike at the corners to the hair',
  ),
  row(
    `width: 100 mm, ${sides('2030 mm', '2180 mm', '2034 mm', '2176 mm')}, margin: 6 mm, from: outer`,
    [13, 14, 13, 14],
    'all of it filled, and the corners turn',
    'turn',
  ),
  row(
    `width: 10, ${sides('84', '100', '84', '100 1/4')}, margin: 1/2`,
    [8, 10, 8, 10],
    'wider than any template reaches: drapes, and the corners turn',
  ),
  row(
    `width: 4, ${sides('50', '62', '49 7/8', '62 1/8')}, margin: 1/2, corners: turn`,
    [7, 9, 7, 9],
    '7 in into the sides and the corners',
  ),
  row(`width: 7, ${sides('19', '40')}`, [2, 4, 2, 4], '10 in by 5, and not spikes as tall as they are wide'),
  row(`width: 7, ${sides('20', '30')}, corners: meet`, [2, 3, 2, 3], '10 in goes into 20 and into 30'),
  row(
    `width: 6 1/2, ${sides('27', '36')}, margin: 1/4, corners: meet`,
    [3, 4, 3, 4],
    '9 in goes into 27 and into 36',
  ),
  row(`width: 8, ${sides('40', '50')}, corners: meet`, [4, 5, 4, 5], '10 in goes into 40 and into 50'),
];

const first = ({ border }: Row): Ranked => search(planOf(`layout: { border: { ${border} } }`)).results[0]!;

describe('a quilter puts first', () => {
  test.each(BORDERS)('$counts on $border: $why', (asked) => {
    const { field, fit, score } = first(asked);
    expect(fit.sides.map((s) => s.repeats)).toEqual(asked.counts);
    if (asked.corners) expect(field.corners).toBe(asked.corners);
    // They touch, are alike on all sides, have as many on opposite sides, and are drapes.
    expect(score.gap).toBe(0);
    const [depths, spans] = [depthsOf(fit), spansOf(fit)];
    expect(Math.min(...depths) / Math.max(...depths)).toBeGreaterThan(0.85);
    expect(Math.min(...spans) / Math.max(...spans)).toBeGreaterThan(0.9);
    expect(fit.sides[0]!.repeats).toBe(fit.sides[2]!.repeats);
    expect(fit.sides[1]!.repeats).toBe(fit.sides[3]!.repeats);
    for (const { seat } of fit.sides) {
      expect(seat.depth / seat.span).toBeGreaterThan(1 / 10);
      expect(seat.depth / seat.span).toBeLessThan(3 / 4);
    }
  });
});

describe('the first five fill the border', () => {
  // Half of them and more at least three quarters as well as the best that touches, which may be all spikes.
  test.each(BORDERS)('$border', ({ border }) => {
    const { results } = search(planOf(`layout: { border: { ${border} } }`));
    const touching = results.filter((r) => r.score.gap === 0).map((r) => r.score.use);
    expect(touching.length).toBeGreaterThan(10);
    // As they stand in the order, and as they are shown, each for all that looks like it.
    for (const shown of [results, kindsOf(results).map((kind) => kind.first)]) {
      const five = shown.slice(0, 5).map((r) => r.score.use);
      const [, , median] = five.sort((a, b) => a - b);
      expect(median).toBeGreaterThanOrEqual(0.75 * Math.max(...touching));
    }
  });
});

describe('round frames', () => {
  test.each([
    ['around: 9, clearance: 1/2, within: 16', 6],
    ['around: 14, clearance: 1/2, within: 24', 6],
    ['around: 9, clearance: 1/2', 6],
    ['around: 20, clearance: 1, within: 30', 7],
    ['around: 14, clearance: 1/2, from: outer, within: 26', 8],
  ])('%s: %i drapes come first', (frame, count) => {
    const [best] = search(planOf(`layout: { frame: { ${frame} } }`)).results;
    const { repeats, seat } = best!.fit.sides[0]!;
    expect(repeats).toBe(count);
    expect(seat.gap).toBe(0);
    expect(seat.depth / seat.span).toBeLessThan(0.7);
  });
});
