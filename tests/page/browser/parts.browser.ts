/** A quilt with parts in the browser: one part is open, the whole quilt is in the picture, and all of it goes on paper. */

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openedPlan } from '../../../src/cli/opened-plan.ts';
import { servePageAt } from '../../../src/cli/page-server.ts';
import { emptyFolder, run, testIo } from '../../cli/run.ts';
import { rawPages } from '../../output/pdf/read-back.ts';
import { BUILT, drop, focused, forAllTests, idle, PICTURES, settled, tabTo, told, visit } from './harness.ts';

const ours = forAllTests();

const QUILT = readFileSync(join(import.meta.dirname, '../../../samples/lathe-street-quilt.yaml'), 'utf8');
const NAMES = ['wreath', 'corner blocks', 'inner border', 'outer border'];

/** What the page keeps of its plan. */
const kept = (page: Page): Promise<{ plan: string; part?: string }> =>
  page.evaluate(() => JSON.parse(sessionStorage.getItem('swagwright.window') ?? '{}'));

const pressed = (page: Page) => page.locator('.parts button[aria-pressed="true"]').textContent();

/** The lines of a part in the picture of the quilt, and how often it lies there. */
const lines = (page: Page, part: string): Promise<string[]> =>
  page
    .locator(`.quilt [data-part="${part}"] path.stitch`)
    .evaluateAll((paths) => paths.map((path) => path.getAttribute('d') ?? ''));

const inPicture = async (page: Page): Promise<void> => {
  await idle(page);
  await expect.poll(() => page.locator('.quilt [data-part]').count(), { timeout: 60_000 }).toBe(4);
};

const open = async (page: Page, part: string): Promise<void> => {
  await page
    .getByRole('navigation', { name: 'Parts of the quilt' })
    .getByRole('button', { name: part, exact: true })
    .click();
  await settled(page);
  await inPicture(page);
};

test('a quilt is opened, changed in one part, printed whole, and found again as it was', async () => {
  const { context, page, faults } = await ours.visit({ acceptDownloads: true });
  await settled(page);
  expect(await page.locator('.parts').count()).toBe(0);
  await drop(page, 'lathe-street-quilt.yaml', QUILT);
  await told(page, /“Lathe Street lap quilt” is open/);
  await inPicture(page);
  expect(await pressed(page)).toBe('wreath');
  expect(await page.locator('.parts .steps button').allTextContents()).toEqual(NAMES);
  await page.screenshot({ path: join(PICTURES, 'parts-wreath.png'), fullPage: true });

  // The inner border by the keyboard; the row keeps the focus.
  await tabTo(page, 'inner border');
  await page.keyboard.press('Enter');
  await settled(page);
  await inPicture(page);
  expect(await focused(page)).toBe('inner border');
  expect(await pressed(page)).toBe('inner border');
  expect(await page.getByLabel('Border width').inputValue()).toBe('4');
  expect(await page.locator('.open-part').getAttribute('data-part')).toBe('inner border');
  expect((await lines(page, 'corner blocks')).length).toBe(4);
  await page.screenshot({ path: join(PICTURES, 'parts-inner.png'), fullPage: true });

  // One figure of it: its own text and its own lines become others, and nothing else does.
  const before = await lines(page, 'inner border');
  const around = await Promise.all(NAMES.filter((n) => n !== 'inner border').map((n) => lines(page, n)));
  await page.getByLabel('Clear of both seams').fill('3/8');
  await expect.poll(() => lines(page, 'inner border')).not.toEqual(before);
  await idle(page);
  const { plan } = await kept(page);
  const [from, to] = [QUILT.indexOf('  inner border:'), QUILT.indexOf('  outer border:')];
  expect(plan.slice(0, from)).toBe(QUILT.slice(0, from));
  expect(plan.slice(-(QUILT.length - to))).toBe(QUILT.slice(to));
  expect(plan.slice(from, plan.length - (QUILT.length - to))).toContain('margin: 3/8');
  expect(await Promise.all(NAMES.filter((n) => n !== 'inner border').map((n) => lines(page, n)))).toEqual(
    around,
  );

  // Another fit of it, which is taken in this part alone.
  await page.locator('.fit input').nth(2).click();
  await idle(page);
  await expect.poll(() => page.locator('.fit input').nth(2).isChecked()).toBe(true);
  await open(page, 'outer border');
  expect(await page.getByLabel('Border width').inputValue()).toBe('6');
  expect(await page.locator('.fit input').nth(0).isChecked()).toBe(true);
  await open(page, 'inner border');
  await expect.poll(() => page.locator('.fit input').nth(2).isChecked()).toBe(true);

  // Looking at a part is no step: what is taken back is what was changed, in the part where it was.
  await open(page, 'wreath');
  await page.getByRole('button', { name: 'Undo' }).click();
  await settled(page);
  await expect.poll(() => pressed(page)).toBe('inner border');
  await expect.poll(() => page.locator('.fit input').nth(0).isChecked()).toBe(true);
  await page.getByRole('button', { name: 'Redo' }).click();
  await open(page, 'inner border');
  await expect.poll(() => page.locator('.fit input').nth(2).isChecked()).toBe(true);

  // The cards of all, as the command has them from the plan that is saved.
  const printing = page.waitForEvent('download', { timeout: 100_000 });
  await page.getByRole('button', { name: 'Marking cards of all parts' }).click();
  const cards = await printing;
  expect(cards.suggestedFilename()).toBe('lathe-street-lap-quilt-card.pdf');
  await told(page, /4 marking cards, and the thread of the whole quilt/);
  const saving = page.waitForEvent('download', { timeout: 60_000 });
  await page.getByRole('button', { name: 'Save plan' }).click();
  const folder = emptyFolder();
  writeFileSync(join(folder, 'plan.yaml'), readFileSync(await (await saving).path()));
  const ran = await run(folder, ['card', 'plan.yaml', '-o', 'out.pdf']);
  expect(ran.code, ran.err).toBe(0);
  const theirs = await rawPages(new Uint8Array(readFileSync(join(folder, 'out.pdf'))));
  const fromPage = await rawPages(new Uint8Array(readFileSync(await cards.path())));
  expect(fromPage.map(({ content }) => content)).toEqual(theirs.map(({ content }) => content));

  // Come back, it is as it was left.
  await page.reload();
  await settled(page);
  await inPicture(page);
  expect(await pressed(page)).toBe('inner border');
  expect(await page.getByLabel('Clear of both seams').inputValue()).toBe('3/8');
  await expect.poll(() => page.locator('.fit input').nth(2).isChecked()).toBe(true);
  expect(faults).toEqual([]);
  await context.close();
});

test('what is half typed in one part is nothing of another', async () => {
  const { context, page } = await ours.visit();
  await settled(page);
  await drop(page, 'lathe-street-quilt.yaml', QUILT);
  await told(page, /is open/);
  await open(page, 'inner border');
  await page.getByLabel('Border width').fill('abc');
  await page.getByLabel('Border width').blur();
  await expect
    .poll(() => page.getByRole('button', { name: 'True-size sheets of all' }).isDisabled())
    .toBe(true);
  await open(page, 'outer border');
  expect(await page.getByLabel('Border width').inputValue()).toBe('6');
  expect(await page.getByRole('button', { name: 'True-size sheets of all' }).isDisabled()).toBe(false);
  await context.close();
});

test('a plan whose layouts all stand in brackets is known as one', async () => {
  const { context, page } = await ours.visit();
  await settled(page);
  const strip = (at: number): string =>
    `{ at: [0, ${at}], layout: { strip: { length: 40, width: 5 } }, swag: { repeats: 4 } }`;
  await drop(page, 'strips.yaml', `template: baluster\nparts:\n  1: ${strip(0)}\n  2: ${strip(10)}\n`);
  await told(page, /“strips” is open/);
  await settled(page);
  await page.locator('.parts').getByRole('button', { name: '2', exact: true }).click();
  await settled(page);
  await page.getByLabel('Strip width').fill('6');
  await idle(page);
  await expect.poll(async () => (await kept(page)).plan).toMatch(/1: .*width: 5.*\n.*2: .*width: 6/);
  await context.close();
});

test('the command opens it whole', async () => {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'quilt.yaml'), QUILT);
  const { text: opened } = await openedPlan(testIo(folder).io, 'quilt.yaml');
  const own = await servePageAt(BUILT, 0, opened);
  const { context, page, faults } = await visit(ours.browser(), own.url);
  await told(page, /“Lathe Street lap quilt” is open/);
  await inPicture(page);
  expect((await kept(page)).plan).toBe(QUILT);
  await open(page, 'outer border');
  expect(await page.locator('.verdict').textContent()).toMatch(/top: \d+ swags of/);
  expect(faults).toEqual([]);
  await context.close();
  await own.close();
});

test('a part is added, laid elsewhere, turned and taken out, and each is a step that is taken back', async () => {
  const { context, page, faults } = await ours.visit();
  await settled(page);
  const before = (await kept(page)).plan;
  const places = (): Promise<string[]> =>
    page
      .locator('.quilt [data-part="label"] > g')
      .evaluateAll((all) => all.map((g) => g.getAttribute('transform')!));
  const drawn = (count: number) =>
    expect.poll(() => page.locator('.quilt [data-part]').count(), { timeout: 60_000 }).toBe(count);

  // By the keyboard: the plan of one border becomes one of two parts, and the new one is open.
  await page.getByText('More than one design on this quilt?').click();
  await tabTo(page, 'Name of a new part');
  await page.keyboard.type('label');
  await page.keyboard.press('Enter');
  await settled(page);
  await drawn(2);
  expect(await page.locator('.parts .steps button').allTextContents()).toEqual(['border', 'label']);
  expect(await pressed(page)).toBe('label');
  expect((await kept(page)).plan).toMatch(/^parts:\n {2}border:\n {4}layout:\n[\s\S]*\n {2}label: /m);
  expect(await page.locator('.verdict').textContent()).not.toContain('does not work out');
  await page.screenshot({ path: join(PICTURES, 'parts-added.png'), fullPage: true });

  // Where it lies, in mm of the picture, whose y points down; and a quarter turn against the clock.
  const right = page.getByLabel('Right of the middle');
  expect(await right.inputValue()).toBe('0');
  const [x0, y0] = matrixOf((await places())[0]!).slice(4);
  await right.fill('-10 1/2');
  await page.getByLabel('Up from the middle').fill('-70');
  await idle(page);
  await expect.poll(async () => (await kept(page)).plan).toContain('at: [-10 1/2, -70]');
  await expect
    .poll(async () => matrixOf((await places())[0]!)[4]! - x0!, { timeout: 60_000 })
    .toBeCloseTo(-10.5 * 25.4, 1);
  await page.getByLabel('Turned, degrees').fill('90');
  await expect.poll(async () => (await kept(page)).plan).toContain('turn: 90');
  // The cosine and the sine of a quarter turn.
  await expect
    .poll(async () =>
      matrixOf((await places())[0]!)
        .slice(0, 2)
        .map((n) => Math.round(Math.abs(n) * 1e6)),
    )
    .toEqual([0, 1e6]);
  expect(Math.abs(y0!)).toBeGreaterThan(40 * 25.4);

  // What cannot be: it is said at the field, and the plan stays.
  await page.getByLabel('Turned, degrees').fill('400');
  expect(await page.getByText('Type degrees from -360 to 360').count()).toBe(1);
  expect((await kept(page)).plan).toContain('turn: 90');
  await page.getByLabel('Turned, degrees').fill('90');
  await right.fill('0');
  await page.getByLabel('Up from the middle').fill('40');
  await idle(page);
  await expect.poll(() => page.locator('.verdict').textContent()).toMatch(/lies on the part/);

  // The address holds it, the parts too.
  await page.getByLabel('Up from the middle').fill('-70');
  await idle(page);
  const { plan } = await kept(page);
  await page.getByRole('button', { name: 'Take “label” out' }).click();
  await settled(page);
  expect(await page.locator('.parts .steps button').allTextContents()).toEqual(['border']);
  await page.getByRole('button', { name: 'Undo' }).click();
  await settled(page);
  await drawn(2);
  expect((await kept(page)).plan).toBe(plan);
  for (let i = 0; i < 20 && (await page.locator('.parts').count()) > 0; i++)
    await page.getByRole('button', { name: 'Undo' }).click();
  await settled(page);
  expect((await kept(page)).plan).toBe(before);
  await page.getByRole('button', { name: 'Redo' }).click();
  await settled(page);
  await drawn(2);
  await page.reload();
  await settled(page);
  await drawn(2);
  expect(await pressed(page)).toBe('label');
  expect(faults).toEqual([]);
  await context.close();
});

const matrixOf = (transform: string): readonly number[] =>
  /matrix\((.*)\)/.exec(transform)![1]!.split(/[ ,]+/).map(Number);

test('a wreath is laid in the corners of a border by its name, and goes with them', async () => {
  const quilt = `title: Mitred lap quilt
template: [baluster, finial]
parts:
  wreath:
    layout: { frame: { count: 6, around: 3 1/2, within: 7 } }
  border:
    layout: { border: { width: 8, inner: 48, margin: 1/2, corners: half } }
`;
  const { context, page, faults } = await ours.visit();
  await settled(page);
  await drop(page, 'mitred.yaml', quilt);
  await told(page, /“Mitred lap quilt” is open/);
  await expect.poll(() => lines(page, 'border').then((all) => all.length), { timeout: 60_000 }).toBe(1);
  expect((await lines(page, 'wreath')).length).toBe(1);
  await page
    .getByLabel('Where it lies', { exact: true })
    .selectOption({ label: 'In the corners of “border”' });
  await idle(page);
  expect((await kept(page)).plan).toContain('    at: corners of border\n');
  await expect.poll(() => lines(page, 'wreath').then((all) => all.length)).toBe(4);
  expect(await page.getByLabel('Right of the middle').count()).toBe(0);
  // A wider border takes them outward, though another part is open.
  const places = (): Promise<(string | null | undefined)[]> =>
    page
      .locator('.quilt [data-part="wreath"] path.stitch')
      .evaluateAll((all) => all.map((one) => one.closest('[transform]')?.getAttribute('transform')));
  await page
    .getByRole('navigation', { name: 'Parts of the quilt' })
    .getByRole('button', { name: 'border', exact: true })
    .click();
  await settled(page);
  await expect.poll(() => lines(page, 'wreath').then((all) => all.length), { timeout: 60_000 }).toBe(4);
  expect(await page.getByLabel('Where it lies', { exact: true }).count()).toBe(0);
  await page.screenshot({ path: join(PICTURES, 'parts-corners.png'), fullPage: true });
  const before = await places();
  expect(new Set(before).size).toBe(4);
  await page.getByLabel('Clear of both seams').fill('1/4');
  await page.getByLabel('Border width').fill('7 1/2');
  await expect.poll(places, { timeout: 60_000 }).not.toEqual(before);
  expect(faults).toEqual([]);
  await context.close();
});
