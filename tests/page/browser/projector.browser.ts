/** What a projector shows: dark, on a grid, and as large on the cloth as what she measured there makes it. */

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { focused, forAllTests, PICTURES, settled, tabTo } from './harness.ts';

const ours = forAllTests();
beforeAll(() => {
  mkdirSync(PICTURES, { recursive: true });
});

const open = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'On a projector' }).click();
  await page.getByRole('dialog', { name: 'On a projector' }).waitFor();
};

const drawn = (page: Page) => page.locator('.on-cloth img');

/** Where anything is nearly white in a picture, as no line of the grid is: its box in px. */
const whiteIn = async (png: Buffer) => {
  const image = await loadImage(png);
  const context = createCanvas(image.width, image.height).getContext('2d');
  context.drawImage(image, 0, 0);
  const { data } = context.getImageData(0, 0, image.width, image.height);
  const box = { left: image.width, right: 0, top: image.height, bottom: 0 };
  for (let y = 0; y < image.height; y++)
    for (let x = 0; x < image.width; x++) {
      const i = 4 * (y * image.width + x);
      if (Math.min(data[i]!, data[i + 1]!, data[i + 2]!) < 150) continue;
      box.left = Math.min(box.left, x);
      box.right = Math.max(box.right, x);
      box.top = Math.min(box.top, y);
      box.bottom = Math.max(box.bottom, y);
    }
  return { width: box.right - box.left + 1, height: box.bottom - box.top + 1 };
};

test('the square measures 4 in on the cloth, each way, by what the tape said of the bars', async () => {
  const { context, page, faults } = await ours.visit({ viewport: { width: 1280, height: 800 } });
  await settled(page);
  await open(page);
  const long = (await page.getByRole('img', { name: 'A bar to lay a tape along, across' }).boundingBox())!;
  const upright = (await page.getByRole('img', { name: 'A bar to lay a tape along, up' }).boundingBox())!;
  expect([long.width, upright.height]).toEqual([1000, 400]);
  // On this cloth 50 px make an inch across, and 40 up.
  await page.getByLabel('The long bar measures').fill('20');
  await page.getByLabel('The upright bar measures').fill('10');
  await page.getByRole('button', { name: 'Show it at true size' }).click();
  await page.getByLabel('It shows').selectOption('repeat');
  await drawn(page).waitFor({ timeout: 60_000 });
  expect(await page.getByRole('dialog').textContent()).toMatch(/One way is 25 % larger than the other/);
  const view = page.getByRole('region', { name: 'What the projector shows' });
  const { width, height } = (await drawn(page).boundingBox())!;
  await page.getByRole('button', { name: 'Hide these' }).click();
  await view.evaluate((element) => {
    element.scrollTop = element.scrollHeight;
    element.scrollLeft = 0;
  });
  await page.screenshot({ path: join(PICTURES, 'projector-repeat.png') });
  const box = (await drawn(page).boundingBox())!;
  expect([box.width, box.height]).toEqual([width, height]);
  // 5 mm of ground and half a cell lie left of the square and below it; its words begin 8 mm right of it.
  const png = await page.screenshot({
    clip: { x: box.x, y: box.y + box.height - 5.2 * 40, width: 4.9 * 50, height: 5.2 * 40 },
  });
  const square = await whiteIn(png);
  // Its lines are 1 mm wide, of which half lies outside on either side.
  expect(Math.abs(square.width - 4 * 50 - 50 / 25.4)).toBeLessThanOrEqual(1.5);
  expect(Math.abs(square.height - 4 * 40 - 40 / 25.4)).toBeLessThanOrEqual(1.5);
  expect(faults).toEqual([]);
  await context.close();
});

test('it is kept, turns a quarter, and is measured again', async () => {
  const { context, page } = await ours.visit();
  await settled(page);
  await open(page);
  await page.getByLabel('The long bar measures').fill('40');
  await page.getByLabel('The long bar measures').press('Enter');
  await page.getByLabel('It shows').selectOption('top');
  await drawn(page).waitFor({ timeout: 60_000 });
  const flat = (await drawn(page).boundingBox())!;
  await page.getByLabel('Turned a quarter').check();
  const turned = (await drawn(page).boundingBox())!;
  expect(turned.width).toBeCloseTo(flat.height, 1);
  expect(turned.height).toBeCloseTo(flat.width, 1);
  await page.keyboard.press('Escape');
  await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
  await page.reload();
  await settled(page);
  await open(page);
  await page.getByLabel('It shows').selectOption('top');
  await expect
    .poll(async () => (await drawn(page).boundingBox())?.width, { timeout: 60_000 })
    .toBeCloseTo(flat.width, 1);
  await page.getByRole('button', { name: 'Measure again' }).click();
  await page.getByLabel('The long bar measures').fill('1/2');
  expect(await page.getByRole('dialog').textContent()).toMatch(/A projector makes this bar .* long\./);
  expect(await page.getByLabel('The long bar measures').getAttribute('aria-invalid')).toBe('true');
  expect(await page.getByLabel('The upright bar measures').getAttribute('aria-invalid')).toBe(null);
  expect(await page.getByRole('button', { name: 'Show it at true size' }).isDisabled()).toBe(true);
  await context.close();
});

test('by keyboard alone: opened, measured, shown, and closed by Escape', async () => {
  const { context, page } = await ours.visit();
  await settled(page);
  await page.getByRole('button', { name: 'On a projector' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('dialog', { name: 'On a projector' }).waitFor();
  await tabTo(page, 'The long bar measures');
  await page.keyboard.type('20');
  await page.keyboard.press('Enter');
  await tabTo(page, 'What the projector shows');
  await drawn(page).waitFor({ timeout: 60_000 });
  const before = await page.locator('.projected').evaluate((e) => e.scrollTop);
  await page.keyboard.press('ArrowDown');
  await expect.poll(() => page.locator('.projected').evaluate((e) => e.scrollTop)).toBeGreaterThan(before);
  await page.keyboard.press('Escape');
  await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
  expect(await focused(page)).toBe('On a projector');
  await context.close();
});

for (const [width, height] of [
  [390, 844],
  [834, 1112],
  [1280, 800],
] as const)
  for (const colorScheme of ['light', 'dark'] as const)
    test(`there is no violation, all can be pressed, and it is dark: ${width} px, ${colorScheme}`, async () => {
      const { context, page, faults } = await ours.visit({ viewport: { width, height }, colorScheme });
      await settled(page);
      await open(page);
      const look = async (step: string): Promise<void> => {
        expect(await violations(page)).toEqual([]);
        const small = await page
          .locator('.projector :is(button, select, input.length, label.with-marks)')
          .evaluateAll((all) =>
            all
              .map((e) => ({ name: e.textContent, box: e.getBoundingClientRect() }))
              .filter(({ box }) => box.width > 0 && (box.width < 44 || box.height < 44))
              .map(({ name }) => name),
          );
        expect(small).toEqual([]);
        await page.screenshot({ path: join(PICTURES, `projector-${width}-${colorScheme}-${step}.png`) });
      };
      await look('bars');
      await page.getByLabel('The long bar measures').fill('24');
      await page.getByRole('button', { name: 'Show it at true size' }).click();
      await drawn(page).waitFor({ timeout: 60_000 });
      await look('shown');
      await page.getByRole('button', { name: 'Hide these' }).click();
      await look('bare');
      const shot = createCanvas(1, 1).getContext('2d');
      shot.drawImage(
        await loadImage(await page.screenshot({ clip: { x: 0, y: height - 2, width: 1, height: 1 } })),
        0,
        0,
      );
      expect(Math.max(...[...shot.getImageData(0, 0, 1, 1).data].slice(0, 3))).toBeLessThan(90);
      expect(faults).toEqual([]);
      await context.close();
    });
