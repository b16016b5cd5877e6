/** From tape measure to sheets, by keyboard alone; and what stays when the page or the network goes. */

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Download, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PageServer } from '../../../src/cli/page-server.ts';
import { emptyFolder, run } from '../../cli/run.ts';
import { rawPages } from '../../output/pdf/read-back.ts';
import { focused, idle, launch, ownFiles, serve, settled, tabTo, visit } from './harness.ts';

let browser: Browser;
let server: PageServer;

beforeAll(async () => {
  browser = await launch();
  server = await serve();
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const bytesOf = async (download: Download): Promise<Uint8Array> =>
  new Uint8Array(readFileSync(await download.path()));

const byEnter = async (page: Page, name: string): Promise<Download> => {
  await tabTo(page, name);
  const coming = page.waitForEvent('download', { timeout: 100_000 });
  await page.keyboard.press('Enter');
  return coming;
};

const typeInto = async (page: Page, label: string, text: string): Promise<void> => {
  await tabTo(page, label);
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
};

/** The page's sheets and the command's, from the plan that the page saves, hold the same. */
const expectSameAsCommand = async (planText: string, argv: readonly string[], ofPage: Uint8Array) => {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'plan.yaml'), planText);
  const ran = await run(folder, [argv[0]!, 'plan.yaml', '-o', 'out.pdf', ...argv.slice(1)]);
  expect(ran.code, ran.err).toBe(0);
  const theirs = await rawPages(new Uint8Array(readFileSync(join(folder, 'out.pdf'))));
  const ours = await rawPages(ofPage);
  expect(ours.length).toBe(theirs.length);
  expect(ours.length).toBeGreaterThan(1);
  ours.forEach((page, i) => {
    expect(page.mediaBox).toEqual(theirs[i]!.mediaBox);
    expect(page.content).toBe(theirs[i]!.content);
    expect(page.forms).toEqual(theirs[i]!.forms);
  });
};

describe('the whole way by keyboard', () => {
  test('from four unequal sides to the sheets, the same as the command prints', async () => {
    const { context, page, asked, faults } = await visit(browser, server.url, { acceptDownloads: true });
    await settled(page);
    await typeInto(page, 'Top side', '50 3/8');
    // The order on the screen: top, left and right, then bottom.
    await typeInto(page, 'Right side', '64 1/4');
    await typeInto(page, 'Bottom side', '50 1/2');
    await typeInto(page, 'Left side', '64');
    await typeInto(page, 'Border width', '7');
    await idle(page);
    await expect
      .poll(() => page.locator('.verdict').textContent(), { timeout: 30_000 })
      .toMatch(/top: \d+ swags of/);
    // The second of the fits, by its radio button.
    await tabTo(page, /^1: /);
    await page.keyboard.press('ArrowDown');
    expect(await focused(page)).toMatch(/^2: /);
    await idle(page);
    expect(await page.locator('.fit input').nth(1).isChecked()).toBe(true);
    await page.keyboard.press('ArrowUp');
    await idle(page);
    // A narrower or wider count by the handle of the span.
    await tabTo(page, 'Span of the swag');
    const slider = page.getByRole('slider', { name: 'Span of the swag' });
    const before = await slider.getAttribute('aria-valuetext');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => slider.getAttribute('aria-valuetext')).not.toBe(before);
    await idle(page);
    const sheets = await byEnter(page, 'True-size sheets');
    expect(sheets.suggestedFilename()).toBe('my-border-mockup.pdf');
    const pdf = await bytesOf(sheets);
    const saved = await byEnter(page, 'Save plan');
    const plan = Buffer.from(await bytesOf(saved)).toString();
    expect(plan).toContain('top: 50 3/8');
    expect(plan).toContain('repeats:');
    await expectSameAsCommand(plan, ['mockup'], pdf);
    const card = await byEnter(page, 'Marking card');
    await expectSameAsCommand(plan, ['card'], await bytesOf(card));
    expect(faults).toEqual([]);
    const own = new Set(['', ...ownFiles()].map((name) => server.url + name));
    expect(asked.filter((url) => !own.has(url) && !url.startsWith('blob:'))).toEqual([]);
    await context.close();
  });

  test('the correction of a measured print is the command’s', async () => {
    const { context, page } = await visit(browser, server.url, { acceptDownloads: true });
    await settled(page);
    await typeInto(page, '2 in square measures, across', '1.98');
    const sheets = await byEnter(page, 'True-size sheets');
    const pdf = await bytesOf(sheets);
    const plan = await page.evaluate(
      () => JSON.parse(localStorage.getItem('swagwright.plan')!).plan as string,
    );
    await expectSameAsCommand(plan, ['mockup', '--measured', '1.98,2'], pdf);
    await context.close();
  });
});

describe('nothing is lost', () => {
  test('a reload keeps the plan, and undo and redo go through the changes', async () => {
    const { context, page } = await visit(browser, server.url);
    await settled(page);
    const width = page.getByLabel('Border width');
    await width.fill('8');
    await page.getByLabel('Foot clearance').focus();
    await idle(page);
    await page.reload();
    await settled(page);
    expect(await width.inputValue()).toBe('8');
    await width.fill('9 1/2');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await width.inputValue()).toBe('8');
    await page.keyboard.press('Control+Shift+Z');
    await expect.poll(() => width.inputValue()).toBe('9 1/2');
    await page.keyboard.press('Control+z');
    await expect.poll(() => width.inputValue()).toBe('8');
    await context.close();
  });

  test('it opens, fits and prints with the server gone', async () => {
    const own = await serve();
    const { context, page, faults } = await visit(browser, own.url, { acceptDownloads: true });
    await settled(page);
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    // All files are kept before the worker takes over.
    await expect
      .poll(() => page.evaluate(() => navigator.serviceWorker.controller?.state), { timeout: 60_000 })
      .toBe('activated');
    await own.close();
    await page.reload();
    await settled(page);
    const coming = page.waitForEvent('download', { timeout: 100_000 });
    await page.getByRole('button', { name: 'True-size sheets' }).click();
    expect((await rawPages(await bytesOf(await coming))).length).toBeGreaterThan(1);
    expect(faults).toEqual([]);
    await context.close();
  });

  test('from a folder on disk it fits and prints too', async () => {
    const { context, page, asked, faults } = await visit(
      browser,
      new URL('../../../dist/page/index.html', import.meta.url).href,
      { acceptDownloads: true },
    );
    await settled(page);
    const coming = page.waitForEvent('download', { timeout: 100_000 });
    await page.getByRole('button', { name: 'Marking card' }).click();
    expect((await rawPages(await bytesOf(await coming))).length).toBeGreaterThan(0);
    expect(faults).toEqual([]);
    expect(asked.filter((url) => !/^(file|blob|data):/.test(url))).toEqual([]);
    await context.close();
  });
});
