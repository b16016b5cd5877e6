/** What she would like of the swags, by fields and sliders: the answer is there while the hand still moves. */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { forAllTests, idle, median, PICTURES, settled, slowness, tabTo } from './harness.ts';

const ours = forAllTests();

const how = (page: Page, label: string) => page.getByLabel(`${label}: how it is meant`, { exact: true });
const field = (page: Page, label: string) => page.getByLabel(label, { exact: true });
const planOf = (page: Page): Promise<string> =>
  page.evaluate(() => JSON.parse(sessionStorage.getItem('swagwright.window')!).plan as string);
const verdict = async (page: Page): Promise<string> =>
  ((await page.locator('.verdict').textContent()) ?? '').replace(/\s+/g, ' ');

/** What a hand waits for at the most, ms. */
const AT_ONCE = 100;

test('a slider’s move shows its answer at once, at the median', async () => {
  const { context, page, faults } = await ours.visit();
  await settled(page);
  mkdirSync(PICTURES, { recursive: true });
  for (const [label, key] of [
    ['Width of a swag', 'span'],
    ['Depth of a swag', 'depth'],
  ] as const) {
    await how(page, label).selectOption('about');
    await idle(page);
    const slider = page.getByLabel(`${label}, slider`);
    await slider.focus();
    await page.evaluate(() => {
      const times: number[] = [];
      let began = 0;
      document.addEventListener('input', () => {
        began ||= performance.now();
      });
      new MutationObserver(() => {
        if (began > 0) times.push(performance.now() - began);
        began = 0;
      }).observe(document.querySelector('#measure')!, {
        subtree: true,
        childList: true,
        characterData: true,
      });
      Object.assign(window, { times });
    });
    const said = new Set<string>();
    const slow: number[] = [];
    for (let i = 0; i < 30; i++) {
      await page.keyboard.press(i < 20 ? 'ArrowRight' : 'ArrowLeft');
      await page.waitForTimeout(150);
      said.add(await verdict(page));
      slow.push(await slowness(page));
    }
    const times = await page.evaluate(() => (window as unknown as { times: number[] }).times);
    writeFileSync(
      join(PICTURES, `wish-${key}.txt`),
      `${times.length} answers, median ${median(times).toFixed(1)} ms, slowest ${Math.max(...times).toFixed(1)} ms from slider to words, on a machine ${median(slow).toFixed(2)} times slower\n`,
    );
    // The verdict repeats what is asked, so every move has an answer of its own.
    expect(said.size, label).toBeGreaterThan(8);
    expect(times.length, label).toBeGreaterThan(8);
    expect(median(times) / median(slow), label).toBeLessThanOrEqual(AT_ONCE);
    await how(page, label).selectOption('any');
    await idle(page);
  }
  expect(faults).toEqual([]);
  await context.close();
});

test('each wish is said in fields, by keyboard alone, and undone as one step', async () => {
  const { context, page, faults } = await ours.visit();
  await settled(page);
  await how(page, 'Width of a swag').focus();
  await page.keyboard.type('abo');
  await idle(page);
  expect(await planOf(page)).toMatch(/\n {2}span: about 9\n/);
  await tabTo(page, 'Width of a swag');
  await page.keyboard.type('10 1/2');
  await tabTo(page, 'Width of a swag, slider');
  const slider = page.getByLabel('Width of a swag, slider');
  expect(await slider.getAttribute('aria-valuetext')).toBe('about 10 1/2 in');
  await page.keyboard.press('ArrowRight');
  expect(await slider.getAttribute('aria-valuetext')).toBe('about 10 5/8 in');
  expect(await field(page, 'Width of a swag').inputValue()).toBe('10 5/8');
  await tabTo(page, 'Depth of a swag: how it is meant');
  await page.keyboard.type('bet');
  expect(await field(page, 'Depth of a swag: from').inputValue()).toBe('3');
  expect(await field(page, 'Depth of a swag: to').inputValue()).toBe('4');
  await idle(page);
  expect(await planOf(page)).toMatch(/\n {2}span: about 10 5\/8\n {2}depth: 3 to 4\n/);
  expect(await verdict(page)).toMatch(/span [\d/ ]+(to [\d/ ]+)?in \(asked: about 10 5\/8 in\)/);
  expect(await verdict(page)).toMatch(/depth [\d/ ]+(to [\d/ ]+)?in \(asked: 3 to 4 in\)/);
  const depths = /depth ([\d/ ]+?)(?: to ([\d/ ]+?))? in \(asked/.exec(await verdict(page))!;
  for (const depth of depths.slice(1).filter((d) => d !== undefined)) {
    const deep = depth
      .trim()
      .split(' ')
      .reduce((sum, part) => {
        const [top, bottom = '1'] = part.split('/');
        return sum + Number(top) / Number(bottom);
      }, 0);
    expect(deep).toBeGreaterThanOrEqual(3);
    expect(deep).toBeLessThanOrEqual(4);
  }
  // The results say the same under their pictures.
  await expect
    .poll(async () => (await page.locator('.fit').first().textContent())?.replace(/\s+/g, ' '))
    .toContain('(asked: about 10 5/8 in)');
  // Typed, slid and chosen: all that was asked of the width is taken back by one step, after that of the depth.
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await planOf(page)).not.toContain('depth');
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await planOf(page)).not.toContain('span');
  expect(await how(page, 'Width of a swag').inputValue()).toBe('any');
  expect(faults).toEqual([]);
  await context.close();
});

test('counts, use and neighbours are asked for, and what cannot be had is told at its field', async () => {
  const { context, page, faults } = await ours.visit();
  await settled(page);
  const counts = async (): Promise<number[]> =>
    [...(await verdict(page)).matchAll(/(?:top|right|bottom|left): (\d+) swags/g)].map(([, n]) => Number(n));
  await how(page, 'Swags on a side').selectOption('odd');
  await idle(page);
  expect((await counts()).map((n) => n % 2)).toEqual([1, 1, 1, 1]);
  await how(page, 'Swags on a side').selectOption('exactly');
  await field(page, 'Swags on a side').fill('7');
  await idle(page);
  expect(await counts()).toEqual([7, 7, 7, 7]);
  await field(page, 'Swags on a side').fill('many');
  await field(page, 'Swags on a side').blur();
  await expect.poll(() => field(page, 'Swags on a side').getAttribute('aria-invalid')).toBe('true');
  expect(await page.locator('#wishes .wrong').textContent()).toMatch(/^Not a whole number\. It is .many./);
  await field(page, 'Swags on a side').fill('about seven');
  await field(page, 'Swags on a side').blur();
  await expect.poll(() => how(page, 'Swags on a side').inputValue()).toBe('about');
  expect(await field(page, 'Swags on a side').inputValue()).toBe('7');
  await how(page, 'Swags on a side').selectOption('any');
  await page.getByLabel('Neighbours', { exact: true }).selectOption('0');
  await how(page, 'Use of the border').selectOption('least');
  await field(page, 'Use of the border').fill('75');
  await idle(page);
  expect(await planOf(page)).toMatch(/gap: "?0"?\n/);
  expect(await planOf(page)).toContain('use: at least 75 %');
  expect(await verdict(page)).not.toContain('between neighbours');
  const used = /use (\d+)(?: to (\d+))? % \(asked: at least 75 %\)/.exec(await verdict(page));
  expect(Number(used?.[1])).toBeGreaterThanOrEqual(75);
  // Deeper than the border has room for.
  await how(page, 'Depth of a swag').selectOption('least');
  await field(page, 'Depth of a swag').fill('9');
  await field(page, 'Depth of a swag').blur();
  await idle(page);
  await expect.poll(() => field(page, 'Depth of a swag').getAttribute('aria-invalid')).toBe('true');
  expect(await verdict(page)).toMatch(/depth at least 9 in and .* cannot both be had/i);
  // In other units the same is asked; typed as it is said, it is meant so.
  await how(page, 'Depth of a swag').selectOption('any');
  await how(page, 'Width of a swag').selectOption('exactly');
  await field(page, 'Width of a swag').fill('nine or so');
  await field(page, 'Width of a swag').blur();
  await expect.poll(() => how(page, 'Width of a swag').inputValue()).toBe('about');
  await idle(page);
  await page.getByLabel('Figures in').selectOption('cm');
  expect(await field(page, 'Width of a swag').inputValue()).toBe('22.86');
  expect(faults).toEqual([]);
  await context.close();
});
