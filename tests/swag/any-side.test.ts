/**
 * What fits a border does not depend on which of its sides is called the top, nor on how much of the answer a plan
 * knows already: nothing that is left out, pinned or turned may bring a better fit to light.
 */

import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatLength, INCH_SIXTEENTH } from '../../src/length/index.ts';
import type { Plan } from '../../src/plan/index.ts';
import {
  describeMiss,
  fieldOf,
  type Ranked,
  searchFits,
  seat,
  stitchTemplate,
  waysOf,
} from '../../src/swag/index.ts';
import { patience, runs } from '../support/runs.ts';
import { PROFILES, planOf, profile, search } from './fit-helpers.ts';

type Sides = readonly [number, number, number, number];
const INCH = 25.4;
/** Costs are sums of a dozen rounded numbers. */
const SAME = 1e-9;

interface Border {
  readonly width: number;
  readonly margin: number;
  readonly from: string;
  readonly corners: string;
  readonly swag: string;
}

const border = (
  sides: Sides,
  { width, margin, from, corners, swag }: Border,
  repeats?: readonly number[],
): Plan => {
  const [top, right, bottom, left] = sides.map((mm) => `${mm} mm`);
  return planOf(
    `units: mm
layout: { border: { width: ${width}, inner: { top: ${top}, right: ${right}, bottom: ${bottom}, left: ${left} }, margin: ${margin}, from: ${from}, corners: ${corners} } }
swag: { ${[swag, ...(repeats ? [`repeats: [${repeats}]`] : [])].filter((x) => x !== '').join(', ')} }`,
  );
};

/** A quilt turned a quarter, a half, and seen from behind: where each side, top, right, bottom and left, was before. */
const SYMMETRIES: readonly (readonly number[])[] = [
  [3, 0, 1, 2],
  [2, 3, 0, 1],
  [1, 2, 3, 0],
  [0, 3, 2, 1],
  [2, 1, 0, 3],
];
const moved = <T>(sides: readonly T[], symmetry: readonly number[]): T[] => symmetry.map((i) => sides[i]!);

const countsOf = ({ fit }: Ranked): readonly number[] => fit.sides.map((s) => s.repeats);
const costsOf = (results: readonly Ranked[]): readonly number[] => results.map((r) => r.score.cost);

const plain: Border = { width: 9 * INCH, margin: INCH / 2, from: 'inner', corners: 'meet', swag: '' };
const QUILT = [32, 21, 32.5, 21.5].map((x) => x * INCH) as unknown as Sides;

describe('a border of 32, 21, 32 1/2 and 21 1/2 in, 9 in wide', () => {
  const baluster = [profile('baluster')];

  test('has the same best fit when it is turned a quarter, and pinning its counts finds none better', () => {
    const straight = search(border(QUILT, plain), baluster).results;
    const quarter = search(border(moved(QUILT, SYMMETRIES[0]!) as unknown as Sides, plain), baluster).results;
    expect(quarter.length).toBe(straight.length);
    expect(moved(countsOf(straight[0]!), SYMMETRIES[0]!)).toEqual(countsOf(quarter[0]!));
    for (const counts of [[6, 4, 6, 4], [11, 18, 11, 18], [18, 11, 18, 11], countsOf(straight[0]!)]) {
      const [pinned] = search(border(QUILT, plain, counts), baluster).results;
      if (pinned) expect(pinned.score.cost).toBeGreaterThan(straight[0]!.score.cost - SAME);
    }
  });
});

const anySide = fc.integer({ min: 300, max: 1100 });
const anyBorder = fc.record({
  width: fc.integer({ min: 80, max: 260 }),
  margin: fc.constantFrom(0, 6, 12.7),
  from: fc.constantFrom('inner', 'outer'),
  corners: fc.constantFrom('meet', 'open', 'turn'),
  swag: fc.constantFrom(
    '',
    'gap: 0',
    'setting: crown-on-centre',
    'setting: alignment-line',
    'setting: flat-on-guide',
    'gap: 15 mm',
  ),
});
/** Opposite sides of a quilt are about as long. */
const anyQuilt = fc
  .tuple(anySide, anySide, fc.integer({ min: -25, max: 25 }), fc.integer({ min: -25, max: 25 }))
  .map(([w, h, dw, dh]): Sides => [w, h, w + dw, h + dh]);
const anyTemplate = fc.constantFrom(...PROFILES);

describe('any border', () => {
  test('has the same fits whichever side is called the top, and from behind', {
    timeout: patience(60_000),
  }, () => {
    let found = 0;
    fc.assert(
      fc.property(
        anyQuilt,
        anyBorder,
        anyTemplate,
        fc.constantFrom(...SYMMETRIES),
        (sides, b, template, turn) => {
          const here = search(border(sides, b), [template]).results;
          const there = search(border(moved(sides, turn) as unknown as Sides, b), [template]).results;
          expect(there.length).toBe(here.length);
          for (const [i, cost] of costsOf(here).entries())
            expect(Math.abs(cost - there[i]!.score.cost)).toBeLessThan(SAME);
          if (here.length > 0) found++;
        },
      ),
      runs(30, 1201),
    );
    expect(found).toBeGreaterThan(10);
  });

  test('has no better fit for counts that are pinned, and with all templates none worse', {
    timeout: patience(60_000),
  }, () => {
    let pinned = 0;
    fc.assert(
      fc.property(anyQuilt, anyBorder, anyTemplate, fc.nat(60), (sides, b, template, which) => {
        const { results } = search(border(sides, b), [template]);
        const [best] = results;
        if (!best) return;
        const other = results[which % results.length]!;
        for (const r of [best, other]) {
          const again = search(border(sides, b, countsOf(r)), [template]).results[0];
          expect(again).toBeDefined();
          expect(again!.score.cost).toBeLessThan(r.score.cost + SAME);
          expect(again!.score.cost).toBeGreaterThan(best.score.cost - SAME);
          pinned++;
        }
        const [ofAll] = search(border(sides, b)).results;
        expect(ofAll!.score.cost).toBeLessThan(best.score.cost + SAME);
      }),
      runs(20, 1202),
    );
    expect(pinned).toBeGreaterThan(10);
  });

  test('where runs meet: trying every combination of counts finds none that costs less', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        fc.tuple(
          fc.integer({ min: 300, max: 500 }),
          fc.integer({ min: 300, max: 500 }),
          fc.integer({ min: -60, max: 60 }),
          fc.integer({ min: -60, max: 60 }),
        ),
        fc.record({ width: fc.integer({ min: 120, max: 200 }), from: fc.constantFrom('inner', 'outer') }),
        anyTemplate,
        ([w, h, dw, dh], { width, from }, template) => {
          const sides: Sides = [w, h, w + dw / 2, h + dh / 2];
          const b: Border = { ...plain, width, from, swag: 'from: 1, to: crown, setting: crown-on-centre' };
          const [best] = search(border(sides, b), [template]).results;
          // Nothing but the search's own laying of one combination at a time.
          const cheapest = Math.min(
            ...everyCount(sides, best).flatMap((counts) =>
              costsOf(search(border(sides, b, counts), [template]).results.slice(0, 1)),
            ),
            Number.POSITIVE_INFINITY,
          );
          if (!best) return;
          compared++;
          expect(best.score.cost).toBeLessThan(cheapest + SAME);
        },
      ),
      runs(3, 1203),
    );
    expect(compared).toBeGreaterThan(0);
  });
});

/** All counts of up to seven swags a side, opposite sides that are as long having as many. */
const everyCount = (sides: Sides, best: Ranked | undefined): readonly (readonly number[])[] => {
  const most = 7;
  const list: number[][] = [];
  const asMany = (i: number, k: number, n: number, m: number): boolean =>
    n === m || Math.abs(sides[i]! - sides[k]!) >= Math.min(sides[i]! / n, sides[k]! / m) / 2;
  if (!best) return [];
  for (let a = 1; a <= most; a++)
    for (let b = 1; b <= most; b++)
      for (let c = Math.max(1, a - 1); c <= Math.min(most, a + 1); c++)
        for (let d = Math.max(1, b - 1); d <= Math.min(most, b + 1); d++)
          if (asMany(0, 2, a, c) && asMany(1, 3, b, d)) list.push([a, b, c, d]);
  return list;
};

describe('a gap that is given in figures', () => {
  test.each([
    ['0', 0],
    ['1/2 in', INCH / 2],
  ])('%s is the gap of every swag that is found', (text, mm) => {
    const plan = (repeats: string) =>
      planOf(
        `layout: { border: { width: 7, inner: { top: 61 3/8, right: 74, bottom: 61 1/8, left: 74 1/4 }, margin: 1/2 } }
swag: { gap: ${text}${repeats} }`,
      );
    let settings = new Set<string>();
    for (const repeats of ['', ', repeats: [7, 8, 7, 8]'])
      for (const { fit } of search(plan(repeats)).results) {
        settings = settings.add(fit.way.setting.kind);
        for (const s of fit.sides) expect(Math.abs(s.seat.gap - mm)).toBeLessThan(0.01 + 1e-9);
      }
    // Among them settings that give the span, where what is left over would be a gap.
    expect(settings.size).toBeGreaterThan(1);
  });

  test('round a motif too', () => {
    const { results } = search(planOf('layout: { frame: { around: 9, clearance: 1/2 } }\nswag: { gap: 0 }'));
    expect(results.length).toBeGreaterThan(5);
    for (const { fit } of results) expect(fit.sides[0]!.seat.gap).toBeLessThan(0.01 + 1e-9);
  });
});

describe('what keeps pinned counts from fitting', () => {
  const plan = planOf(
    'layout: { border: { width: 2, inner: { top: 60, right: 72, bottom: 60, left: 72 }, margin: 1/2, corners: meet } }\nswag: { repeats: [6, 7, 6, 7], gap: 0, setting: crown-on-centre }',
  );

  test('is told of the way and the side on which least is lacking, where every other side lacks no more', () => {
    const templates = PROFILES;
    const stitchings = templates.map((t) => {
      const made = stitchTemplate(t, plan.foot.clearance);
      if (!made.ok) throw new Error('not stitched');
      return made.stitching;
    });
    const { results, misses } = searchFits(plan, stitchings);
    expect(results.length).toBe(0);
    const told = misses.reduce((a, b) => (b.misfit.by < a.misfit.by ? b : a));
    const layout = plan.layout as Exclude<Plan['layout'], { kind: 'frame' }>;
    const field = fieldOf(layout);
    const counts = [6, 7, 6, 7];
    // The same by hand: a way lacks what its worst side lacks.
    const lacks = stitchings.flatMap((s) =>
      waysOf(s, plan).map((way) =>
        Math.max(
          ...field.runs.map((run, i) => {
            const tried = seat(way, run.length / counts[i]!, { room: field.room, gap: 0 });
            return tried.ok ? 0 : tried.misfit.by;
          }),
        ),
      ),
    );
    const least = formatLength(Math.min(...lacks), INCH_SIXTEENTH);
    expect(formatLength(told.misfit.by, INCH_SIXTEENTH)).toBe(least);
    expect(describeMiss(told, plan).found).toMatch(new RegExp(` ${least} (wider|into)`));
  });
});
