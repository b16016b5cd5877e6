/**
 * The built page in Debian's Chromium, served as `swagwright open` serves it. Everything that any page, worker or
 * service worker asks for is written down; a browser that is not there is a failure, and no reason to skip.
 */

import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Locator,
  type Page,
} from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { type PageServer, servePageAt } from '../../../src/cli/page-server.ts';

export const BUILT = join(import.meta.dirname, '../../../dist/page');
export const PICTURES = join(import.meta.dirname, '../../../out/page');

const CHROMIUM = '/usr/bin/chromium';

/** playwright gives every start a user data folder of its own, and removes it. */
const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export const launch = (more: readonly string[] = []): Promise<Browser> =>
  chromium.launch({ executablePath: CHROMIUM, args: [...FLAGS, ...more] });

const serve = (): Promise<PageServer> => servePageAt(BUILT, 0);

export const ownFiles = (): readonly string[] => readdirSync(BUILT);

/** An address without the version that its file has there. */
export const unversioned = (url: string): string => url.replace(/\?\w{16}$/, '');

export interface Visit {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Every address that was asked for. */
  readonly asked: readonly string[];
  /** What went wrong without anyone asking: errors of scripts, refusals of the policy. */
  readonly faults: readonly string[];
}

export const visit = async (
  browser: Browser,
  url: string,
  options: BrowserContextOptions = {},
): Promise<Visit> => {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const asked: string[] = [];
  const faults: string[] = [];
  context.on('request', (request) => asked.push(request.url()));
  context.on('weberror', (error) => faults.push(String(error.error())));
  const page = await context.newPage();
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await page.goto(url);
  return { context, page, asked, faults };
};

/** An address that others reach, as far as the page can tell: what is asked of it comes from the built files. */
export const ADDRESS = 'https://quilts.example/';

/** The page at that address. It keeps no service worker, whose own requests would go to the network. */
export const visitAddress = async (browser: Browser, more = '', options: BrowserContextOptions = {}) => {
  const context = await browser.newContext({ serviceWorkers: 'block', ...options });
  await context.route(`${ADDRESS}**`, (route) => {
    const name = new URL(route.request().url()).pathname.slice(1) || 'index.html';
    const path = join(BUILT, name);
    return existsSync(path) ? route.fulfill({ path }) : route.fulfill({ status: 404 });
  });
  const page = await context.newPage();
  await page.goto(ADDRESS + more);
  return { context, page };
};

/** One browser and one server for all tests of a file, and the page that is served by the one and shown by the other. */
export const forAllTests = () => {
  let browser: Browser | undefined;
  let server: PageServer | undefined;
  beforeAll(async () => {
    [browser, server] = await Promise.all([launch(), serve()]);
  });
  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });
  return {
    /** Once the tests run. */
    browser: (): Browser => browser!,
    url: (): string => server!.url,
    visit: (options?: BrowserContextOptions): Promise<Visit> => visit(browser!, server!.url, options),
  };
};

/** The page has answered everything that it asked itself. */
export const settled = async (page: Page): Promise<void> => {
  await page.locator('.fit').first().waitFor({ timeout: 60_000 });
  await page.locator('svg.board').waitFor({ timeout: 60_000 });
  await idle(page);
};

export const idle = async (page: Page): Promise<void> => {
  await page.waitForFunction(() => !document.querySelector('.working'), undefined, { timeout: 60_000 });
  await page.waitForTimeout(SOON);
  await page.waitForFunction(() => !document.querySelector('.working'), undefined, { timeout: 60_000 });
};

/** Time (ms) for what follows an answer to be asked. */
const SOON = 300;

/** What a screen reader would call what has the focus. */
export const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement as HTMLInputElement | null;
    const label = element?.labels?.[0]?.textContent;
    return (element?.getAttribute('aria-label') ?? label ?? element?.textContent ?? '').trim().slice(0, 240);
  });

/** Goes on with the Tab key until something of that name has the focus; the keyboard's own way and no other. */
export const tabTo = async (page: Page, name: string | RegExp): Promise<void> => {
  const passed: string[] = [];
  for (let i = 0; i < MOST_TABS; i++) {
    await page.keyboard.press('Tab');
    const now = await focused(page);
    passed.push(now);
    if (typeof name === 'string' ? now === name : name.test(now)) return;
  }
  throw new Error(`Tab never came to ${name}; it passed ${passed.join(' | ')}`);
};

const MOST_TABS = 120;

/** Lets go of a file over the page, as a hand with a mouse does. */
export const drop = async (page: Page, name: string, text: string): Promise<void> => {
  const files = await page.evaluateHandle(
    ([fileName, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content!], fileName!, { type: 'text/yaml' }));
      return transfer;
    },
    [name, text] as const,
  );
  await page.dispatchEvent('.page', 'drop', { dataTransfer: files });
};

/** In which directions (radians) a finger that comes down 21.5 px beside the middle of a handle does not have hold of it. */
export const missedRound = (handle: Locator): Promise<readonly number[]> =>
  handle.evaluate((own) => {
    const { x, y, width, height } = own.querySelector('.knob')!.getBoundingClientRect();
    const ways = Array.from({ length: 12 }, (_, i) => (i * Math.PI) / 6);
    return ways.filter((way) => {
      const at = document.elementFromPoint(
        x + width / 2 + 21.5 * Math.cos(way),
        y + height / 2 + 21.5 * Math.sin(way),
      );
      return !at || !own.contains(at);
    });
  });

/** What the page says in its line of messages. */
export const told = async (page: Page, words: RegExp): Promise<string> => {
  const notice = page.locator('.notice').filter({ hasText: words });
  await notice.waitFor({ timeout: 60_000 });
  return (await notice.textContent()) ?? '';
};

/**
 * How many times slower this machine is, at this moment, than the one on which bounds in milliseconds were set; never
 * below 1. A machine that others load answers later, and is no fault of the page: so bounds are multiplied by it.
 */
export const slowness = async (page: Page): Promise<number> => {
  const taken = await page.evaluate(() => {
    const times: number[] = [];
    for (let run = 0; run < 5; run++) {
      const began = performance.now();
      // Of what a search is made of: arithmetic, small objects that are soon thrown away, sorting, and a table.
      const found = new Map<number, { readonly at: number; readonly cost: number }>();
      for (let i = 0; i < 20_000; i++) {
        const at = Math.sin(i) * Math.hypot(i, 3);
        found.set(Math.round(at * 8), { at, cost: Math.atan2(at, i + 1) });
      }
      [...found.values()].sort((a, b) => a.cost - b.cost || a.at - b.at);
      times.push(performance.now() - began);
    }
    return times.toSorted((a, b) => a - b)[2]!;
  });
  return Math.max(1, taken / YARDSTICK);
};

/** What that reckoning takes (ms) in Chromium on the machine on which the bounds were set, with nothing else to do. */
const YARDSTICK = 7;

/** The middle one of several times. */
export const median = (of: readonly number[]): number =>
  of.toSorted((a, b) => a - b)[Math.floor(of.length / 2)] ?? Number.POSITIVE_INFINITY;
