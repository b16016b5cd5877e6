/** From a picture of a template to a template on her shelf, in the page itself. */

import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { type Path, pathBox } from '../../../src/geometry/index.ts';
import { readTemplate } from '../../../src/template/index.ts';
import { run } from '../../cli/run.ts';
import { photograph, type Shot, sheetWith } from '../../trace/camera.ts';
import { apart, noisy, pngOf, rasterise, turned } from '../../trace/printed.ts';
import { overflow, violations } from './axe.ts';
import { give, panel } from './bracket.ts';
import { BUILT, forAllTests, idle, PICTURES, settled, tabTo, told, visit } from './harness.ts';

const DPI = 300;

const SHOT: Shot = {
  ...{ away: 380, width: 1800, height: 2400, focal: 2300, tilt: (20 * Math.PI) / 180, axis: 0.6, turn: 0.1 },
  k1: -0.06,
};

const ours = forAllTests();
/** A scan of newel, printed solid, on a glass that it does not lie straight on. */
let scan: Uint8Array;
/** The same as a camera's file: nothing says how large it is. */
let picture: Uint8Array;
let newel: Path;

beforeAll(async () => {
  const folder = await mkdtemp(join(tmpdir(), 'swagwright-page-'));
  expect(await run(folder, ['template', 'newel', '--solid', '-o', 'solid.pdf'])).toMatchObject({ code: 0 });
  const page = await rasterise(await readFile(join(folder, 'solid.pdf')), 2, DPI);
  await rm(folder, { recursive: true });
  const seen = noisy(turned(page, (1.3 * Math.PI) / 180), 8, 0.0005, 11);
  scan = pngOf(seen, DPI / 25.4);
  picture = pngOf(seen, undefined);
  newel = edgeIn(await readFile(join(import.meta.dirname, '../../../profiles/newel.yaml'), 'utf8'));
}, 300_000);

const edgeIn = (text: string): Path => {
  const reading = readTemplate(text, 'template.yaml');
  if (!reading.ok) throw new Error(reading.problems.map((p) => p.message).join('; '));
  return reading.template.edge;
};

const savedEdge = async (page: Page): Promise<Path> => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    panel(page).getByRole('button', { name: 'Save its file' }).click(),
  ]);
  return edgeIn(await readFile(await download.path(), 'utf8'));
};

describe('a picture that is given to the page', () => {
  test('is traced as the command traces it, goes on the shelf, serves in a fit, and is there after a reload', async () => {
    const { page, asked, faults, context } = await ours.visit();
    await settled(page);
    await give(page, 'my newel.png', scan);
    await panel(page).waitFor({ timeout: 60_000 });
    await idle(page);
    await page.screenshot({ path: join(PICTURES, 'trace-scan.png') });
    expect(await violations(page)).toEqual([]);
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    await page.screenshot({ path: join(PICTURES, 'trace-phone.png'), fullPage: true });
    await page.setViewportSize({ width: 1280, height: 900 });
    expect(await panel(page).textContent()).toContain('as its file says: 300 dots per inch');
    expect(apart(await savedEdge(page), newel)).toBeLessThan(0.1);
    await panel(page).getByRole('button', { name: 'Put it on the shelf' }).click();
    await told(page, /“My newel” is on the shelf, and ticked/);
    expect(await panel(page).count()).toBe(0);
    await page.getByRole('checkbox', { name: /^Baluster/ }).uncheck();
    await page.getByRole('checkbox', { name: /^Finial/ }).uncheck();
    await page.getByRole('checkbox', { name: /^Newel/ }).uncheck();
    await idle(page);
    await expect
      .poll(() => page.locator('.fit').first().textContent(), { timeout: 60_000 })
      .toContain('My newel');
    await page.reload();
    await settled(page);
    expect(await page.getByRole('checkbox', { name: /^My newel/ }).isChecked()).toBe(true);
    // Nothing was sent: all that was asked for are the page's own files.
    expect(asked.filter((url) => !url.startsWith(ours.url()) && !/^(blob|data):/.test(url))).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  test('is found again after a reload, and serves in a fit', async () => {
    const { page, faults, context } = await ours.visit();
    await settled(page);
    await give(page, 'my newel.png', scan);
    await panel(page).getByRole('button', { name: 'Put it on the shelf' }).click({ timeout: 60_000 });
    // Said when its picture is kept as this template's, and not before.
    await told(page, /“My newel” is on the shelf, and ticked\. Print its outline/);
    await page.reload();
    await settled(page);
    for (const name of [/^Baluster/, /^Finial/, /^Newel/])
      await page.getByRole('checkbox', { name }).uncheck();
    await idle(page);
    await expect
      .poll(() => page.locator('.fit').first().textContent(), { timeout: 60_000 })
      .toContain('My newel');
    // Its picture too is still here, to be set right.
    await page.getByText('Rename, save or remove My newel').click();
    await page.locator('.own').getByRole('button', { name: 'Set it right over its picture' }).click();
    await panel(page).waitFor({ timeout: 60_000 });
    expect(faults).toEqual([]);
    await context.close();
  });

  test('is not lost by a window that closes before the store has answered', async () => {
    const { page, context } = await visit(ours.browser(), ours.url());
    await give(page, 'my newel.png', scan);
    await panel(page).getByRole('button', { name: 'Put it on the shelf' }).waitFor({ timeout: 60_000 });
    const kept = () => page.evaluate(() => localStorage.getItem('swagwright.pictures') ?? '');
    await expect.poll(kept, { timeout: 30_000 }).toContain('my newel.png');
    // A disk so slow that its store does not answer any more.
    await page.evaluate(() => {
      IDBFactory.prototype.open = () => Object.create(IDBOpenDBRequest.prototype);
    });
    await panel(page).getByRole('button', { name: 'Put it on the shelf' }).click();
    await panel(page).waitFor({ state: 'detached' });
    await page.reload();
    await settled(page);
    await page.getByText('Rename, save or remove My newel').click();
    await page.locator('.own').getByRole('button', { name: 'Set it right over its picture' }).click();
    await panel(page).getByRole('button', { name: 'Put it on the shelf' }).waitFor({ timeout: 60_000 });
    await context.close();
  });

  test('without a size asks how large it is, and takes the scanner’s or two marks', async () => {
    const { page, context } = await ours.visit();
    await settled(page);
    await give(page, 'photo.png', picture);
    await panel(page).waitFor({ timeout: 60_000 });
    await idle(page);
    expect(await panel(page).textContent()).toContain('does not say how large it is');
    const shelf = panel(page).getByRole('button', { name: 'Put it on the shelf' });
    expect(await shelf.isDisabled()).toBe(true);
    await panel(page).getByLabel('How large it is').selectOption('dpi');
    await panel(page).getByLabel('Dots per inch').fill('300');
    await idle(page);
    expect(apart(await savedEdge(page), newel)).toBeLessThan(0.1);
    await panel(page).getByLabel('How large it is').selectOption('marks');
    const svg = panel(page).locator('.trace-window svg');
    await svg.scrollIntoViewIfNeeded();
    const box = (await svg.boundingBox())!;
    const [width] = (await svg.getAttribute('viewBox'))!.split(' ').slice(2).map(Number) as [number];
    const [from, to] = [0.25 * box.width, 0.75 * box.width];
    for (const x of [from, to]) await page.mouse.click(box.x + x, box.y + 20);
    // By what is tapped half the picture is as many mm as it has pixels, at 300 to the inch.
    await panel(page)
      .getByLabel('The two marks are apart by')
      .fill(`${((width / 2 / DPI) * 25.4).toFixed(2)} mm`);
    await idle(page);
    // A tap is as good as a pixel of the screen.
    expect(apart(await savedEdge(page), newel)).toBeLessThan(1);
    // What she typed in inches stays so, whatever the page's figures are in.
    const inches = (width / 2 / DPI).toFixed(3);
    await panel(page).getByLabel('The two marks are apart by').fill(inches);
    await page.getByLabel('Figures in').selectOption('cm');
    await idle(page);
    expect(await panel(page).getByLabel('The two marks are apart by').inputValue()).toBe(`${inches} in`);
    expect(apart(await savedEdge(page), newel)).toBeLessThan(1);
    await context.close();
  });

  test('that is a photograph of the sheet says by its marks how large it is', async () => {
    // An edge of one arc, 180 mm wide and 30 mm deep, drawn solid on the sheet; a camera from 15 in, tilted by 20°.
    const radius = (90 ** 2 + 30 ** 2) / (2 * 30);
    const half = Math.asin(90 / radius);
    const sheet = sheetWith(8, (context) => {
      context.beginPath();
      context.moveTo(-20, 90);
      context.lineTo(-50, 90);
      context.lineTo(-50, -90);
      context.lineTo(-20, -90);
      for (let i = 1; i < 200; i++) {
        const angle = half * (i / 100 - 1);
        context.lineTo(-20 + radius * Math.cos(angle) - (radius - 30), radius * Math.sin(angle));
      }
      context.closePath();
      context.fillStyle = '#222';
      context.fill();
    });
    const { page, context } = await ours.visit();
    await settled(page);
    await give(
      page,
      'IMG_0007.png',
      pngOf(photograph(sheet, SHOT, { light: 0.7, blur: 0.8, noise: 4, seed: 5 }), undefined),
    );
    await panel(page).waitFor({ timeout: 60_000 });
    await idle(page);
    expect(await panel(page).textContent()).toContain('The eight marks of the sheet say how large it is');
    await page.screenshot({ path: join(PICTURES, 'trace-photo.png') });
    const edge = await savedEdge(page);
    const { minX, maxX, minY, maxY } = pathBox(edge);
    expect(Math.abs(maxX - minX - 180)).toBeLessThan(0.5);
    expect(Math.abs(maxY - minY - 30)).toBeLessThan(0.5);
    await context.close();
  });

  test('has ends that go where they are dragged, by hand and by keys', async () => {
    const { page, context } = await ours.visit();
    await settled(page);
    await give(page, 'newel.png', scan);
    await panel(page).waitFor({ timeout: 60_000 });
    await idle(page);
    const heel = panel(page).getByRole('slider', { name: 'Heel' });
    const along = async () => Number(await heel.getAttribute('aria-valuenow'));
    const before = await along();
    await heel.focus();
    for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowRight');
    await idle(page);
    expect(Math.abs((await along()) - before - 30)).toBeLessThanOrEqual(1);
    const shorter = await savedEdge(page);
    const whole = newel.pieces.length;
    expect(shorter.pieces.length).toBeLessThanOrEqual(whole + 1);
    await page.screenshot({ path: join(PICTURES, 'trace-end.png') });
    const box = (await heel.locator('.knob').boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + 60, box.y + 40, { steps: 5 });
    await page.mouse.up();
    await idle(page);
    expect(await along()).not.toBe(before + 30);
    await tabTo(page, 'Crown end');
    await context.close();
  });

  test('is traced from a folder on disk too', async () => {
    const { page, asked, faults, context } = await visit(
      ours.browser(),
      pathToFileURL(join(BUILT, 'index.html')).href,
    );
    await settled(page);
    await give(page, 'newel.png', scan);
    await panel(page).waitFor({ timeout: 60_000 });
    await idle(page);
    expect(apart(await savedEdge(page), newel)).toBeLessThan(0.1);
    expect(faults).toEqual([]);
    expect(asked.filter((url) => !/^(file|blob|data):/.test(url))).toEqual([]);
    await context.close();
  });

  test('that is none is answered with what to do, and nothing changes', async () => {
    const { page, context } = await ours.visit();
    await settled(page);
    await give(
      page,
      'blank.png',
      pngOf({ width: 200, height: 200, grey: new Uint8Array(40_000).fill(255) }, 12),
    );
    await panel(page).waitFor({ timeout: 60_000 });
    await idle(page);
    expect(await panel(page).textContent()).toContain('blank');
    expect(await told(page, /^blank\.png: /)).toMatch(/[^.]\.$/);
    await panel(page).getByRole('button', { name: 'Put the picture away' }).click();
    expect(await panel(page).count()).toBe(0);
    await give(page, 'half.png', scan.slice(0, 5000));
    await told(page, /half\.png cannot be traced.*damaged/s);
    await give(page, 'cloud.heic', new Uint8Array(3000).fill(7), 'image/heic');
    await told(page, /cloud\.heic cannot be traced.*cannot read it as a picture/s);
    expect(await panel(page).count()).toBe(0);
    await context.close();
  });
});
