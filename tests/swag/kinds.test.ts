/** Two kinds of swag that take turns along a side: by hand where the numbers come out even, and what a quilter would see. */

import { describe, expect, test } from 'vitest';
import { regionArea } from '../../src/geometry/index.ts';
import { type Plan, readPlan } from '../../src/plan/index.ts';
import {
  alikeRepeats,
  askedWords,
  type Design,
  designFromPlan,
  designOf,
  kindsIn,
  marksOf,
  type Ranked,
  regionsOf,
  type Search,
  searchPlan,
  stitchedLength,
} from '../../src/swag/index.ts';
import { spansInTurn } from '../../src/swag/search-kinds.ts';
import type { Template } from '../../src/template/index.ts';
import { PROFILES, templateOf } from './fit-helpers.ts';

const planOf = (text: string): Plan => {
  const reading = readPlan(text, 'plan.yaml');
  if (!reading.ok) throw new Error(`${text}: ${JSON.stringify(reading.problems)}`);
  return reading.parts[0].plan;
};
const search = (text: string, templates: readonly Template[] = PROFILES): Search => {
  const searched = searchPlan(planOf(text), templates);
  if (!searched.ok) throw new Error(JSON.stringify(searched.problems));
  return searched.search;
};
const ALL = 'template: [baluster, finial, newel]';

/** A straight edge: a swag of it is two straight lines, as long each as the edge. */
const rod = (name: string, mm: number): Template =>
  templateOf(`units: mm\nedge: [{ start: [0, 0] }, { line: { to: [${mm}, 0] } }]\n`, name);

test('spans by hand: three of the first kind and two of the second, a gap after each', () => {
  // 3·(20.6 + 1) + 2·(16.6 + 1) = 64.8 + 35.2 = 100, and 20.6 − 16.6 = 4.
  const [first, second] = spansInTurn(100, [3, 2], 1, 4);
  expect(first).toBeCloseTo(20.6, 12);
  expect(second).toBeCloseTo(16.6, 12);
});

const STRIP = 'layout: { strip: { length: 60, width: 8, margin: 1/2 } }';
const border = (corners: string, from = 'inner'): string =>
  `layout: { border: { width: 8, inner: { top: 50, right: 60, bottom: 50, left: 60 }, margin: 1/2, from: ${from}, corners: ${corners} } }`;

describe.each([STRIP, border('meet'), border('open'), border('half')])('%s', (layout) => {
  const { results } = search(`${ALL}\n${layout}\nswag: { alternate: [{}, {}] }`);

  test('every other swag is of the second kind, and both ends of a side are of the first', () => {
    expect(results.length).toBeGreaterThan(20);
    for (const { field, fit } of results.slice(0, 10))
      for (const side of designOf(field, fit).sides) {
        const kinds = Array.from({ length: side.places }, (_, i) => side.cells[i % 2]!.kind);
        expect(kinds).toEqual(kinds.toReversed());
        expect(new Set(kinds)).toEqual(new Set([1, 2]));
        expect(kinds[0]).toBe(1);
      }
  });

  test('kinds of one template differ in size, so that nobody takes them for a slip', () => {
    const share = (a: number, b: number): number => 1 - Math.min(a, b) / Math.max(a, b);
    let same = 0;
    for (const { fit } of results) {
      const [one, two] = kindsIn(fit).map((kind) => kind);
      if (one!.way.shape.stitching !== two!.way.shape.stitching) continue;
      same++;
      one!.sides.forEach(({ seat: a }, i) => {
        const b = two!.sides[i]!.seat;
        expect(share(a.span, b.span) > 1 / 3 || share(a.depth, b.depth) > 1 / 4).toBe(true);
      });
    }
    expect(same).toBeGreaterThan(0);
  });

  test('the order is the mean of what both cost, best first', () => {
    const costs = results.map(({ score }) => score.cost);
    expect(costs).toEqual(costs.toSorted((a, b) => a - b));
  });
});

test('a second kind that would lean over the next side’s from the outer seam is no result there', () => {
  const rods = [rod('short', 30), rod('long', 150)];
  // Its crown is 140 mm up and at most 54 + 60 mm along from the corner: beyond the mitre.
  const text = (from: string): string =>
    `units: mm\ntemplate: [short, long]\nlayout: { border: { width: 160, inner: 400, from: ${from}, corners: meet } }\nswag: { alternate: [{ template: short }, { template: long, depth: at least 140 }] }`;
  expect(search(text('inner'), rods).results.length).toBeGreaterThan(0);
  expect(search(text('outer'), rods).results).toEqual([]);
});

describe('what is asked of a kind', () => {
  const asked = search(
    `${ALL}\n${STRIP}\nswag: { alternate: [{ depth: 4 to 5, template: newel }, { template: [baluster, finial], span: about 8 }] }`,
  ).results;

  test('holds for that kind alone', () => {
    expect(asked.length).toBeGreaterThan(0);
    for (const { fit } of asked) {
      const [one, two] = kindsIn(fit).map(({ sides }) => sides[0]!.seat);
      expect(one!.depth / 25.4).toBeGreaterThan(4 - 1e-6);
      expect(one!.depth / 25.4).toBeLessThan(5 + 1e-6);
      expect(one!.way.shape.stitching.template.name).toBe('newel');
      expect(two!.way.shape.stitching.template.name).not.toBe('newel');
    }
  });

  test('is told of that kind', () => {
    const words = asked[0]!.answers.map((answer) => [
      askedWords(answer, { unit: 'in', denominator: 16 }),
      answer.least / 25.4,
    ]);
    const [one, two] = kindsIn(asked[0]!.fit).map(({ sides }) => sides[0]!.seat);
    expect(words).toEqual([
      ['depth 4 to 5 in of kind 1', one!.depth / 25.4],
      ['span about 8 in of kind 2', two!.span / 25.4],
    ]);
  });

  test('is named where it cannot be had', () => {
    const found = designFromPlan(
      planOf(`${ALL}\n${STRIP}\nswag: { alternate: [{}, { depth: at least 8 }] }`),
      PROFILES,
    );
    expect(found.ok).toBe(false);
    const [problem] = found.ok ? [] : found.problems;
    expect(problem!.message).toBe('depth at least 8 in of kind 2 and 7 in of room cannot both be had');
    expect(problem!.hint).toMatch(/^the nearest takes depth at least .* of kind 2$/);
  });
});

const made = (layout: string, rest: string): { plan: Plan; design: Design } => {
  const plan = planOf(
    `${ALL}\n${layout}\nswag: { alternate: [{}, {}]${rest} }\nchannels: { inward: [1/4] }\n`,
  );
  const found = designFromPlan(plan, PROFILES);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return { plan, design: found.design };
};

/** From the start line to the far margin, on the sides and where they meet on the corners. */
const bandArea = ({ field }: Ranked | Design): number => {
  const [across, up] = field.runs.map((run) => run.length);
  const { room, from, corners } = field;
  if (corners === 'none') return across! * room;
  if (corners === 'open' || corners === 'half') return 2 * (across! + up!) * room;
  return from === 'inner'
    ? (across! + 2 * room) * (up! + 2 * room) - across! * up!
    : across! * up! - (across! - 2 * room) * (up! - 2 * room);
};

describe.each([
  ['a strip', STRIP, ''],
  ['a strip with gaps', STRIP, ', gap: 1/2'],
  ['sides that meet', border('meet'), ''],
  ['sides that meet, from outside', border('meet', 'outer'), ''],
  ['open corners', border('open'), ''],
  ['halves at the corners', border('half'), ', gap: 1/2'],
])('the ground of %s', (_, layout, rest) => {
  const { plan, design } = made(layout, rest);

  test('is all inside a swag, in its channel, or outside', () => {
    const sums = new Map<string, number>();
    for (const { cell, ends, halves } of alikeRepeats(design, design.halves))
      for (const { name, region } of regionsOf(cell, design, plan.channels, ends)) {
        const key = `${name} ${cell.kind}`;
        sums.set(key, (sums.get(key) ?? 0) + (regionArea(region) * halves.length) / 2);
      }
    expect([...sums.keys()].sort()).toEqual(
      ['background', 'inward 1', 'swag'].flatMap((name) => [`${name} 1`, `${name} 2`]),
    );
    const sum = [...sums.values()].reduce((a, b) => a + b, 0);
    expect(sum / bandArea(design)).toBeCloseTo(1, 9);
  });

  test('has marks for every swag, and its thread counts both kinds', () => {
    const [top] = marksOf(design, plan.marks.style);
    const [side] = design.sides;
    expect(top!.marks.filter((m) => m.kind === 'centre')).toHaveLength(side!.places);
    expect(top!.kinds).toBe(2);
    const { repeats, swags } = stitchedLength(design, plan.channels);
    const per = new Map(repeats.map((r) => [r.name, r.length]));
    const sum = design.sides.reduce((all, { run, fit: { repeats: n } }) => {
      const second = Math.floor(n / 2);
      const first = design.field.corners === 'half' ? second : n - second;
      return all + first * per.get(`kind 1 ${run.name}`)! + second * per.get(`kind 2 ${run.name}`)!;
    }, 0);
    expect(swags).toBeCloseTo(sum, 6);
  });
});
