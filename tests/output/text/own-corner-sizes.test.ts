/** Where the corners are made by themselves their depth is told by itself, and not with the sides'. */

import { expect, test } from 'vitest';
import { summaryLines } from '../../../src/output/card/summary-words.ts';
import { furtherWords, plainSentence } from '../../../src/output/text/index.ts';
import { cornerSwag, designOf } from '../../../src/swag/index.ts';
import { planOf, search } from '../../swag/fit-helpers.ts';

test.each([
  ['inner', 'turn'],
  ['outer', 'across'],
])('from the %s seam, %s', (from, corners) => {
  const plan = planOf(
    `units: mm\nmarks: { round: 0.1 }\nlayout: { border: { width: 170, inner: { top: 900, right: 1240, bottom: 890, left: 1236 }, margin: 10, from: ${from}, corners: ${corners} } }\ncorner: { template: finial }`,
  );
  const { style } = plan.marks;
  // One whose corner is deeper or shallower than every side.
  const one = search(plan).results.find(({ fit }) => {
    const { depth } = cornerSwag(fit)!.seat;
    return fit.sides.every(({ seat }) => Math.abs(seat.depth - depth) > 1);
  });
  if (!one) throw new Error('none differs');
  const { depth, span } = cornerSwag(one.fit)!.seat;
  const depths = one.fit.sides.map(({ seat }) => seat.depth);
  const told = /([\d.]+)(?: to ([\d.]+))? mm deep/.exec(plainSentence(one, style))!;
  expect(Number(told[1])).toBeCloseTo(Math.min(...depths), 0);
  expect(Number(told[2] ?? told[1])).toBeCloseTo(Math.max(...depths), 0);
  const [line] = furtherWords(one, style);
  expect(line).toMatch(/^corners: Finial/);
  expect(Number(/([\d.]+) mm deep, /.exec(line!)![1])).toBeCloseTo(depth, 0);
  const wide = /([\d.]+) mm wide/.exec(line!);
  if (corners === 'across') expect(Number(wide![1])).toBeCloseTo(span, 0);
  else expect(wide).toBeNull();
});

test('how high lobes stand is told of sides and corners each by themselves', () => {
  const plan = planOf(
    `units: mm
marks: { round: 0.1 }
layout: { border: { width: 178, inner: { top: 1559, right: 1880, bottom: 1553, left: 1886 }, margin: 12.7, corners: turn } }
corner: { template: baluster, smooth: true }`,
  );
  const { style } = plan.marks;
  const told = search(plan).results.filter(({ field, fit }) => {
    const text = summaryLines(designOf(field, fit), plan).join(' ');
    const own = cornerSwag(fit)!.seat;
    const number = (pattern: RegExp): number => Number(pattern.exec(text)?.[1]);
    const tops = fit.sides.map(({ seat }) => seat.pose.top);
    const [ofSides] = text.split('Corners: ');
    const [, low, high = low] =
      /deep at the crown, ([\d.]+)(?: to ([\d.]+))? mm at its highest/.exec(ofSides!) ?? [];
    if (low === undefined) return false;
    expect(Number(low), text).toBeCloseTo(Math.min(...tops), 0);
    expect(Number(high), text).toBeCloseTo(Math.max(...tops), 0);
    // The corner's own, in its own line.
    if (own.pose.top - own.depth > 1)
      expect(number(/Corners: .* deep at the crown, ([\d.]+) mm at its highest/), text).toBeCloseTo(
        own.pose.top,
        0,
      );
    expect(furtherWords({ field, fit }, style)[0]).toMatch(/^corners: /);
    return own.pose.top - own.depth > 1;
  });
  expect(told.length).toBeGreaterThan(0);
});
