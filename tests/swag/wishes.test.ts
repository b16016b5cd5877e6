/** What is asked of swags: a range binds, about ranks, the nearest come where nothing meets it, and say what they take. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatLength, INCH_SIXTEENTH } from '../../src/length/index.ts';
import type { Plan } from '../../src/plan/index.ts';
import {
  askingLess,
  changesFor,
  cornerSwag,
  isUnmet,
  type Ranked,
  spansOf,
  unmetBy,
} from '../../src/swag/index.ts';
import { fewRuns, patience, runs } from '../support/runs.ts';
import { PROFILES, planOf, profile, search } from './fit-helpers.ts';

const INCH = 25.4;
/** Rounding, mm. */
const NOISE = 1e-6;

interface Ground {
  readonly layout: string;
  readonly kind: 'strip' | 'border' | 'ring';
}

const sixteenths = (n: number): string => `${n}/16`;
const borders = fc
  .record({
    a: fc.integer({ min: 300, max: 1250 }),
    b: fc.integer({ min: 300, max: 1250 }),
    off: fc.constantFrom(0, 1, 3, 9),
    width: fc.integer({ min: 10, max: 36 }),
    from: fc.constantFrom('inner', 'inner', 'outer'),
    corners: fc.constantFrom(', corners: turn', ', corners: meet', ', corners: open', ''),
  })
  .map(({ a, b, off, width, from, corners }): Ground => {
    const [top, right, bottom, left] = [a, b, a - off, b + off].map(sixteenths);
    return {
      kind: 'border',
      layout: `border: { width: ${width}/4, margin: 1/4, from: ${from}${corners}, inner: { top: ${top}, right: ${right}, bottom: ${bottom}, left: ${left} } }`,
    };
  });
const strips = fc
  .record({ length: fc.integer({ min: 200, max: 1200 }), width: fc.integer({ min: 8, max: 36 }) })
  .map(
    ({ length, width }): Ground => ({
      kind: 'strip',
      layout: `strip: { length: ${length}/16, width: ${width}/4 }`,
    }),
  );
const rings = fc
  .record({
    around: fc.integer({ min: 12, max: 60 }),
    count: fc.constantFrom('', ', count: 8'),
    band: fc.integer({ min: 10, max: 40 }),
    from: fc.constantFrom('inner', 'outer'),
  })
  .map(
    ({ around, count, band, from }): Ground => ({
      kind: 'ring',
      layout: `frame: { around: ${around}/4, clearance: 1/2, within: ${around + 4 + band}/4, from: ${from}${count} }`,
    }),
  );
const grounds = fc.oneof(borders, borders, strips, rings);

const planWith = ({ layout }: Ground, swag: string): Plan =>
  planOf(`units: in\nlayout: { ${layout} }\nswag: { ${swag} }`);
const one = (n: number) => [PROFILES[n % 3]!];

/** Of all sides, and the corner's where it is one of its own. */
const depths = ({ fit }: Pick<Ranked, 'fit'>): number[] => {
  const corner = cornerSwag(fit);
  return [...fit.sides.map((s) => s.seat.depth), ...(corner ? [corner.seat.depth] : [])];
};
/** The share of the room between the margins that is reached; there are no channels here. */
const uses = ({ fit, field, score }: Ranked): number[] => {
  const corner = cornerSwag(fit);
  if (field.around.kind === 'motif') return [score.use];
  return [...fit.sides.map((s) => s.seat), ...(corner ? [corner.seat] : [])].map((seat) =>
    Math.min(1, seat.pose.top / field.room),
  );
};
const counts = ({ fit }: Pick<Ranked, 'fit'>): number[] => fit.sides.map((s) => s.repeats);
const gaps = ({ fit }: Pick<Ranked, 'fit'>): number[] => fit.sides.map((s) => s.seat.gap);
const spans = ({ fit }: Pick<Ranked, 'fit'>): readonly number[] => spansOf(fit);

type Asked = readonly [
  words: string,
  figures: (ranked: Ranked) => readonly number[],
  holds: (figure: number) => boolean,
];
const within = (least: number, most: number) => (n: number) => n >= least - NOISE && n <= most + NOISE;

/** Half of a sixteenth: what is asked exactly is printed alike. */
const HALF = INCH / 32;
const RANGES: readonly Asked[] = [
  ['span: 4 to 7', spans, within(4 * INCH, 7 * INCH)],
  ['span: at least 9', spans, within(9 * INCH, Number.POSITIVE_INFINITY)],
  ['span: 6', spans, within(6 * INCH - HALF, 6 * INCH + HALF)],
  ['depth: at most 1 1/2', depths, within(0, 1.5 * INCH)],
  ['depth: 2 to 3', depths, within(2 * INCH, 3 * INCH)],
  ['depth: 2', depths, within(2 * INCH - HALF, 2 * INCH + HALF)],
  ['use: at least 80 %', uses, within(0.8, 1)],
  ['use: at most 1/2', uses, within(0, 0.5)],
  ['use: 60 % to 70 %', uses, within(0.6, 0.7)],
  ['gap: 0', gaps, within(0, 0.01)],
  ['gap: 1/4 to 1/2', gaps, within(INCH / 4, INCH / 2)],
  ['gap: at most 1/4', gaps, within(0, INCH / 4)],
];
const COUNTS: readonly Asked[] = [
  ['repeats: odd', counts, (n) => n % 2 === 1],
  ['repeats: even', counts, (n) => n % 2 === 0],
  ['repeats: 5 to 7', counts, within(5, 7)],
  ['repeats: at least 9', counts, within(9, Number.POSITIVE_INFINITY)],
];

/** A corner's rise (radians) and the gap that makes room for it are found so closely that no figure is off by more, mm. */
const FOUND = 1e-3;
/**
 * Whether the same is found. Where a range cuts off some rises, the golden section and the secants begin at other ends,
 * and end elsewhere within what they are found to; so what is the same costs the same only as nearly as that.
 */
const isSameToANeedle = (a: Ranked, b: Ranked): boolean => {
  const said = ({ field, fit: { way, sides } }: Ranked): string => {
    const { from, to, side, direction } = way.shape;
    const { kind } = way.setting;
    return [
      field.corners,
      from.label,
      to.label,
      side,
      direction,
      kind,
      ...sides.map((s) => s.repeats),
    ].join();
  };
  const figures = (ranked: Ranked) => [...spans(ranked), ...depths(ranked), ...gaps(ranked)];
  const others = figures(b);
  return said(a) === said(b) && figures(a).every((figure, i) => Math.abs(figure - others[i]!) <= FOUND);
};

describe('a range binds', () => {
  test(
    'on every side, and of depth and use at every corner',
    () => {
      const made = fewRuns(15, 60, 20261129);
      let found = 0;
      fc.assert(
        fc.property(
          grounds,
          fc.nat(2),
          fc.uniqueArray(fc.constantFrom(...RANGES, ...COUNTS), { minLength: 1, maxLength: 2 }),
          (ground, template, asked) => {
            const keys = asked.map(([words]) => words.split(':')[0]);
            fc.pre(new Set(keys).size === keys.length);
            fc.pre(ground.kind !== 'ring' || !keys.includes('repeats'));
            const plan = planWith(ground, asked.map(([words]) => words).join(', '));
            for (const ranked of search(plan, one(template)).results) {
              for (const [words, figures, holds] of asked)
                for (const figure of figures(ranked)) expect(holds(figure), `${words}: ${figure}`).toBe(true);
              expect(ranked.answers.every((a) => a.meets)).toBe(true);
              found++;
            }
          },
        ),
        made,
      );
      expect(found / made.numRuns).toBeGreaterThan(500 / 60);
    },
    patience(120_000),
  );

  test(
    'and leaves out nothing that the search finds without it, but for what is better of its kind',
    () => {
      fc.assert(
        fc.property(
          grounds,
          fc.nat(2),
          fc.constantFrom(...RANGES),
          (ground, template, [words, figures, holds]) => {
            fc.pre(!words.startsWith('gap'));
            const all = search(planWith(ground, ''), one(template)).results;
            const meeting = all.filter((ranked) => figures(ranked).every(holds));
            const asked = search(planWith(ground, words), one(template)).results;
            if (meeting.length === 0) return;
            const [best] = meeting;
            if (asked.some((ranked) => isSameToANeedle(ranked, best!))) return;
            expect(asked[0]!.score.cost).toBeLessThanOrEqual(best!.score.cost + 1e-6);
          },
        ),
        fewRuns(10, 40, 7),
      );
    },
    patience(120_000),
  );

  test('a span in figures is met by what is printed as it, and no gap is opened for the rest', () => {
    // Nine swags of 54 1/16 in touch at 6.007 in, which is printed as 6.
    const strip = 'strip: { length: 865/16, width: 3 1/2 }';
    const { results } = search(planOf(`layout: { ${strip} }\nswag: { span: 6 }`), one(1));
    expect(results[0]!.fit.sides[0]).toMatchObject({ repeats: 9, seat: { gap: 0 } });
    // What is not printed as it is brought to it by a gap.
    const [next] = results.filter(({ fit }) => fit.sides[0]!.repeats === 8);
    expect(next!.fit.sides[0]!.seat.span).toBeCloseTo(6 * INCH, 6);
  });

  test('nor where what a bulge needs leaves what is printed as it', () => {
    // Nine swags of 54 5/8 in stand 1.704 mm apart for their bulge, and are 6.002 in wide.
    const strip = 'strip: { length: 874/16, width: 4 }';
    const [first] = search(planOf(`layout: { ${strip} }\nswag: { span: 6 }`), one(1)).results;
    expect(first!.fit.sides[0]!.repeats).toBe(9);
    expect(first!.fit.sides[0]!.seat.gap).toBeCloseTo(1.704, 3);
  });

  test('a gap that a bulge needs may be wider than the swag, whatever else is asked', () => {
    const strip = 'strip: { length: 12 1/2, width: 8 1/4 }';
    const found = (swag: string) => search(planOf(`layout: { ${strip} }\nswag: { ${swag} }`), one(0)).results;
    const free = found('').filter((ranked) => uses(ranked).every((use) => use >= 0.8));
    expect(free.length).toBeGreaterThan(0);
    const asked = found('use: at least 80 %');
    expect(asked.map(({ fit }) => fit.sides[0]!.repeats)).toEqual(
      free.map(({ fit }) => fit.sides[0]!.repeats),
    );
  });

  test.each([
    [
      2,
      'width: 17/4, inner: { top: 300/16, right: 305/16, bottom: 300/16, left: 305/16 }',
      'span: at least 9',
    ],
    [
      0,
      'width: 15/4, inner: { top: 300/16, right: 663/16, bottom: 291/16, left: 672/16 }',
      'use: 60 % to 70 %',
    ],
  ])(
    'turned corners that touch are not lost to ones that differ less with gaps: %i, %s',
    (template, sizes, asked) => {
      const border = `border: { margin: 1/4, from: inner, corners: turn, ${sizes} }`;
      const found = (swag: string) =>
        search(planOf(`layout: { ${border} }\nswag: { ${swag} }`), one(template)).results;
      const free = found('').filter((ranked) =>
        asked.startsWith('span')
          ? spans(ranked).every((span) => span >= 9 * INCH)
          : uses(ranked).every((use) => use >= 0.6 && use <= 0.7),
      );
      expect(free[0]!.score.gap).toBe(0);
      expect(found(asked)[0]!.score.cost).toBeCloseTo(free[0]!.score.cost, 4);
    },
  );

  test('of some sides only, and the others are free', () => {
    const plan = planOf(
      'layout: { border: { width: 6, inner: { top: 60, right: 72, bottom: 60, left: 72 }, margin: 1/2 } }\nswag: { repeats: { top: 5, right: 7 } }',
    );
    const { results } = search(plan);
    expect(results.length).toBeGreaterThan(5);
    for (const { fit } of results) expect(fit.sides.map((s) => s.repeats).slice(0, 2)).toEqual([5, 7]);
    // Opposite sides are as long, and so have as many.
    for (const { fit } of results) expect(fit.sides.map((s) => s.repeats).slice(2)).toEqual([5, 7]);
    const odd = search(
      planOf(
        'layout: { border: { width: 6, inner: 60, margin: 1/2 } }\nswag: { repeats: [5, 6, 5, auto], gap: 0 }',
      ),
    ).results;
    expect(new Set(odd.map(({ fit }) => fit.sides[3]!.repeats))).toEqual(new Set([6]));
  });
});

/** How far beyond a twentieth the worst figure is from what is asked about. */
const beyond = (figures: readonly number[], about: number): number =>
  Math.max(...figures.map((n) => Math.max(0, Math.abs(n / about - 1) - 0.05)));

describe('about ranks before all else', () => {
  const ABOUT: readonly (readonly [string, number, Asked[1]])[] = [
    ['span: about 6', 6 * INCH, spans],
    ['span: about 9', 9 * INCH, spans],
    ['depth: about 2', 2 * INCH, depths],
    ['use: about 3/4', 0.75, uses],
    ['gap: about 1/4', INCH / 4, gaps],
    ['repeats: about 9', 9, counts],
  ];
  test(
    'by how far the worst side or corner is off, and a twentieth is not seen',
    () => {
      const made = fewRuns(10, 40, 20261130);
      let found = 0;
      fc.assert(
        fc.property(
          grounds,
          fc.nat(2),
          fc.uniqueArray(fc.constantFrom(...ABOUT), { minLength: 1, maxLength: 2 }),
          (ground, template, asked) => {
            const keys = asked.map(([words]) => words.split(':')[0]);
            fc.pre(new Set(keys).size === keys.length);
            fc.pre(ground.kind !== 'ring' || !keys.includes('repeats'));
            const plan = planWith(ground, asked.map(([words]) => words).join(', '));
            const { results } = search(plan, one(template));
            const off = results.map((ranked) =>
              asked.reduce((sum, [, about, figures]) => sum + beyond(figures(ranked), about), 0),
            );
            off.forEach((o, i) => {
              // What is as near comes in the usual order.
              if (i > 0) expect(o).toBeGreaterThanOrEqual(off[i - 1]! - 0.05);
            });
            expect(off[0] ?? 0).toBeLessThanOrEqual(Math.min(...off, Number.POSITIVE_INFINITY) + 0.005);
            found += results.length;
          },
        ),
        made,
      );
      expect(found / made.numRuns).toBeGreaterThan(2000 / 40);
    },
    patience(120_000),
  );

  test('a corner is not drawn out to a spike for it', () => {
    // Corners hardly wider than the thread would let the sides be 66.5 mm wide and more, and cost more than that is worth.
    const border = 'width: 13/4, inner: { top: 447/16, right: 300/16, bottom: 438/16, left: 309/16 }';
    const found = (swag: string) =>
      search(
        planOf(
          `layout: { border: { margin: 1/4, from: outer, corners: turn, ${border} } }\nswag: { ${swag} }`,
        ),
        one(2),
      ).results;
    const off = (ranked: Ranked): number => beyond(spansOf(ranked.fit), 6 * INCH);
    const [first] = found('span: about 6');
    expect(off(first!)).toBeLessThanOrEqual(Math.min(...found('').map(off)));
    expect(cornerSwag(first!.fit)?.seat.span).toBeGreaterThan(1);
  });

  test(
    'and what it puts first is no farther off than anything found without it',
    () => {
      fc.assert(
        fc.property(
          grounds,
          fc.nat(2),
          fc.constantFrom(...ABOUT),
          (ground, template, [words, about, figures]) => {
            fc.pre(ground.kind !== 'ring' || !words.startsWith('repeats'));
            const all = search(planWith(ground, ''), one(template)).results;
            const [first] = search(planWith(ground, words), one(template)).results;
            // One cost for all: a step of what a design costs in itself weighs as much as a hundred thousandth of what is
            // asked. Only of a spike, hardly wider than the thread, is that more than anyone could measure. And a corner's
            // rise is found to within a length.
            const seen = /^(?:span|depth|gap)/.test(words) ? FOUND / about : 0;
            for (const ranked of all)
              expect(beyond(figures(first!), about)).toBeLessThanOrEqual(
                beyond(figures(ranked), about) + 1e-5 * ranked.score.cost + 1e-6 + seen,
              );
          },
        ),
        fewRuns(10, 40, 11),
      );
    },
    patience(120_000),
  );

  test('and turned corners that need room for their bulge are not lost to a gap as wide as a swag', () => {
    const border =
      'border: { width: 22/4, margin: 1/4, from: outer, corners: turn, inner: { top: 300/16, right: 300/16, bottom: 300/16, left: 300/16 } }';
    const found = (swag: string) =>
      search(planOf(`layout: { ${border} }\nswag: { ${swag} }`), one(0)).results;
    const nearest = Math.min(...found('').map((ranked) => beyond(spans(ranked), 6 * INCH)));
    expect(nearest).toBeLessThan(0.025);
    expect(beyond(spans(found('span: about 6')[0]!), 6 * INCH)).toBeLessThanOrEqual(nearest + 1e-4);
  });

  test('each result says how far it is from what is asked', () => {
    const plan = planOf(
      'layout: { border: { width: 6, inner: { top: 60, right: 72, bottom: 60, left: 72 }, margin: 1/2 } }\nswag: { span: about 9, depth: at least 1, repeats: [auto, odd, auto, odd] }',
    );
    const { results } = search(plan);
    expect(results.length).toBeGreaterThan(20);
    for (const ranked of results) {
      const [span, depth, right, left] = ranked.answers;
      const off = Math.max(...spans(ranked).map((s) => Math.abs(s - 9 * INCH)));
      expect(span).toMatchObject({ key: 'span', wish: { about: 9 * INCH }, off: expect.closeTo(off, 9) });
      expect(span!.meets).toBe(off <= 0.05 * 9 * INCH + 1e-9);
      expect(depth).toMatchObject({
        off: expect.closeTo(0, 9),
        meets: true,
        least: Math.min(...depths(ranked)),
      });
      expect([right!.on, left!.on]).toEqual([1, 3]);
    }
  });
});

describe('touching', () => {
  test(
    'is what a gap of 0 means, on borders and frames, and in every result',
    () => {
      const made = fewRuns(15, 60, 3);
      let found = 0;
      fc.assert(
        fc.property(grounds, fc.nat(2), (ground, template) => {
          for (const ranked of search(planWith(ground, 'gap: 0'), one(template)).results) {
            expect(Math.max(...gaps(ranked))).toBeLessThanOrEqual(0.01);
            found++;
          }
        }),
        made,
      );
      expect(found / made.numRuns).toBeGreaterThan(1000 / 60);
    },
    patience(120_000),
  );
});

describe('where nothing meets a range', () => {
  const HARD = [
    'span: 9',
    'depth: at least 9',
    'depth: 2, span: 6',
    'use: 95 % to 96 %, span: about 9',
    'repeats: 3, span: 5 to 6',
    'repeats: odd, depth: 3',
    'gap: 0, depth: 2 1/2 to 2 5/8',
    'gap: 3 to 4',
    'repeats: [3, 9, 4, 8]',
  ];
  test(
    'the nearest come, none of which meets it, and each fits once its change is made',
    () => {
      let told = 0;
      fc.assert(
        fc.property(
          fc.oneof(borders, strips),
          fc.nat(2),
          fc.constantFrom(...HARD),
          fc.nat(),
          (ground, t, words, pick) => {
            fc.pre(ground.kind === 'border' || !words.includes('['));
            const plan = planWith(ground, words);
            const templates = one(t);
            if (search(plan, templates).results.length > 0) return;
            const unmet = unmetBy(plan, templates);
            if (!unmet) return;
            const { nearest } = unmet;
            expect(unmet.problem.message).toMatch(/ cannot (both|all) be had/);
            for (const ranked of [nearest[0]!, nearest[pick % nearest.length]!]) {
              const changes = changesFor(ranked, plan.marks.style);
              expect(changes.length).toBeGreaterThan(0);
              for (const { answer, text } of changes) {
                expect(answer.meets).toBe(false);
                expect(text).toMatch(/ instead of /);
              }
              const less = askingLess(ranked, plan);
              expect(search(less, templates).results.length, words).toBeGreaterThan(0);
              const repeats = ranked.fit.sides.map((side) => side.repeats);
              const [again] = search({ ...less, swag: { ...less.swag, repeats } }, templates).results;
              expect(again!.answers.some(isUnmet)).toBe(false);
              told++;
            }
          },
        ),
        runs(40, 20261201),
      );
      expect(told).toBeGreaterThan(20);
    },
    patience(180_000),
  );

  const BORDER =
    'layout: { border: { width: 5, margin: 1/2, inner: { top: 60, right: 72, bottom: 60, left: 72 } } }';
  /** A contradiction, and the two that cannot both be had as a person would name them. */
  test.each([
    [`${BORDER}\nswag: { depth: at least 5 }`, /^depth at least 5 in and 4 in of room cannot both be had$/],
    [
      `${BORDER}\nchannels: { outward: [1/2] }\nswag: { depth: 3 3/4 to 4 }`,
      /^depth 3 3\/4 to 4 in and 4 in of room, of which the channels take 1\/2 in, cannot both be had$/,
    ],
    [
      'layout: { border: { width: 12, inner: 60 } }\nswag: { span: about 9, depth: at least 8 }',
      /^depth at least 8 in and half swags of [\d /]+ in at most from start to crown \(Baluster, Finial and Newel\) cannot both be had$/,
    ],
    [
      'layout: { strip: { length: 60, width: 6 } }\nswag: { repeats: 7, span: 20 }',
      /^7 repeats and span 20 in cannot both be had on a side of 60 in$/,
    ],
    [
      `${BORDER}\nswag: { repeats: { top: 9 }, span: at least 8, depth: at least 1 }`,
      /^9 repeats on the top side and span at least 8 in cannot both be had on a side of 61 in$/,
    ],
    [
      `${BORDER}\nswag: { repeats: { right: 10 }, span: at least 8 }`,
      /^10 repeats on the right side and span at least 8 in cannot both be had on a side of 73 in$/,
    ],
    [
      'layout: { strip: { length: 60, width: 6 } }\nswag: { gap: 0, span: 7, use: at least 10 % }',
      /^span 7 in and gap 0 in cannot both be had$/,
    ],
  ])('%s', (text, expected) => {
    const plan = planOf(text);
    expect(search(plan).results).toEqual([]);
    expect(unmetBy(plan, PROFILES)!.problem.message).toMatch(expected);
  });

  test('a gap that is one figure is told as one', () => {
    const told = (least: number, most: number) =>
      changesFor(
        {
          answers: [
            {
              key: 'gap',
              wish: 0,
              on: undefined,
              of: undefined,
              play: 0,
              least,
              most,
              off: most,
              meets: false,
            },
          ],
        },
        INCH_SIXTEENTH,
      );
    const sixteenth = INCH / 16;
    expect(told(3 * sixteenth, 3 * sixteenth)[0]!.text).toBe('gap 3/16 in instead of 0 in');
    expect(told(3.5 * sixteenth, 3.5 * sixteenth)[0]!.text).toBe('gap 3/16 to 1/4 in instead of 0 in');
  });

  test('says what to ask instead, in the words of the plan', () => {
    const plan = planOf(`${BORDER}\nswag: { depth: at least 5 }`);
    const { nearest, problem } = unmetBy(plan, [profile('newel')])!;
    const least = Math.floor((16 * Math.min(...depths(nearest[0]!))) / INCH + 1e-9) / 16;
    const words = formatLength(least * INCH, INCH_SIXTEENTH);
    expect(problem.hint).toBe(`the nearest takes depth at least ${words} instead of at least 5 in`);
    expect(problem.key).toBe('swag.depth');
  });

  test('and where a plan asks nothing, nothing of it is told', () => {
    const plan = planOf('layout: { strip: { length: 60, width: 6 } }\nswag: { span: about 9, gap: auto }');
    expect(unmetBy(plan, PROFILES)).toBeUndefined();
  });
});
