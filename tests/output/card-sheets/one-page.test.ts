/** How many pages a card takes, and that one page leaves nothing out, lets nothing run together, and keeps its figures large. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { cardSheets } from '../../../src/jobs/card-sheets.ts';
import { readPlan } from '../../../src/plan/index.ts';
import { designFromPlan } from '../../../src/swag/index.ts';
import { PROFILES, profile } from '../../swag/fit-helpers.ts';
import { deflate, FONTS, openPages, readTexts, type Written } from '../pdf/read-back.ts';
import { printedCard } from './printed.ts';

const SAMPLES = join(import.meta.dirname, '../../../samples');

const pagesOf = async (name: string): Promise<readonly number[]> => {
  const reading = readPlan(readFileSync(join(SAMPLES, `${name}.yaml`), 'utf8'), name);
  if (!reading.ok) throw new Error(`${name} is read`);
  const pages: number[] = [];
  for (const { plan } of reading.parts) {
    const templates = plan.templates.map((t) => PROFILES.find(({ title }) => title.toLowerCase() === t)!);
    const made = designFromPlan(plan, templates);
    if (!made.ok) throw new Error(`${name} is made`);
    const part = { name: undefined, plan, templates, design: made.design, placed: <T>(p: T): T => p };
    const means = { deflate, fonts: async () => FONTS };
    const { bytes } = await cardSheets('Card', [part], { paper: 'letter', orientation: 'portrait' }, means);
    pages.push((await openPages(bytes)).numPages);
  }
  return pages;
};

test.each([
  ['guild-strip', [1]],
  ['raffle-border', [2]],
  ['wreath-frame', [2]],
  ['medallion-frame', [2]],
  ['lathe-street-quilt', [2, 2, 2, 2]],
])('the card of %s, and of each of its parts, takes no more than its marks need', async (name, most) => {
  const pages = await pagesOf(name);
  expect(pages).toHaveLength(most.length);
  pages.forEach((count, i) => {
    expect(count).toBeLessThanOrEqual(most[i]!);
  });
});

/** At 40 pixels an inch a capital of the smallest is as high as four pixels: 0.73 of its size (DejaVu Sans). */
const READ_FROM_AFAR = (4 / 40 / 0.73) * 25.4;

const STRIP = 'layout: { strip: { length: 36, width: 5, margin: 1/4 } }\nswag: { repeats: 3 }';

/** Letters reach from a fifth of their size below the base line to four fifths above it. */
const overlap = (a: Written, b: Written): boolean =>
  Math.min(a.to.x, b.to.x) - Math.max(a.from.x, b.from.x) > 0.3 &&
  Math.min(a.from.y + 0.7 * a.size, b.from.y + 0.7 * b.size) - Math.max(a.from.y, b.from.y) > 0.3;

test.each([
  ['round figures', STRIP, 1],
  ['figures to a sixteenth', STRIP.replace('36', '30 1/8'), 1],
  ['a swag so shallow that its figure would be too small beside the marks', STRIP.replace('36', '42 1/8'), 2],
  ['more swags than have room beside the figure', STRIP.replace('36', '120').replace('3 }', '12 }'), 2],
])('a strip, %s', async (_, plan, pages) => {
  const { doc } = await printedCard(plan, [profile('baluster')]);
  expect(doc.numPages).toBe(pages);
  if (pages > 1) return;
  const texts = await readTexts(await doc.getPage(1));
  const pairs = texts.flatMap((a, i) =>
    texts
      .slice(i + 1)
      .filter((b) => overlap(a, b))
      .map((b) => [a.text, b.text]),
  );
  expect(pairs).toEqual([]);
  // The marks stand beside the figure, as large as its measures.
  const head = (text: string): Written => texts.find((t) => t.text.trim() === text)!;
  expect(head('Marks').from.y).toBeGreaterThan(head('Set the template').from.y);
  expect(head('Marks').from.x).toBeGreaterThan(head('start mark').to.x);
  const [top, left] = [head('swag').from.y, head('Marks').from.x];
  const figures = texts.filter(
    ({ from }) => from.y < top - 1 && from.y > head('Set the template').from.y && from.x > left,
  );
  expect(figures).toHaveLength(12);
  for (const { size, text } of figures) expect(size, text).toBeGreaterThanOrEqual(READ_FROM_AFAR);
  const measures = texts.filter(({ text }) => / (past|before|up)$/.test(text.trim()) && text.length < 20);
  expect(measures.length).toBeGreaterThanOrEqual(5);
  for (const { size, text } of measures) expect(size, text).toBeGreaterThanOrEqual(3.4 - 0.001);
});
