/**
 * Pictures of the page on a telephone, a tablet and a table, by day and by night: `node scripts/page-pictures.mjs FOLDER`.
 * Needs the built page and Debian's chromium, as its tests do.
 */

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createCanvas, loadImage } from '@napi-rs/canvas';
import { chromium } from 'playwright-core';
import { fillWith, still, WAIT } from './page-at-work.mjs';

const PAGE = new URL('../dist/page/index.html', import.meta.url).href;

/** What is scrolled to, under its window's upper edge; nothing for the first screen. */
const SCREENS = [
  { name: 'phone-light', width: 390, height: 844, colorScheme: 'light' },
  { name: 'phone-dark', width: 390, height: 844, colorScheme: 'dark', to: '#swag' },
  { name: 'tablet-light', width: 834, height: 1112, colorScheme: 'light' },
  { name: 'tablet-dark', width: 834, height: 1112, colorScheme: 'dark', to: '#fits' },
  { name: 'desktop-light', width: 1280, height: 800, colorScheme: 'light', word: 'heel' },
  { name: 'desktop-dark', width: 1280, height: 800, colorScheme: 'dark', to: '#swag' },
];

/** Of a WebP, from 0 to 100: letters stay sharp, and a picture is some 50 KB. */
const QUALITY = 82;

const photograph = async (browser, { name, width, height, colorScheme, to, word }, folder) => {
  const page = await browser.newPage({
    viewport: { width, height },
    colorScheme,
    hasTouch: width < 1000,
    reducedMotion: 'reduce',
  });
  await page.goto(PAGE);
  await page.locator('.fit').first().waitFor(WAIT);
  await still(page);
  await fillWith(page, [
    ['Inside the swags', 'feather'],
    ['Round the swags', 'crosshatch'],
  ]);
  await page.evaluate((selector) => {
    document.activeElement?.blur();
    scrollTo(0, 0);
    if (selector) scrollTo(0, document.querySelector(selector).getBoundingClientRect().top - 10);
  }, to);
  if (word) await page.locator('#templates .word', { hasText: word }).click();
  await page.waitForTimeout(300);
  const picture = await loadImage(await page.screenshot());
  const canvas = createCanvas(picture.width, picture.height);
  canvas.getContext('2d').drawImage(picture, 0, 0);
  const bytes = await canvas.encode('webp', QUALITY);
  writeFileSync(join(folder, `page-${name}.webp`), bytes);
  console.log(`page-${name}.webp, ${Math.round(bytes.length / 1024)} KB`);
  await page.close();
};

const [folder] = process.argv.slice(2);
if (folder === undefined) {
  console.error('Name the folder that the pictures go to.');
  process.exit(2);
}
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--headless', '--no-sandbox', '--disable-gpu'],
});
for (const screen of SCREENS) await photograph(browser, screen, folder);
await browser.close();
