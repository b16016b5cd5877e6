/** Where things stand: what stays in sight, what is one row, and what a finger finds. Measured as boxes. */

import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { violations } from './axe.ts';
import { forAllTests, idle, missedRound, settled } from './harness.ts';

const ours = forAllTests();

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const boxOf = async (page: Page, selector: string): Promise<Box> =>
  (await page.locator(selector).first().boundingBox())!;

/** How much of the window's height (a share) the panels of a column cover. */
const covered = (page: Page, column: string): Promise<number> =>
  page.evaluate((selector) => {
    const boxes = [...document.querySelectorAll(`${selector} .panel`)].map((e) => e.getBoundingClientRect());
    const sum = boxes.reduce(
      (all, b) => all + Math.max(0, Math.min(innerHeight, b.bottom) - Math.max(0, b.top)),
      0,
    );
    return sum / innerHeight;
  }, column);

/** The window of a browser on a screen of 1280 by 800, whole and with what browsers put above it. */
const HEIGHTS = [800, 660] as const;

for (const height of HEIGHTS)
  describe(`at 1280 by ${height}`, () => {
    test('the header is one row, and the quilt and its figures stay in sight all the way to the paper', async () => {
      const { context, page, faults } = await ours.visit({ viewport: { width: 1280, height } });
      await settled(page);
      expect((await boxOf(page, 'header')).height).toBeLessThan(70);
      const tops = await page.locator('header :is(h1, button, select, #title)').evaluateAll((all) =>
        all
          .map((e) => e.getBoundingClientRect())
          .filter(({ width }) => width > 0)
          .map(({ top, height }) => top + height / 2),
      );
      expect(tops.length).toBeGreaterThanOrEqual(10);
      expect(Math.max(...tops) - Math.min(...tops)).toBeLessThan(10);
      for (const id of ['templates', 'wishes', 'fits', 'swag', 'quilting', 'words', 'paper']) {
        for (const block of ['start', 'end'] as const) {
          await page.evaluate(
            ([to, at]) => document.getElementById(to)!.scrollIntoView({ block: at, behavior: 'instant' }),
            [id, block] as const,
          );
          const picture = await boxOf(page, 'svg.quilt');
          const where = `${id}, ${block}`;
          expect(picture.y, where).toBeGreaterThanOrEqual(0);
          expect(picture.y + picture.height, where).toBeLessThanOrEqual(height);
          expect(picture.height, where).toBeGreaterThan(180);
          for (const side of ['top', 'right', 'bottom', 'left']) {
            const field = await boxOf(page, `.at-${side} input`);
            expect(field.y + field.height, `${side}, ${where}`).toBeLessThanOrEqual(height);
          }
          expect(await covered(page, '.sight'), where).toBeGreaterThan(0.7);
          expect(await covered(page, '.way'), where).toBeGreaterThan(0.7);
        }
      }
      // What is said in the picture's middle stays in it.
      const [middle, picture] = [await boxOf(page, '.quilt-middle'), await boxOf(page, 'svg.quilt')];
      const words = await page.locator('.quilt-middle p').evaluateAll((all) =>
        all
          .map((e) => e.getBoundingClientRect())
          .filter(({ height }) => height > 0)
          .map(({ top, bottom }) => ({ top, bottom })),
      );
      for (const { top, bottom } of words) {
        expect(top).toBeGreaterThanOrEqual(picture.y);
        expect(bottom).toBeLessThanOrEqual(picture.y + picture.height);
      }
      expect(middle.height).toBeGreaterThan(0);
      // Each choice has its picture, two beside one another and not three.
      const fits = await page
        .locator('.fit')
        .evaluateAll((all) => all.map((e) => e.getBoundingClientRect().width));
      expect(Math.min(...fits)).toBeGreaterThan(230);
      expect(faults).toEqual([]);
      await context.close();
    });
  });

describe('on a telephone', () => {
  const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true } as const;

  test('the header is one row of a few buttons, and “More” opens the others', async () => {
    const { context, page, faults } = await ours.visit(PHONE);
    await settled(page);
    expect((await boxOf(page, 'header')).height).toBeLessThan(64);
    const more = page.getByRole('button', { name: 'More', exact: true });
    const save = page.getByRole('button', { name: 'Save plan' });
    expect(await save.isVisible()).toBe(false);
    await more.tap();
    expect(await more.getAttribute('aria-expanded')).toBe('true');
    expect(await violations(page)).toEqual([]);
    for (const name of ['New', 'Open …', 'Keep design', 'Save plan', 'Copy link']) {
      const button = page.getByRole('button', { name, exact: true });
      if ((await button.count()) === 0) continue;
      const { x, y, width, height } = (await button.boundingBox())!;
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x + width, name).toBeLessThanOrEqual(390);
      expect(y + height, name).toBeLessThanOrEqual(844);
    }
    await page.keyboard.press('Escape');
    expect(await save.isVisible()).toBe(false);
    expect(await more.evaluate((e) => e === document.activeElement)).toBe(true);
    // Whatever is pressed there folds them up.
    await page.getByLabel('Border width').fill('8');
    await more.tap();
    await page.getByRole('button', { name: 'New', exact: true }).tap();
    expect(await save.isVisible()).toBe(false);
    await idle(page);
    expect(await page.getByLabel('Border width').inputValue()).toBe('6');
    await page.getByRole('button', { name: 'Undo' }).tap();
    expect(await page.getByLabel('Border width').inputValue()).toBe('8');
    expect(faults).toEqual([]);
    await context.close();
  });

  test('whatever is pressed or dragged is 44 px each way', async () => {
    const { context, page } = await ours.visit(PHONE);
    await settled(page);
    await page.evaluate(() => {
      for (const d of document.querySelectorAll('details')) d.open = true;
    });
    await idle(page);
    await page.getByRole('button', { name: 'More', exact: true }).tap();
    const small = await page.evaluate(() =>
      [
        ...document.querySelectorAll<HTMLElement>(
          'button:not(.word), select, summary, input:not([type="checkbox"], [type="radio"], [type="file"]), label:has(> [type="checkbox"], > [type="radio"])',
        ),
      ]
        .map((e) => ({ box: e.getBoundingClientRect(), text: (e.textContent ?? '').slice(0, 40) }))
        .filter(({ box }) => box.width > 1 && (box.width < 44 || box.height < 43.9))
        .map(({ text, box }) => `${text} ${box.width} ${box.height}`),
    );
    expect(small).toEqual([]);
    await page.keyboard.press('Escape');
    for (const name of ['Depth of the swag', 'Span of the swag']) {
      const handle = page.getByRole('slider', { name });
      await handle.scrollIntoViewIfNeeded();
      expect(await missedRound(handle), name).toEqual([]);
    }
    await context.close();
  });
});
