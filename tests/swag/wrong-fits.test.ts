/** What was found wrong in a search: an answer that went by the side called the top, gaps that were not kept, and advice on the wrong side. */

import { describe, expect, test } from 'vitest';
import { formatLength, INCH_SIXTEENTH } from '../../src/length/index.ts';
import type { Plan } from '../../src/plan/index.ts';
import {
  describeMiss,
  fieldsOf,
  type Ranked,
  searchFits,
  seat,
  stitchTemplate,
  waysOf,
} from '../../src/swag/index.ts';
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

/** A quilt turned a quarter: where each side, top, right, bottom and left, was before. */
const QUARTER = [3, 0, 1, 2];
const turned = <T>(sides: readonly T[]): T[] => QUARTER.map((i) => sides[i]!);

const countsOf = ({ fit }: Ranked): readonly number[] => fit.sides.map((s) => s.repeats);

const plain: Border = { width: 9 * INCH, margin: INCH / 2, from: 'inner', corners: 'meet', swag: '' };
const QUILT = [32, 21, 32.5, 21.5].map((x) => x * INCH) as unknown as Sides;

describe('a border of 32, 21, 32 1/2 and 21 1/2 in, 9 in wide', () => {
  const baluster = [profile('baluster')];

  test('has the same best fit when it is turned a quarter, and pinning its counts finds none better', () => {
    const straight = search(border(QUILT, plain), baluster).results;
    const quarter = search(border(turned(QUILT) as unknown as Sides, plain), baluster).results;
    expect(quarter.length).toBe(straight.length);
    expect(turned(countsOf(straight[0]!))).toEqual(countsOf(quarter[0]!));
    for (const counts of [[6, 4, 6, 4], [11, 18, 11, 18], [18, 11, 18, 11], countsOf(straight[0]!)]) {
      const [pinned] = search(border(QUILT, plain, counts), baluster).results;
      if (pinned) expect(pinned.score.cost).toBeGreaterThan(straight[0]!.score.cost - SAME);
    }
  });
});

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
    const field = fieldsOf(layout)[0]!;
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
