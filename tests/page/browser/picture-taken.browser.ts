/** How a picture comes to the page: by the camera of a telephone, or a large one that is called off. */

import { createCanvas } from '@napi-rs/canvas';
import { expect, test } from 'vitest';
import { bracket, button, give, panel } from './bracket.ts';
import { forAllTests, idle, missedRound, settled, told } from './harness.ts';

const ours = forAllTests();

test('a telephone is asked for its camera, and a machine without a touch screen is not', async () => {
  const { page, context } = await ours.visit({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  await settled(page);
  const button = page.getByRole('button', { name: 'Photograph it …' });
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), button.tap()]);
  const asked = await chooser
    .element()
    .evaluate((input) => ['accept', 'capture'].map((name) => (input as HTMLInputElement).getAttribute(name)));
  expect(asked).toEqual(['image/*', 'environment']);
  await chooser.setFiles({
    name: 'image.jpg',
    mimeType: 'image/jpeg',
    buffer: Buffer.from(bracket('image/jpeg')),
  });
  await panel(page).waitFor({ timeout: 60_000 });
  await idle(page);
  // The ends of its edge can be dragged by a finger.
  for (const end of await panel(page).locator('.traced-end:not(.plain)').all()) {
    await end.scrollIntoViewIfNeeded();
    expect(await missedRound(end)).toEqual([]);
  }
  await context.close();
  const desk = await ours.visit();
  await settled(desk.page);
  expect(await desk.page.getByRole('button', { name: 'Photograph it …' }).count()).toBe(0);
  await desk.context.close();
});

test('“Stop” calls off the outline of a picture that takes long', async () => {
  const { page, context, faults } = await ours.visit();
  await settled(page);
  const canvas = createCanvas(7000, 7000);
  const c = canvas.getContext('2d');
  c.fillStyle = '#fff';
  c.fillRect(0, 0, 7000, 7000);
  c.fillStyle = '#333';
  for (let i = 0; i < 60; i++) for (let k = 0; k < 60; k++) c.fillRect(115 * i + 40, 115 * k + 40, 60, 60);
  await give(page, 'large.jpg', new Uint8Array(canvas.toBuffer('image/jpeg', 90)), 'image/jpeg');
  await page.getByText('Working out the outline').waitFor();
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await idle(page);
  expect(await page.locator('.notice').first().textContent()).toContain('Stopped.');
  // Longer than the picture takes.
  await page.waitForTimeout(12_000);
  expect(await panel(page).count()).toBe(0);
  // The worker that was called off is replaced by one that answers.
  await give(page, 'bracket.png', bracket());
  await panel(page).waitFor({ timeout: 60_000 });
  expect(faults).toEqual([]);
  await context.close();
});

test('only the outline of all that she has said goes on the shelf', async () => {
  const { page, context, faults } = await ours.visit();
  await settled(page);
  await give(page, 'bracket.png', bracket());
  await panel(page).waitFor({ timeout: 60_000 });
  await idle(page);
  const shelf = button(page, 'Put it on the shelf');
  // Its file says 203.2 dots per inch: 150 mm. At 254 it is 120 mm long.
  await panel(page).getByLabel('How large it is').selectOption({ label: 'what the scanner was set to' });
  await expect.poll(() => shelf.isDisabled()).toBe(true);
  expect(await panel(page).textContent()).toContain('Say how large the picture is, above');
  const dpi = panel(page).getByLabel('Dots per inch');
  await dpi.fill('200');
  await idle(page);
  // Typed and pressed at once, before the page has drawn anything anew.
  await dpi.evaluate((input: HTMLInputElement) => {
    input.value = '254';
    input.dispatchEvent(new InputEvent('input', { bubbles: true }));
    const buttons = [...document.querySelectorAll<HTMLButtonElement>('#trace button')];
    buttons.find((one) => one.textContent === 'Put it on the shelf')?.click();
  });
  await idle(page);
  expect(await panel(page).count()).toBe(1);
  // What is called off leaves the outline of before, which is said and kept off the shelf, until it is worked out after all.
  await page.evaluate(() => {
    new MutationObserver(() => {
      const stop = [...document.querySelectorAll('button')].find((one) => one.textContent === 'Stop');
      stop?.click();
    }).observe(document.body, { subtree: true, childList: true });
  });
  await dpi.fill('300');
  await panel(page).getByText('This is the outline of before').waitFor();
  expect(await shelf.isDisabled()).toBe(true);
  expect(await button(page, 'Save its file').isDisabled()).toBe(true);
  expect(await button(page, 'Print its outline').isDisabled()).toBe(true);
  await dpi.fill('254');
  await panel(page).getByText('This is the outline of before').waitFor();
  // What she said last is kept though the window closes at once.
  await page.reload();
  await page.getByRole('button', { name: /^Go on with/ }).click();
  await panel(page).waitFor({ timeout: 60_000 });
  await idle(page);
  expect(await dpi.inputValue()).toBe('254');
  // Its file is called as the template is: a scanner's own names are all alike.
  await panel(page).getByLabel('What it is called').fill('Rosewood rail');
  await idle(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    button(page, 'Save its file').click(),
  ]);
  expect(download.suggestedFilename()).toBe('rosewood-rail.yaml');
  await shelf.click();
  await told(page, /is on the shelf, and ticked/);
  // A flat of 56 mm, an arc of 64 mm and a smudge: 5 1/2 in of edge; of 200 dots per inch it would be 7.
  const card = page.getByRole('checkbox', { name: /^Rosewood rail/ }).locator('xpath=ancestor::li');
  expect(await card.textContent()).toMatch(/5 \d+\/\d+ in of edge/);
  expect(faults).toEqual([]);
  await context.close();
});
