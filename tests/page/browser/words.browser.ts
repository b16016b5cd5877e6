/** Words of the trade explain themselves where they stand, by mouse, keyboard and finger, and move nothing. */

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { violations } from './axe.ts';
import { focused, forAllTests, settled, tabTo } from './harness.ts';

const ours = forAllTests();

/** Where everything stands; a note must not change it. */
const places = async (page: Page): Promise<readonly string[]> => {
  await page.evaluate(() => scrollTo(0, 0));
  return page.locator('main .panel, main h2, .sides li').evaluateAll((all) =>
    all.map((e) => {
      const { x, y, width, height } = e.getBoundingClientRect();
      return [x, y, width, height].map(Math.round).join(' ');
    }),
  );
};

const note = (page: Page) => page.locator('.note');

test('the first screen says what this is and that its figures are an example, until they are hers', async () => {
  const { context, page, faults } = await ours.visit({ viewport: { width: 1280, height: 800 } });
  await settled(page);
  const intro = page.locator('.intro');
  expect(await intro.textContent()).toContain(
    'swagwright fits swags to your quilt: it works out how the edge of a template makes a row of them',
  );
  expect(await intro.textContent()).toContain('The figures here are an example: type yours over them.');
  const box = (await intro.boundingBox())!;
  expect(box.y + box.height).toBeLessThan(200);
  const before = await places(page);
  // Other units make no other quilt.
  await page.getByLabel('Figures in').selectOption('cm');
  expect(await intro.textContent()).toContain('The figures here are an example');
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByLabel('Top side').fill('60 1/4');
  expect(await intro.textContent()).toContain('The picture follows every figure that you type.');
  expect((await intro.boundingBox())!.height).toBe(box.height);
  expect(await places(page).then((now) => now[0])).toBe(before[0]);
  await page.getByRole('button', { name: 'Put this away' }).click();
  expect(await intro.count()).toBe(0);
  await page.reload();
  await settled(page);
  expect(await intro.count()).toBe(0);
  expect(faults).toEqual([]);
  await context.close();
});

const SAID = {
  heel: 'The heel is the end of the template’s edge where a swag starts, at the seam. Where the words say crown first, the edge is turned round: the crown end starts the swag',
  'crown end': 'The crown end is the other end of the edge',
  section: 'A section is the stretch of edge from one notch or corner to the next',
  'the setting': 'The setting is what you lay the template by, the same on both halves',
  inside: 'Inside, the template lies within the swag, between stitching and seam',
};

for (const [device, options] of [
  ['desktop', { viewport: { width: 1280, height: 800 } }],
  ['telephone', { viewport: { width: 390, height: 844 }, hasTouch: true, colorScheme: 'dark' as const }],
] as const)
  test(`heel, crown end, section, setting and inside are explained in pictures: ${device}`, async () => {
    const { context, page, faults } = await ours.visit(options);
    await settled(page);
    // Where the design is first told in words: `Finial: heel to crown end, crown on centre, …`.
    const first = page.locator('.sides .of-all').first();
    const wordsOf = (place: string) => page.locator(`${place} .word`).allTextContents();
    expect(await first.locator('.word').allTextContents()).toEqual([
      'heel',
      'crown end',
      'crown on centre',
      'inside',
    ]);
    expect(await wordsOf('#templates')).toEqual(['heel', 'crown end', 'section']);
    expect(await wordsOf('#fits')).toEqual(['heel', 'crown end', 'setting', 'inside']);
    const before = await places(page);
    for (const [word, says] of Object.entries(SAID)) {
      const place = word === 'section' ? page.locator('#templates') : page.locator('#fits');
      const button = place.locator('.word', { hasText: new RegExp(`^${word.replace('the ', '')}$`) });
      await button.scrollIntoViewIfNeeded();
      await (device === 'telephone' ? button.tap() : button.click());
      expect(await note(page).textContent()).toContain(says);
      expect(await button.getAttribute('aria-expanded')).toBe('true');
      // In the window, beside its word, with a picture in which something is marked.
      const [at, of] = [(await note(page).boundingBox())!, (await button.boundingBox())!];
      expect(at.x).toBeGreaterThanOrEqual(0);
      expect(at.x + at.width).toBeLessThanOrEqual(options.viewport.width);
      expect(at.y).toBeGreaterThanOrEqual(0);
      expect(at.y + at.height).toBeLessThanOrEqual(options.viewport.height);
      expect(Math.min(Math.abs(at.y - of.y - of.height), Math.abs(of.y - at.y - at.height))).toBeLessThan(12);
      expect(await note(page).locator('.plate').count()).toBe(word === 'inside' ? 2 : 1);
      expect(await note(page).locator('.here').count()).toBe(word === 'inside' ? 0 : 1);
      expect(await violations(page)).toEqual([]);
    }
    expect(await places(page)).toEqual(before);
    expect(await note(page).count()).toBe(1);
    // Another place that is pressed puts it away.
    await page.locator('#fits-title').click();
    expect(await note(page).count()).toBe(0);
    expect(faults).toEqual([]);
    await context.close();
  });

test('by keyboard a note opens at its word, Escape closes it, and so does going on', async () => {
  const { context, page } = await ours.visit();
  await settled(page);
  await tabTo(page, 'heel');
  await page.keyboard.press('Enter');
  expect(await note(page).textContent()).toContain('The heel is the end');
  // It is said by screen readers when it comes.
  expect(await note(page).evaluate((e) => e.parentElement?.getAttribute('role'))).toBe('status');
  await page.keyboard.press('Escape');
  expect(await note(page).count()).toBe(0);
  expect(await focused(page)).toBe('heel');
  await page.keyboard.press('Space');
  expect(await note(page).count()).toBe(1);
  // The note stays beside its word.
  await page.mouse.wheel(0, 60);
  await page.keyboard.press('Tab');
  expect(await focused(page)).toBe('crown end');
  expect(await note(page).count()).toBe(0);
  await context.close();
});
