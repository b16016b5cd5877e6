/** Pictures of templates in two windows of one browser: what is set right in one is not written over by the other. */

import type { BrowserContext, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { bracket, button, give, panel } from './bracket.ts';
import { forAllTests, idle, settled, told } from './harness.ts';

const ours = forAllTests();
const SLOW = { timeout: 60_000 };

const another = async (context: BrowserContext): Promise<Page> => {
  const page = await context.newPage();
  await page.goto(ours.url());
  await settled(page);
  return page;
};

/** A window that shows pictures slowly is still one that she works in. */
const shows = async (page: Page): Promise<void> => {
  await panel(page).waitFor(SLOW);
  await idle(page);
};

const shelve = async (page: Page): Promise<void> => {
  await button(page, 'Put it on the shelf').click();
  await told(page, /is on the shelf, and ticked\. Print its outline/);
};

const own = (page: Page, title: string) =>
  page
    .locator('li')
    .filter({ has: page.locator('.own') })
    .filter({ has: page.getByText(`Rename, save or remove ${title}`, { exact: true }) });

const setRight = async (page: Page, title: string): Promise<void> => {
  const entry = own(page, title);
  if ((await entry.locator('details[open]').count()) === 0)
    await entry.getByText(`Rename, save or remove ${title}`, { exact: true }).click();
  await entry.getByRole('button', { name: 'Set it right over its picture' }).click();
  await shows(page);
};

const nameBreak = async (page: Page, name: string): Promise<void> => {
  await button(page, 'Add a break').click();
  await idle(page);
  await panel(page)
    .getByLabel(/^On a smooth stretch, /)
    .fill(name);
  await idle(page);
};

const breakNames = (page: Page): Promise<readonly string[]> =>
  panel(page)
    .getByLabel(/^On a smooth stretch, /)
    .evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value));

test('two windows set one template right over its picture: both come on the shelf, each with its picture', async () => {
  const { page, context, faults } = await ours.visit();
  await settled(page);
  await give(page, 'bracket.png', bracket());
  await shows(page);
  await shelve(page);
  const other = await another(context);
  await setRight(page, 'Bracket');
  await setRight(other, 'Bracket');
  await told(other, /open in another window too/);
  await nameBreak(page, 'shoulder');
  await nameBreak(other, 'elbow');
  // Both rest long enough for what they have said to be kept.
  await other.waitForTimeout(1000);
  await shelve(page);
  await shelve(other);
  for (const window of [page, other]) {
    await own(window, 'Bracket').waitFor(SLOW);
    await own(window, 'Bracket 2').waitFor(SLOW);
  }
  await page.reload();
  await settled(page);
  await setRight(page, 'Bracket');
  expect(await breakNames(page)).toEqual(['shoulder']);
  await setRight(page, 'Bracket 2');
  expect(await breakNames(page)).toEqual(['elbow']);
  // Put away here, it is free for the other window, and goes back to its place.
  await button(page, 'Put the picture away').click();
  await setRight(other, 'Bracket 2');
  expect(await breakNames(other)).toEqual(['elbow']);
  await shelve(other);
  expect(await own(other, 'Bracket 3').count()).toBe(0);
  expect(faults).toEqual([]);
  await context.close();
}, 400_000);

test('two windows begin with a picture at once: neither takes the other’s place', async () => {
  const { page, context } = await ours.visit();
  await settled(page);
  const other = await another(context);
  await Promise.all([give(page, 'left.png', bracket()), give(other, 'right.png', bracket())]);
  await Promise.all([shows(page), shows(other)]);
  await nameBreak(page, 'shoulder');
  await nameBreak(other, 'elbow');
  await other.waitForTimeout(1000);
  await other.close();
  await page.reload();
  await settled(page);
  for (const [file, name] of [
    ['right.png', 'elbow'],
    ['left.png', 'shoulder'],
  ] as const) {
    await page.getByRole('button', { name: `Go on with ${file}` }).click();
    await shows(page);
    await expect.poll(() => breakNames(page), SLOW).toEqual([name]);
  }
  await context.close();
}, 400_000);

test('pictures that tell nothing do not push out one of which she has said something', async () => {
  const { page, context } = await ours.visit();
  await settled(page);
  await give(page, 'bracket.png', bracket());
  await shows(page);
  await nameBreak(page, 'shoulder');
  for (let i = 1; i <= 6; i++) {
    await give(page, `blank ${i}.png`, bracket());
    await expect
      .poll(() => page.evaluate(() => localStorage.getItem('swagwright.pictures')), SLOW)
      .toContain(`blank ${i}.png`);
  }
  await page.getByRole('button', { name: 'Go on with bracket.png' }).click(SLOW);
  await shows(page);
  await expect.poll(() => breakNames(page), SLOW).toEqual(['shoulder']);
  expect(await page.getByRole('button', { name: 'Go on with blank 1.png' }).count()).toBe(0);
  await context.close();
}, 400_000);

test('nothing that a file says of place and time is kept, neither in work nor on the shelf', async () => {
  const { page, context } = await ours.visit();
  await settled(page);
  await give(page, 'bracket.jpg', withRemark(bracket('image/jpeg')), 'image/jpeg');
  await shows(page);
  await panel(page).getByLabel('How large it is').selectOption('dpi');
  await panel(page).getByLabel('Dots per inch').fill('203');
  await idle(page);
  await page.waitForTimeout(1000);
  expect(await keptTexts(page)).toHaveLength(1);
  expect((await keptTexts(page)).join().includes(REMARK)).toBe(false);
  await shelve(page);
  expect((await keptTexts(page)).join().includes(REMARK)).toBe(false);
  await context.close();
}, 400_000);

test('a picture that the browser has no room for is told, with what to do', async () => {
  const { page, context } = await ours.visit();
  await settled(page);
  await page.evaluate(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await give(page, 'bracket.png', bracket());
  await shows(page);
  await told(page, /no room for the picture of your template.*“Save its file”/);
  await context.close();
}, 400_000);

const REMARK = 'taken 2031:05:06 at 52 N 13 E';

/** A JPEG with an APP1 segment right after its head (ITU-T T.81, B.2.4.6), as cameras write what they know. */
const withRemark = (jpeg: Uint8Array): Uint8Array => {
  const text = Buffer.from(`Exif\0\0${REMARK}`, 'latin1');
  const head = Buffer.from([0xff, 0xe1, 0, text.length + 2]);
  return Buffer.concat([jpeg.subarray(0, 2), head, text, jpeg.subarray(2)]);
};

/** The files of all pictures that the browser holds, as text. */
const keptTexts = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => {
    const base = await new Promise<IDBDatabase>((resolve) => {
      const request = indexedDB.open('swagwright', 1);
      request.onsuccess = () => resolve(request.result);
    });
    const request = base.transaction('pictures').objectStore('pictures').getAll();
    await new Promise((resolve) => {
      request.transaction!.oncomplete = resolve;
    });
    base.close();
    const decoder = new TextDecoder('latin1');
    const files = request.result.map((kept: { file: Blob }) => kept.file.arrayBuffer());
    return (await Promise.all(files)).map((bytes) => decoder.decode(bytes));
  });
