/** What is printed without being saved: the browser's own print dialog is asked for, of the very pages that are told of. */

import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { rawPages } from '../../output/pdf/read-back.ts';
import { violations } from './axe.ts';
import { BUILT, forAllTests, settled, visit } from './harness.ts';

const ours = forAllTests();

/** How often the dialog was asked for, in whatever frame. A dialog itself would wait for a hand. */
const countPrints = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const { get } = Object.getOwnPropertyDescriptor(HTMLIFrameElement.prototype, 'contentWindow')!;
    Object.defineProperty(HTMLIFrameElement.prototype, 'contentWindow', {
      get(this: HTMLIFrameElement) {
        const real = get!.call(this) as Window;
        // Throws where the page may not reach into the frame, as it does without this.
        const own = real.print;
        return {
          focus: () => real.focus(),
          print: () => {
            if (typeof own === 'function')
              Object.assign(window, { printed: (Number(Reflect.get(window, 'printed')) || 0) + 1 });
          },
        };
      },
    });
  });

const printed = (page: Page): Promise<number> =>
  page.evaluate(() => Number(Reflect.get(window, 'printed')) || 0);

const said = async (page: Page, words: RegExp): Promise<string> => {
  const notice = page.locator('#paper .notice').filter({ hasText: words });
  await notice.waitFor({ timeout: 100_000 });
  return (await notice.textContent())!;
};

describe('a served page', () => {
  test('prints the sheets without saving them, and says at what size', async () => {
    const { context, page, faults } = await visit(ours.browser(), ours.url(), { bypassCSP: false });
    await countPrints(page);
    await page.reload();
    await settled(page);
    let saved = 0;
    page.on('download', () => saved++);
    const button = page.getByRole('button', { name: 'Print the card' });
    expect(await button.textContent()).toBe('Print');
    await button.click();
    const words = await said(page, /print dialog/);
    expect(words).toMatch(
      /^The print dialog has my-border-card\.pdf: the marking card, \d+ pages? of Letter, portrait\. Choose “actual size” or 100 % there, and measure the check square/,
    );
    expect(await printed(page)).toBe(1);
    expect(saved).toBe(0);
    // Nobody sees the frame, and no key or screen reader comes to it.
    const frame = page.locator('iframe.printed');
    const box = (await frame.boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(0);
    expect(await frame.getAttribute('tabindex')).toBe('-1');
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Print the sheets' }).click();
    await said(page, /my-border-mockup\.pdf/);
    expect(await printed(page)).toBe(2);
    expect(await frame.count()).toBe(1);
    expect(faults).toEqual([]);
    await context.close();
  });

  test('what cannot be printed is told as for a file, and opens no dialog', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    await page.getByLabel('2 in square measures, along the paper’s short edge').fill('9');
    await page.getByRole('button', { name: 'Print the sheets' }).click();
    expect(await said(page, /not a length near/)).toMatch(/2 in/);
    expect(await page.locator('iframe.printed').count()).toBe(0);
    await context.close();
  });

  test('where no viewer prints from a frame the pages are in a window of their own', async () => {
    const { context, page, faults } = await ours.visit();
    await context.addInitScript(() => {
      Object.defineProperty(navigator, 'pdfViewerEnabled', { get: () => false });
    });
    await page.reload();
    await settled(page);
    const coming = context.waitForEvent('page', { timeout: 60_000 });
    await page.getByRole('button', { name: 'Print the card' }).click();
    const own = await coming;
    expect(await said(page, /window of its own/)).toContain('Choose “actual size” or 100 % there');
    await expect.poll(() => own.url(), { timeout: 30_000 }).toMatch(/^blob:/);
    // Where windows are refused the file is saved, and she is told.
    await page.evaluate(() => Object.assign(window, { open: () => null }));
    const download = page.waitForEvent('download', { timeout: 60_000 });
    await page.getByRole('button', { name: 'Print the card' }).click();
    expect((await download).suggestedFilename()).toBe('my-border-card.pdf');
    expect(await said(page, /prints nothing from here/)).toContain('to open and print at 100 %');
    expect(faults).toEqual([]);
    await context.close();
  });
});

test('a page from a disk shows the pages in a window of their own', async () => {
  const { context, page, faults } = await visit(ours.browser(), `file://${BUILT}/index.html`);
  await settled(page);
  const coming = context.waitForEvent('page', { timeout: 60_000 });
  await page.getByRole('button', { name: 'Print the card' }).click();
  const own = await coming;
  await said(page, /window of its own/);
  await expect.poll(() => own.url(), { timeout: 30_000 }).toMatch(/^blob:/);
  expect(faults).toEqual([]);
  await context.close();
});

test('how much paper each button takes is told before it is pressed, and is what it takes', async () => {
  const { context, page, faults } = await ours.visit({ acceptDownloads: true });
  await settled(page);
  await page.locator('#paper').scrollIntoViewIfNeeded();
  const about = (name: string) =>
    page
      .locator('#paper .prints li')
      .filter({ has: page.getByRole('button', { name, exact: true }) })
      .locator('.about');
  for (const name of [
    'Marking card',
    'Fills to choose from',
    'Empty swags',
    'What fits, in pictures',
    'Outline of Baluster',
  ]) {
    const TOLD = /^(\d+) pages? of Letter/;
    await expect.poll(() => about(name).textContent(), { timeout: 60_000 }).toMatch(TOLD);
    const count = Number(TOLD.exec((await about(name).textContent())!)![1]);
    const coming = page.waitForEvent('download', { timeout: 100_000 });
    await page.getByRole('button', { name, exact: true }).click();
    const bytes = new Uint8Array(readFileSync(await (await coming).path()));
    expect((await rawPages(bytes)).length, name).toBe(count);
  }
  expect(await about('Sheet for photographs').textContent()).toBe('one sheet');
  expect(await about('True-size sheets').textContent()).toMatch(/\d+ sheets of Letter/);
  expect(faults).toEqual([]);
  await context.close();
});
