/** For everyone: no violation that axe-core finds, nothing cut off at any width, pictures of every state to look at. */

import { mkdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { FIRST_PLAN } from '../../../src/page/plan/state.ts';
import { overflow, violations } from './axe.ts';
import { BUILT, drop, forAllTests, idle, PICTURES, settled, unversioned } from './harness.ts';

const ours = forAllTests();
beforeAll(() => {
  mkdirSync(PICTURES, { recursive: true });
});

const QUILT = join(import.meta.dirname, '../../../samples/lathe-street-quilt.yaml');

const SIZES = { phone: [390, 844], tablet: [820, 1180], desktop: [1366, 900] } as const;

for (const [name, [width, height]] of Object.entries(SIZES))
  for (const colorScheme of ['light', 'dark'] as const)
    describe(`${name}, ${colorScheme}`, () => {
      test('has no violation at first, filled and in trouble; and is photographed', async () => {
        const { context, page, faults } = await ours.visit({
          viewport: { width, height },
          colorScheme,
        });
        const picture = (step: string) =>
          page.screenshot({ path: join(PICTURES, `${name}-${colorScheme}-${step}.png`), fullPage: true });
        await settled(page);
        expect(await violations(page)).toEqual([]);
        await picture('first');
        // Everything unfolded, with fills.
        await page.getByText('Fills: feathers, pebbles').click();
        await expect
          .poll(() => page.getByLabel('Inside the swags', { exact: true }).locator('option').count(), {
            timeout: 60_000,
          })
          .toBeGreaterThan(3);
        await page.getByLabel('Inside the swags', { exact: true }).selectOption('feather');
        await page.getByLabel('Round the swags', { exact: true }).selectOption('crosshatch');
        await idle(page);
        await page.locator('.quilt .ink.fill').first().waitFor({ state: 'attached', timeout: 60_000 });
        await page.evaluate(() => {
          for (const d of document.querySelectorAll('details')) d.open = true;
        });
        await idle(page);
        expect(await violations(page)).toEqual([]);
        await picture('filled');
        await page.getByRole('button', { name: 'True size on the screen' }).click();
        expect(await violations(page)).toEqual([]);
        await page.getByRole('button', { name: 'It matches my card' }).click();
        expect(await violations(page)).toEqual([]);
        await page.getByRole('button', { name: 'Close' }).click();
        // A slip of the pen.
        await page.getByLabel('Top side').fill('6000');
        await page.getByLabel('Top side').blur();
        await page.locator('.verdict.wrong').waitFor();
        expect(await violations(page)).toEqual([]);
        await picture('trouble');
        expect(faults).toEqual([]);
        await context.close();
      });
    });

for (const [name, colorScheme] of [
  ['phone', 'dark'],
  ['desktop', 'light'],
] as const)
  test(`a quilt with parts has no violation, and is not cut off: ${name}, ${colorScheme}`, async () => {
    const [width, height] = SIZES[name];
    const { context, page, faults } = await ours.visit({
      viewport: { width, height },
      colorScheme,
    });
    await settled(page);
    await drop(page, 'quilt.yaml', readFileSync(QUILT, 'utf8'));
    await page.getByRole('button', { name: 'outer border' }).click();
    await settled(page);
    await expect.poll(() => page.locator('.quilt [data-part]').count(), { timeout: 60_000 }).toBe(4);
    await page.locator('.quilt .open-part .ink.fill').first().waitFor({ state: 'attached', timeout: 60_000 });
    await idle(page);
    expect(await violations(page)).toEqual([]);
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    await page.screenshot({ path: join(PICTURES, `${name}-${colorScheme}-parts.png`), fullPage: true });
    expect(faults).toEqual([]);
    await context.close();
  });

describe('room for everyone', () => {
  test('nothing is cut off at 320 px (WCAG 2.2, 1.4.10), nor with text twice as large', async () => {
    const { context, page } = await ours.visit({ viewport: { width: 320, height: 640 } });
    await settled(page);
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    await page.screenshot({ path: join(PICTURES, 'narrow.png'), fullPage: true });
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.addStyleTag({ content: '' }).catch(() => undefined);
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    await page.screenshot({ path: join(PICTURES, 'large-text.png'), fullPage: true });
    await context.close();
  });

  test('everything to press is at least 24 px each way (WCAG 2.2, 2.5.8)', async () => {
    const { context, page } = await ours.visit({
      viewport: { width: 390, height: 844 },
      hasTouch: true,
    });
    await settled(page);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('button, select, summary, label.template, label.fit, input.length')]
        .map((e) => ({ box: e.getBoundingClientRect(), text: (e.textContent ?? '').slice(0, 40) }))
        .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
        .map(({ text, box }) => `${text} ${box.width} ${box.height}`),
    );
    expect(small).toEqual([]);
    await context.close();
  });

  test('nothing moves for those who want no motion', async () => {
    const { context, page } = await ours.visit({ reducedMotion: 'reduce' });
    await settled(page);
    await page.getByLabel('Border width').fill('7');
    const moving = await page.evaluate(() => document.getAnimations().length);
    expect(moving).toBe(0);
    await context.close();
  });

  test('nothing that is drawn lies outside its picture', async () => {
    // A frame whose channels have arcs of a few nanometres: a browser would make whole circles of them.
    const plan = FIRST_PLAN.replace(
      /layout:.*(?=channels)/s,
      'layout: { frame: { block: { width: 9, height: 9 }, clearance: 1/2, within: 16 } }\n',
    );
    const { context, page } = await ours.visit();
    await settled(page);
    await drop(page, 'block.yaml', plan);
    await page.getByLabel('Block width').waitFor();
    await idle(page);
    const outside = await page.evaluate(() =>
      [...document.querySelectorAll<SVGGraphicsElement>('svg.drawn path.ink')]
        .filter((path) => {
          const { x, y, width, height } = path.ownerSVGElement!.viewBox.baseVal;
          const box = path.getBBox();
          return (
            box.x < x - width / 2 ||
            box.y < y - height / 2 ||
            box.x + box.width > x + 1.5 * width ||
            box.y + box.height > y + 1.5 * height
          );
        })
        .map((path) => path.getAttribute('class')),
    );
    expect(outside).toEqual([]);
    await context.close();
  });

  test('a screen reader hears the design in words', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    const picture = page.locator('svg.quilt');
    expect(await picture.getAttribute('aria-label')).toMatch(/top: \d+ swags of .* deep; right: \d+ swags/);
    await page.getByLabel('Border width').fill('8');
    await idle(page);
    expect(await page.locator('.unseen[role=status]').textContent()).toMatch(
      /swags.*wide.*deep\. \d+ ways fit/,
    );
    await context.close();
  });

  test('inches become centimetres without changing a length', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    const before = await page.locator('.fit').first().getAttribute('class');
    const swags = await page.locator('.quilt-middle .big').textContent();
    await page.getByLabel('Figures in').selectOption('cm');
    await idle(page);
    // 60.125 times 2.54 is 152.7175, shown to a tenth of a millimetre; 1/4 in is 0.635 cm, 1/2 in 1.27 cm.
    expect(await page.getByLabel('Top side').inputValue()).toBe('152.72');
    expect(await page.getByLabel('Clear of both seams').inputValue()).toBe('1.27');
    for (const text of await page
      .locator('input.length')
      .evaluateAll((all) => all.map((i) => (i as HTMLInputElement).value)))
      expect(text).not.toMatch(/in|\//);
    for (const words of await page.locator('.template .about').allTextContents())
      expect(words).toMatch(/ cm of edge/);
    await expect.poll(() => page.locator('#words').textContent()).not.toMatch(/\d\sin\b/);
    expect(await page.locator('.quilt-middle .big').textContent()).toBe(swags);
    expect(await page.locator('.verdict').textContent()).toMatch(/\d+ swags of [\d.]+\s(mm|cm)/);
    expect(before).toBe('fit');
    // Coming to a field and leaving it changes nothing, and the way back is exact.
    await page.getByLabel('Top side').focus();
    await page.getByLabel('Top side').blur();
    await page.getByLabel('Figures in').selectOption('in');
    await idle(page);
    expect(await page.getByLabel('Top side').inputValue()).toBe('60 1/8');
    expect(await page.getByLabel('Foot clearance').inputValue()).toBe('1/4');
    await context.close();
  });
});

describe('how much is loaded', () => {
  test('the first load is at most 250 KB compressed; fonts, fills, PDF and traced pictures come when they are needed', async () => {
    // Service workers fetch the rest in the background; what the page itself needs is counted without one.
    const { context, page, asked } = await ours.visit({ serviceWorkers: 'block' });
    await settled(page);
    const names = [...new Set(asked.map((url) => unversioned(url).slice(ours.url().length) || 'index.html'))];
    const size = names.reduce(
      (sum, name) => sum + gzipSync(readFileSync(join(BUILT, name)), { level: 9 }).length,
      0,
    );
    expect(names).toEqual(
      expect.arrayContaining(['index.html', 'shared.js', 'page.js', 'page.css', 'quick.js']),
    );
    expect(names).not.toContain('thorough.js');
    expect(names).not.toContain('fonts.js');
    expect(names).not.toContain('trace.js');
    expect(names).not.toContain('glass.js');
    expect(names).not.toContain('projector.js');
    expect(names).not.toContain('class.js');
    expect(names).not.toContain('fills.js');
    expect(size).toBeLessThanOrEqual(250_000);
    expect(statSync(join(BUILT, 'thorough.js')).size).toBeGreaterThan(250_000);
    // The packages that both scripts need are loaded once: these words are of the one that reads plans.
    const reading = 'Implicit keys need to be on a single line';
    const withReader = names.filter((name) => readFileSync(join(BUILT, name), 'utf8').includes(reading));
    expect(withReader).toEqual(['shared.js']);
    await context.close();
  });
});

describe('what fits', () => {
  test('several stand in sight, and “Show more” shows the next ones and says how many there are', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    const inSight = (): Promise<readonly number[]> =>
      page.locator('.fit').evaluateAll((all) =>
        all.flatMap((fit, i) => {
          const [box, list] = [fit.getBoundingClientRect(), fit.parentElement!.getBoundingClientRect()];
          return box.top >= list.top - 1 && box.bottom <= list.bottom + 1 ? [i + 1] : [];
        }),
      );
    expect((await inSight()).length).toBeGreaterThanOrEqual(4);
    const count = await page.locator('.fit').count();
    await page.getByRole('button', { name: /^Show \d+ more$/ }).click();
    await expect.poll(() => page.locator('.fit').count()).toBeGreaterThan(count);
    expect(await page.locator('#fits').textContent()).toMatch(
      new RegExp(`${await page.locator('.fit').count()} of \\d+ are shown`),
    );
    await expect.poll(inSight).toContain(count + 1);
    await context.close();
  });
});

describe('every button can be read', () => {
  /** WCAG 2.2, 1.4.3: the contrast of text and what it stands on, by relative luminance. */
  const contrast = (page: Page, name: string): Promise<number> =>
    page.getByRole('button', { name }).evaluate((button) => {
      const luminance = (color: string): number => {
        const [r = 0, g = 0, b = 0] = (color.match(/[\d.]+/g) ?? []).map((v) => {
          const c = Number(v) / 255;
          return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
        });
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      const style = getComputedStyle(button);
      const [a, b] = [luminance(style.color), luminance(style.backgroundColor)];
      return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    });

  for (const colorScheme of ['light', 'dark'] as const)
    test(`under the mouse, pressed and with the focus, ${colorScheme}`, async () => {
      const { context, page } = await ours.visit({ colorScheme });
      await settled(page);
      for (const name of ['True-size sheets', 'Marking card', 'Save plan', 'Redo']) {
        const button = page.getByRole('button', { name });
        await button.hover({ force: true });
        expect(await contrast(page, name), name).toBeGreaterThanOrEqual(4.5);
        if (name === 'Redo') continue;
        await page.mouse.down();
        expect(await contrast(page, name), `${name}, pressed`).toBeGreaterThanOrEqual(4.5);
        await page.mouse.move(0, 0);
        await page.mouse.up();
        await button.focus();
        expect(await contrast(page, name), `${name}, focused`).toBeGreaterThanOrEqual(4.5);
      }
      await context.close();
    });
});

describe('true size', () => {
  test('the check square is 2 in by the card that was laid on, at any zoom, and is remembered', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    await page.getByRole('button', { name: 'True size on the screen' }).click();
    const card = page.getByRole('img', { name: 'The outline of a bank card' });
    await page.getByLabel('Width of the drawn card').focus();
    for (let i = 0; i < 30; i++) await page.keyboard.press('ArrowRight');
    const width = (await card.boundingBox())!.width;
    await page.getByRole('button', { name: 'It matches my card' }).click();
    const square = page.getByRole('img', { name: 'Check square' });
    // ISO/IEC 7810, ID-1: 85.60 mm; 2 in are 50.8 mm.
    expect((await square.boundingBox())!.width).toBeCloseTo((width * 50.8) / 85.6, 1);
    // The swag stands below the square, where nothing pushes it out of the screen.
    const drawn = (await page.locator('.glass svg.exact').boundingBox())!;
    const head = (await square.boundingBox())!;
    expect(drawn.y).toBeGreaterThanOrEqual(head.y + head.height);
    expect(await page.locator('.true-size').textContent()).toMatch(/slide it along/);
    // On the whole screen all is as large, and a browser's own way out of it leaves the dialog open.
    await page.getByRole('button', { name: 'Fill the screen' }).click();
    await page.waitForFunction(() => document.fullscreenElement?.querySelector('.glass svg.exact'));
    expect((await square.boundingBox())!.width).toBeCloseTo((width * 50.8) / 85.6, 1);
    await page.evaluate(() => document.exitFullscreen());
    await page.getByRole('button', { name: 'Close' }).waitFor();
    await page.reload();
    await settled(page);
    await page.getByRole('button', { name: 'True size on the screen' }).click();
    expect((await square.boundingBox())!.width).toBeCloseTo((width * 50.8) / 85.6, 1);
    await context.close();
  });
});
