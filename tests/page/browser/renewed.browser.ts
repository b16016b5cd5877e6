/** Where the page comes from: its service worker without a connection, a new version of it, and none on this computer. */

import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { rawPages } from '../../output/pdf/read-back.ts';
import { BUILT, forAllTests, idle, settled, told, visit } from './harness.ts';
import { type Host, host, kept } from './reached.ts';

const ours = forAllTests();

/** What the page says at first that a newer one says otherwise. */
const [OF_NOW, OF_LATER] = ['Keep design', 'Keep as of later'];
const VERSION = /swagwright_version="(\w+)"/.exec(readFileSync(join(BUILT, 'shared.js'), 'utf8'))![1]!;
const NEXT = VERSION.replace(/./g, (digit) => (digit === 'f' ? '0' : 'f'));

let folder: string | undefined;
let later = '';

/** The page of a version to come: the same, with another word in it. */
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'renewed-'));
  later = join(folder, 'page');
  cpSync(BUILT, later, { recursive: true });
  for (const name of readdirSync(later).filter(
    (n) => /\.(js|css|html)$/.test(n) && n !== 'swagwright.html',
  )) {
    const path = join(later, name);
    writeFileSync(path, readFileSync(path, 'utf8').replaceAll(VERSION, NEXT).replaceAll(OF_NOW!, OF_LATER!));
  }
});
afterAll(() => {
  if (folder) rmSync(folder, { recursive: true });
});

const hosts: Host[] = [];
afterAll(async () => {
  for (const one of hosts) await one.close();
});
const hosted = async (): Promise<Host> => {
  const one = await host(BUILT);
  hosts.push(one);
  return one;
};

const keep = (page: Page, name = OF_NOW) => page.getByRole('button', { name, exact: true });
const title = (page: Page) => page.getByLabel('What this plan is called');
const designs = (page: Page): Promise<string[]> =>
  page
    .locator('.kept-designs input[type=text], .kept-designs input:not([type])')
    .evaluateAll((fields) => fields.map((f) => (f as HTMLInputElement).value));

describe('at an address that others reach', () => {
  test('it opens with a host that does not answer, and fits and prints without a connection', async () => {
    const own = await hosted();
    const { page, faults } = await visit(own.browser, own.url, { acceptDownloads: true });
    await settled(page);
    await kept(page);
    own.isDumb = true;
    await page.reload();
    await settled(page);
    await own.stop();
    await page.reload();
    await settled(page);
    const coming = page.waitForEvent('download', { timeout: 100_000 });
    await page.getByRole('button', { name: 'True-size sheets' }).click();
    const bytes = new Uint8Array(readFileSync(await (await coming).path()));
    expect((await rawPages(bytes)).length).toBeGreaterThan(1);
    // Chromium writes down what it asked for and did not get.
    expect(faults.filter((fault) => !/ERR_(CONNECTION_REFUSED|FAILED|ABORTED)/.test(fault))).toEqual([]);
  });

  test('a new version takes its place at the next visit, with her plan and her designs', async () => {
    const own = await hosted();
    const { page, context, faults } = await visit(own.browser, own.url);
    await settled(page);
    await kept(page);
    await title(page).fill('For the raffle');
    await idle(page);
    await keep(page).click();
    await told(page, /For the raffle/);
    await idle(page);
    own.folder = later;
    await page.close();
    const next = await context.newPage();
    await next.goto(own.url);
    await settled(next);
    expect(await keep(next, OF_LATER).count()).toBe(1);
    expect(await title(next).inputValue()).toBe('For the raffle');
    await expect.poll(() => designs(next), { timeout: 30_000 }).toEqual(['For the raffle']);
    // Its own worker keeps it, and nothing of the one before.
    const stores = () => next.evaluate(async () => (await caches.keys()).map((name) => name.split(' ')[1]));
    await expect.poll(stores, { timeout: 60_000 }).toEqual([NEXT]);
    await own.stop();
    await next.reload();
    await settled(next);
    expect(await keep(next, OF_LATER).count()).toBe(1);
    expect(faults.filter((fault) => !fault.includes('ERR_CONNECTION_REFUSED'))).toEqual([]);
  });

  test.each([['shared.js', 'thorough.js', 'trace.js'], ['thorough.js'], ['page.css'], ['index.html']])(
    'a host that is visited while %s is still old is kept whole once it is not',
    async (...late) => {
      const own = await hosted();
      const { page, context } = await visit(own.browser, own.url);
      await settled(page);
      await kept(page);
      await title(page).fill('For the raffle');
      await idle(page);
      const stores = () => page.evaluate(async () => (await caches.keys()).map((name) => name.split(' ')[1]));
      own.late = late;
      own.folder = later;
      await page.reload();
      // The new worker has had its time, and keeps nothing of it.
      await page.evaluate(async () => {
        const registration = await navigator.serviceWorker.getRegistration();
        await registration?.update().catch(() => {});
      });
      await page.waitForTimeout(3000);
      expect(await stores()).toEqual([VERSION]);
      own.late = [];
      await page.reload();
      await settled(page);
      expect(await keep(page, OF_LATER).count()).toBe(1);
      expect(await title(page).inputValue()).toBe('For the raffle');
      await expect.poll(stores, { timeout: 60_000 }).toEqual([NEXT]);
      await own.stop();
      await page.reload();
      await settled(page);
      await keep(page, OF_LATER).click();
      await told(page, /is kept/);
      await context.close();
    },
  );

  test('a window of the version before goes on with parts of its own version', async () => {
    const own = await hosted();
    const { page, context, faults } = await visit(own.browser, own.url);
    await settled(page);
    await kept(page);
    own.folder = later;
    const next = await context.newPage();
    await next.goto(own.url);
    await settled(next);
    expect(await keep(next, OF_LATER).count()).toBe(1);
    const stores = () => next.evaluate(async () => (await caches.keys()).length);
    await expect.poll(stores, { timeout: 60_000 }).toBe(2);
    await keep(page).click();
    await told(page, /is kept/);
    expect(faults).toEqual([]);
  });

  test('no part of another version is taken, and she is told to load the page anew', async () => {
    const own = await hosted();
    const { page } = await visit(own.browser, own.url, { serviceWorkers: 'block' });
    await settled(page);
    await title(page).fill('For the raffle');
    await idle(page);
    own.folder = later;
    await keep(page).click();
    await told(page, /could not be loaded.*Reload the page/);
    expect(await page.locator('#designs').count()).toBe(0);
    await page.getByRole('button', { name: 'True-size sheets' }).click();
    await told(page, /could not be loaded.*Reload the page/);
    await page.reload();
    await settled(page);
    expect(await title(page).inputValue()).toBe('For the raffle');
    await keep(page, OF_LATER).click();
    await told(page, /is kept/);
  });
});

test('where the fonts do not come, each button that needs them says so, and goes on once they do', async () => {
  const { page, context } = await ours.visit({ acceptDownloads: true });
  await settled(page);
  await context.route('**/fonts.js*', (route) => route.fulfill({ status: 500 }));
  for (const name of ['True-size sheets', 'Marking card', 'Picture (PNG)']) {
    await page.getByRole('button', { name, exact: true }).first().click();
    await told(page, /could not be loaded.*Reload the page/);
    await page.getByRole('button', { name: 'Dismiss' }).first().click();
  }
  await context.unroute('**/fonts.js*');
  const coming = page.waitForEvent('download', { timeout: 100_000 });
  await page.getByRole('button', { name: 'Marking card' }).click();
  await coming;
  await context.close();
});

test('on this computer’s own address there is no service worker, and one that was left there goes', async () => {
  const { page, context, faults } = await ours.visit();
  await settled(page);
  const there = () =>
    page.evaluate(async () => [
      (await navigator.serviceWorker.getRegistrations()).length,
      (await caches.keys()).length,
    ]);
  expect(await there()).toEqual([0, 0]);
  // As a page of before does.
  await page.evaluate(async () => {
    await caches.open(`swagwright of-before ${location.origin}/`);
    await navigator.serviceWorker.register('service-worker.js');
  });
  await expect.poll(there, { timeout: 30_000 }).toEqual([0, 0]);
  await page.reload();
  await settled(page);
  expect(await there()).toEqual([0, 0]);
  expect(faults).toEqual([]);
  await context.close();
});
