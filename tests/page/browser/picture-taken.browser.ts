/** How a picture comes to the page: by the camera of a telephone, or a large one that is called off. */

import { createCanvas } from '@napi-rs/canvas';
import { expect, test } from 'vitest';
import { bracket, give, panel } from './bracket.ts';
import { forAllTests, idle, settled } from './harness.ts';

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
