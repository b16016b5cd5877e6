/** Two windows of one browser: each has its plan, both have one shelf, and neither loses what the other did. */

import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { ADDRESS, drop, forAllTests, idle, settled, told, visitAddress } from './harness.ts';

const ours = forAllTests();

const SLOW = { timeout: 60_000 };

const template = (title: string, rise = '1'): string => `title: ${title}
units: in
edge:
  - start: [0, 0]
  - arc: { to: [4, 0], rise: ${rise} }
`;

const names = (page: Page): Promise<string[]> => page.locator('.template .name').allTextContents();
const INVENTED = ['Baluster', 'Finial', 'Newel'];
const shows = (page: Page, ...own: readonly string[]): Promise<void> =>
  expect.poll(async () => (await names(page)).sort(), SLOW).toEqual([...INVENTED, ...own].sort());

/** Its tick box. */
const box = (page: Page, title: string) =>
  page
    .locator('label.template')
    .filter({ has: page.getByText(title, { exact: true }) })
    .locator('input');
const ticked = (page: Page, title: string): Promise<boolean> => box(page, title).isChecked();

/** The pictures that are kept: those of the list, and those that the browser holds. */
const pictures = (page: Page) =>
  page.evaluate(async () => {
    const base = await new Promise<IDBDatabase>((resolve) => {
      const request = indexedDB.open('swagwright', 1);
      request.onsuccess = () => resolve(request.result);
    });
    const request = base.transaction('pictures').objectStore('pictures').getAllKeys();
    await new Promise((resolve) => {
      request.transaction!.oncomplete = resolve;
    });
    base.close();
    const listed = JSON.parse(localStorage.getItem('swagwright.pictures')!) as { key: string }[];
    return { listed: listed.map(({ key }) => key), held: request.result.map(String).sort() };
  });

const another = async (context: BrowserContext): Promise<Page> => {
  const page = await context.newPage();
  await page.goto(ours.url());
  await settled(page);
  return page;
};

const twoWindows = async () => {
  const { page, context, faults } = await ours.visit();
  await settled(page);
  const other = await another(context);
  return { page, other, context, faults };
};

const own = (page: Page, title: string) =>
  page
    .locator('li')
    .filter({ has: page.locator('.own') })
    .filter({ hasText: title });

const open = (page: Page, title: string): Promise<void> =>
  page.getByText(`Rename, save or remove ${title}`, { exact: true }).click();

describe('two windows', () => {
  test('show each other’s templates, and keep what both do at once', async () => {
    const { page, other, context, faults } = await twoWindows();
    await drop(page, 'corbel.yaml', template('Corbel'));
    await told(page, /“Corbel” is on the shelf/);
    await shows(other, 'Corbel');
    // Ticked where it was brought, and nowhere else.
    expect(await ticked(other, 'Corbel')).toBe(false);
    await Promise.all([drop(page, 'urn.yaml', template('Urn')), drop(other, 'bead.yaml', template('Bead'))]);
    await shows(page, 'Corbel', 'Urn', 'Bead');
    await shows(other, 'Corbel', 'Urn', 'Bead');
    await open(page, 'Urn');
    const name = own(page, 'Urn').getByLabel('What it is called');
    await Promise.all([name.fill('Vase'), drop(other, 'bead.yaml', template('Bead', '3/4'))]);
    await shows(page, 'Corbel', 'Vase', 'Bead');
    await shows(other, 'Corbel', 'Vase', 'Bead');
    await page.reload();
    await settled(page);
    await shows(page, 'Corbel', 'Vase', 'Bead');
    expect(faults).toEqual([]);
    await context.close();
  });

  test('one removes a template that the other uses: it goes, is said, and either’s undo brings it back', async () => {
    const { page, other, context, faults } = await twoWindows();
    await drop(page, 'corbel.yaml', template('Corbel'));
    await told(page, /“Corbel” is on the shelf/);
    await shows(other, 'Corbel');
    await box(other, 'Corbel').check();
    await idle(other);
    await open(page, 'Corbel');
    await own(page, 'Corbel').getByRole('button', { name: 'Remove' }).click();
    await told(other, /“Corbel” was taken off the shelf in another window/);
    await shows(other);
    await page.getByRole('button', { name: 'Undo' }).click();
    await shows(page, 'Corbel');
    await shows(other, 'Corbel');
    expect(await ticked(other, 'Corbel')).toBe(false);
    await other.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => ticked(other, 'Corbel'), SLOW).toBe(true);
    expect(faults).toEqual([]);
    await context.close();
  });

  test('each keeps its plan over a reload, and the next visit begins with the last one', async () => {
    const { page, other, context } = await twoWindows();
    await page.getByLabel('What this plan is called').fill('For the raffle');
    await idle(page);
    await other.getByLabel('What this plan is called').fill('For the cot');
    await idle(other);
    for (const [window, title] of [
      [page, 'For the raffle'],
      [other, 'For the cot'],
    ] as const) {
      await window.reload();
      await settled(window);
      expect(await window.getByLabel('What this plan is called').inputValue()).toBe(title);
    }
    const third = await another(context);
    expect(await third.getByLabel('What this plan is called').inputValue()).toBe('For the cot');
    await context.close();
  });

  test('change one template without having heard of each other: both stay, and it is said', async () => {
    const { page, context } = await ours.visit();
    await settled(page);
    await drop(page, 'corbel.yaml', template('Corbel'));
    await told(page, /“Corbel” is on the shelf/);
    const still = await context.newPage();
    await still.goto(`${ours.url()}icon.svg`);
    const before = JSON.parse(await still.evaluate(() => localStorage.getItem('swagwright.shelf')!));
    await drop(page, 'corbel.yaml', template('Corbel', '3/4'));
    await idle(page);
    // What a window writes that has heard of the first corbel only, and changed that.
    const theirs = { ...before.there[0], id: '0-1', text: template('Corbel', '1/2') };
    const written = JSON.stringify({ there: [theirs], gone: [before.there[0].id] });
    await still.evaluate((text) => localStorage.setItem('swagwright.shelf', text), written);
    await told(page, /Two windows changed a template at once.*the second is “Corbel 2”/);
    await shows(page, 'Corbel', 'Corbel 2');
    // The plan goes on with what was made here.
    expect(await ticked(page, 'Corbel')).toBe(false);
    expect(await ticked(page, 'Corbel 2')).toBe(true);
    const kept = JSON.parse(await still.evaluate(() => localStorage.getItem('swagwright.shelf')!));
    const texts = kept.there.map((t: { text: string }) => /rise: (.*) }/.exec(t.text)?.[1]);
    expect(texts.sort()).toEqual(['1/2', '3/4']);
    await context.close();
  });
});

describe('what is kept', () => {
  test('by a page of before is taken over, and later again what such a page that is still open has written', async () => {
    const { page, context } = await ours.visit();
    await settled(page);
    const kept = (title: string, ...own: readonly (readonly [string, string])[]): string =>
      JSON.stringify({
        plan: `title: ${title}\ntemplate: baluster\nlayout: { strip: { length: 40, width: 6 } }\n`,
        own: own.map(([name, text]) => ({ name, text })),
      });
    await page.evaluate(
      (old) => {
        localStorage.clear();
        localStorage.setItem('swagwright.plan', old);
      },
      kept('Of before', ['./corbel.yaml', template('Corbel')]),
    );
    // A visit of its own: a window that is left keeps what it had.
    const next = await another(context);
    expect(await next.getByLabel('What this plan is called').inputValue()).toBe('Of before');
    await shows(next, 'Corbel');
    expect(await next.evaluate(() => localStorage.getItem('swagwright.plan'))).toBeNull();
    await next.evaluate(
      (old) => localStorage.setItem('swagwright.plan', old),
      kept('Still open', ['./corbel.yaml', template('Corbel')], ['./urn.yaml', template('Urn')]),
    );
    await next.reload();
    await settled(next);
    await shows(next, 'Corbel', 'Urn');
    expect(await next.getByLabel('What this plan is called').inputValue()).toBe('Of before');
    await context.close();
  });

  test('is told where there is no room for it, or where it cannot be read, and nothing is written over', async () => {
    const { page, context } = await ours.visit();
    await settled(page);
    await drop(page, 'corbel.yaml', template('Corbel'));
    await told(page, /“Corbel” is on the shelf/);
    await page.evaluate(() => {
      Storage.prototype.setItem = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
    });
    await page.getByLabel('What this plan is called').fill('No room');
    await told(page, /no room for your plan.*“Save plan”/);
    await drop(page, 'urn.yaml', template('Urn'));
    await told(page, /no room for your templates.*“Save all of mine in one file”/);
    await shows(page, 'Corbel', 'Urn');
    const next = await another(context);
    await shows(next, 'Corbel');
    await page.close();
    // Damaged while a window is open, and found so at the start; each is put beside what was put aside before.
    const spoil = (text: string) =>
      next.evaluate((spoilt) => localStorage.setItem('swagwright.shelf', spoilt), text);
    const aside = (name: string) =>
      last.evaluate(
        (key) =>
          Object.keys(localStorage)
            .filter((k) => k.startsWith(key))
            .sort()
            .map((k) => localStorage[k]),
        `swagwright.${name}.unread`,
      );
    const last = await another(context);
    await spoil('{"there":');
    await told(last, /shelf of your templates.*cannot be read\. It is put aside/);
    await shows(last, 'Corbel');
    expect(await aside('shelf')).toEqual(['{"there":']);
    await last.evaluate(() => localStorage.setItem('swagwright.shelf', '{"format":2,"there":[],"gone":[]}'));
    await told(next, /shelf of your templates.*cannot be read\. It is put aside/);
    expect(await aside('shelf')).toEqual(['{"there":', '{"format":2,"there":[],"gone":[]}']);
    // With no window open it is found at the next visit.
    await last.goto(`${ours.url()}icon.svg`);
    await next.close();
    await last.evaluate(() => localStorage.setItem('swagwright.shelf', 'nothing'));
    await last.goto(ours.url());
    await told(last, /shelf of your templates.*cannot be read\. It is put aside/);
    expect((await aside('shelf')).at(-1)).toBe('nothing');
    await context.close();
  });

  test('a plan or a design that cannot be read is said, and stays', async () => {
    const { page, context, faults } = await ours.visit();
    await settled(page);
    await page.getByLabel('What this plan is called').fill('For the raffle');
    await idle(page);
    await page.getByRole('button', { name: 'Keep design' }).click();
    await told(page, /“For the raffle” is kept/);
    const [later, half] = ['{"format":2,"plan":"title: Of later"}', '{"id":"x","title":"Half a des'];
    await page.goto(`${ours.url()}icon.svg`);
    await page.evaluate(
      ([plan, design]) => {
        sessionStorage.setItem('swagwright.window', plan!);
        localStorage.setItem('swagwright.last', plan!);
        localStorage.setItem('swagwright.design x', design!);
        localStorage.setItem('swagwright.shelf', 'nothing');
      },
      [later, half],
    );
    await page.goto(ours.url());
    await told(
      page,
      /plan that this browser kept cannot be read by this page.*put aside.*The shelf of your templates/,
    );
    await settled(page);
    await page.getByText('1 design that this browser keeps cannot be read by this page').waitFor();
    expect(await page.locator('.kept-designs > li').count()).toBe(1);
    const kept = (key: string) => page.evaluate((name) => localStorage.getItem(name), key);
    expect(await kept('swagwright.plan.unread')).toBe(later);
    expect(await kept('swagwright.plan.unread 2')).toBe(null);
    expect(await kept('swagwright.design x')).toBe(half);
    // What she does from then on is kept as ever.
    await page.getByLabel('What this plan is called').fill('For the cot');
    await idle(page);
    await page.reload();
    await settled(page);
    expect(await page.getByLabel('What this plan is called').inputValue()).toBe('For the cot');
    expect(faults).toEqual([]);
    await context.close();
  });

  test('of a picture goes with its template, once nobody has a window open that could take that back', async () => {
    const { page, context } = await ours.visit();
    await settled(page);
    await drop(page, 'corbel.yaml', template('Corbel'));
    await told(page, /“Corbel” is on the shelf/);
    await page.evaluate(async () => {
      const keys = ['./corbel.yaml', './urn.yaml', 'work 1'];
      const base = await new Promise<IDBDatabase>((resolve) => {
        const request = indexedDB.open('swagwright', 1);
        request.onupgradeneeded = () => request.result.createObjectStore('pictures');
        request.onsuccess = () => resolve(request.result);
      });
      const table = base.transaction('pictures', 'readwrite').objectStore('pictures');
      for (const key of keys) table.put({ fileName: key }, key);
      await new Promise((resolve) => {
        table.transaction.oncomplete = resolve;
      });
      base.close();
      localStorage.setItem('swagwright.pictures', JSON.stringify(keys.map((key) => ({ key, called: key }))));
    });
    const all = ['./corbel.yaml', './urn.yaml', 'work 1'];
    const other = await another(context);
    await idle(other);
    expect(await pictures(other)).toEqual({ listed: all, held: all });
    await page.close();
    await other.close();
    const next = await another(context);
    const left = ['./corbel.yaml', 'work 1'];
    await expect.poll(() => pictures(next), SLOW).toEqual({ listed: left, held: left });
    await context.close();
  });

  test('a plan of a friend’s link comes beside her templates, and takes none away', async () => {
    const { page, context } = await visitAddress(ours.browser(), '', {
      permissions: ['clipboard-read', 'clipboard-write'],
    });
    await settled(page);
    await drop(page, 'corbel.yaml', template('Corbel', '3/4'));
    await told(page, /“Corbel” is on the shelf/);
    await page.getByRole('button', { name: 'Copy link' }).click();
    await told(page, /The link is copied/);
    const link = await page.evaluate(() => navigator.clipboard.readText());
    await context.close();

    const hers = await ours.visit();
    await settled(hers.page);
    await drop(hers.page, 'corbel.yaml', template('My corbel'));
    await drop(hers.page, 'urn.yaml', template('Urn'));
    await shows(hers.page, 'My corbel', 'Urn');
    await hers.page.goto(link.replace(ADDRESS, ours.url()));
    await told(hers.page, /is open/);
    await shows(hers.page, 'My corbel', 'Urn', 'Corbel');
    expect(await ticked(hers.page, 'Corbel')).toBe(true);
    expect(await ticked(hers.page, 'My corbel')).toBe(false);
    // A text as some editors write it is none of hers, and what to do is said.
    const wide = Buffer.from(`\uFEFF${template('Wide')}`, 'utf16le');
    await hers.page
      .locator('input[type=file]')
      .first()
      .setInputFiles([{ name: 'wide.yaml', mimeType: 'text/yaml', buffer: wide }]);
    await told(hers.page, /wide\.yaml: this is text in UTF-16; save it again as UTF-8/);
    await hers.context.close();
  });
});
