/** The ground of two rows: inside the first, between the two, and beyond the second, without a gap or an overlap. */

import { describe, expect, test } from 'vitest';
import { drawPlan, type Facts, wholeScope } from '../../src/drawing/index.ts';
import { containsPoint, type Point, pathBox, regionArea, regionBox } from '../../src/geometry/index.ts';
import { readPlan } from '../../src/plan/index.ts';
import {
  alikeRepeats,
  type Design,
  designFromPlan,
  placedPath,
  regionsOf,
  rowsOf,
  stitchedLength,
} from '../../src/swag/index.ts';
import { PROFILES, pointsAlong } from './fit-helpers.ts';
import { move } from './laid.ts';

const made = (layout: string, rest: string) => {
  const reading = readPlan(
    `template: [baluster, finial, newel]\nlayout: { ${layout} }\n${rest}\n`,
    'plan.yaml',
  );
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  const { plan } = reading.parts[0];
  const found = designFromPlan(plan, PROFILES);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return { plan, design: found.design };
};

/** Both pairs of opposite sides alike, so that the four corners close. */
const border = (corners: string, from: string): string =>
  `border: { width: 9, inner: { top: 50, right: 60, bottom: 50, left: 60 }, margin: 1/4, corners: ${corners}, from: ${from} }`;
const CHANNELS = 'channels: { outward: [1/4], inward: [1/4] }';
const CASES: readonly (readonly [string, string, string])[] = [
  ['a strip', 'strip: { length: 60, width: 9, margin: 1/4 }', 'rows: [{ at: 1 }]'],
  ['a strip whose rows start on one mark', 'strip: { length: 60, width: 9 }', 'rows: [{}]'],
  [
    'a strip with gaps',
    'strip: { length: 60, width: 9, margin: 1/4 }',
    'swag: { gap: 1/2 }\nrows: [{ at: 1 }]',
  ],
  ['corners turned from inside', border('turn', 'inner'), 'rows: [{ at: 1/2 }]'],
  ['corners turned from outside', border('turn', 'outer'), 'rows: [{ at: 1 }]'],
  ['sides that meet', border('meet', 'inner'), 'rows: [{ at: 1 }]'],
  ['sides that meet, with gaps', border('meet', 'inner'), 'swag: { gap: 1/2 }\nrows: [{ at: 1 }]'],
  ['sides that meet, from outside', border('meet', 'outer'), 'swag: { gap: 2 1/2 }\nrows: [{ at: 1 }]'],
  ['open corners', border('open', 'inner'), 'rows: [{ at: 1 }]'],
];

/** mm² of each kind of region, on the whole quilt. */
const areasOf = (design: Design, channels: Parameters<typeof regionsOf>[2]): ReadonlyMap<string, number> => {
  const sums = new Map<string, number>();
  for (const row of rowsOf(design))
    for (const { cell, ends, halves } of alikeRepeats(row, row.halves))
      for (const { name, region } of regionsOf(cell, row, channels, ends))
        sums.set(name, (sums.get(name) ?? 0) + (regionArea(region) * halves.length) / 2);
  return sums;
};

/** From the line that the first row starts on to the far margin: on the sides, and on the corners that lie between them. */
const bandArea = ({ field }: Design): number => {
  const [across, up] = field.runs.map((run) => run.length);
  const { room, from } = field;
  if (field.corners === 'none') return across! * room;
  if (field.corners === 'open') return 2 * (across! + up!) * room;
  return from === 'inner'
    ? (across! + 2 * room) * (up! + 2 * room) - across! * up!
    : across! * up! - (across! - 2 * room) * (up! - 2 * room);
};

describe.each(CASES)('%s', (_, layout, rest) => {
  const { plan, design } = made(layout, `${rest}\n${CHANNELS}`);

  test('what lies inside, between and beyond, and the channels, are all that there is', () => {
    const areas = areasOf(design, plan.channels);
    expect([...areas.keys()].sort()).toEqual(['background', 'between', 'inward 1', 'outward 1', 'swag']);
    const sum = [...areas.values()].reduce((a, b) => a + b, 0);
    expect(sum / bandArea(design)).toBeCloseTo(1, 9);
    expect(areas.get('between')).toBeGreaterThan(0);
  });

  test('what lies between has the first row’s stitching below it, and the second one’s above', () => {
    const [first, second] = rowsOf(design);
    const [repeat] = alikeRepeats(first, first.halves);
    const between = regionsOf(repeat!.cell, first, plan.channels, repeat!.ends).find(
      (r) => r.kind === 'between',
    )!;
    const half = repeat!.halves.find((h) => h.half === 'first')!;
    const beyond = second!.halves.find((h) => h.repeat === half.repeat && h.half === 'first')!;
    const inCell = (p: Point): Point => move(half.motion, p);
    const aside = (p: Point, by: number): Point => ({ x: p.x, y: p.y + by });
    const middle = <T>(list: readonly T[]): T => list[Math.floor(list.length / 2)]!;
    const on = inCell(middle(pointsAlong(placedPath(half))));
    const above = inCell(middle(pointsAlong(placedPath(beyond))));
    expect([aside(on, 0.2), aside(on, -0.2)].map((p) => containsPoint(between.region, p))).toEqual([
      true,
      false,
    ]);
    expect([aside(above, -0.2), aside(above, 0.2)].map((p) => containsPoint(between.region, p))).toEqual([
      true,
      false,
    ]);
    expect(regionBox(between.region).maxY).toBeGreaterThan(pathBox(repeat!.cell.path).maxY);
  });
});

test('each ground has its own fill, and the thread counts both rows', () => {
  const { plan, design } = made(
    'strip: { length: 20, width: 9 }',
    'rows: [{ at: 1 }]\nfills: { swag: stipple, between: pebbles, background: crosshatch }\nchannels: { outward: [1/4] }',
  );
  const drawn = drawPlan(design, plan, wholeScope(design));
  const facts = (layer: 'stitch' | 'channel' | 'fill'): readonly Facts[] =>
    drawn.drawing.layers[layer].map((item) => (item.kind === 'path' ? (item.facts ?? {}) : {}));
  const fills = new Map(facts('fill').map(({ region, fill }) => [region!, fill!]));
  expect(Object.fromEntries(fills)).toEqual({
    swag: 'stipple',
    between: 'pebbles',
    background: 'crosshatch',
  });
  // Both rows' stitching, the second one's channel, and each item says of which row it is.
  const rows = (layer: 'stitch' | 'channel'): readonly (string | undefined)[] =>
    facts(layer).map(({ row }) => row);
  expect(rows('stitch').filter((row) => row === '1')).toHaveLength(design.halves.length);
  expect(rows('stitch').filter((row) => row === '2')).toHaveLength(design.halves.length);
  expect(new Set(rows('channel'))).toEqual(new Set(['2']));
  const { repeats, swags } = stitchedLength(design, plan.channels);
  const count = design.sides[0]!.fit.repeats;
  expect(repeats.map((r) => r.name)).toEqual(['strip', 'row 2 strip']);
  expect(swags).toBeCloseTo(count * (repeats[0]!.length + repeats[1]!.length), 6);
});

test('a fill between rows where there is one says that it is not used', () => {
  const { plan, design } = made('strip: { length: 20, width: 9 }', 'fills: { between: pebbles }');
  expect(drawPlan(design, plan, wholeScope(design)).messages).toEqual([
    'fills.between: it is not used, because there is one row of swags',
  ]);
});
