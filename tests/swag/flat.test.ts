/** Swags that are all but flat: laid where a plan asks for them or has nothing else, and otherwise not. */

import { describe, expect, test } from 'vitest';
import { readPlan } from '../../src/plan/index.ts';
import { type Ranked, type Search, searchPlan, seatsOf } from '../../src/swag/index.ts';
import type { Template } from '../../src/template/index.ts';
import { PROFILES, templateOf } from './fit-helpers.ts';

const search = (text: string, templates: readonly Template[] = PROFILES): Search => {
  const reading = readPlan(`template: [${templates.map(({ name }) => name)}]\n${text}\n`, 'plan.yaml');
  if (!reading.ok) throw new Error(`${text}: ${JSON.stringify(reading.problems)}`);
  const searched = searchPlan(reading.parts[0].plan, templates);
  if (!searched.ok) throw new Error(JSON.stringify(searched.problems));
  return searched.search;
};

/** Depth over span of the flattest swag of a fit, in any row, over any corner. */
const flattest = ({ fit }: Pick<Ranked, 'fit'>): number =>
  Math.min(
    ...[fit, fit.beyond?.fit ?? []]
      .flat()
      .flatMap(seatsOf)
      .map(({ depth, span }) => depth / span),
  );

/** One deep to twenty-five wide, as common practice has it (no source), but for rounding. */
const LINE = 1 / 25 - 1e-9;

const border = (width: string, inner: string, more = ''): string =>
  `layout: { border: { width: ${width}, inner: ${inner}, margin: 1/4${more} } }`;
const WIDE = border('7', '{ top: 58, right: 71, bottom: 58, left: 71 }');
const NARROW = '{ top: 33, right: 45, bottom: 33, left: 45 }';

/** Each had some before they were left out; of the first two it was the first of all, of the fourth the fourth. */
const LEFT_OUT: readonly (readonly [as: string, text: string])[] = [
  [
    'round the corners',
    `${border('7', '{ top: 58, right: 71, bottom: 58, left: 71 }', ', corners: turn')}\nswag: { span: about 16 }`,
  ],
  [
    'across them',
    `${border('4', '{ top: 90, right: 108, bottom: 90, left: 108 }', ', from: outer, corners: across')}\nswag: { span: about 16 }`,
  ],
  ['beside them', `${border('9', '66', ', corners: open')}\nswag: { span: about 16 }`],
  ['of two kinds', `${border('1 1/2', NARROW)}\nswag: { alternate: [{}, { span: about 3 }] }`],
  ['where nothing is asked', border('1', NARROW)],
  [
    'with corners of their own',
    `${border('1', NARROW, ', corners: turn')}\ncorner: { template: [${PROFILES.map(({ name }) => name)}] }`,
  ],
  ['in either row', `${border('2', NARROW)}\nrows: [{ at: 1 }]`],
  ['in a round frame', 'layout: { frame: { around: 30 } }'],
];

test.each(LEFT_OUT)('none is laid that nobody asked for: %s', (_, text) => {
  const { results } = search(text);
  expect(results.length).toBeGreaterThan(2);
  expect(Math.min(...results.map(flattest))).toBeGreaterThan(LINE);
});

describe('they are laid', () => {
  test.each(['depth: at most 1/4', 'depth: about 1/8', 'use: about 5 %'])(
    'where a plan says how deep: %s',
    (words) => {
      const { results } = search(`${WIDE}\nswag: { ${words} }`);
      expect(Math.min(...results.map(flattest))).toBeLessThan(LINE / 2);
    },
  );

  test('of the kind whose depth is said, and not of the other', () => {
    const { results } = search(
      'layout: { strip: { length: 60, width: 8 } }\nswag: { alternate: [{ depth: at most 1/4 }, {}] }',
    );
    const ratios = (k: 0 | 1): readonly number[] =>
      results.flatMap(({ fit }) =>
        (k === 0 ? fit.sides : fit.pattern.kind === 'in turn' ? fit.pattern.sides : []).map(
          ({ seat }) => seat.depth / seat.span,
        ),
      );
    expect(Math.min(...ratios(0))).toBeLessThan(LINE);
    expect(Math.min(...ratios(1))).toBeGreaterThan(LINE);
  });

  /** Two straight lines of 150 mm each, 299.5 mm wide: 4.33 mm deep, one to seventy. */
  const rods = [templateOf('units: mm\nedge: [{ start: [0, 0] }, { line: { to: [150, 0] } }]\n', 'rod')];
  const STRIP = 'units: mm\nlayout: { strip: { length: 599, width: 160 } }';

  test('where nothing else is to be had', () => {
    const one = search(`${STRIP}\nswag: { gap: 0, repeats: 2 }`, rods).results;
    expect(one.map(flattest)).toEqual(
      one.map(() => expect.closeTo(Math.sqrt(150 ** 2 - 149.75 ** 2) / 299.5)),
    );
    expect(one.length).toBeGreaterThan(0);
    const any = search(`${STRIP}\nswag: { gap: 0 }`, rods).results;
    expect(Math.min(...any.map(flattest))).toBeGreaterThan(LINE);
  });

  test('in a second row on marks that leave it nothing else', () => {
    const both = search(`${STRIP}\nswag: { gap: 0, repeats: 2 }\nrows: [{ at: 20 }]`, rods).results;
    expect(both.length).toBeGreaterThan(0);
    expect(flattest(both[0]!)).toBeLessThan(LINE);
  });
});
