/** While a hand drags, the swag, its channels and the template's ghost are drawn anew within a frame. */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { forAllTests, idle, median, PICTURES, settled, slowness } from './harness.ts';

const ours = forAllTests();

/** A frame of a screen with 60 of them a second, ms. */
const FRAME = 16;

const handleAt = async (page: Page, name: string): Promise<{ x: number; y: number }> => {
  const knob = page.getByRole('slider', { name }).locator('.knob');
  await knob.scrollIntoViewIfNeeded();
  const box = (await knob.boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

/** The first of the fits that can be dragged; the ranking may put those with a fixed tilt before it. */
const takeDraggable = async (page: Page): Promise<void> => {
  await page.locator('.fit').filter({ hasText: 'crown on centre' }).first().click();
  await idle(page);
};

const keyOf = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => JSON.parse(sessionStorage.getItem('swagwright.window')!).taken as string | undefined);

describe('dragging', () => {
  const DRAGS = [
    { where: 'top', handle: 'Span of the swag', dx: -2, dy: 0 },
    { where: 'corner', handle: 'Depth of the corner swag', dx: -1, dy: 1 },
  ] as const;
  test.each(DRAGS)(
    'at the $where, redraws one repeat with channels within a frame, at the median',
    async ({ where, handle, dx, dy }) => {
      const { context, page, faults } = await ours.visit();
      await settled(page);
      await takeDraggable(page);
      await page.getByLabel('On the', { exact: true }).selectOption(where);
      await idle(page);
      const { x, y } = await handleAt(page, handle);
      await page.evaluate(() => {
        const times: number[] = [];
        let began = 0;
        document.querySelector('.board')!.addEventListener(
          'pointermove',
          () => {
            began ||= performance.now();
          },
          { capture: true },
        );
        new MutationObserver(() => {
          if (began > 0) times.push(performance.now() - began);
          began = 0;
        }).observe(document.querySelector('.board')!, {
          subtree: true,
          attributes: true,
          attributeFilter: ['d'],
        });
        Object.assign(window, { times });
      });
      await page.mouse.move(x, y);
      await page.mouse.down();
      const readings = new Set<string>();
      const slow: number[] = [];
      for (let i = 1; i <= 60; i++) {
        await page.mouse.move(x + dx * i, y + dy * i);
        await page.waitForTimeout(30);
        readings.add((await page.locator('.reading strong').textContent()) ?? '');
        if (i % 4 === 0) slow.push(await slowness(page));
      }
      const times = await page.evaluate(() => (window as unknown as { times: number[] }).times);
      expect(times.length).toBeGreaterThan(30);
      // The swag changed all along, and was not merely redrawn as it was.
      expect(readings.size).toBeGreaterThan(10);
      mkdirSync(PICTURES, { recursive: true });
      writeFileSync(
        join(PICTURES, `dragging-${where}.txt`),
        `${times.length} redraws, median ${median(times).toFixed(1)} ms from hand to picture, on a machine ${median(slow).toFixed(2)} times slower\n`,
      );
      // From the hand's move through the worker and back into the picture: all script, and the way there and back.
      expect(median(times) / median(slow)).toBeLessThanOrEqual(FRAME);
      await page.mouse.up();
      await idle(page);
      expect(faults).toEqual([]);
      await context.close();
    },
  );

  test('snaps to a count that fits, and the plan says it', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    await takeDraggable(page);
    const slider = page.getByRole('slider', { name: 'Span of the swag' });
    await page.getByRole('button', { name: 'Wider, flatter' }).click();
    await idle(page);
    const before = await slider.getAttribute('aria-valuetext');
    const taken = await keyOf(page);
    const { x, y } = await handleAt(page, 'Span of the swag');
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 20; i++) await page.mouse.move(x - 6 * i, y);
    await page.mouse.up();
    await idle(page);
    await expect.poll(() => slider.getAttribute('aria-valuetext')).not.toBe(before);
    expect(await keyOf(page)).not.toBe(taken);
    expect(await slider.getAttribute('aria-valuetext')).toMatch(/^\d+ swags, .* wide, .* deep$/);
    await context.close();
  });

  test('the left end does what the right end does', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    await takeDraggable(page);
    const reading = () => page.locator('.reading strong').textContent();
    const before = await reading();
    const knobs = page.locator('.handle.span .knob');
    expect(await knobs.count()).toBe(2);
    await knobs.first().scrollIntoViewIfNeeded();
    const boxes = await Promise.all([0, 1].map(async (i) => (await knobs.nth(i).boundingBox())!));
    const left = boxes.toSorted((a, b) => a.x - b.x)[0]!;
    const [x, y] = [left.x + left.width / 2, left.y + left.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 20; i++) await page.mouse.move(x + 4 * i, y);
    // Inward is narrower, at either end.
    const widthOf = (text: string | null) => Number(/^(\d+)/.exec(text ?? '')?.[1]);
    await expect.poll(async () => widthOf(await reading())).toBeLessThan(widthOf(before));
    await page.mouse.up();
    await context.close();
  });

  test('a corner is drawn on its mitre, and its depth is dragged along it', async () => {
    const { context, page, faults } = await ours.visit();
    await settled(page);
    await takeDraggable(page);
    await page.getByLabel('On the', { exact: true }).selectOption('corner');
    await idle(page);
    const slider = page.getByRole('slider', { name: 'Depth of the corner swag' });
    const before = await slider.getAttribute('aria-valuetext');
    expect(before).toMatch(/^corners .* deep/);
    const taken = await keyOf(page);
    const { x, y } = await handleAt(page, 'Depth of the corner swag');
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 30; i++) await page.mouse.move(x - 5 * i, y + 5 * i);
    await expect.poll(() => page.locator('.reading').textContent()).toMatch(/deep, marks .* from the corner/);
    await page.mouse.up();
    await idle(page);
    await expect.poll(() => slider.getAttribute('aria-valuetext')).not.toBe(before);
    expect(await keyOf(page)).not.toBe(taken);
    // And back by keyboard.
    await slider.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('End');
    await idle(page);
    await expect.poll(() => slider.getAttribute('aria-valuetext')).toMatch(/^corners .* deep/);
    expect(faults).toEqual([]);
    await context.close();
  });

  test('the crown goes up and down by touch', async () => {
    const { context, page } = await ours.visit({
      hasTouch: true,
      viewport: { width: 820, height: 1180 },
    });
    await settled(page);
    await takeDraggable(page);
    const before = await page.locator('.reading strong').textContent();
    const { x, y } = await handleAt(page, 'Depth of the swag');
    const session = await context.newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', dy: number) =>
      session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x, y: y + dy }],
      });
    await touch('touchStart', 0);
    for (let i = 1; i <= 20; i++) await touch('touchMove', 4 * i);
    await expect
      .poll(() => page.locator('.reading').textContent())
      .toMatch(/snaps to|longer|reaches|bulges|dips/);
    await touch('touchEnd', 80);
    await idle(page);
    await expect.poll(() => page.locator('.reading strong').textContent()).not.toBe(before);
    await context.close();
  });

  test('a part of the edge is picked as start or end, on the picture and by its buttons', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    const at = await page
      .locator('.section .touch')
      .nth(1)
      .evaluate((e) => {
        const path = e as unknown as SVGPathElement;
        path.scrollIntoView({ block: 'center' });
        const p = path.getPointAtLength(path.getTotalLength() / 2).matrixTransform(path.getScreenCTM()!);
        return { x: p.x, y: p.y };
      });
    await page.mouse.click(at.x, at.y);
    expect(await page.locator('.edge-part.picked').textContent()).toContain('section 2');
    await page.getByRole('button', { name: /^end here: section 2/ }).click();
    await idle(page);
    await expect.poll(() => page.locator('.edge-choice > p').textContent()).toMatch(/to end of section 2/);
    await page.getByRole('button', { name: /^start here: section 2/ }).click();
    await idle(page);
    await expect.poll(() => page.locator('.edge-choice > p').textContent()).toMatch(/from section 2/);
    await context.close();
  });

  test('work that takes long can be stopped, and the page goes on', async () => {
    const { context, page, faults } = await ours.visit();
    await settled(page);
    await page.getByText('Fills: feathers, pebbles').click();
    await expect
      .poll(() => page.getByLabel('Round the swags', { exact: true }).locator('option').count(), {
        timeout: 60_000,
      })
      .toBeGreaterThan(3);
    await page.getByLabel('Round the swags', { exact: true }).selectOption('pebbles');
    await page.locator('.working').waitFor({ timeout: 20_000 });
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.locator('.notice').filter({ hasText: 'Stopped' }).waitFor();
    expect(await page.locator('.working').count()).toBe(0);
    await page.getByLabel('Border width').fill('7');
    await idle(page);
    expect(await page.locator('.verdict').textContent()).toMatch(/swags of/);
    expect(faults).toEqual([]);
    await context.close();
  });
});
