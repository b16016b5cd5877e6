/** Her fabric and thread on the page: what is picked is seen at once, kept, and in the files that she shows. */

import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { overflow, violations } from './axe.ts';
import { drop, forAllTests, idle, PICTURES, settled } from './harness.ts';

const ours = forAllTests();
beforeAll(() => {
  mkdirSync(PICTURES, { recursive: true });
});

/** A colour input gives what was picked as a whole. */
const pick = (page: Page, label: string, colour: string): Promise<void> =>
  page.getByLabel(label, { exact: true }).fill(colour);

const colourOf = (page: Page, selector: string, property: 'fill' | 'stroke'): Promise<string> =>
  page
    .locator(selector)
    .first()
    .evaluate((element, name) => getComputedStyle(element)[name], property);

const saved = async (
  page: Page,
  button: string,
): Promise<{ readonly name: string; readonly bytes: Buffer }> => {
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    page.getByRole('button', { name: button }).click(),
  ]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
};

const colourAt = async (png: Buffer, x: number, y: number): Promise<string> => {
  const image = await loadImage(png);
  const context = createCanvas(image.width, image.height).getContext('2d');
  context.drawImage(image, 0, 0);
  const [r, g, b] = context.getImageData(
    Math.round(x * image.width),
    Math.round(y * image.height),
    1,
    1,
  ).data;
  return `#${[r!, g!, b!].map((v) => v.toString(16).padStart(2, '0')).join('')}`;
};

const SIZES = { 390: 844, 834: 1112, 1280: 800 } as const;
const CLOTHS = {
  light: { fabric: '#e9dcc3', middle: '#f7f1e4', thread: '#7a2f3c' },
  dark: { fabric: '#1d2440', middle: '#2f3a5c', thread: '#f2d36b' },
} as const;

for (const [width, height] of Object.entries(SIZES))
  for (const colorScheme of ['light', 'dark'] as const)
    test(`on light and on dark cloth there is no violation, and nothing is cut off: ${width} px, ${colorScheme}`, async () => {
      const { context, page, faults } = await ours.visit({
        viewport: { width: Number(width), height },
        colorScheme,
      });
      await settled(page);
      for (const [name, { fabric, middle, thread }] of Object.entries(CLOTHS)) {
        await pick(page, 'Fabric', fabric);
        await pick(page, 'The quilt in it', middle);
        await pick(page, 'Thread', thread);
        await idle(page);
        expect(await violations(page)).toEqual([]);
        expect(await overflow(page)).toBeLessThanOrEqual(0);
        const to = (what: string) => ({
          path: join(PICTURES, `colours-${width}-${colorScheme}-${name}-${what}.png`),
        });
        await page.locator('.quilt-picture').scrollIntoViewIfNeeded();
        await page.locator('.quilt-picture').screenshot(to('quilt'));
        await page.locator('#colours').screenshot(to('panel'));
      }
      const small = await page
        .locator('#colours :is(button, input[type=color], select)')
        .evaluateAll(
          (all) =>
            all.map((e) => e.getBoundingClientRect()).filter(({ width: w, height: h }) => w < 44 || h < 40)
              .length,
        );
      expect(small).toBe(0);
      expect(faults).toEqual([]);
      await context.close();
    });

test('a colour is seen at once, can be taken back, and is there after a reload', async () => {
  const { context, page } = await ours.visit();
  await settled(page);
  expect(await page.locator('.quilt-picture .fabric').count()).toBe(0);
  await pick(page, 'Fabric', '#16324f');
  await pick(page, 'Thread', '#ffcc00');
  expect(await colourOf(page, '.quilt-picture rect.fabric', 'fill')).toBe('rgb(22, 50, 79)');
  // The middle is as the fabric until it is chosen.
  expect(await colourOf(page, '.quilt-picture path.middle', 'fill')).toBe('rgb(22, 50, 79)');
  expect(await colourOf(page, '.quilt-picture .ink.stitch', 'stroke')).toBe('rgb(255, 204, 0)');
  await idle(page);
  await page.reload();
  await settled(page);
  expect(await colourOf(page, '.quilt-picture .ink.stitch', 'stroke')).toBe('rgb(255, 204, 0)');
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await colourOf(page, '.quilt-picture .ink.stitch', 'stroke')).toBe('rgb(27, 42, 65)');
  await page.getByRole('button', { name: 'Colours of the page' }).click();
  await expect.poll(() => page.locator('.quilt-picture .fabric').count()).toBe(0);
  await context.close();
});

test('while she picks nothing is worked out anew, and thread that is lost on its cloth is told', async () => {
  const { context, page } = await ours.visit();
  await settled(page);
  const d = () => page.locator('.quilt-picture .ink.stitch').first().getAttribute('d');
  const before = await d();
  await pick(page, 'Fabric', '#303030');
  await pick(page, 'Thread', '#404040');
  await expect
    .poll(() => page.locator('#colours').textContent())
    .toMatch(
      /The thread can hardly be told from the fabric in the picture: their contrast is 1\.2 to 1, and lines are easy to see from 3 to 1 \(WCAG 2\.2, 1\.4\.11\)\./,
    );
  await pick(page, 'Thread', '#ffffff');
  await expect.poll(() => page.locator('#colours').textContent()).not.toMatch(/hardly/);
  await idle(page);
  expect(await d()).toBe(before);
  await context.close();
});

describe('a picture to show', () => {
  test('is a PNG in her colours, without marks until they are asked for', async () => {
    const { context, page, faults } = await ours.visit();
    await settled(page);
    await pick(page, 'Fabric', '#16324f');
    await pick(page, 'The quilt in it', '#f4efe6');
    const { name, bytes } = await saved(page, 'Picture (PNG)');
    expect(name).toMatch(/-colours\.png$/);
    expect(bytes.readUInt32BE(16)).toBe(2400);
    expect(await colourAt(bytes, 0.5, 0.5)).toBe('#f4efe6');
    expect(await colourAt(bytes, 0.002, 0.5)).toBe('#16324f');
    await expect
      .poll(() => page.locator('#colours [role=status]').allTextContents())
      .toContainEqual(
        expect.stringMatching(
          /is with your downloads: the whole border, in its colours of fabric and thread, a picture of 2400 by \d+ pixels/,
        ),
      );
    await page.getByLabel('With marks and measures').check();
    const marked = await saved(page, 'Picture (PNG)');
    expect(marked.bytes.equals(bytes)).toBe(false);
    expect(faults).toEqual([]);
    await context.close();
  });

  test('is the very SVG that the command writes', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    await pick(page, 'Thread', '#ffcc00');
    const { name, bytes } = await saved(page, 'Drawing (SVG)');
    expect(name).toMatch(/-colours\.svg$/);
    const svg = bytes.toString('utf8');
    // The first plan's border is 60 1/8 by 72 1/4 in inside and 6 in wide: 72 1/8 by 84 1/4 in, and 5 mm of ground beyond.
    const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(svg)!;
    expect(Number(width)).toBeGreaterThan(72.125 * 25.4 + 10);
    expect(Number(width)).toBeLessThan(72.125 * 25.4 + 12);
    expect(Number(height)).toBeGreaterThan(84.25 * 25.4 + 10);
    expect(svg).toContain('stroke="#ffcc00"');
    expect(svg).toContain('background: #efe6d6');
    await context.close();
  });

  test('is of the whole quilt or of one part', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    await drop(
      page,
      'quilt.yaml',
      readFileSync(join(import.meta.dirname, '../../../samples/lathe-street-quilt.yaml'), 'utf8'),
    );
    await page.getByRole('button', { name: 'outer border' }).click();
    await settled(page);
    await pick(page, 'Fabric', '#16324f');
    await pick(page, 'The quilt’s middle', '#f4efe6');
    await expect.poll(() => page.locator('.quilt [data-part]').count(), { timeout: 60_000 }).toBe(4);
    await idle(page);
    await page.locator('.quilt-picture').screenshot({ path: join(PICTURES, 'colours-parts.png') });
    const whole = (await saved(page, 'Drawing (SVG)')).bytes.toString('utf8');
    expect(whole).toContain('data-part="wreath"');
    await page.getByLabel('The picture shows').selectOption('part');
    const part = (await saved(page, 'Drawing (SVG)')).bytes.toString('utf8');
    expect(part).not.toContain('data-part="wreath"');
    await context.close();
  });
});
