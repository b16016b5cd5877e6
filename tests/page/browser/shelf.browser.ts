/** Her own templates on the shelf: kept, renamed, doubled, removed with a way back, and taken to another device. */

import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { violations } from './axe.ts';
import { drop, forAllTests, idle, settled, told } from './harness.ts';

const CORBEL = `title: Corbel
units: in
edge:
  - start: [0, 0]
  - arc: { to: [4, 0], rise: 1 }
`;

const ours = forAllTests();

const SLOW = { timeout: 60_000 };

const names = (page: Page): Promise<string[]> => page.locator('.template .name').allTextContents();

test('a shelf is kept, put in order, and taken along', async () => {
  const { page, context, faults } = await ours.visit();
  await settled(page);
  const title = page.getByLabel('What this plan is called');
  await title.fill('');
  await title.pressSequentially('My new border');
  expect(await title.inputValue()).toBe('My new border');
  await drop(page, 'corbel.yaml', CORBEL);
  await told(page, /“Corbel” is on the shelf/);
  await idle(page);
  await page.getByText('Rename, save or remove Corbel').click();
  expect(await violations(page)).toEqual([]);
  const name = page.locator('.own').getByLabel('What it is called');
  await name.fill('');
  // A hand types one letter after the other, and blanks between words.
  await name.pressSequentially('Long bracket');
  await expect.poll(() => names(page), SLOW).toContain('Long bracket');
  await page.locator('.own').getByRole('button', { name: 'Duplicate' }).click();
  await expect
    .poll(() => names(page), SLOW)
    .toEqual(['Baluster', 'Finial', 'Newel', 'Long bracket', 'Long bracket, copy']);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save all of mine in one file' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('my-templates.json');
  const shelf = await readFile(await download.path(), 'utf8');
  await page.locator('.own').first().getByRole('button', { name: 'Remove' }).click();
  await told(page, /“Long bracket” is off the shelf/);
  // She pressed it far down the page, and is told where she looks.
  const said = await page
    .locator('.notice')
    .filter({ hasText: /off the shelf/ })
    .boundingBox();
  expect(said!.y).toBeGreaterThan(0);
  expect(said!.y + said!.height).toBeLessThan(900);
  await expect.poll(() => names(page), SLOW).toEqual(['Baluster', 'Finial', 'Newel', 'Long bracket, copy']);
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(
    await page
      .locator('.notice')
      .filter({ hasText: /off the shelf/ })
      .count(),
  ).toBe(0);
  await expect
    .poll(() => names(page), SLOW)
    .toEqual(['Baluster', 'Finial', 'Newel', 'Long bracket', 'Long bracket, copy']);
  // A name is taken once: she is told, and the template has the next one that is free.
  await page.getByText('Rename, save or remove Long bracket', { exact: true }).click();
  await name.first().fill('newel');
  await told(page, /There is a “newel” already: this one is called “newel 2”/);
  await drop(page, 'another.yaml', CORBEL.replace('Corbel', 'Long bracket, copy'));
  await told(
    page,
    /“Long bracket, copy 2” is on the shelf, and ticked\. There is a “Long bracket, copy” already/,
  );
  await expect
    .poll(() => names(page), SLOW)
    .toEqual(['Baluster', 'Finial', 'Newel', 'newel 2', 'Long bracket, copy', 'Long bracket, copy 2']);
  await context.close();

  const other = await ours.visit();
  await settled(other.page);
  await drop(other.page, 'my-templates.json', shelf);
  await told(other.page, /“Long bracket” and “Long bracket, copy” of my-templates.json are on the shelf/);
  await drop(other.page, 'my-templates.json', shelf);
  await told(other.page, /are on the shelf already/);
  await expect
    .poll(() => names(other.page), SLOW)
    .toEqual(['Baluster', 'Finial', 'Newel', 'Long bracket', 'Long bracket, copy']);
  expect([...faults, ...other.faults]).toEqual([]);
  await other.context.close();
});

test('a shelf file with some that are no good brings the good ones, and says of each other what is wrong', async () => {
  const { page, context, faults } = await ours.visit();
  await settled(page);
  const shelf = (...templates: readonly unknown[]): string =>
    JSON.stringify({ swagwright: 'templates', templates });
  const one = (title: string, text = CORBEL) => ({
    name: `./${title.toLowerCase()}.yaml`,
    text: text.replace('Corbel', title),
  });
  const lines = (): Promise<string[]> => page.locator('.notice .troubles li').allTextContents();
  const bad = { name: './bad.yaml', text: 'title: X\nedge: 5\n' };
  const long = { name: './long.yaml', text: '#'.repeat(200_001) };
  await drop(page, 'mine.json', shelf(one('Urn'), bad, null, long, one('Bead')));
  await told(
    page,
    /^“Urn” and “Bead” of mine\.json are on the shelf, and ticked\. 3 templates of mine\.json /,
  );
  expect(await lines()).toEqual([
    'number 3: This is no template.',
    'long.yaml: This is too large for a template.',
    expect.stringMatching(/^bad\.yaml:\d+:\d+: \S/),
  ]);
  await expect.poll(() => names(page), SLOW).toEqual(['Baluster', 'Finial', 'Newel', 'Urn', 'Bead']);
  await drop(page, 'empty.json', shelf());
  await told(page, /^empty\.json holds no template\.$/);
  for (const text of ['{"a":1}', '{"swagwright":"templates","templates":"x"}']) {
    await drop(page, 'other.json', text);
    await told(page, /^other\.json is no plan, no template and no file of templates\.$/);
    expect(await lines()).toEqual([]);
  }
  // What has no room is said of each, too.
  await drop(page, 'many.json', shelf(...Array.from({ length: 20 }, (_, i) => one(`T${i}`))));
  await told(page, / 2 templates of many\.json could not be put on the shelf/);
  expect(await lines()).toEqual(
    [18, 19].map((n) => `t${n}.yaml: The shelf holds 20 templates of yours. Save one and remove it.`),
  );
  expect(faults).toEqual([]);
  await context.close();
});
