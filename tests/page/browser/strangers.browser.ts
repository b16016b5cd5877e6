/** What comes from outside: dropped files and links, well meant and hostile. A message, and nothing runs. */

import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { fragmentOf } from '../../../src/page/plan/link.ts';
import { FIRST_PLAN, type State } from '../../../src/page/plan/state.ts';
import { ADDRESS, drop, forAllTests, idle, settled, told, visit, visitAddress } from './harness.ts';

const ours = forAllTests();

const SCRIPT = '<img src=x onerror=window.ran=1><script>window.ran=1</script>';

/** An arc of 8 in with a rise of 2 in: one plain lobe. */
const ARCH = `title: Arch ${SCRIPT}
units: in
edge:
  - start: [0, 0]
  - arc: { to: [5, 1], rise: 1 }
`;

/** Each line is ten of the one before: ten thousand million values from ten lines. */
const BOMB = ['a0: &a0 [1, 1, 1, 1, 1, 1, 1, 1, 1, 1]']
  .concat(
    Array.from(
      { length: 9 },
      (_, i) => `a${i + 1}: &a${i + 1} [${Array.from({ length: 10 }, () => `*a${i}`).join(', ')}]`,
    ),
  )
  .concat('layout: *a9')
  .join('\n');

const KILOMETRE = FIRST_PLAN.replace('top: 60 1/8', 'top: 1000000 mm');

const stateOf = (plan: string, own: State['own'] = []): State => ({ plan, own, taken: undefined });

const planKept = (page: Page): Promise<string> =>
  page.evaluate(() => JSON.parse(sessionStorage.getItem('swagwright.window')!).plan as string);

const ran = (page: Page): Promise<boolean> => page.evaluate(() => 'ran' in window);

describe('a dropped template', () => {
  test('stands on the shelf, is searched, and is in the plan', async () => {
    const { context, page, faults } = await ours.visit();
    await settled(page);
    await drop(page, 'arch.yaml', ARCH);
    await told(page, /is on the shelf/);
    await idle(page);
    const card = page.locator('.template').filter({ hasText: 'Arch' });
    expect(await card.locator('input').isChecked()).toBe(true);
    expect(await card.textContent()).toContain(SCRIPT);
    expect(await planKept(page)).toContain('./arch.yaml');
    for (const name of ['Baluster', 'Finial', 'Newel'])
      await page.locator('.template').filter({ hasText: name }).locator('input').uncheck();
    await idle(page);
    await expect.poll(() => page.locator('.fit').first().textContent()).toContain('Arch');
    expect(await ran(page)).toBe(false);
    expect(faults).toEqual([]);
    // It comes back with a reload: it is kept with the plan.
    await page.reload();
    await settled(page);
    expect(await page.locator('.template').filter({ hasText: 'Arch' }).count()).toBe(1);
    await context.close();
  });

  test('with a mistake it is told, with its line', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    await drop(page, 'wrong.yaml', ARCH.replace('to: [5, 1]', 'to: [5, wide]'));
    expect(await told(page, /cannot be used as a template/)).toMatch(/wrong\.yaml:5:/);
    expect(await page.locator('.template').count()).toBe(3);
    await context.close();
  });
});

/** A board of 200 mm with one arc of the template's edge: from 0 to 200 along, 40 mm high (W3C SVG 1.1, lengths in mm). */
const DRAWING = `<svg xmlns="http://www.w3.org/2000/svg" width="220mm" height="90mm" viewBox="0 0 220 90">
<script>window.ran=1</script><path id="edge" onload="window.ran=1" d="M10 80 L10 60 A145 145 0 0 1 210 60 L210 80 Z"/></svg>`;

describe('a dropped drawing', () => {
  test('becomes a template that is ticked, and a file of hers', async () => {
    const { context, page, faults } = await ours.visit();
    await settled(page);
    const saved = page.waitForEvent('download');
    await drop(page, 'board_rail.svg', DRAWING);
    expect((await saved).suggestedFilename()).toBe('board_rail.yaml');
    // An arc with the chord 200 and the radius 145: 2·145·asin(100/145) = 220.7 mm = 8.688 in, to an eighth 8 3/4.
    expect(await told(page, /Board rail.*is made, ticked/)).toMatch(/8 3\/4 in of edge in one section/);
    await idle(page);
    const card = page.locator('.template').filter({ hasText: 'Board rail' });
    expect(await card.locator('input').isChecked()).toBe(true);
    expect(await planKept(page)).toContain('./board_rail.yaml');
    expect(await ran(page)).toBe(false);
    expect(faults).toEqual([]);
    await context.close();
  });

  const entities = `<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]><svg><path d="&b;"/></svg>`;
  for (const [name, file, text] of [
    ['with entities', 'bomb.svg', entities],
    ['nested without end', 'deep.svg', '<svg>'.repeat(100_000)],
    ['cut short', 'short.svg', DRAWING.slice(0, 150)],
    ['a picture', 'scan.png', '\u0089PNG'],
  ] as const)
    test(`${name}: a message, and the plan stays`, async () => {
      const { context, page, faults } = await ours.visit();
      await settled(page);
      await drop(page, file, text);
      await told(page, /cannot be (used|traced)/);
      expect(await planKept(page)).toBe(FIRST_PLAN);
      expect(await page.locator('.template').count()).toBe(3);
      expect(await ran(page)).toBe(false);
      expect(faults).toEqual([]);
      await context.close();
    });
});

describe('hostile plans', () => {
  const cases: readonly (readonly [string, string])[] = [
    ['exploding YAML', BOMB],
    ['a border of a kilometre', KILOMETRE],
    ['brackets without end', `layout: ${'['.repeat(100_000)}`],
    ['no plan at all', `layout: ${SCRIPT}`],
  ];

  for (const [name, plan] of cases)
    test(`${name}, dropped: a message, and the plan stays`, async () => {
      const { context, page, faults } = await ours.visit();
      await settled(page);
      const before = await planKept(page);
      await drop(page, 'hostile.yaml', plan);
      await told(page, /cannot be used|too large/);
      expect(await planKept(page)).toBe(before);
      expect(await ran(page)).toBe(false);
      // The page still works.
      await page.getByLabel('Border width').fill('7');
      await expect.poll(() => planKept(page)).toContain('width: 7');
      expect(faults).toEqual([]);
      await context.close();
    });

  for (const [name, plan] of cases)
    test(`${name}, in a link: a message, and the plan stays`, async () => {
      const fragment = await fragmentOf(stateOf(plan), []);
      const { context, page, faults } = await visit(ours.browser(), ours.url() + fragment);
      await told(page, /cannot be used/);
      await settled(page);
      expect(await planKept(page)).toBe(FIRST_PLAN);
      expect(await ran(page)).toBe(false);
      expect(new URL(page.url()).hash).toBe('');
      expect(faults).toEqual([]);
      await context.close();
    });

  test('a plan of 90,000 lines, in a link, dropped or in the store, is not kept', async () => {
    const long = FIRST_PLAN + '#\n'.repeat(90_000);
    const fragment = await fragmentOf(stateOf(long), []);
    expect(fragment.length).toBeLessThan(1000);
    const { context, page, faults } = await visit(ours.browser(), ours.url() + fragment);
    await told(page, /too long for this page/);
    await settled(page);
    expect(await planKept(page)).toBe(FIRST_PLAN);
    await drop(page, 'long.yaml', long);
    await told(page, /long\.yaml is too long/);
    expect(await planKept(page)).toBe(FIRST_PLAN);
    await page.evaluate(
      (plan) => sessionStorage.setItem('swagwright.window', JSON.stringify({ plan })),
      long,
    );
    await page.reload();
    await settled(page);
    expect(await planKept(page)).toBe(FIRST_PLAN);
    expect(faults).toEqual([]);
    await context.close();
  });

  test('names that hold a script are shown as they are written', async () => {
    const own = [{ name: `./${SCRIPT}.yaml`, text: ARCH }];
    const plan = FIRST_PLAN.replace('My border', `"${SCRIPT}"`).replace(
      '[ baluster, finial, newel ]',
      `["./${SCRIPT}.yaml", finial]`,
    );
    const fragment = await fragmentOf(stateOf(plan, own), [own[0]!.name]);
    const { context, page, faults } = await visit(ours.browser(), ours.url() + fragment);
    await told(page, /is open/);
    await settled(page);
    expect(await page.locator('#title').inputValue()).toBe(SCRIPT);
    await page.waitForTimeout(500);
    expect(await ran(page)).toBe(false);
    expect(faults).toEqual([]);
    await context.close();
  });

  test('a link whose text is no plan, or unpacks to gigabytes, is refused', async () => {
    const { context, page } = await visit(ours.browser(), `${ours.url()}#plan=abc`);
    await told(page, /no plan that can be read/);
    const stream = new Blob([new Uint8Array(300_000_000)])
      .stream()
      .pipeThrough(new CompressionStream('deflate-raw'));
    const packed = Buffer.from(await new Response(stream).arrayBuffer()).toString('base64url');
    expect(packed.length).toBeLessThan(1_000_000);
    await page.getByRole('button', { name: 'Dismiss' }).click();
    await page.evaluate((hash) => {
      location.hash = hash;
    }, `#plan=${packed}`);
    await told(page, /no plan that can be read/);
    await context.close();
  });
});

test('a link that one page copies opens the same plan on another', async () => {
  const { context, page } = await visitAddress(ours.browser(), '', {
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  await settled(page);
  await page.getByLabel('Border width').fill('8 1/4');
  await page.getByLabel('What this plan is called').fill('Lathe Street raffle');
  await idle(page);
  await page.getByRole('button', { name: 'Copy link' }).click();
  await told(page, /link is copied/);
  const link = await page.evaluate(() => navigator.clipboard.readText());
  expect(link.startsWith(`${ADDRESS}#plan=`)).toBe(true);
  const other = await visit(ours.browser(), link.replace(ADDRESS, ours.url()));
  await told(other.page, /is open/);
  await settled(other.page);
  expect(await other.page.locator('#title').inputValue()).toBe('Lathe Street raffle');
  expect(await other.page.getByLabel('Border width').inputValue()).toBe('8 1/4');
  // What the fragment held went to no server.
  expect(other.asked.some((url) => url.includes('plan='))).toBe(false);
  await context.close();
  await other.context.close();
});
