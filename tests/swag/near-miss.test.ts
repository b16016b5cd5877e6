/** Where nothing fits, what is told must be true: the change, made to the plan, makes it fit. */

import { describe, expect, test } from 'vitest';
import {
  describeMisfit,
  describeMiss,
  nearestMisses,
  noWayHint,
  smallestChange,
} from '../../src/swag/index.ts';
import { planOf, profile, search } from './fit-helpers.ts';

const strip = (more: string, length = '60 in', width = 6, margin = '1/2 in'): string =>
  `layout: { strip: { length: ${length}, width: ${width}, margin: ${margin} } }\n${more}`;
const border = (more: string, corners = 'turn', width = 6): string =>
  `layout: { border: { width: ${width}, inner: { top: 60, right: 72, bottom: 60, left: 72 }, margin: 1/2, corners: ${corners} } }\n${more}`;

/** A plan that does not fit, the template, and a word of the change that a person would expect. */
const CASES: readonly [name: string, template: string, plan: string, expected: RegExp][] = [
  [
    'too few repeats: the template is too short',
    'baluster',
    strip('swag: { from: 1, to: crown, setting: crown-on-centre, repeats: 4 }'),
    /repeats instead of 4/,
  ],
  [
    'too many repeats: too deep',
    'newel',
    strip(
      'swag: { from: 1, to: crown, side: inside, direction: heel-first, setting: crown-on-centre, repeats: 7 }',
      '60 in',
      4,
    ),
    /./,
  ],
  [
    'a margin that is too wide',
    'newel',
    strip(
      'swag: { from: 1, to: crown, side: inside, direction: heel-first, setting: crown-on-centre, repeats: 5 }',
      '60 in',
      3,
      '{ inner: 0, outer: 1 }',
    ),
    /margin/,
  ],
  ['a gap that is too small', 'baluster', strip('swag: { from: 2, to: crown, gap: 0, repeats: 30 }'), /./],
  [
    'a side on which the stitching dips',
    'finial',
    strip(
      'swag: { from: 1, to: 1, side: outside, direction: heel-first, setting: alignment-line, laid: square }',
    ),
    /./,
  ],
  ['a corner that cannot be turned', 'baluster', border('swag: { from: 1, to: crown, repeats: 2 }'), /./],
  [
    'counts that differ too much',
    'newel',
    border('swag: { from: 1, to: crown, repeats: [5, 20, 5, 5], setting: crown-on-centre }', 'meet'),
    /right side|auto/,
  ],
  [
    'a setting that does not suit',
    'newel',
    border('swag: { setting: flat-on-guide, side: outside, direction: crown-first, to: 1 }', 'meet'),
    /./,
  ],
  [
    'a border that is too narrow',
    'newel',
    border(
      'swag: { setting: crown-on-centre, from: 1, to: crown, side: inside, direction: heel-first }',
      'turn',
      2,
    ),
    /./,
  ],
];

describe('the smallest change', () => {
  test.each(CASES)('%s', (_name, template, text, expected) => {
    const plan = planOf(text);
    const templates = [profile(template)];
    const { results, misses } = search(plan, templates);
    expect(results).toHaveLength(0);
    const nearest = nearestMisses(misses);
    expect(nearest.length).toBeGreaterThan(0);
    const changes = nearest.slice(0, 4).map((miss) => smallestChange(miss, plan));
    expect(changes.some((c) => c !== undefined)).toBe(true);
    for (const change of changes)
      if (change) expect(search(change.plan, templates).results.length, change.text).toBeGreaterThan(0);
    expect(changes.map((c) => c?.text ?? '').join('; ')).toMatch(expected);
  });
});

describe('where a plan leaves no way at all', () => {
  test.each([
    ['{ setting: alignment-line, direction: crown-first }', /direction: heel-first/],
    ['{ setting: flat-on-guide, side: outside }', /without what the swag fixes: setting, side/],
  ])('says what to leave out: %s', (swag, expected) => {
    const plan = planOf(strip(`swag: ${swag}`));
    const found = search(plan, [profile('finial')]);
    expect(found.results).toEqual([]);
    expect(found.misses).toEqual([]);
    expect(noWayHint(plan)).toMatch(expected);
  });
});

describe('the counts and figures of a near miss', () => {
  const missesFor = (text: string) => {
    const plan = planOf(text);
    const { results, misses } = search(plan, [profile('newel')]);
    expect(results).toEqual([]);
    return nearestMisses(misses).map((miss) => ({ miss, ...describeMiss(miss, plan) }));
  };

  test('are those of the plan where a corner is in the way, and never a count that nobody named', () => {
    // The crown end of a newel hangs too deep for a border of 2 in.
    const swag = 'from: 1, to: crown, side: inside, direction: heel-first, setting: crown-on-centre';
    const atCorner = (more: string) =>
      missesFor(border(`swag: { ${swag}${more} }`, 'turn', 2)).filter(
        ({ found }) => !/\d+ swags?/.test(found!),
      );
    const counted = atCorner(', repeats: 5');
    expect(counted.length).toBeGreaterThan(0);
    for (const { found, hint } of counted) {
      expect(found).toContain(', 5 repeats on the top side: ');
      if (hint?.includes('auto')) expect(hint).toBe('repeats: auto instead of 5');
    }
    const free = atCorner('').filter(({ miss }) => miss.repeats === undefined);
    expect(free.length).toBeGreaterThan(0);
    for (const { found } of free) expect(found).not.toContain('repeat');
  });

  test('are those of the whole side where it is too short', () => {
    // 30 swags with gaps of 2 in want 60 in of a strip of 40, were they of no width at all: 20 in too short.
    const told = missesFor(
      strip('swag: { from: 1, to: crown, setting: crown-on-centre, repeats: 30, gap: 2 }', '40 in'),
    );
    expect(told.map(({ found }) => found).join('\n')).toContain(
      '30 repeats: the side is 20 in too short for it',
    );
  });
});

test('what rounds to nothing is called a hair, and not 0 in', () => {
  const plan = planOf(border(''));
  for (const kind of ['past-centre', 'dips', 'too-short', 'too-deep'] as const) {
    expect(describeMisfit({ kind, by: 0.2 }, plan)).toContain(' a hair');
    expect(describeMisfit({ kind, by: 25.4 }, plan)).toContain(' 1 in');
  }
});
