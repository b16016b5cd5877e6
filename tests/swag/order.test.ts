/** The order of what fits: a way that is at least as good in everything that counts never comes later. */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { flatten, type Point } from '../../src/geometry/index.ts';
import { choicesOf, depthsOf, type Ranked, type Seat, spansOf } from '../../src/swag/index.ts';
import { laidPath } from '../../src/swag/seat.ts';
import { WEIGHTS } from '../../src/swag/weights.ts';
import { fewRuns, patience } from '../support/runs.ts';
import { PROFILES, planOf, search } from './fit-helpers.ts';

const FOOT = 6.35;

/** By how much a fit falls short of what a person would wish, in each thing that counts: less is better. */
const shortcomings = ({ field, fit }: Ranked): readonly number[] => {
  const seats = fit.sides.map((s) => s.seat);
  const turned = 'seat' in fit.corner;
  const all = !('seat' in fit.corner) ? seats : [...seats, fit.corner.seat];
  const [depths, spans] = [depthsOf(fit), spansOf(fit)];
  const gapped = seats.some((s) => s.gap > 1e-6);
  const counts = fit.sides.map((s) => s.repeats);
  const { from, to, setting, side, direction } = choicesOf({ field, fit });
  const { sections } = fit.way.shape.stitching;
  const ratios = all.map((s) => s.depth / s.span);
  // The template's long axis to the seam, 0 to a right angle.
  const lean = (tilt: number): number => Math.abs(Math.asin(Math.sin(tilt)));
  return [
    -Math.min(...all.map((s) => s.pose.top)),
    gapped ? counts.reduce((a, b) => a + b, turned ? 4 : 0) : 0,
    Math.max(...seats.map((s) => s.gap / s.span)),
    -Math.min(...depths) / Math.max(...depths),
    -Math.min(...spans) / Math.max(...spans),
    [0, 1].filter((i) => counts[i] !== counts[i + 2]).length,
    Math.max(0, Math.max(...ratios) - 0.58),
    Math.max(0, 0.12 - Math.min(...ratios)),
    -Math.min(...spans, field.room),
    -Math.min(...spans, 8 * FOOT),
    -Math.min(...depths, 2 * FOOT),
    field.corners === 'open' || field.corners === 'half' ? 2 : field.corners === 'meet' ? 1 : 0,
    Math.max(...seats.map(pointOf)),
    Math.max(...all.map((s) => lean(s.pose.tilt))),
    direction === 'crown-first' ? 1 : 0,
    side === 'outside' ? 1 : 0,
    ['crown-on-centre', 'alignment-line', 'flat-on-guide'].indexOf(setting),
    typeof from === 'number' ? from : 1,
    typeof to === 'number' ? sections.length - to : 0,
  ];
};

/** How steeply a half comes to its crown on a straight side, from the last of its line. */
const pointOf = (seat: Seat): number => {
  const points = flatten(laidPath(seat), 1e-5);
  const [before, crown] = points.slice(-2) as [Point, Point];
  return Math.abs(Math.atan((crown.y - before.y) / (crown.x - before.x)));
};

const quilts = fc.record({
  sides: fc.tuple(fc.integer({ min: 160, max: 700 }), fc.integer({ min: 160, max: 700 })),
  off: fc.tuple(fc.integer({ min: -6, max: 6 }), fc.integer({ min: -6, max: 6 })),
  width: fc.integer({ min: 10, max: 40 }),
  from: fc.constantFrom('inner', 'outer'),
  gap: fc.constantFrom('', 'gap: 1/2'),
});

test(
  'a way at least as good in everything never comes later',
  () => {
    const made = fewRuns(3, 8, 20271129);
    let compared = 0;
    fc.assert(
      fc.property(quilts, ({ sides: [a, b], off: [c, d], width, from, gap }) => {
        const { results } = search(
          planOf(
            `layout: { border: { width: ${width}/4, inner: { top: ${a}/8, right: ${b}/8, bottom: ${a + c}/8, left: ${b + d}/8 }, from: ${from} } }\nswag: { ${gap} }`,
          ),
          PROFILES,
        );
        const some = results.filter((_, i) => i % 7 === 0 || i < 40);
        const told = some.map(shortcomings);
        for (let i = 0; i < some.length; i++)
          for (let k = i + 1; k < some.length; k++) {
            const isBetter = told[k]!.every((v, j) => v <= told[i]![j]! + 1e-12);
            if (!isBetter) continue;
            compared++;
            // Only where they cost the same.
            expect(some[k]!.score.cost).toBe(some[i]!.score.cost);
          }
        for (let i = 0; i < some.length; i++)
          for (let k = i + 1; k < some.length; k++)
            if (told[i]!.every((v, j) => v <= told[k]![j]! + 1e-12)) compared++;
      }),
      made,
    );
    expect(compared / made.numRuns).toBeGreaterThan(1000 / 8);
  },
  patience(60_000),
);

test('every weight counts something against a fit, and says why', () => {
  for (const { weight, why } of Object.values(WEIGHTS)) {
    expect(weight).toBeGreaterThan(0);
    expect(why).toMatch(/^[A-Z].{30,}\.$/);
  }
});
