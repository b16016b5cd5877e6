/** A corner of its own, by fields and keys: its template, and where on that template's edge it starts and ends. */

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { forAllTests, idle, settled } from './harness.ts';

const ours = forAllTests();

const planOf = async (page: Page): Promise<{ readonly corner?: unknown; readonly swag?: unknown }> =>
  parse(await page.evaluate(() => JSON.parse(sessionStorage.getItem('swagwright.window')!).plan as string));

test('a corner is made of its own template and part, live, and is made as on the sides again', async () => {
  const { context, page, faults } = await ours.visit();
  await settled(page);
  const quilt = () => page.locator('.quilt-picture .stitch').first().getAttribute('d');
  const before = { plan: await planOf(page), drawn: await quilt() };
  const choice = page.getByLabel('The corner’s swag');
  expect(await choice.inputValue()).toBe('');
  // By keys alone: past “any of yours” and the first template to the second.
  await choice.focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowDown');
  await idle(page);
  expect((await planOf(page)).corner).toEqual({ template: 'finial' });
  expect((await planOf(page)).swag).toEqual(before.plan.swag);
  expect(await quilt()).not.toBe(before.drawn);
  expect(await page.locator('.verdict').getAttribute('class')).not.toContain('wrong');

  await page.getByLabel('On the', { exact: true }).selectOption('corner');
  await idle(page);
  const uses = page.locator('.edge-choice > p');
  expect(await uses.textContent()).toMatch(/uses the edge from/);
  await page.getByRole('button', { name: /^start here: section 2/ }).press('Enter');
  await idle(page);
  expect((await planOf(page)).corner).toMatchObject({ template: 'finial', from: 2 });
  expect((await planOf(page)).swag).toEqual(before.plan.swag);
  expect(await uses.textContent()).toMatch(/section 2/);
  await page.getByText('More wishes').click();
  // Where the corner is its own, all are set with their crowns on the centre line.
  expect(await page.getByLabel('How the template is set').count()).toBe(0);
  await page.getByLabel('The template lies').selectOption('outside');
  await idle(page);
  expect((await planOf(page)).corner).toMatchObject({ side: 'outside' });
  await page.getByRole('button', { name: 'Any part of the edge' }).click();
  await idle(page);
  expect((await planOf(page)).corner).toEqual({ template: 'finial', side: 'outside' });

  // A side's own buttons are the sides' alone.
  await page.getByLabel('On the', { exact: true }).selectOption('top');
  await idle(page);
  await page.getByRole('button', { name: /^start here: section 1/ }).click();
  await idle(page);
  expect((await planOf(page)).corner).toEqual({ template: 'finial', side: 'outside' });
  expect((await planOf(page)).swag).toMatchObject({ from: 1 });

  // Smooth on the mitre, of whichever template; another template leaves that as it is.
  await choice.selectOption({ label: 'its own part of any of yours' });
  await page
    .getByLabel('On the mitre', { exact: true })
    .selectOption({ label: 'one smooth curve, no point' });
  await idle(page);
  expect((await planOf(page)).corner).toMatchObject({ smooth: true });
  expect(await page.locator('.verdict').getAttribute('class')).not.toContain('wrong');
  expect(await page.locator('main').textContent()).toMatch(/corners: .*one smooth curve on the mitre/);
  await choice.selectOption({ label: 'its own part of Baluster' });
  await idle(page);
  expect((await planOf(page)).corner).toEqual({ template: 'baluster', smooth: true });
  await page.getByLabel('On the mitre', { exact: true }).selectOption('');
  await idle(page);
  expect((await planOf(page)).corner).toEqual({ template: 'baluster' });

  await choice.selectOption('');
  await idle(page);
  expect((await planOf(page)).corner).toBeUndefined();
  expect(await page.getByLabel('On the mitre', { exact: true }).count()).toBe(0);
  expect(faults).toEqual([]);
  await context.close();
});
