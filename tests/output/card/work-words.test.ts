/** What a card says of the work round the marks fits the design that it is of: common practice, no source. */

import { expect, test } from 'vitest';
import { cardOf } from '../../../src/output/card/index.ts';
import { designFromPlan } from '../../../src/swag/index.ts';
import { PROFILES, planOf } from '../../swag/fit-helpers.ts';

const said = (text: string): readonly string[] => {
  const plan = planOf(text);
  const made = designFromPlan(plan, PROFILES);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const { sections } = cardOf(made.design, plan, []);
  const ids = sections.map((s) => s.id);
  expect(ids.indexOf('prepare')).toBe(0);
  expect(ids.indexOf('sew')).toBeGreaterThan(ids.indexOf('marks'));
  return sections.find((s) => s.id === 'sew')!.blocks.map((b) => (b.kind === 'table' ? '' : b.text));
};

const STRIP = 'layout: { strip: { length: 36, width: 6, margin: 1/4 } }\n';

test('the quilt is held together before it is marked, and the marker is tried', () => {
  const plan = planOf(STRIP);
  const made = designFromPlan(plan, PROFILES);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const [first] = cardOf(made.design, plan, []).sections;
  expect(first!.blocks.map((b) => (b.kind === 'table' ? '' : b.text))).toEqual([
    'Press and baste the quilt, and stitch in the ditch along the seams first, so that nothing shifts.',
    'Mark with what comes out again: try it on a scrap of these fabrics, and take it out.',
  ]);
});

test('the middle swag of a strip comes first, and what touches goes on', () => {
  const [order, ...others] = said(`${STRIP}swag: { repeats: 4, gap: 0 }\n`);
  expect(order).toBe(
    'Begin with the swag in the middle, or the one just past it, and sew on to the end, straight from each swag into the next, since they touch. Then sew those before it one by one, the nearest first: each begins at its own start mark, and is fastened off at its stop mark, where the next one is sewn.',
  );
  expect(others).toEqual([
    'Bring the bobbin thread up where a line begins, and fasten it with a few tiny stitches; do the same where it ends, and bury the tails.',
  ]);
});

test('at a gap the thread is fastened off', () => {
  const [order] = said(`${STRIP}swag: { repeats: 3, gap: 1 }\n`);
  expect(order).toBe(
    'Begin with the swag in the middle, or the one just past it, and sew on to the end, swag after swag, fastening off at each stop mark, since neighbours do not touch. Then sew those before it one by one, the nearest first.',
  );
});

test('on a border each side begins in its middle, and what follows the swags is what the plan has', () => {
  const border = 'layout: { border: { width: 6, inner: 60, margin: 1/2, corners: turn } }\n';
  const [order, corners, then] = said(
    `${border}channels: { outward: [1/4] }\nfills: { background: { kind: crosshatch, spacing: 1 } }\n`,
  );
  expect(order).toMatch(/^On each side begin with the swag in the middle/);
  expect(corners).toBe('The swags over the corners come last, each from its start mark to its stop mark.');
  expect(then).toBe('First all swags, then the channels, then the fills.');
  expect(said(border.replace('turn', 'open')).join(' ')).not.toMatch(/corners|channels|fills/);
});

test('a frame has no end to begin at', () => {
  const [wreath] = said('layout: { frame: { count: 8, around: 10, clearance: 1/2 } }\nswag: { gap: 0 }\n');
  expect(wreath).toBe(
    'Begin at any start mark, and sew round the motif, straight from each swag into the next, since they touch.',
  );
  const [square] = said(
    'layout: { frame: { block: { width: 14, height: 12 }, clearance: 1/2, within: 20, corners: open } }\n',
  );
  expect(square).toMatch(/^Begin at any start mark, and sew round the block, /);
});

test('of two rows the first is sewn first', () => {
  const one = 'layout: { strip: { length: 60, width: 9, margin: 1/4 } }\n';
  expect(said(`${one}rows: [{ at: 1 }]\n`)).toContain('Row 1 is sewn first, then row 2.');
  expect(said(one).join(' ')).not.toContain('Row');
});
