/** Parts added, taken out and laid elsewhere in a plan's text: read back by the program's own reader. */

import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { newPlan } from '../../src/page/plan/first-figures.ts';
import {
  asParts,
  freeCornered,
  freeName,
  OWN_KEYS,
  placeOf,
  placeWritten,
  turnOf,
  withoutPart,
  withPart,
} from '../../src/page/plan/part-text.ts';
import { partsOf, textBesides, withUnits, withValue } from '../../src/page/plan/plan-text.ts';
import { FIRST_PLAN } from '../../src/page/plan/state.ts';
import { cornersOfWritten, type Plan, planJsonSchema, readPlan } from '../../src/plan/index.ts';

const plansIn = (text: string): readonly Plan[] => {
  const reading = readPlan(text, 'plan.yaml');
  if (!reading.ok) throw new Error(`${text}\n${reading.problems.map((p) => p.message).join('; ')}`);
  return reading.parts.map(({ plan }) => plan);
};
/** What a plan means, but for which part it is and what that is called. */
const meant = ({ part: _, title: __, ...plan }: Plan): object => plan;

const SAMPLES = ['raffle-border', 'guild-strip', 'wreath-frame', 'medallion-frame'].map((name) =>
  readFileSync(`samples/${name}.yaml`, 'utf8'),
);
const ROWS = `template: finial # hers
# how wide
layout: { border: { width: 8, inner: 40, margin: 1/4, corners: meet } } # all round
rows: [{ at: 3 }]
# and last
foot: { clearance: 1/4 }
`;

describe('a plan of one design becomes one of parts', () => {
  test.each([
    ...SAMPLES,
    FIRST_PLAN,
    ROWS,
    JSON.stringify({ template: 'finial', layout: { strip: { length: 40, width: 5 } }, swag: { repeats: 4 } }),
  ])('and means the same: %#', (text) => {
    const parts = asParts(text, 'outer border');
    expect(partsOf(parts)).toEqual(['outer border']);
    expect(plansIn(parts).map(meant)).toEqual(plansIn(text).map(meant));
    // All that was said beside it is said still.
    for (const [comment] of text.matchAll(/#.*/g)) expect(parts).toContain(comment);
  });

  test('with the lines and comments as they were, only further in', () => {
    const parts = asParts(ROWS, 'hers');
    expect(parts).toBe(`template: finial # hers
# and last
foot: { clearance: 1/4 }
parts:
  hers:
    # how wide
    layout: { border: { width: 8, inner: 40, margin: 1/4, corners: meet } } # all round
    rows: [{ at: 3 }]
`);
    const crlf = asParts(ROWS.replaceAll('\n', '\r\n'), 'hers');
    expect(crlf).toBe(parts.replaceAll('\n', '\r\n'));
    // Whatever it is called.
    expect(partsOf(asParts(FIRST_PLAN, 'top: left # 1'))).toEqual(['top: left # 1']);
  });

  test('what is said by each part is what a design says', () => {
    const { anyOf, properties } = planJsonSchema() as {
      readonly anyOf?: readonly { readonly properties: object }[];
      readonly properties?: object;
    };
    const keys = (anyOf?.map((of) => of.properties) ?? [properties!]).flatMap(Object.keys);
    const ofAll = [
      '$schema',
      'title',
      'units',
      'paper',
      'foot',
      'stitch',
      'marks',
      'colours',
      'template',
      'parts',
    ];
    expect([...new Set(keys)].filter((key) => !ofAll.includes(key)).sort()).toEqual([...OWN_KEYS].sort());
  });
});

describe('one more part', () => {
  test.each([
    // Half of the outside of the first border, mm: (72 1/4 in + 2 · 6 in) / 2, and (150 cm + 2 · 15 cm) / 2.
    ['in', 42.125 * 25.4],
    ['cm', 900],
    ['mm', 900],
  ] as const)('lies below all others, in %s', (units, below) => {
    const border = newPlan(units, 'letter');
    const text = withPart(border, 'label', units, below);
    const [outer, label] = plansIn(text);
    expect([outer!.part!.name, label!.part!.name]).toEqual(['border', 'label']);
    expect(label!.layout.kind).toBe('strip');
    const { y } = label!.part!.places[0]!;
    expect(-y).toBeGreaterThan(below);
    expect(plansIn(withoutPart(text, 'label')).map(meant)).toEqual(plansIn(border).map(meant));
  });

  test('has a name that no other has', () => {
    expect(freeName(FIRST_PLAN)).toBe('part 2');
    const two = withPart(FIRST_PLAN, 'part 2', 'in', 1000);
    expect(freeName(two)).toBe('part 3');
    expect(freeName(withPart(two, 'part 4', 'in', 2000))).toBe('part 5');
  });
});

test('where a part lies is read in each of the ways that a plan says it', () => {
  const parts = (at: string): string =>
    `template: finial\nparts:\n  a: { ${at}layout: { strip: { length: 40, width: 5 } } }\n`;
  const place = (at: string) => placeOf({ plan: parts(at), part: 'a' });
  expect(place('')).toEqual({ right: '0', up: '0' });
  expect(place('at: middle, ')).toEqual({ right: '0', up: '0' });
  expect(place('at: [12, -8 1/2], ')).toEqual({ right: '12', up: '-8 1/2' });
  expect(place('at: [[12, -8]], ')).toEqual({ right: '12', up: '-8' });
  expect(place('at: [[12, -8], [-12, 8]], ')).toEqual({ places: 2 });
  expect(place('at: corners of outer border, ')).toEqual({ cornersOf: 'outer border' });
  expect(turnOf({ plan: parts('turn: 90, '), part: 'a' })).toBe('90');
  expect(placeWritten('12', '-8 1/2')).toEqual([12, '-8 1/2']);
  expect(placeWritten('0 in', '0')).toBeUndefined();
  const laid = withValue(parts(''), ['parts', 'a', 'at'], placeWritten('12', '-8 1/2'));
  const [at] = plansIn(laid)[0]!.part!.places;
  expect([at!.x, at!.y]).toEqual([expect.closeTo(12 * 25.4, 9), expect.closeTo(-8.5 * 25.4, 9)]);
});

describe('in the corners of another part', () => {
  const quilt = (corners: string, at = '[1, 2]'): string => `template: finial
parts:
  outer border: { layout: { border: { width: 8, inner: 48, corners: ${corners} } } }
  sash: { layout: { strip: { length: 40, width: 5 } } }
  wreath: { at: ${at}, layout: { frame: { around: 3, within: 7 } } }
`;
  const open = (part: string, plan: string) => ({ plan, part });

  test('it may lie where squares are free, and not in its own', () => {
    for (const corners of ['half', 'open'])
      expect(freeCornered(open('wreath', quilt(corners)))).toEqual(['outer border']);
    for (const corners of ['turn', 'meet', 'across'])
      expect(freeCornered(open('wreath', quilt(corners)))).toEqual([]);
    expect(freeCornered(open('outer border', quilt('half')))).toEqual([]);
  });

  test('it is laid there as a plan says it, and stays there in other units', () => {
    const laid = withValue(quilt('half'), ['parts', 'wreath', 'at'], cornersOfWritten('outer border'));
    expect(laid).toBe(quilt('half', 'corners of outer border'));
    const before = plansIn(laid)[2]!.part!.places;
    expect(before).toHaveLength(4);
    expect(plansIn(withUnits(laid, 'in', 'cm'))[2]!.part!.places).toEqual(
      before.map(({ x, y }) => ({ x: expect.closeTo(x, 9), y: expect.closeTo(y, 9) })),
    );
  });

  test('it goes with them while that part is open', () => {
    const besides = (at: string, width: number): string =>
      textBesides(open('outer border', quilt('half', at).replace('width: 8', `width: ${width}`)));
    expect(besides('corners of outer border', 9)).not.toBe(besides('corners of outer border', 8));
    expect(besides('[1, 2]', 9)).toBe(besides('[1, 2]', 8));
  });
});
