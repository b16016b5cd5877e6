/** What the page says while a picture is set right: of now and not of before, in her units, and the same in both places. */

import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { violations } from './axe.ts';
import { bracket, button, give, panel } from './bracket.ts';
import { forAllTests, idle, PICTURES, settled, told } from './harness.ts';

const ours = forAllTests();

const begin = async (page: Page): Promise<void> => {
  await settled(page);
  await give(page, 'bracket.png', bracket());
  await told(page, /The outline of bracket\.png is found/);
  await idle(page);
};

const status = (page: Page) => panel(page).locator('p[role=status]').textContent();

test('what a step came to is not said any more when it is taken back, nor what was wrong with the file before', async () => {
  const { page, context } = await ours.visit();
  await begin(page);
  await panel(page)
    .getByLabel(/it is off by$/)
    .fill('1.5 mm');
  await button(page, 'Put the size right').click();
  await idle(page);
  expect(await status(page)).toMatch(/^The outline is now .* larger/);
  await button(page, 'Take the last step back').click();
  expect(await status(page)).toBe('');
  await button(page, 'Do it again').click();
  await idle(page);
  await give(page, 'half.png', bracket().slice(0, 900));
  await told(page, /half\.png cannot be traced/);
  await page.getByRole('button', { name: 'Go on with bracket.png' }).click();
  await panel(page).waitFor({ timeout: 60_000 });
  await idle(page);
  expect(await page.locator('.notice').count()).toBe(0);
  await context.close();
}, 400_000);

test('handles speak her units', async () => {
  const { page, context } = await ours.visit();
  await begin(page);
  const heel = panel(page).getByRole('slider', { name: 'Heel' });
  const says = () => heel.getAttribute('aria-valuetext');
  const before = await says();
  expect(before).toMatch(/^\d+( \d+\/\d+)? in along the outline$/);
  await heel.focus();
  await page.keyboard.press('ArrowRight');
  await idle(page);
  expect(await says()).toMatch(/ in along the outline$/);
  expect(await says()).not.toBe(before);
  await page.getByLabel('Figures in').selectOption('cm');
  await idle(page);
  expect(await says()).toMatch(/^[\d.]+ cm along the outline$/);
  await context.close();
}, 400_000);

test('a break is called in the list as in the picture, and a closer look shows the one that she is at', async () => {
  const { page, context, faults } = await ours.visit();
  await begin(page);
  await button(page, 'Add a break').click();
  await idle(page);
  const list = panel(page).locator('.trace-list').first();
  // Nothing counts them anew beside their names.
  expect(await list.textContent()).not.toMatch(/Break \d/);
  expect(await list.evaluate((element) => element.tagName)).toBe('UL');
  await panel(page)
    .getByLabel(/^A (corner|notch), /)
    .last()
    .fill('elbow');
  await idle(page);
  const names = await list
    .locator('input')
    .evaluateAll((fields) => fields.flatMap((field) => (field as HTMLInputElement).value || []));
  expect(names.sort()).toEqual(['break 1', 'elbow']);
  const picture = panel(page).locator('.trace-window');
  const shown = await picture.locator('.break text, .traced-corner text').allTextContents();
  expect(shown.sort()).toEqual(names);
  const isSeen = async (part: string): Promise<boolean> => {
    const [window, place] = [await picture.boundingBox(), await picture.locator(part).first().boundingBox()];
    const [x, y] = [place!.x + place!.width / 2, place!.y + place!.height / 2];
    const { x: left, y: top, width, height } = window!;
    return x > left && x < left + width && y > top && y < top + height;
  };
  await button(page, '4 times closer').click();
  // She was last at the corner that she named.
  await expect.poll(() => isSeen('.traced-corner text')).toBe(true);
  await list.locator('input').first().focus();
  await expect.poll(() => isSeen('.ring')).toBe(true);
  expect(await violations(page)).toEqual([]);
  await page.screenshot({ path: join(PICTURES, 'trace-closer.png') });
  await button(page, 'Whole picture').click();
  await panel(page).getByRole('slider', { name: 'Crown end' }).focus();
  await button(page, '4 times closer').click();
  await expect.poll(() => isSeen('.crown .knob')).toBe(true);
  expect(faults).toEqual([]);
  await context.close();
}, 400_000);
