/** Figures as a hand really types them: what cannot be read is never shown or printed as if it had been. */

import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { forAllTests, idle, settled } from './harness.ts';

const ours = forAllTests();

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
  'True size on the screen',
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
    const { context, page, faults } = await ours.visit();
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
    const { context, page } = await ours.visit();
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
      ['strip', ['Length', 'Strip width', 'Clear of both ends']],
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
  const { context, page } = await ours.visit();
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
  // With nothing left to choose there is nothing to drag to, and the page says what frees it.
  const lead = page.locator('#swag .lead');
  expect(await lead.textContent()).toMatch(/holds one decided design; “Show everything that fits”/);
  await page.getByRole('button', { name: 'Show everything that fits' }).click();
  await idle(page);
  await expect.poll(() => lead.textContent()).not.toMatch(/decided/);
  await context.close();
});

describe('a frame round a block', () => {
  test('asks for its limit where the field is empty', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    const limit = field(page, 'Finished, at most');
    await page.getByLabel('What is it?').selectOption('frame');
    expect(await limit.getAttribute('placeholder')).toBe('no limit');
    await page.getByLabel('What is it?').selectOption('block');
    expect(await limit.getAttribute('placeholder')).toBe('such as 16');
    await leave(page, 'Finished, at most', '');
    await expectOld(page, 'Finished, at most');
    expect(await page.locator('.verdict').textContent()).toContain(
      'A frame round a block needs its greatest finished size',
    );
    await leave(page, 'Finished, at most', '16');
    await idle(page);
    await expectNew(page);
    await leave(page, 'Block width', '30');
    await idle(page);
    await expect.poll(() => page.locator('.verdict').textContent()).toContain('“Finished, at most”');
    expect(await limit.getAttribute('aria-invalid')).toBe('true');
    await context.close();
  });
});

test('a border is measured along its finished outside as well', async () => {
  const { context, page, faults } = await ours.visit();
  await settled(page);
  const verdict = page.locator('.verdict');
  const before = await verdict.textContent();
  // The sample's border is 6 in wide: its outside is 12 in longer.
  await page.getByLabel('Measured along').selectOption('outer');
  await idle(page);
  const sides = ['Top', 'Right', 'Bottom', 'Left'].map((side) => `${side} side`);
  const shown = await Promise.all(sides.map((side) => field(page, side).inputValue()));
  expect(shown).toEqual(['72 1/8', '84', '72', '84 1/4']);
  expect(await verdict.textContent()).toBe(before);
  await leave(page, 'Border width', '7');
  await idle(page);
  expect(await field(page, 'Top side').inputValue()).toBe('72 1/8');
  await leave(page, 'Bottom side', '73 1/2');
  await idle(page);
  await expectNew(page);
  expect(await verdict.textContent()).toContain('The top side is 1 3/8 in shorter than the bottom side');
  await leave(page, 'Bottom side', '50');
  await expectOld(page, 'Bottom side');
  expect(await field(page, 'Top side').getAttribute('aria-invalid')).toBe('true');
  await leave(page, 'Bottom side', '72');
  await idle(page);
  await page.getByLabel('Measured along').selectOption('inner');
  expect(await field(page, 'Left side').inputValue()).toBe('70 1/4');
  expect(faults).toEqual([]);
  await context.close();
});

test('the ends of a strip are kept clear', async () => {
  const { context, page, faults } = await ours.visit();
  await settled(page);
  await page.getByLabel('What is it?').selectOption('strip');
  await leave(page, 'Length', '60');
  await leave(page, 'Clear of both ends', '5');
  await idle(page);
  const words = (await page.locator('.verdict').textContent()) ?? '';
  const [, count, span] = /(\d+) swags of ([\d\s]+(?:\/\d+)?)\s+in/.exec(words) ?? [];
  const wide = span!.split(/\s/).reduce((sum, part) => {
    const [top, bottom = '1'] = part.split('/');
    return sum + Number(top) / Number(bottom);
  }, 0);
  // To 1/16 in each, they and their gaps share 50 in.
  expect(Number(count) * wide, words).toBeLessThan(50 + Number(count) / 32);
  expect(Number(count) * wide, words).toBeGreaterThan(25);
  expect(faults).toEqual([]);
  await context.close();
});

test('a new quilt begins with the sample’s figures, and can be taken back', async () => {
  const { context, page, faults } = await ours.visit();
  await settled(page);
  await page.getByLabel('What this plan is called').fill('Lathe Street raffle');
  await field(page, 'Border width').fill('8 1/4');
  await page.getByLabel('Paper', { exact: true }).selectOption('a4');
  await page.getByRole('button', { name: 'New', exact: true }).click();
  await page.locator('.notice').filter({ hasText: 'A new plan, “My border”' }).waitFor();
  await idle(page);
  expect(await field(page, 'Border width').inputValue()).toBe('6');
  expect(await page.locator('#title').inputValue()).toBe('My border');
  expect(await page.getByLabel('Paper', { exact: true }).inputValue()).toBe('a4');
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await field(page, 'Border width').inputValue()).toBe('8 1/4');
  expect(await page.locator('#title').inputValue()).toBe('Lathe Street raffle');
  // What was fitted before is still shown while a figure is half typed, and that is no news of what fits.
  const lead = page.locator('#fits').locator('xpath=ancestor-or-self::section').locator('p').first();
  await field(page, 'Border width').fill('8 1/');
  await expect.poll(() => lead.textContent()).toBe('Below is what fitted the figures before.');
  await field(page, 'Border width').fill('1 1/4');
  await expect
    .poll(() => lead.textContent(), { timeout: 30_000 })
    .toMatch(/^Nothing fits these figures yet\. Below/);
  await page.getByLabel('Paper', { exact: true }).selectOption('letter');
  // In centimetres its figures are round ones too.
  await page.getByLabel('Figures in').selectOption('cm');
  await page.getByRole('button', { name: 'New', exact: true }).click();
  await idle(page);
  expect(await field(page, 'Top side').inputValue()).toBe('150');
  expect(await page.getByLabel('Paper', { exact: true }).inputValue()).toBe('a4');
  await expectNew(page);
  expect(await page.locator('.verdict').textContent()).toMatch(/top: \d+ swags of/);
  expect(faults).toEqual([]);
  await context.close();
});

test('the end that is not pressed stays, or goes along where it is passed', async () => {
  const { context, page } = await ours.visit();
  await settled(page);
  const uses = page.locator('.edge-choice > p');
  const press = (name: string) => page.getByRole('button', { name: new RegExp(`^${name}`) }).click();
  await press('end here: section 1');
  await press('start here: section 1');
  await idle(page);
  await expect.poll(() => uses.textContent()).toMatch(/from heel to end of section 1/);
  await press('end here: section 3');
  await idle(page);
  await expect.poll(() => uses.textContent()).toMatch(/from heel to crown end/);
  await press('end here: section 1');
  await press('start here: section 3');
  await idle(page);
  await expect.poll(() => uses.textContent()).toMatch(/from section 3.* to crown end/);
  await context.close();
});
