/** Where four square corners do not close, the picture stands open: what is said of it, and how large. */

import { expect, test } from 'vitest';
import { drawPlan, scopeOf } from '../../src/drawing/index.ts';
import { designOf } from '../../src/swag/index.ts';
import { planOf, search } from '../swag/fit-helpers.ts';

// A slow reader sees letters of 1/64 of a picture's width in it (common practice, no source).
const LEGIBLE = 1 / 64;

const drawn = (from: string, sides: string, show: string, asWhole: boolean) => {
  const plan = planOf(`layout: { border: { width: 5, inner: ${sides}, from: ${from}, margin: 1/2 } }`);
  const best = search(plan).results[0]!;
  const scoped = scopeOf(designOf(best.field, best.fit), show);
  if (!scoped.ok) throw new Error(`No ${show}`);
  const { drawing, messages } = drawPlan(scoped.design, plan, scoped.scope, { asWhole });
  return { messages, notes: drawing.layers.notes.flatMap((i) => (i.kind === 'text' ? [i] : [])) };
};

const APART = '{ top: 40, right: 52, bottom: 41 1/2, left: 51 1/4 }';

test.each(['inner', 'outer'])('from the %s seam, each side that stands open is told', (from) => {
  const { messages, notes } = drawn(from, APART, 'all', true);
  expect(messages).toHaveLength(2);
  expect(messages[0]).toMatch(/^the picture stands open at the top by 1 1\/2 in, after top \d+, because/);
  expect(messages[1]).toMatch(/^the picture stands open at the left by 3\/4 in, after left \d+, because/);
  const large = notes.filter(({ size }) => size > 41.5 * 25.4 * LEGIBLE);
  expect(large.map(({ text }) => text)).toEqual([
    'Open only in the drawing, because opposite sides differ:',
    expect.stringMatching(/^top by 1 1\/2 in, after top \d+$/),
    expect.stringMatching(/^left by 3\/4 in, after left \d+$/),
    'Sew without these gaps.',
  ]);
  // On the cloth inside, whose lower left corner is the origin; a letter is at most as wide as it is high.
  for (const { at, text, size } of large) {
    expect(at.x).toBeCloseTo((41.5 * 25.4) / 2, 6);
    expect(0.7 * text.length * size).toBeLessThan(41.5 * 25.4);
    expect(at.y - size).toBeGreaterThan(0);
    expect(at.y + size).toBeLessThan(52 * 25.4);
  }
  expect(large[0]!.at.y).toBeGreaterThan(large[3]!.at.y);
});

test.each([
  ['one side, which is drawn at its own length', APART, 'top', true, 0, 0],
  ['a corner', APART, 'corner', true, 0, 0],
  ['sides that are as long', '40', 'all', true, 0, 0],
  // Its middle would cost sheets: there the words beside the mark are read.
  ['sheets that are taped', APART, 'all', false, 2, 0],
])('%s', (_, sides, show, asWhole, told, large) => {
  const { messages, notes } = drawn('inner', sides, show, asWhole);
  expect(messages).toHaveLength(told);
  expect(notes.filter(({ size }) => size > 41.5 * 25.4 * LEGIBLE)).toHaveLength(large);
});
