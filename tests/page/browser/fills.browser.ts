/** The figures of a fill, by slider, by keyboard and typed: the drawing follows the hand, and the plan says what she set. */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { violations } from './axe.ts';
import { focused, forAllTests, idle, median, PICTURES, settled, slowness } from './harness.ts';

const ours = forAllTests();

/** A frame of a screen with 60 of them a second, ms. */
const FRAME = 16;

const planOf = (page: Page): Promise<string> =>
  page.evaluate(() => JSON.parse(sessionStorage.getItem('swagwright.window')!).plan as string);

const filledWith = async (page: Page, where: string, fill: string): Promise<Locator> => {
  await page.getByLabel(where, { exact: true }).selectOption(fill);
  await idle(page);
  await page.locator('.quilt .ink.fill').first().waitFor({ state: 'attached', timeout: 60_000 });
  return page.getByRole('group', { name: new RegExp(`^${fill} `) });
};

const unfolded = async (page: Page): Promise<void> => {
  await settled(page);
  await page.getByText('Fills: feathers, pebbles').click();
  await expect
    .poll(() => page.getByLabel('Inside the swags', { exact: true }).locator('option').count(), {
      timeout: 60_000,
    })
    .toBeGreaterThan(3);
};

const drawn = (page: Page): Promise<string> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.quilt .ink.fill')].map((p) => p.getAttribute('d')).join('\n'),
  );

test('while a hand drags a spacing the drawing follows, nothing goes blank, and the screen stays within a frame', async () => {
  const { context, page, faults } = await ours.visit();
  await unfolded(page);
  await page.getByLabel('Inside the swags', { exact: true }).selectOption('feather');
  const group = await filledWith(page, 'Round the swags', 'crosshatch');
  const slider = group.getByRole('slider', { name: 'Spacing, slider' });
  expect(await slider.getAttribute('aria-valuetext')).toBe('1/4 in');
  await slider.scrollIntoViewIfNeeded();
  const box = (await slider.boundingBox())!;
  await page.evaluate(() => {
    const seen = { drawings: new Set<string>(), blanks: 0, handled: [] as number[], frames: [] as number[] };
    Object.assign(window, { seen });
    new MutationObserver(() => {
      const paths = [...document.querySelectorAll('.quilt .ink.fill')];
      if (paths.length === 0) seen.blanks += 1;
      seen.drawings.add(paths.map((p) => p.getAttribute('d')).join('\n'));
    }).observe(document.querySelector('#measure')!, {
      subtree: true,
      childList: true,
      attributes: true,
      attributeFilter: ['d'],
    });
    let began = 0;
    document.addEventListener(
      'input',
      () => {
        began = performance.now();
        // What follows the hand in the page itself has been done when the event has gone all its way.
        queueMicrotask(() => setTimeout(() => seen.handled.push(performance.now() - began)));
      },
      { capture: true },
    );
    let last = performance.now();
    const frame = (): void => {
      const now = performance.now();
      seen.frames.push(now - last);
      last = now;
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
  // From where the thumb stands, at a quarter of an inch of the inch and a half.
  const y = box.y + box.height / 2;
  const x = (share: number): number => box.x + 8 + (box.width - 16) * share;
  const slow = [await slowness(page)];
  await page.mouse.move(x(4 / 44), y);
  await page.mouse.down();
  const figures = new Set<string>();
  for (let i = 0; i <= 40; i++) {
    await page.mouse.move(x(0.1 + (0.8 * i) / 40), y);
    await page.waitForTimeout(60);
    figures.add((await slider.getAttribute('aria-valuetext')) ?? '');
  }
  // The hand still holds it: what is drawn by now was drawn while she dragged.
  const dragged = await page.evaluate(() => {
    const { drawings, blanks, handled, frames } = (
      window as unknown as {
        seen: { drawings: Set<string>; blanks: number; handled: number[]; frames: number[] };
      }
    ).seen;
    return { drawings: drawings.size, blanks, handled: [...handled], frames: [...frames] };
  });
  slow.push(await slowness(page));
  await page.mouse.up();
  await idle(page);
  mkdirSync(PICTURES, { recursive: true });
  writeFileSync(
    join(PICTURES, 'fill-spacing.txt'),
    `${figures.size} figures and ${dragged.drawings} drawings in one drag, ${median(dragged.handled).toFixed(1)} ms of the page’s own for a move at the median (slowest ${Math.max(...dragged.handled).toFixed(1)} ms), ${median(dragged.frames).toFixed(1)} ms from frame to frame (slowest ${Math.max(...dragged.frames).toFixed(1)} ms)\n`,
  );
  expect(figures.size).toBeGreaterThan(20);
  expect(dragged.drawings).toBeGreaterThan(2);
  expect(dragged.blanks).toBe(0);
  // No frame is missed, at the median.
  expect(median(dragged.frames)).toBeLessThan(1.5 * FRAME * Math.min(...slow));
  // The last figure has its drawing, and the plan says it beside what it said before.
  expect(await planOf(page)).toMatch(
    /background: \{ kind: crosshatch, spacing: 1 \d+\/\d+ \}|background:\n {4}kind: crosshatch\n {4}spacing: 1 \d+\/\d+\n/,
  );
  const wide = await drawn(page);
  // One drag is one step.
  await page.getByRole('button', { name: 'Undo' }).click();
  await idle(page);
  expect(await slider.getAttribute('aria-valuetext')).toBe('1/4 in');
  expect(await planOf(page)).toMatch(/background: crosshatch\n/);
  expect((await drawn(page)).length).toBeGreaterThan(wide.length);
  expect(faults).toEqual([]);
  await context.close();
});

test('each figure is set by keyboard and typed, and only those that the fill takes are there', async () => {
  const { context, page, faults } = await ours.visit();
  await unfolded(page);
  const inside = await filledWith(page, 'Inside the swags', 'stipple');
  expect(await inside.getByRole('slider').count()).toBe(2);
  expect(await inside.getByLabel('Angle', { exact: true }).count()).toBe(0);
  const before = await drawn(page);
  await inside.getByLabel('Spacing', { exact: true }).focus();
  await page.keyboard.type('3/8');
  await page.keyboard.press('Tab');
  expect(await focused(page)).toBe('Spacing, slider');
  await page.keyboard.press('ArrowRight');
  expect(await inside.getByLabel('Spacing', { exact: true }).inputValue()).toBe('13/32');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  expect(await focused(page)).toBe('Seed, slider');
  await page.keyboard.press('ArrowRight');
  await idle(page);
  expect(await planOf(page)).toContain('spacing: 13/32');
  expect(await planOf(page)).toContain('seed: 2');
  const other = await drawn(page);
  expect(other).not.toBe(before);
  await inside.getByLabel('Seed', { exact: true }).fill('7');
  await idle(page);
  expect(await drawn(page)).not.toBe(other);
  // A figure that is none is told at its field, and goes no farther.
  await inside.getByLabel('Seed', { exact: true }).fill('seven');
  await inside.getByLabel('Seed', { exact: true }).blur();
  expect(await inside.locator('.wrong').textContent()).toMatch(/^Write a whole number from 0/);
  expect(await planOf(page)).toContain('seed: 7');
  await inside.getByLabel('Seed', { exact: true }).fill('7');
  // Too fine is told there as well, with the finest that is taken.
  await inside.getByLabel('Spacing', { exact: true }).fill('1/32');
  await idle(page);
  expect(await inside.locator('.wrong').textContent()).toMatch(/too fine for .*stipple.*at least/i);
  // What the plan cannot say is told there too, and nothing folds up.
  await inside.getByLabel('Spacing', { exact: true }).fill('13');
  await expect
    .poll(() => inside.locator('.wrong').textContent())
    .toMatch(/^The spacing of a fill cannot be 13: it must be at most 12\sin\.$/);
  await inside.getByLabel('Spacing', { exact: true }).fill('');
  await idle(page);
  expect(await planOf(page)).not.toContain('spacing');
  const lines = await filledWith(page, 'Round the swags', 'lines');
  const angle = lines.getByRole('slider', { name: 'Angle, slider' });
  expect(await angle.getAttribute('aria-valuetext')).toBe('90 °');
  expect(await lines.getByLabel('Seed', { exact: true }).count()).toBe(0);
  await angle.focus();
  await page.keyboard.press('ArrowLeft');
  await idle(page);
  expect(await planOf(page)).toContain('angle: 85');
  // One figure for all channels that have the same fill.
  const pearls = await filledWith(page, 'In the channels', 'pearls');
  expect(await pearls.getByRole('slider').count()).toBe(1);
  await pearls.getByLabel('Spacing', { exact: true }).fill('3/16');
  await idle(page);
  expect(await planOf(page)).toContain(
    'channels: [{ kind: pearls, spacing: 3/16 }, { kind: pearls, spacing: 3/16 }]',
  );
  expect(await page.locator('.verdict.wrong').count()).toBe(0);
  expect(await violations(page)).toEqual([]);
  await page.screenshot({ path: join(PICTURES, 'fill-figures.png'), fullPage: true });
  expect(faults).toEqual([]);
  await context.close();
});

test('the large swag of a corner is never filled with the lines of a side', async () => {
  const { context, page } = await ours.visit();
  await unfolded(page);
  await filledWith(page, 'Inside the swags', 'feather');
  await idle(page);
  await page.locator('.board .ink.fill').waitFor({ state: 'attached', timeout: 60_000 });
  await page.evaluate(() => {
    const seen = { corners: 0, strays: 0 };
    Object.assign(window, { seen });
    const board = document.querySelector('.board')!.parentElement!;
    new MutationObserver(() => {
      const picture = board.querySelector<SVGSVGElement>('svg.board');
      if (!picture || !/corner/.test(picture.querySelector('title')!.textContent!)) return;
      seen.corners += 1;
      const fill = picture.querySelector<SVGGraphicsElement>('.ink.fill');
      const [own, all] = [fill?.getBoundingClientRect(), picture.getBoundingClientRect()];
      if (own && (own.left < all.left - 2 || own.bottom > all.bottom + 2)) seen.strays += 1;
    }).observe(board, { subtree: true, childList: true, attributes: true, characterData: true });
  });
  await page.getByLabel('On the', { exact: true }).selectOption({ label: 'corner' });
  await idle(page);
  await page.locator('.board .ink.fill').waitFor({ state: 'attached', timeout: 60_000 });
  const seen = await page.evaluate(
    () =>
      (window as unknown as { readonly seen: { readonly corners: number; readonly strays: number } }).seen,
  );
  expect(seen.corners).toBeGreaterThan(0);
  expect(seen.strays).toBe(0);
  await context.close();
});
