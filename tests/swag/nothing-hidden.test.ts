/**
 * The search hides nothing that its own order puts first: the answer does not ask which side is called top, and no
 * plan that says more, or lists fewer templates, finds anything better.
 */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/plan/index.ts';
import { choicesOf, type Ranked } from '../../src/swag/index.ts';
import { fewRuns, patience } from '../support/runs.ts';
import { PROFILES, planOf, profile, search } from './fit-helpers.ts';

interface Quilt {
  /** Top, right, bottom, left: sixteenths of an inch. */
  readonly sides: readonly number[];
  /** Quarter inches. */
  readonly width: number;
  readonly margin: number;
  readonly from: 'inner' | 'outer';
  readonly corners: 'meet' | 'turn' | 'open' | undefined;
  readonly outward: boolean;
  readonly swag: string;
}

const quilts = fc.record({
  sides: fc
    .tuple(
      fc.integer({ min: 160, max: 1300 }),
      fc.integer({ min: 160, max: 1300 }),
      fc.constantFrom(0, 0, 1, 2, 5, 12, 26),
      fc.constantFrom(0, 0, 1, 2, 5, 12, 26),
    )
    .map(([a, b, c, d]) => [a, b, Math.ceil(a * (1 - c / 300)), Math.ceil(b * (1 - d / 300))]),
  width: fc.integer({ min: 10, max: 40 }),
  margin: fc.integer({ min: 0, max: 3 }),
  from: fc.constantFrom('inner' as const, 'outer' as const),
  corners: fc.constantFrom('meet' as const, 'turn' as const, 'open' as const, undefined),
  outward: fc.boolean(),
  swag: fc.constantFrom(
    ...['', '', '', 'gap: 0', 'gap: 1/4', 'setting: crown-on-centre', 'from: 1, to: crown'],
    ...[
      'span: about 6',
      'depth: 1 to 2',
      'span: about 9, depth: at least 1, gap: 0',
      'use: about 3/4',
      'use: at least 80 %',
    ],
  ),
});

const planFor = (q: Quilt, sides = q.sides, repeats?: readonly number[]): Plan => {
  const [top, right, bottom, left] = sides.map((s) => `${s}/16`);
  const swag = [...(q.swag ? [q.swag] : []), ...(repeats ? [`repeats: [${repeats}]`] : [])].join(', ');
  const corners = q.corners ? `, corners: ${q.corners}` : '';
  return planOf(`units: in
layout: { border: { width: ${q.width}/4, inner: { top: ${top}, right: ${right}, bottom: ${bottom}, left: ${left} }, margin: ${q.margin}/4, from: ${q.from}${corners} } }
channels: { outward: [${q.outward ? '1/4' : ''}] }
swag: { ${swag} }`);
};

/** The sides in the order in which they are called another way: a quarter turn, a half turn, a mirror. */
const CALLED = [
  ['a quarter turn', [1, 2, 3, 0]],
  ['a half turn', [2, 3, 0, 1]],
  ['a mirror', [0, 3, 2, 1]],
] as const;

const template = (q: { readonly template: number }) => [PROFILES[q.template]!];
const one = fc.record({ template: fc.nat(2) });

/** The turns and mirrors of four sides. */
const IMAGES = [0, 1, 2, 3].flatMap((turn) => [
  [0, 1, 2, 3].map((i) => (turn + i) % 4),
  [0, 1, 2, 3].map((i) => (turn - i + 4) % 4),
]);

/** The counts of a design, and of its images in a quilt that looks the same from more than one side: one of them. */
const oneOfImages = (counts: readonly number[], sides: readonly number[]): string =>
  IMAGES.filter((image) => image.every((k, i) => sides[k] === sides[i]))
    .map((image) => image.map((k) => String(counts[k]).padStart(2, '0')).join())
    .sort()[0]!;

/** What a fit is, whatever its sides are called: a cost, a stretch, a setting, and the counts of the named sides. */
const said = (
  { field, fit, score }: Ranked,
  order: readonly number[],
  { sides }: Pick<Quilt, 'sides'>,
): string => {
  const { repeats, ...way } = choicesOf({ field, fit });
  const counts = oneOfImages(
    order.map((i) => repeats[i]!),
    sides,
  );
  return `${score.cost} ${fit.way.shape.stitching.template.name} ${JSON.stringify(way)} ${counts}`;
};

/** Costs nearer than this differ by rounding only. */
const NOISE = 1e-9;
const costOfFirst = (plan: Plan, templates = PROFILES): number =>
  search(plan, templates).results[0]?.score.cost ?? Number.POSITIVE_INFINITY;

describe('whichever side is called top', () => {
  test.each(CALLED)(
    '%s finds the same',
    (_, order) => {
      const made = fewRuns(2, 6, 20270214);
      let found = 0;
      fc.assert(
        fc.property(quilts, one, (q, t) => {
          const here = search(planFor(q), template(t)).results;
          const there = search(
            planFor(
              q,
              order.map((i) => q.sides[i]!),
            ),
            template(t),
          ).results;
          // The sides by the names that they have here.
          const back = [0, 1, 2, 3].map((i) => order.indexOf(i as 0));
          expect(there.map((r) => said(r, back, q)).sort()).toEqual(
            here.map((r) => said(r, [0, 1, 2, 3], q)).sort(),
          );
          expect(there[0]?.score.cost).toBe(here[0]?.score.cost);
          found += here.length;
        }),
        made,
      );
      expect(found / made.numRuns).toBeGreaterThan(500 / 6);
    },
    patience(60_000),
  );

  // Of combinations that cost exactly the same, the one that was met first was kept.
  test.each([
    ['finial', [162, 185, 148, 185]],
    ['finial', [840, 855, 826, 853]],
    ['finial', [855, 840, 853, 826]],
    ['baluster', [1294, 1294, 1294, 1294]],
    // Two sides are the longest, and are no images of one another.
    ['baluster', [900, 900, 880, 899]],
  ])('ties of the %s on sides of %s sixteenths', (name, sides) => {
    const q = {
      sides,
      width: 10,
      margin: 0,
      from: 'inner',
      corners: 'meet',
      outward: false,
      swag: '',
    } as const;
    const own = [profile(name)];
    const here = search(planFor(q), own).results.map((r) => said(r, [0, 1, 2, 3], q));
    for (const image of IMAGES) {
      const there = search(
        planFor(
          q,
          image.map((k) => sides[k]!),
        ),
        own,
      ).results;
      const back = [0, 1, 2, 3].map((i) => image.indexOf(i));
      expect(there.map((r) => said(r, back, q)).sort()).toEqual([...here].sort());
    }
  });

  test('a border on which a quarter turn hid the best', () => {
    const sides = { top: '32', right: '21', bottom: '32 1/2', left: '21 1/2' };
    const turned = { top: '21 1/2', right: '32', bottom: '21', left: '32 1/2' };
    const plan = (inner: object, swag = ''): Plan =>
      planOf(
        `layout: { border: { width: 9, inner: ${JSON.stringify(inner)}, margin: 1/2, corners: meet } }\nswag: { ${swag} }`,
      );
    const baluster = [profile('baluster')];
    const [first] = search(plan(sides), baluster).results;
    const [top, right, bottom, left] = first!.fit.sides.map((s) => s.repeats);
    const [again] = search(plan(turned), baluster).results;
    expect(again!.fit.sides.map((s) => s.repeats)).toEqual([left, top, right, bottom]);
    expect(again!.score.cost).toBe(first!.score.cost);
    const repeats = `repeats: [${left}, ${top}, ${right}, ${bottom}]`;
    expect(costOfFirst(plan(turned, repeats), baluster)).toBe(first!.score.cost);
  });
});

describe('swags that lie all alike, with gaps', () => {
  /** Top and bottom, and right and left, as many as these tell. */
  const ofCounts = (q: Quilt, repeats: readonly number[], t: number): number =>
    costOfFirst(planFor(q, q.sides, repeats), [PROFILES[t]!]);

  test('have as many on opposite sides where that costs less', () => {
    const q: Quilt = {
      sides: [235, 795, 235, 764],
      width: 11,
      margin: 2,
      from: 'outer',
      corners: 'turn',
      outward: true,
      swag: 'use: about 3/4',
    };
    const [first] = search(planFor(q), [PROFILES[1]!]).results;
    expect(first!.fit.sides.map((s) => s.repeats)).toEqual([4, 13, 4, 13]);
    expect(first!.score.cost).toBeLessThan(ofCounts(q, [4, 14, 4, 13], 1));
  });

  test(
    'have the counts that cost least of all near those',
    () => {
      const made = fewRuns(3, 10, 20261201);
      let tried = 0;
      fc.assert(
        fc.property(quilts, one, (some, { template: t }) => {
          const q: Quilt = { ...some, swag: 'setting: alignment-line' };
          const [first] = search(planFor(q), [PROFILES[t]!]).results;
          if (!first) return;
          tried++;
          const here = first.fit.sides.map((s) => s.repeats);
          const near = here.map((n) => [n - 2, n - 1, n, n + 1].filter((m) => m > 0));
          for (const a of near[0]!)
            for (const b of near[1]!)
              for (const c of near[2]!)
                for (const d of near[3]!)
                  expect(ofCounts(q, [a, b, c, d], t), [a, b, c, d].join()).toBeGreaterThanOrEqual(
                    first.score.cost - NOISE,
                  );
        }),
        made,
      );
      expect(tried / made.numRuns).toBeGreaterThan(0.2);
    },
    patience(60_000),
  );
});

describe('a plan that says more finds nothing better', () => {
  test(
    'when it says what was found',
    () => {
      const made = fewRuns(8, 20, 20270215);
      let said = 0;
      fc.assert(
        fc.property(quilts, one, fc.nat(), (q, t, pick) => {
          const plan = planFor(q);
          const { results } = search(plan, template(t));
          if (results.length === 0) return;
          for (const ranked of [results[0]!, results[pick % results.length]!]) {
            const { repeats, setting, side, direction, laid, flat } = choicesOf(ranked);
            const { shape } = ranked.fit.way;
            const swag = { ...plan.swag, repeats, setting, side, direction, laid, flat };
            const pinned: Plan = {
              ...plan,
              swag: {
                ...swag,
                from: shape.from.section ? { kind: 'section', number: shape.from.section } : plan.swag.from,
                to: { kind: 'section', number: shape.to.section! },
              },
            };
            const again = search(pinned, template(t)).results;
            expect(again[0]!.score.cost).toBeGreaterThanOrEqual(results[0]!.score.cost - NOISE);
            expect(again.some((r) => Math.abs(r.score.cost - ranked.score.cost) < NOISE)).toBe(true);
            said++;
          }
        }),
        made,
      );
      expect(said / made.numRuns).toBeGreaterThan(10 / 20);
    },
    patience(60_000),
  );

  test(
    'when it says counts',
    () => {
      const made = fewRuns(15, 40, 20270216);
      let better = 0;
      fc.assert(
        fc.property(
          quilts,
          one,
          fc.integer({ min: 60, max: 200 }),
          fc.tuple(fc.constantFrom(-1, 0, 1), fc.constantFrom(-1, 0, 1)),
          (q, t, span, [across, along]) => {
            const counts = q.sides.map((s, i) =>
              Math.max(1, Math.round((s * 1.5875) / span) + (i % 2 === 0 ? across : along)),
            );
            // Opposite sides alike, as they are in all that a plan without counts finds.
            const repeats = [counts[0]!, counts[1]!, counts[0]!, counts[1]!];
            const pinned = costOfFirst(planFor(q, q.sides, repeats), template(t));
            if (!Number.isFinite(pinned)) return;
            better++;
            expect(pinned).toBeGreaterThanOrEqual(costOfFirst(planFor(q), template(t)) - NOISE);
          },
        ),
        made,
      );
      expect(better / made.numRuns).toBeGreaterThan(8 / 40);
    },
    patience(60_000),
  );
});

test(
  'fewer templates find nothing better',
  () => {
    fc.assert(
      fc.property(quilts, (q) => {
        const all = costOfFirst(planFor(q));
        const each = PROFILES.map((t) => costOfFirst(planFor(q), [t]));
        expect(all).toBe(Math.min(...each));
      }),
      fewRuns(4, 12, 20270217),
    );
  },
  patience(60_000),
);
