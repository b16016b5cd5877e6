/** The page in another language: built with a made-up one, whatever it says of itself comes from there. */

import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type PageServer, servePageAt } from '../../../src/cli/page-server.ts';
import * as english from '../../../src/page/words/english/index.ts';
import { PAPER_IDS } from '../../../src/pagination/index.ts';
import { bracketed, outsideBrackets } from '../bracketed.ts';
import { bracket, give } from './bracket.ts';
import { idle, launch, settled, visit } from './harness.ts';

const ROOT = join(import.meta.dirname, '../../..');

let folder: string | undefined;
let browser: Browser | undefined;
let server: PageServer | undefined;

/** A language's file, as one who translates would write it. */
const madeUp = (): string =>
  [
    `import { bracketed } from '${join(ROOT, 'tests/page/bracketed.ts')}';`,
    `import * as english from '${join(ROOT, 'src/page/words/english/index.ts')}';`,
    ...Object.keys(english).map((name) => `export const ${name} = bracketed(english.${name});`),
  ].join('\n');

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'language-'));
  const [page, language] = [join(folder, 'page'), join(folder, 'made-up.ts')];
  writeFileSync(language, madeUp());
  execFileSync(process.execPath, [join(ROOT, 'scripts/build-page.mjs'), page, language], { stdio: 'ignore' });
  [browser, server] = await Promise.all([launch(), servePageAt(page, 0)]);
}, 300_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
  if (folder) rmSync(folder, { recursive: true });
});

/** Where terminal and page say the same, where something stands that is hers, and what is called alike everywhere. */
const OF_OTHERS = [
  // The name of the program, and of templates and designs.
  ...['h1', '.shelf .name', '#paper .outlines button', '.kept-designs input', '.beside-one-another h4'],
  // Fits and designs in words, marks and settings, and what is written in pictures.
  ...[
    '.sides li',
    '.verdict .hint',
    '.caption',
    '.edge-choice p strong',
    '.card-words',
    '.lettering',
    '.class .table',
    '#trace [role=status] li',
  ],
  // A file's name, until she calls it something.
  '#trace input[maxlength="80"]',
  // How many sheets there are, and why a class is none.
  ...['.prints .about', '.class .troubles'],
  // Fills and papers by their names.
  '#quilting option',
  ...PAPER_IDS.map((id) => `#paper option[value="${id}"]`),
  // Units stand after figures, and in examples of them.
  ...['.unit', 'input.length'],
];

/** Every text and every name of a thing that has letters outside the brackets, with its place. */
const unbracketed = async (page: Page): Promise<readonly string[]> => {
  const texts = await page.evaluate((others) => {
    const found: (readonly [string, string])[] = [];
    const isOthers = (element: Element | null): boolean => element?.closest(others) != null;
    const place = (element: Element | null): string =>
      `${element?.closest('[id]')?.id} ${element?.tagName.toLowerCase()} ${element?.getAttribute('class') ?? ''}`;
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) {
      const { parentElement, data } = walk.currentNode as Text;
      if (!isOthers(parentElement) && !parentElement?.closest('script, style, textarea'))
        found.push([place(parentElement), data]);
    }
    for (const element of document.body.querySelectorAll('*'))
      for (const name of ['aria-label', 'aria-valuetext', 'title', 'placeholder', 'alt'])
        if (!isOthers(element)) found.push([`${place(element)} ${name}`, element.getAttribute(name) ?? '']);
    return found;
  }, OF_OTHERS.join());
  return texts
    .filter(([, text]) => /\p{L}/u.test(outsideBrackets(text)))
    .map(([place, text]) => `${place}: ${text}`);
};

const unfoldAll = async (page: Page): Promise<void> => {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
  await idle(page);
};

const said = bracketed({ ...english });

const press = async (page: Page, name: string, within = 'body'): Promise<void> => {
  await page.locator(within).getByRole('button', { name, exact: true }).first().click();
  await idle(page);
};

const expectBracketed = async (page: Page, where: string): Promise<void> => {
  expect(await unbracketed(page), where).toEqual([]);
};

test('whatever the page says of itself is said in the language that it is built with', async () => {
  const { page, context, faults } = await visit(browser!, server!.url);
  await settled(page);
  await unfoldAll(page);
  await expectBracketed(page, 'at first');

  // A wish, a figure that cannot be read, and each kind of layout.
  await page.locator('#wishes select').first().selectOption('about');
  await page.locator('#wishes select').nth(3).selectOption('least');
  await idle(page);
  await expectBracketed(page, 'with wishes');
  await page.getByLabel(said.measureWords.side({ side: 'top' })).fill('sixty');
  await page.getByLabel(said.measureWords.side({ side: 'top' })).blur();
  await idle(page);
  expect(await page.locator('.verdict').textContent()).toContain('sixty');
  await page.getByLabel(said.measureWords.side({ side: 'top' })).fill('60');
  await idle(page);
  for (const kind of ['strip', 'frame', 'block', 'border']) {
    await page.locator('#measure .panel-head select').selectOption(kind);
    await idle(page);
    await unfoldAll(page);
    await expectBracketed(page, kind);
  }

  await press(page, said.templatesWords.points);
  await page.locator('#points textarea').fill('0, 0\n1, 1/2\n2, 3/4\n3, 3/4\n4, 1/2\n5, 0');
  await idle(page);
  for (const add of [said.handWords.addBreak, said.handWords.across.add, said.handWords.along.add])
    await press(page, add, '#points');
  await expectBracketed(page, 'points');
  await press(page, said.handWords.toShelf, '#points');
  await unfoldAll(page);
  await expectBracketed(page, 'a template of hers');

  await give(page, 'bracket.png', bracket());
  await page.locator('#trace').waitFor({ timeout: 60_000 });
  await idle(page);
  await press(page, said.traceWords.mend.begin);
  await press(page, said.traceWords.mend.add);
  await expectBracketed(page, 'a picture');
  await press(page, said.traceWords.putAway);

  await press(page, said.headWords.keepDesign);
  await press(page, said.designsWords.copyOf({ title: said.planWords.title }));
  for (const box of await page.locator('.pin input').all()) await box.check();
  await expectBracketed(page, 'designs');
  await press(page, said.sheetsWords.class);
  await page.locator('.class textarea').fill('name,length,width\nAda,36,5\nBerit,abc,');
  await idle(page);
  await idle(page);
  await expectBracketed(page, 'a class');
  await press(page, said.sheetsWords.trueSize);
  await expectBracketed(page, 'true size');
  await press(page, said.glassWords.matches);
  await expectBracketed(page, 'true size, once the screen is measured');
  expect(faults).toEqual([]);
  await context.close();
});
