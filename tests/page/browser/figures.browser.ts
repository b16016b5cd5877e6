/** Figures as a hand really types them: what cannot be read is never shown or printed as if it had been. */

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PageServer } from '../../../src/cli/page-server.ts';
import { idle, launch, serve, settled, visit } from './harness.ts';

let browser: Browser;
let server: PageServer;

beforeAll(async () => {
  browser = await launch();
  server = await serve();
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const field = (page: Page, label: string) => page.getByLabel(label, { exact: true });

const leave = async (page: Page, label: string, text: string): Promise<void> => {
  await field(page, label).fill(text);
  await field(page, label).blur();
};

const isFree = (page: Page): Promise<boolean> =>
  page.getByRole('button', { name: 'True-size sheets' }).isEnabled();

const PRINTS = [
  'True-size sheets',
  'Marking card',
  'Fills to choose from',
  'Empty swags',
  'What fits, in pictures',
];

const expectOld = async (page: Page, label: string): Promise<void> => {
  await expect.poll(() => field(page, label).getAttribute('aria-invalid')).toBe('true');
  expect(await page.locator('.quilt-picture.stale').textContent()).toContain(
    'Still the quilt of the figures before.',
  );
  expect(await page.locator('.verdict').textContent()).toMatch(/does not work out yet/);
  for (const name of PRINTS) expect(await page.getByRole('button', { name }).isDisabled(), name).toBe(true);
  expect(await page.locator('.fit input').first().isDisabled()).toBe(true);
};

const expectNew = async (page: Page): Promise<void> => {
  await expect.poll(() => isFree(page)).toBe(true);
  expect(await page.locator('.quilt-picture.stale').count()).toBe(0);
};

describe('a figure that cannot be read', () => {
  test('greys the picture and keeps it off paper, as one that does not fit does', async () => {
    const { context, page, faults } = await visit(browser, server.url);
    await settled(page);
    for (const text of ['abc', '', '-78', '61 1/0', '3']) {
      await leave(page, 'Top side', text);
      await expectOld(page, 'Top side');
      await leave(page, 'Top side', '60 1/8');
      await expectNew(page);
    }
    // Not even for a moment: the buttons are off before the field is left.
    await field(page, 'Top side').fill('61 1/');
    await expect.poll(() => isFree(page)).toBe(false);
    expect(await field(page, 'Top side').getAttribute('aria-invalid')).toBe(null);
    // And it is taken back as any other step.
    await page.getByRole('button', { name: 'Undo' }).click();
    await expectNew(page);
    expect(await field(page, 'Top side').inputValue()).toBe('60 1/8');
    expect(faults).toEqual([]);
    await context.close();
  });

  test('in every field of the plan', async () => {
    const { context, page } = await visit(browser, server.url);
    await settled(page);
    const kinds = [
      [
        'border',
        [
          'Left side',
          'Border width',
          'Clear of both seams',
          'Foot clearance',
          'Widths: each from the line before',
        ],
      ],
      ['strip', ['Length', 'Strip width']],
      ['frame', ['Motif, across', 'How many swags', 'Clear of the motif', 'Finished, at most']],
      ['block', ['Block width', 'Block height', 'Clear of the block', 'Finished, at most']],
    ] as const;
    for (const [kind, labels] of kinds) {
      await page.getByLabel('What is it?').selectOption(kind);
      await idle(page);
      await expectNew(page);
      for (const label of labels) {
        const one = page.getByLabel(label, { exact: true }).first();
        const before = await one.inputValue();
        await one.fill('abc');
        await one.blur();
        await expect.poll(() => isFree(page), { message: label }).toBe(false);
        expect(await one.getAttribute('aria-invalid'), label).toBe('true');
        expect(await page.locator('.quilt-picture.stale').count(), label).toBe(1);
        await one.fill(before);
        await one.blur();
        await expectNew(page);
      }
      // What is gone is in nobody's way.
      await page.getByLabel(labels[0], { exact: true }).fill('abc');
    }
    await context.close();
  });
});

test('one way is one way', async () => {
  const { context, page } = await visit(browser, server.url);
  await settled(page);
  const spoken = page.locator('.unseen[role=status]');
  expect(await spoken.textContent()).toMatch(/\d+ ways fit\.$/);
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save plan' }).click();
  await page
    .locator('input[type=file]')
    .first()
    .setInputFiles((await (await saved).path())!);
  await page.locator('.notice').filter({ hasText: 'is open' }).waitFor();
  await idle(page);
  await expect.poll(() => spoken.textContent()).toMatch(/\b1 way fits\.$/);
  await context.close();
});
