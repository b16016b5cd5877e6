/** How fills are sewn, in words: each for its place, and true of the lines that are drawn. */

import { describe, expect, test } from 'vitest';
import { FILLS, fillNamed } from '../../../src/fill/index.ts';
import { distance, pathEnd, pathStart } from '../../../src/geometry/index.ts';
import { fillBlocks } from '../../../src/output/card/index.ts';
import { designOf } from '../../../src/swag/index.ts';
import { SWAG_REGIONS } from '../../fill/sample-regions.ts';
import { planOf, search } from '../../swag/fit-helpers.ts';

const wordsFor = (text: string, corners = 'turn'): readonly string[] => {
  const plan = planOf(
    `layout: { border: { width: 8, inner: 40, margin: 1/2, corners: ${corners} } }\n${text}`,
  );
  const best = search(plan).results[0]!;
  return fillBlocks(plan, designOf(best.field, best.fit)).map((block) =>
    block.kind === 'table' ? '' : block.text,
  );
};

test('each place says the fill that is in it, those of channels from the stitching outward and then inward', () => {
  const words = wordsFor(`channels: { outward: [1/2, 3/8], inward: [1/4] }
fills: { swag: loops, corner: { kind: stipple, spacing: 3/8 }, background: echo, channels: [ribbon, { kind: pearls, spacing: 1/4 }, lines] }`);
  expect(words.map((text) => text.slice(0, text.indexOf(':')))).toEqual([
    // A quarter inch is usual; in a channel it is seen.
    'Swags, loops, spacing 1/4 in',
    'Corners, stipple, spacing 3/8 in',
    'Background, echo, spacing 1/4 in',
    'Outward 1, ribbon',
    'Outward 2, pearls, spacing 1/4 in',
    'Inward 1, lines',
  ]);
  for (const text of words) expect(text).toMatch(/^[^:]+: \S.*[^.]\.$/);
  expect(wordsFor('')).toEqual([]);
});

test('nothing is said of a fill that has no place: corners that meet, one row, one channel', () => {
  const words = wordsFor(
    `channels: { inward: [1/4] }
fills: { swag: loops, corner: stipple, between: echo, channels: [ribbon, pearls] }`,
    'meet',
  );
  expect(words.map((text) => text.slice(0, text.indexOf(':')))).toEqual([
    'Swags, loops, spacing 1/4 in',
    'Inward 1, ribbon',
  ]);
});

describe('what is said of a line is so', () => {
  const made = (name: string) => {
    const fill = fillNamed(name);
    if (!('fill' in fill)) throw new Error(name);
    const region = SWAG_REGIONS[fill.suits === 'band' ? 'band' : 'swag'];
    return { sewn: fill.sewn, ...fill.fill(region, { spacing: 10, seed: 3 }) };
  };
  const apart = (name: string): number[] =>
    made(name).paths.map((path) => distance(pathStart(path)!, pathEnd(path)!));

  test.each([
    ['stipple', /start and stop at the same place.*only through a narrow place it may go there and back/],
    ['loops', /back to where it began/],
  ])('%s comes back to where it began', (name, says) => {
    expect(made(name).sewn).toMatch(says);
    expect(Math.max(...apart(name))).toBeLessThan(1e-6);
  });

  test('ribbon begins at one end of its band and stops at the other', () => {
    expect(made('ribbon').sewn).toMatch(
      /start at one end of the band and follow the ribbon to the other end/,
    );
    const [from] = apart('ribbon');
    // The band's ends are farther apart than it is wide.
    expect(from).toBeGreaterThan(50);
  });

  test('every fill has words of its own', () => {
    for (const { name, sewn } of FILLS) {
      expect(sewn, name).toMatch(/^(start|sew|go) /);
      expect(sewn, name).not.toMatch(/\.$/);
    }
  });
});
