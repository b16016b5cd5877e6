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

test('the middle swag of a strip comes first, and there is no more to sew than it says', () => {
  const [order] = said(STRIP);
  expect(order).toBe(
    'Begin with the swag in the middle, and sew on from it to the end; then sew those before it, one by one, back to the tape’s 0.',
  );
});

test('on a border each side begins in its middle, and what follows the swags is what the plan has', () => {
  const border = 'layout: { border: { width: 6, inner: 60, margin: 1/2, corners: turn } }\n';
  const [order] = said(
    `${border}channels: { outward: [1/4] }\nfills: { background: { kind: crosshatch, spacing: 1 } }\n`,
  );
  expect(order).toMatch(/^On each side begin with the swag in the middle/);
  expect(order).toMatch(
    /The swags over the corners come last\. First all swags, then the channels, then the fills\.$/,
  );
  const [bare] = said(border.replace('turn', 'open'));
  expect(bare).not.toMatch(/corners|channels|fills/);
});

test('a frame has no end to begin at', () => {
  const [wreath] = said('layout: { frame: { count: 8, around: 10, clearance: 1/2 } }\n');
  expect(wreath).toBe('Begin at any start mark, and sew round the motif.');
  const [square] = said(
    'layout: { frame: { block: { width: 14, height: 12 }, clearance: 1/2, within: 20, corners: open } }\n',
  );
  expect(square).toBe('Begin at any start mark, and sew round the block.');
});

test('where swags touch the thread goes on, and at a gap it is fastened off', () => {
  const touching = said(`${STRIP}swag: { repeats: 3, gap: 0 }\n`);
  expect(touching[1]).toBe('Where two swags touch, sew straight on into the next.');
  const apart = said(`${STRIP}swag: { repeats: 3, gap: 1 }\n`);
  expect(apart[1]).toBe(
    'Neighbours do not touch: fasten off at each stop mark, and begin anew at the next start mark.',
  );
});

test('of two rows the first is sewn first', () => {
  const one = 'layout: { strip: { length: 60, width: 9, margin: 1/4 } }\n';
  const [order] = said(`${one}rows: [{ at: 1 }]\n`);
  expect(order).toMatch(/ Row 1 is sewn first, then row 2\.$/);
  expect(said(one)[0]).not.toContain('Row');
});
