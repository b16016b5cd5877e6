/** Pictures that the page keeps: set right beside the template's drawing, doubled with it, and thrown away one by one. */

import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { violations } from './axe.ts';
import { bracket, button, give, panel } from './bracket.ts';
import { focused, forAllTests, idle, PICTURES, settled, told } from './harness.ts';

const ours = forAllTests();
const SLOW = { timeout: 60_000 };

const begin = async (page: Page, name: string): Promise<void> => {
  await give(page, name, bracket());
  await told(page, new RegExp(`The outline of ${name} is found`));
  await idle(page);
};

const shelve = async (page: Page): Promise<void> => {
  await button(page, 'Put it on the shelf').click();
  await told(page, /is on the shelf, and ticked\. Print its outline/);
};

const over = (page: Page, title: string) =>
  page.getByRole('button', { name: `Set it right over its picture: ${title}`, exact: true });

const nameBreak = async (page: Page, name: string): Promise<void> => {
  await panel(page)
    .getByLabel(/^On a smooth stretch, /)
    .fill(name);
  await idle(page);
};

const breakNames = async (page: Page, title: string): Promise<readonly string[]> => {
  await over(page, title).click();
  await panel(page).waitFor(SLOW);
  await idle(page);
  return panel(page)
    .getByLabel(/^On a smooth stretch, /)
    .evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value));
};

test('is set right from beside its drawing, and a copy has a picture of its own', async () => {
  const { page, context, faults } = await ours.visit();
  await settled(page);
  await begin(page, 'bracket.png');
  await button(page, 'Add a break').click();
  await idle(page);
  await nameBreak(page, 'shoulder');
  await shelve(page);
  // Nothing has to be unfolded to find it.
  await over(page, 'Bracket').waitFor({ state: 'visible', ...SLOW });
  expect(await violations(page)).toEqual([]);
  await page.locator('#templates').screenshot({ path: join(PICTURES, 'own-picture.png') });
  await page.getByText('Rename, save or remove Bracket').click();
  await page.locator('.own').getByRole('button', { name: 'Duplicate' }).click();
  await over(page, 'Bracket, copy').waitFor(SLOW);
  expect(await breakNames(page, 'Bracket, copy')).toEqual(['shoulder']);
  await nameBreak(page, 'elbow');
  await shelve(page);
  await page.reload();
  await settled(page);
  expect(await breakNames(page, 'Bracket')).toEqual(['shoulder']);
  expect(await breakNames(page, 'Bracket, copy')).toEqual(['elbow']);
  expect(await page.locator('.own').count()).toBe(2);
  expect(faults).toEqual([]);
  await context.close();
}, 400_000);

test('one in work is thrown away alone, can be taken back, and is gone for good after that', async () => {
  const { page, context, faults } = await ours.visit();
  await settled(page);
  await begin(page, 'left.png');
  await begin(page, 'right.png');
  const goOn = (name: string) => page.getByRole('button', { name: `Go on with ${name}` });
  const throwAway = page.getByRole('button', { name: 'Throw it away: left.png' });
  await throwAway.click(SLOW);
  const back = page.getByRole('button', { name: 'Take left.png back' });
  await expect.poll(() => focused(page), SLOW).toBe('Take left.png back');
  expect(await goOn('left.png').count()).toBe(0);
  await expect.poll(() => goOn('right.png').count(), SLOW).toBe(1);
  expect(await violations(page)).toEqual([]);
  await page.locator('#templates').screenshot({ path: join(PICTURES, 'thrown-away.png') });
  await back.press('Enter');
  await goOn('left.png').click(SLOW);
  await panel(page).waitFor(SLOW);
  await idle(page);
  // The one that is open is put away with it.
  await throwAway.click();
  await panel(page).waitFor({ state: 'detached' });
  await back.waitFor(SLOW);
  await page.reload();
  await settled(page);
  await expect.poll(() => goOn('right.png').count(), SLOW).toBe(1);
  expect(await goOn('left.png').count()).toBe(0);
  expect(await keptCount(page)).toBe(1);
  expect(faults).toEqual([]);
  await context.close();
}, 400_000);

/** How many pictures the browser holds. */
const keptCount = (page: Page): Promise<number> =>
  page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const request = indexedDB.open('swagwright', 1);
        request.onsuccess = () => {
          const count = request.result.transaction('pictures').objectStore('pictures').count();
          count.onsuccess = () => resolve(count.result);
        };
      }),
  );

test('goes on the shelf though the browser’s store never answers, and it is said that its picture is not kept', async () => {
  const { page, context, faults } = await ours.visit();
  await page.addInitScript(() => {
    Object.defineProperty(indexedDB, 'open', { value: () => ({}) });
  });
  await page.reload();
  await settled(page);
  await begin(page, 'bracket.png');
  await shelve(page);
  await page.getByText(/no room for the picture of your template/).waitFor(SLOW);
  expect(await page.getByRole('checkbox', { name: /^Bracket/ }).isChecked()).toBe(true);
  expect(faults).toEqual([]);
  await context.close();
});
