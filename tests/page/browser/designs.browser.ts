/** Her designs: kept by name, opened again, side by side, thrown away and taken back, on another device, in two windows. */

import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { violations } from './axe.ts';
import { drop, forAllTests, idle, settled, told } from './harness.ts';

const ours = forAllTests();

const titles = (page: Page): Promise<readonly string[]> =>
  page
    .locator('.kept-designs input:not([type=checkbox])')
    .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value));

const press = (page: Page, name: string): Promise<void> =>
  page.getByRole('button', { name, exact: true }).click();

test('designs are kept, called, opened, put side by side, thrown away and taken back', async () => {
  const { context, page, faults } = await ours.visit();
  await settled(page);
  expect(await page.locator('#designs').count()).toBe(0);
  await press(page, 'Keep design');
  await told(page, /The design “My border” is kept in this browser/);
  await page.getByLabel('Border width').fill('8 1/4');
  await idle(page);
  await press(page, 'Keep design');
  await told(page, /“My border 2” is kept .* There is a “My border” already\./);
  expect(await titles(page)).toEqual(['My border 2', 'My border']);
  await page.getByLabel('What the design My border 2 is called').fill('Wide one');
  expect(await titles(page)).toEqual(['Wide one', 'My border']);
  // Its picture and figures stand with it.
  const wide = page.locator('.kept-designs > li').first();
  await expect.poll(() => wide.locator('svg path.stitch').count(), { timeout: 30_000 }).toBeGreaterThan(0);
  expect(await wide.locator('.figures').textContent()).toMatch(/ in wide.* in deep/);

  await page.getByRole('checkbox', { name: 'Side by side: Wide one' }).check();
  expect(await page.locator('.beside-one-another').count()).toBe(0);
  await page.getByRole('checkbox', { name: 'Side by side: My border' }).check();
  const scaled = page.locator('.beside-one-another .scaled svg');
  await expect.poll(() => scaled.count(), { timeout: 30_000 }).toBe(2);
  const [a, b] = await scaled.evaluateAll((all) =>
    all.map((svg) => {
      const [, , width] = svg.getAttribute('viewBox')!.split(' ').map(Number);
      return svg.getBoundingClientRect().width / width!;
    }),
  );
  // One scale, mm by mm.
  expect(a! / b!).toBeCloseTo(1, 2);
  expect(await violations(page)).toEqual([]);

  await press(page, 'Open: My border');
  await told(page, /The plan “My border” is open/);
  expect(await page.getByLabel('Border width').inputValue()).toBe('6');
  await press(page, 'Undo');
  expect(await page.getByLabel('Border width').inputValue()).toBe('8 1/4');

  await press(page, 'Copy: Wide one');
  expect(await titles(page)).toEqual(['Wide one 2', 'Wide one', 'My border']);
  await press(page, 'Throw away: Wide one');
  expect(await titles(page)).toEqual(['Wide one 2', 'My border']);
  await press(page, 'Take “Wide one” back');
  expect((await titles(page)).toSorted()).toEqual(['My border', 'Wide one', 'Wide one 2']);

  // They are there after a reload.
  await page.reload();
  await settled(page);
  await page.locator('#designs').waitFor();
  expect((await titles(page)).toSorted()).toEqual(['My border', 'Wide one', 'Wide one 2']);
  expect(faults).toEqual([]);
  await context.close();
});

test('two windows keep designs at once, and both see all of them', async () => {
  const { context, page } = await ours.visit();
  await settled(page);
  const other = await context.newPage();
  await other.goto(ours.url());
  await settled(other);
  await press(page, 'Keep design');
  await other.getByLabel('What this plan is called').fill('Of the other window');
  await idle(other);
  await press(other, 'Keep design');
  const all = ['My border', 'Of the other window'];
  for (const window of [page, other])
    await expect.poll(async () => (await titles(window)).toSorted(), { timeout: 30_000 }).toEqual(all);
  await context.close();
});

test('they go to another device as one file, beside those that are there', async () => {
  const { context, page } = await ours.visit({ acceptDownloads: true });
  await settled(page);
  await page.getByLabel('Border width').fill('8 1/4');
  await idle(page);
  await press(page, 'Keep design');
  await page.locator('#designs').waitFor();
  const coming = page.waitForEvent('download');
  await press(page, 'Save all designs in one file');
  const file = readFileSync(await (await coming).path(), 'utf8');
  await context.close();
  const hers = await ours.visit();
  await settled(hers.page);
  await press(hers.page, 'Keep design');
  await hers.page.locator('#designs').waitFor();
  await drop(hers.page, 'my-designs.json', file);
  await told(hers.page, /1 design of my-designs\.json is under “Your designs” now/);
  expect((await titles(hers.page)).toSorted()).toEqual(['My border', 'My border 2']);
  await press(hers.page, 'Open: My border 2');
  await told(hers.page, /is open/);
  expect(await hers.page.getByLabel('Border width').inputValue()).toBe('8 1/4');
  await drop(hers.page, 'broken.json', file.slice(0, -40));
  await told(hers.page, /broken\.json cannot be read/);
  await hers.context.close();
});

test('their pictures show what they are filled with, and their own colours', async () => {
  const { context, page, faults } = await ours.visit();
  await settled(page);
  await press(page, 'Keep design');
  await told(page, /is kept/);
  await page.getByText('Fills: feathers, pebbles').click();
  const inside = page.getByLabel('Inside the swags', { exact: true });
  await inside
    .locator('option', { hasText: 'pebbles' })
    .first()
    .waitFor({ state: 'attached', timeout: 60_000 });
  await inside.selectOption('pebbles');
  await page.locator('.quilt-picture .ink.fill').first().waitFor({ state: 'attached', timeout: 60_000 });
  await page.getByLabel('Fabric', { exact: true }).fill('#204060');
  await idle(page);
  await press(page, 'Keep design');
  await told(page, /“My border 2” is kept/);
  const cards = page.locator('.kept-designs > li');
  const paths = (card: number, name: string) => cards.nth(card).locator(`svg path.ink.${name}`).count();
  await expect.poll(() => paths(1, 'stitch'), { timeout: 30_000 }).toBeGreaterThan(0);
  await cards.first().scrollIntoViewIfNeeded();
  await expect.poll(() => paths(0, 'fill'), { timeout: 60_000 }).toBeGreaterThan(0);
  expect(await paths(1, 'fill')).toBe(0);
  const ground = (card: number) =>
    cards
      .nth(card)
      .locator('svg rect.fabric')
      .evaluateAll((all) => all.map((one) => getComputedStyle(one).fill));
  expect(await ground(0)).toEqual(['rgb(32, 64, 96)']);
  expect(await ground(1)).toEqual([]);
  for (const name of ['My border', 'My border 2'])
    await page.getByRole('checkbox', { name: `Side by side: ${name}`, exact: true }).check();
  const beside = page.locator('.beside-one-another > ul > li');
  await expect
    .poll(() => beside.first().locator('path.ink.fill').count(), { timeout: 30_000 })
    .toBeGreaterThan(0);
  expect(await beside.nth(1).locator('path.ink.fill').count()).toBe(0);
  expect(faults).toEqual([]);
  await context.close();
});

test('one that is kept is given another name from where that is said', async () => {
  const { context, page, faults } = await ours.visit();
  await settled(page);
  await press(page, 'Keep design');
  await told(page, /is kept/);
  await page.getByRole('button', { name: 'Give it another name' }).press('Enter');
  const field = page.getByLabel('What the design My border is called');
  expect(await field.evaluate((one) => one === document.activeElement)).toBe(true);
  await page.keyboard.type('For the raffle');
  expect(await titles(page)).toEqual(['For the raffle']);
  // A page that goes elsewhere has the open plan in it, and says what it has not.
  await page.getByRole('button', { name: 'More' }).click();
  await press(page, 'Save page');
  await told(page, /Your designs are not in it: “Save all designs in one file” takes those along\./);
  await page.getByRole('button', { name: 'Save all designs in one file' }).waitFor();
  expect(faults).toEqual([]);
  await context.close();
});
