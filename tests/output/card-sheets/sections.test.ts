/** What is looked up once stands in columns, and a section goes on in the next only where the page has no room for it whole. Read from the PDF. */

import { expect, test } from 'vitest';
import { cardSheets } from '../../../src/jobs/card-sheets.ts';
import { designFromPlan } from '../../../src/swag/index.ts';
import { PROFILES, planOf } from '../../swag/fit-helpers.ts';
import { deflate, FONTS, openPages, readTexts } from '../pdf/read-back.ts';

const MEANS = { deflate, fonts: async () => FONTS };
/** mm: a list’s text stands in from its heading, and the next column is farther off than this. */
const INDENT = 12;

/** The first words of a section and of its last line. */
const SECTIONS: readonly (readonly [heading: string, last: RegExp])[] = [
  ['Take care', /^Printer ink can come/],
  ['Stitching and thread', /Unpick a measured length|^For a lockstitch/],
];

test.each([
  'strip: { length: 36, width: 5, margin: 1/4 }',
  'border: { width: 6, inner: 60, margin: 1/2, corners: turn }',
])('%s', async (layout) => {
  const plan = planOf(`layout: { ${layout} }`);
  const made = designFromPlan(plan, PROFILES);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const part = { name: undefined, plan, templates: PROFILES, design: made.design, placed: <T>(p: T): T => p };
  const { bytes } = await cardSheets('Card', [part], { paper: 'letter', orientation: 'portrait' }, MEANS);
  const doc = await openPages(bytes);
  let seen = 0;
  for (let number = 1; number <= doc.numPages; number++) {
    const texts = await readTexts(await doc.getPage(number));
    for (const [heading, last] of SECTIONS) {
      const head = texts.find(({ text }) => text.trim() === heading);
      const end = texts.find(({ text }) => last.test(text.trim()));
      if (!head || !end) continue;
      expect(Math.abs(end.from.x - head.from.x), heading).toBeLessThan(INDENT);
      seen++;
    }
  }
  expect(seen).toBe(2);
});
