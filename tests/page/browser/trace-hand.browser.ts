/** What she sets right by hand in a traced picture: breaks, stretches, the acrylic, the size; and that none of it is lost. */

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { nearnessOf } from '../../../src/geometry/index.ts';
import { formatLength, INCH_SIXTYFOURTH } from '../../../src/length/index.ts';
import { readTemplate, type Template } from '../../../src/template/index.ts';
import { overflow, violations } from './axe.ts';
import { bracket, button, give, panel } from './bracket.ts';
import { focused, forAllTests, idle, PICTURES, tabTo, told } from './harness.ts';

const ours = forAllTests();

const saved = async (page: Page): Promise<Template> => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    button(page, 'Save its file').click(),
  ]);
  const reading = readTemplate(await readFile(await download.path(), 'utf8'), 'template.yaml');
  if (!reading.ok) throw new Error(reading.problems.map((p) => p.message).join('; '));
  return reading.template;
};

/** Where a place of the drawing (mm, y up) is on the screen. */
const onScreen = async (page: Page, x: number, y: number): Promise<readonly [number, number]> => {
  const box = (await panel(page).locator('.trace-window svg').boundingBox())!;
  return [box.x + ((15 + x) / 180) * box.width, box.y + ((65 - y) / 80) * box.height];
};

const begin = async (page: Page): Promise<void> => {
  await page.locator('#templates').waitFor({ timeout: 60_000 });
  await give(page, 'bracket.png', bracket());
  await panel(page).waitFor({ timeout: 60_000 });
  await idle(page);
};

test('breaks, a stretch, the acrylic: by hand and by keys, announced, taken back, and found again', async () => {
  const { page, context, faults } = await ours.visit();
  await begin(page);
  // A break by the button, named, moved by keys.
  await button(page, 'Add a break').click();
  await idle(page);
  expect(await focused(page)).toBe('break 1');
  expect(await panel(page).locator('p[role=status]').textContent()).toMatch(
    /break 1 is added, .* from the heel/,
  );
  const knob = panel(page).getByRole('slider', { name: 'break 1' });
  const before = Number(await knob.getAttribute('aria-valuenow'));
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('ArrowRight');
  await idle(page);
  expect(Number(await knob.getAttribute('aria-valuenow'))).toBe(before + 11);
  await panel(page)
    .getByLabel(/^On a smooth stretch, /)
    .fill('shoulder');
  await idle(page);
  expect((await saved(page)).breaks.filter((b) => b.name === 'shoulder')).toHaveLength(1);
  // Another by a tap on the edge, taken out with Delete.
  await panel(page).locator('.trace-window svg').scrollIntoViewIfNeeded();
  await page.mouse.click(...(await onScreen(page, 20, 30)));
  await idle(page);
  expect((await saved(page)).breaks.find((b) => b.name === 'break 1')?.point.x).toBeCloseTo(20, 0);
  await page.getByRole('slider', { name: 'break 1' }).focus();
  await page.keyboard.press('Delete');
  await idle(page);
  expect((await saved(page)).breaks.map((b) => b.name)).not.toContain('break 1');
  // The smudge goes: the stretch is dragged to it, and made straight.
  await button(page, 'Set a stretch right').click();
  await panel(page).locator('.trace-window svg').scrollIntoViewIfNeeded();
  for (const [name, x] of [
    ['Stretch from', 33],
    ['Stretch to', 47],
  ] as const) {
    const box = (await page.getByRole('slider', { name }).locator('.knob').boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(...(await onScreen(page, x, 31)), { steps: 4 });
    await page.mouse.up();
  }
  expect(await page.getByRole('slider', { name: 'Stretch from' }).getAttribute('aria-valuenow')).not.toBe(
    await page.getByRole('slider', { name: 'Stretch to' }).getAttribute('aria-valuenow'),
  );
  await button(page, 'Make it straight').click();
  await idle(page);
  const straight = await saved(page);
  const near = nearnessOf(straight.edge.pieces);
  for (const x of [36, 40, 44]) expect(near.distance({ x, y: 0 })).toBeLessThan(0.1);
  // The acrylic: by figure, and by a tap.
  await panel(page).getByLabel('Its thickness').fill('1/4');
  await button(page, 'Add a line etched across, near the heel').click();
  await panel(page).getByLabel('Line A, from the heel').fill('1/2');
  await button(page, 'Add a line etched along the edge').click();
  await button(page, 'Tap it in the picture').last().click();
  await panel(page).locator('.trace-window svg').scrollIntoViewIfNeeded();
  await page.mouse.click(...(await onScreen(page, 60, 22)));
  await idle(page);
  const said = await saved(page);
  expect(said.thickness).toBeCloseTo(6.35, 3);
  expect(said.alignment).toEqual([{ name: 'A', at: 12.7 }]);
  expect(Math.abs(said.channelLines[0]! - 8)).toBeLessThan(0.5);
  // As finely as a ruler is read, and as the field says it.
  expect((said.channelLines[0]! * 64) / 25.4).toBeCloseTo(Math.round((said.channelLines[0]! * 64) / 25.4), 3);
  expect(await panel(page).getByLabel('Line 1 along the edge, inside the edge').inputValue()).toBe(
    formatLength(said.channelLines[0]!, INCH_SIXTYFOURTH),
  );
  // Over the picture it keeps its distance everywhere, round the corner too: eight pixels are a mm, the heel at (15, 35).
  const d = (await panel(page).locator('.traced-etched').last().getAttribute('d'))!;
  const places = [...d.matchAll(/(-?[\d.]+)[ ,](-?[\d.]+)/g)].map(([, x, y]) => ({
    x: Number(x) / 8 - 15,
    y: 35 - Number(y) / 8,
  }));
  expect(places.length).toBeGreaterThan(20);
  const edge = nearnessOf(said.edge.pieces);
  places.slice(1).forEach((p, i) => {
    const before = places[i]!;
    const middle = { x: (p.x + before.x) / 2, y: (p.y + before.y) / 2 };
    expect(edge.distance(middle)).toBeGreaterThan(said.channelLines[0]! - 0.15);
  });
  expect(await violations(page)).toEqual([]);
  await page.screenshot({ path: join(PICTURES, 'trace-hand.png') });
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  await page.screenshot({ path: join(PICTURES, 'trace-hand-phone.png'), fullPage: true });
  await page.setViewportSize({ width: 1280, height: 900 });
  // A step back and on again; a bad picture and another good one take nothing away.
  await button(page, 'Take the last step back').click();
  await idle(page);
  expect((await saved(page)).channelLines).toEqual([]);
  await button(page, 'Do it again').click();
  await idle(page);
  await give(page, 'half.png', bracket().slice(0, 900));
  await told(page, /half\.png cannot be traced/);
  await page.getByRole('button', { name: 'Go on with bracket.png' }).click();
  await panel(page).waitFor({ timeout: 60_000 });
  await idle(page);
  const again = await saved(page);
  expect(again.breaks.map((b) => b.name)).toEqual(said.breaks.map((b) => b.name));
  expect(again.channelLines[0]).toBeCloseTo(said.channelLines[0]!, 1);
  await page.reload();
  await page.locator('#templates').waitFor({ timeout: 60_000 });
  await page.getByRole('button', { name: 'Go on with bracket.png' }).click();
  await panel(page).waitFor({ timeout: 60_000 });
  await idle(page);
  await button(page, 'Put it on the shelf').click();
  await told(page, /is on the shelf, and ticked/);
  await page.getByText('Rename, save or remove Bracket').click();
  await page.getByRole('button', { name: 'Set it right over its picture' }).click();
  await panel(page).waitFor({ timeout: 60_000 });
  await idle(page);
  expect((await saved(page)).alignment).toEqual([{ name: 'A', at: 12.7 }]);
  expect(await page.getByRole('button', { name: /^Go on with/ }).count()).toBe(0);
  expect(faults).toEqual([]);
  await context.close();
}, 400_000);

test('a keyboard is never without a place: names are typed letter by letter, and the focus stays near', async () => {
  const { page, context } = await ours.visit();
  await begin(page);
  await told(page, /The outline of bracket\.png is found/);
  // Whose first button is the next that Tab comes to.
  await tabTo(page, 'Put the picture away');
  await button(page, 'Add a break').click();
  await idle(page);
  const type = async (label: RegExp, name: string): Promise<void> => {
    const field = panel(page).getByLabel(label).first();
    await field.focus();
    await page.keyboard.press('Control+A');
    // As fast as a hand is, which is slower than an outline.
    await page.keyboard.type(name, { delay: 150 });
    await idle(page);
    expect(await field.inputValue()).toBe(name);
  };
  await type(/^On a smooth stretch, /, 'shoulder');
  await type(/^A (corner|notch), /, 'collar of it');
  const names = (await saved(page)).breaks.flatMap((b) => b.name ?? []);
  expect(names.sort()).toEqual(['collar of it', 'shoulder']);
  await button(page, 'Set a stretch right').press('Enter');
  await expect.poll(() => focused(page)).toBe('Stretch from');
  await button(page, 'Leave it').press('Enter');
  await expect.poll(() => focused(page)).toBe('Set a stretch right');
  await panel(page)
    .getByLabel(/it is off by$/)
    .fill('1 mm');
  await button(page, 'Put the size right').press('Enter');
  await expect.poll(() => focused(page)).toBe('Print its outline');
  await idle(page);
  await button(page, 'Put it on the shelf').press('Enter');
  await told(page, /is on the shelf, and ticked/);
  await expect.poll(() => focused(page)).toBe('Add your template …');
  await context.close();
}, 400_000);

test('a printed outline that is off by a figure brings her back to the size', async () => {
  const { page, context } = await ours.visit();
  await begin(page);
  const chord = ({ edge }: Template): number =>
    Math.hypot(
      edge.pieces.at(-1)!.to.x - edge.pieces[0]!.from.x,
      edge.pieces.at(-1)!.to.y - edge.pieces[0]!.from.y,
    );
  const before = chord(await saved(page));
  const [printed] = await Promise.all([
    page.waitForEvent('download'),
    button(page, 'Save its outline').click(),
  ]);
  expect(printed.suggestedFilename()).toMatch(/\.pdf$/);
  await panel(page)
    .getByLabel(/it is off by$/)
    .fill('1 1/2');
  await idle(page);
  expect(await panel(page).textContent()).toContain('more than a tenth');
  expect(await button(page, 'Put the size right').isDisabled()).toBe(true);
  await panel(page)
    .getByLabel(/it is off by$/)
    .fill('1.5 mm');
  await button(page, 'Put the size right').click();
  await idle(page);
  expect(chord(await saved(page)) - before).toBeCloseTo(1.5, 1);
  await button(page, 'As the picture says').click();
  await idle(page);
  expect(chord(await saved(page))).toBeCloseTo(before, 3);
  await context.close();
}, 400_000);
