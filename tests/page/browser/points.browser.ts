/** A template from points measured off a cutting mat: typed, dragged, kept over a reload, and on the shelf. */

import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readTemplate } from '../../../src/template/index.ts';
import { violations } from './axe.ts';
import { forAllTests, idle, PICTURES, told } from './harness.ts';

const ours = forAllTests();

/** Of a circle of radius 4 in, and one of them an inch off. */
const POINTS = Array.from({ length: 9 }, (_, i) => {
  const angle = (Math.PI * (150 - 15 * i)) / 180;
  return `${(4 * Math.cos(angle)).toFixed(3)}, ${(4 * Math.sin(angle) + (i === 4 ? 1 : 0)).toFixed(3)}`;
});

test('points are typed, one that is wrong is named and dragged, and the template goes on the shelf', async () => {
  const { page, context, faults } = await ours.visit();
  await page.getByRole('button', { name: 'Type its points …' }).click({ timeout: 60_000 });
  const panel = page.locator('#points');
  await panel.waitFor({ timeout: 60_000 });
  const field = panel.getByLabel(/^Points: across, up/);
  await field.fill('0, 0\nabout 3');
  await expect.poll(() => panel.textContent()).toContain('Line 2 is no point: “about 3”');
  await field.fill(POINTS.join('\n'));
  await expect
    .poll(() => panel.textContent(), { timeout: 60_000 })
    .toMatch(/Point 5: The curve through the other points misses this one/);
  const shelve = panel.getByRole('button', { name: 'Put it on the shelf' });
  expect(await shelve.isDisabled()).toBe(true);
  // In the drawing it stands out, with its name.
  expect(await panel.locator('.plotted .wrong text').allTextContents()).toEqual(['Point 5']);
  expect(await panel.locator('.plotted .wrong text').isVisible()).toBe(true);
  // Ten millimetres are ten steps, or one with Shift.
  await panel.getByRole('slider', { name: 'Point 5' }).focus();
  for (let i = 0; i < 2; i++) await page.keyboard.press('Shift+ArrowDown');
  for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowDown');
  await expect.poll(() => shelve.isDisabled(), { timeout: 60_000 }).toBe(false);
  expect((await field.inputValue()).split('\n')[4]).toBe('0, 4.016');
  expect(await violations(page)).toEqual([]);
  await page.screenshot({ path: join(PICTURES, 'points.png') });
  // By hand: an inch up again is as wrong as before, and a step back mends it.
  const knob = panel.getByRole('slider', { name: 'Point 5' }).locator('.knob');
  await knob.scrollIntoViewIfNeeded();
  const box = (await knob.boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2, box.y + 80, { steps: 4 });
  await page.mouse.up();
  await expect.poll(() => shelve.isDisabled(), { timeout: 60_000 }).toBe(true);
  await page.reload();
  await page.getByRole('button', { name: 'Type its points …' }).click({ timeout: 60_000 });
  const rest = (await field.inputValue()).split('\n');
  expect(rest).toHaveLength(9);
  await field.fill([...rest.slice(0, 4), '0, 4', ...rest.slice(5)].join('\n'));
  await panel.getByLabel('What it is called').fill('Corbel');
  await expect.poll(() => shelve.isDisabled(), { timeout: 60_000 }).toBe(false);
  await shelve.click();
  await told(page, /“Corbel” is on the shelf, and ticked/);
  await idle(page);
  expect(await page.getByRole('checkbox', { name: /^Corbel/ }).isChecked()).toBe(true);
  expect(faults).toEqual([]);
  await context.close();
}, 400_000);

test('points have a thickness, etched lines, named breaks and a printed outline, as a picture has', async () => {
  const { page, context, faults } = await ours.visit();
  await page.getByRole('button', { name: 'Type its points …' }).click({ timeout: 60_000 });
  const panel = page.locator('#points');
  const press = (name: string) => panel.getByRole('button', { name }).click();
  // A flat of 4 in, then a slope.
  await panel.getByLabel(/^Points: across, up/).fill('0, 0\n4, 0, corner\n7, 2');
  await idle(page);
  await panel.getByLabel('Its thickness').fill('1/4');
  await press('Add a line etched across, near the heel');
  await panel.getByLabel('Line A, from the heel').fill('1/2');
  await press('Add a line etched along the edge');
  await idle(page);
  const onScreen = async (x: number, y: number): Promise<readonly [number, number]> => {
    const at = await panel.locator('.plotted').evaluate(
      (svg, [across, up]) => {
        const place = new DOMPoint(across! * 25.4, -up! * 25.4).matrixTransform(
          (svg as SVGSVGElement).getScreenCTM()!,
        );
        return { x: place.x, y: place.y };
      },
      [x, y],
    );
    return [at.x, at.y];
  };
  // The second of the two is the one along the edge; the first is told by its figure.
  await panel.getByRole('button', { name: 'Tap it in the picture' }).last().click();
  await panel.locator('.plotted').scrollIntoViewIfNeeded();
  await page.mouse.click(...(await onScreen(2, -0.25)));
  await idle(page);
  // A break by a tap on the curve, named; and the corner named.
  await page.mouse.click(...(await onScreen(1.5, 0)));
  await idle(page);
  await panel.getByLabel(/^On a smooth stretch, 1 1\/2 in/).fill('shoulder');
  await panel.getByLabel(/^A notch, 4 in/).fill('elbow');
  await idle(page);
  expect(await violations(page)).toEqual([]);
  await page.screenshot({ path: join(PICTURES, 'points-by-hand.png') });
  const [printed] = await Promise.all([page.waitForEvent('download'), press('Save its outline')]);
  expect(printed.suggestedFilename()).toMatch(/\.pdf$/);
  await press('Take the last step back');
  await idle(page);
  expect(await panel.getByLabel(/^A notch, 4 in/).inputValue()).toBe('');
  await press('Do it again');
  // All of it is here after a reload.
  await page.reload();
  await page.getByRole('button', { name: 'Type its points …' }).click({ timeout: 60_000 });
  await idle(page);
  await panel.getByLabel('What it is called').fill('Corbel');
  await press('Put it on the shelf');
  await told(page, /“Corbel” is on the shelf, and ticked/);
  await page.getByText('Rename, save or remove Corbel').click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.locator('.own').getByRole('button', { name: 'Save its file' }).click(),
  ]);
  const reading = readTemplate(await readFile(await download.path(), 'utf8'), 'corbel.yaml');
  if (!reading.ok) throw new Error(reading.problems[0]!.message);
  const { template } = reading;
  expect(template.thickness).toBeCloseTo(6.35, 3);
  expect(template.alignment).toEqual([{ name: 'A', at: 12.7 }]);
  expect(Math.abs(template.channelLines[0]! - 6.35)).toBeLessThan(0.5);
  expect(template.breaks.map((b) => b.name)).toEqual(['shoulder', 'elbow']);
  expect(faults).toEqual([]);
  await context.close();
}, 400_000);

test('what two windows type at once is kept by each', async () => {
  const { page, context, faults } = await ours.visit();
  const other = await context.newPage();
  await other.goto(page.url());
  const field = (of: typeof page) => of.locator('#points').getByLabel(/^Points: across, up/);
  const open = (of: typeof page) =>
    of.getByRole('button', { name: 'Type its points …' }).click({ timeout: 60_000 });
  for (const [of, text] of [
    [page, '0, 0\n1, 1'],
    [other, '0, 0\n2, 2'],
  ] as const) {
    await open(of);
    await field(of).fill(text);
  }
  for (const of of [page, other]) await of.reload();
  await open(page);
  expect(await field(page).inputValue()).toBe('0, 0\n1, 1');
  await open(other);
  expect(await field(other).inputValue()).toBe('0, 0\n2, 2');
  // The next visit finds what was typed last, though what the other window was about is done with.
  await field(page).fill('');
  await page.close();
  await other.close();
  const next = await context.newPage();
  await next.goto(ours.url());
  await open(next);
  expect(await field(next).inputValue()).toBe('0, 0\n2, 2');
  expect(faults).toEqual([]);
  await context.close();
}, 200_000);

test('the points of a template on the shelf are set right, in other units too, and what was in work is a step back', async () => {
  const { page, context, faults } = await ours.visit();
  const panel = page.locator('#points');
  const field = panel.getByLabel(/^Points: across, up/);
  const shelve = async (): Promise<void> => {
    await idle(page);
    await panel.getByRole('button', { name: 'Put it on the shelf' }).click();
    await told(page, /“Mat rail” is on the shelf, and ticked/);
  };
  const card = page.getByRole('checkbox', { name: /^Mat rail/ }).locator('xpath=ancestor::li');
  const setRight = page.getByRole('button', { name: 'Set its points right: Mat rail', exact: true });
  await page.getByRole('button', { name: 'Type its points …' }).click({ timeout: 60_000 });
  await field.fill('0, 0\n4, 0, corner\n7, 4');
  await panel.getByLabel('What it is called').fill('Mat rail');
  await panel.getByLabel('Its thickness').fill('1/4');
  await shelve();
  // A flat of 4 in and a slope of 5.
  await expect.poll(() => card.textContent()).toContain('9 in of edge');
  // Another one is begun, and put away.
  await page.getByRole('button', { name: 'Type its points …' }).click();
  await field.fill('0, 0\n1, 1');
  await panel.getByRole('button', { name: 'Put the points away' }).click();
  await page.reload();
  await page.getByLabel('Figures in').selectOption('cm');
  await setRight.click({ timeout: 60_000 });
  expect(await field.inputValue()).toBe('0, 0\n4 in, 0, corner\n7 in, 4 in');
  expect(await panel.getByLabel('What it is called').inputValue()).toBe('Mat rail');
  expect(await panel.getByLabel('Its thickness').inputValue()).toBe('1/4 in');
  await field.fill('0, 0\n5 in, 0, corner\n20.32, 10.16');
  await page.getByLabel('Figures in').selectOption('in');
  await expect.poll(() => field.inputValue()).toBe('0, 0\n5 in, 0, corner\n20.32 cm, 10.16 cm');
  await shelve();
  await expect.poll(() => card.textContent()).toContain('10 in of edge');
  expect(await card.count()).toBe(1);
  // Whose points are not set right any longer become a template of their own.
  await setRight.click();
  await panel.getByRole('button', { name: 'Take the last step back' }).click();
  expect(await field.inputValue()).toBe('');
  expect(faults).toEqual([]);
  await context.close();
}, 400_000);
