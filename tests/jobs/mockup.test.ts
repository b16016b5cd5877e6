/** The cover of true-size sheets says what of the design lies on them. Read from the PDF. */

import { expect, test } from 'vitest';
import { mockup } from '../../src/jobs/mockup.ts';
import { quiltMockup } from '../../src/jobs/quilt-mockup.ts';
import { designFromPlan } from '../../src/swag/index.ts';
import { deflate, FONTS, openPages, readTexts } from '../output/pdf/read-back.ts';
import { PROFILES, planOf } from '../swag/fit-helpers.ts';

const partOf = (layout: string) => {
  const plan = planOf(`layout: { ${layout} }`);
  const made = designFromPlan(plan, PROFILES);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return { name: undefined, plan, templates: PROFILES, design: made.design, placed: <T>(p: T): T => p };
};

const STRIP = partOf('strip: { length: 24, width: 5, margin: 1/4 }');
const BORDER = partOf('border: { width: 6, inner: 30, margin: 1/2, corners: turn }');
const LAYOUT = { paper: 'letter' } as const;
const MEANS = { deflate, fonts: async () => FONTS };

const wordsOn = async (bytes: Uint8Array, page: number): Promise<string> =>
  (await readTexts(await (await openPages(bytes)).getPage(page))).map((t) => t.text).join(' ');

test.each([
  ['a strip', STRIP, undefined, 'the whole strip'],
  ['a border', BORDER, undefined, 'the top right corner with a repeat on each side'],
  ['one repeat', BORDER, 'left 1', 'one repeat, left 1'],
])('%s', async (_, part, show, label) => {
  const made = await mockup(part, { show, layout: LAYOUT }, MEANS);
  expect(await wordsOn(made.bytes, 1)).toContain(`Printed here: ${label}.`);
  expect(made.words.startsWith(`${label}, `)).toBe(true);
});

test('each part of a quilt', async () => {
  const { bytes } = await quiltMockup('Quilt', [STRIP, BORDER], { layout: LAYOUT }, MEANS);
  const words = await wordsOn(bytes, 2);
  for (const label of ['the whole strip', 'the top right corner with a repeat on each side'])
    expect(words).toContain(`Printed here: ${label}.`);
});
