/** A class from a pasted table, by the keyboard alone: who cannot be served, how many sheets it takes, and the one PDF. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openPages, readTexts } from '../../output/pdf/read-back.ts';
import { overflow, violations } from './axe.ts';
import { drop, focused, forAllTests, idle, PICTURES, settled, tabTo, told } from './harness.ts';

const ours = forAllTests();

const STRIP = readFileSync(join(import.meta.dirname, '../../../samples/guild-strip.yaml'), 'utf8');

/** A sixteenth of an inch is no length for three swags, and Carmen’s is missing. */
const TABLE = 'name\tlength\twidth\nAda\t36\t5\nBerit\t1/16\t5\nCarmen\t\t5\nDunja\t42\t';

test('a table is pasted, who cannot be served is told, and the rest is one PDF', async () => {
  const { context, page, faults } = await ours.visit({ acceptDownloads: true });
  await settled(page);
  // A border has no pieces.
  await tabTo(page, 'A class');
  await page.keyboard.press('Enter');
  const panel = page.getByRole('region', { name: 'A class' });
  await panel.waitFor();
  const field = panel.getByLabel('The table of students: name, length and width of each piece');
  await expect.poll(() => focused(page)).toMatch(/^The table of students/);
  await field.fill(TABLE);
  await expect
    .poll(() => panel.getByRole('status').textContent(), { timeout: 60_000 })
    .toContain('A class sews strips: each piece is told by its length and width.');
  const make = panel.getByRole('button', { name: 'Sheets for the class' });
  expect(await make.isDisabled()).toBe(true);
  expect(await violations(page)).toEqual([]);

  // What she pasted is there for the next plan.
  await drop(page, 'strip.yaml', STRIP);
  await told(page, /is open/);
  const status = panel.getByRole('status');
  await expect
    .poll(() => status.textContent(), { timeout: 60_000 })
    .toMatch(/2 students, \d+ sheets to tape\./);
  await idle(page);
  expect(await status.getByRole('listitem').allTextContents()).toEqual([
    expect.stringMatching(/^Line 3: length: Berit: too small/),
    'Line 4: length: Carmen: missing; expected the length of the piece, such as 36',
  ]);
  expect(await status.textContent()).toContain('These cannot be made; the others are.');
  const cells = await panel
    .locator('tbody tr')
    .evaluateAll((rows) =>
      rows.map((row) => [...row.children].map((cell) => (cell.textContent ?? '').replaceAll('\u00a0', ' '))),
    );
  // Three swags share 36 in without a gap; on 42 in the best leave gaps.
  expect(cells.map((row) => row.slice(0, 3))).toEqual([
    ['Ada', '36 in × 5 in', '3 of 12 in'],
    ['Dunja', '42 in × 5 in', expect.stringMatching(/^3 of 1[123].* in$/)],
  ]);
  const sheets = cells.reduce((sum, row) => sum + Number(row[3]), 0);
  expect(await status.textContent()).toContain(`2 students, ${sheets} sheets to tape.`);
  expect(await violations(page)).toEqual([]);
  expect(await overflow(page)).toBe(0);
  await panel.screenshot({ path: join(PICTURES, 'class.png') });

  await field.focus();
  await tabTo(page, 'Sheets for the class');
  const coming = page.waitForEvent('download', { timeout: 100_000 });
  await page.keyboard.press('Enter');
  const download = await coming;
  expect(download.suggestedFilename()).toBe('practice-strip-class.pdf');
  expect(await told(page, /with your downloads/)).toMatch(
    new RegExp(`2 students, \\d+ pages, ${sheets} sheets of them to tape\\.`),
  );
  const doc = await openPages(new Uint8Array(readFileSync(await download.path())));
  const teacher = (await readTexts(await doc.getPage(1))).map(({ text }) => text.trim());
  expect(teacher).toContain('Not in it: Berit.');
  for (const row of cells) for (const cell of row) expect(teacher).toContain(cell);
  const labels = (await doc.getPageLabels())!;
  const own = (name: string) => labels.filter((label) => label.startsWith(`${name}: `));
  expect(1 + own('Ada').length + own('Dunja').length).toBe(doc.numPages);
  const card = labels.indexOf(own('Dunja').find((label) => /card/i.test(label))!);
  expect((await readTexts(await doc.getPage(card + 1))).map(({ text }) => text).join(' ')).toContain('Dunja');

  // Put away it is gone, and comes back with what was in it.
  await panel.getByRole('button', { name: 'Put the table away' }).click();
  expect(await panel.count()).toBe(0);
  await page.reload();
  await settled(page);
  await page.getByRole('button', { name: 'A class' }).click();
  expect(await field.inputValue()).toBe(TABLE);
  expect(faults).toEqual([]);
  await context.close();
}, 300_000);

test('the class can be stopped, and asked for again', async () => {
  const { context, page } = await ours.visit({ acceptDownloads: true });
  await settled(page);
  await drop(page, 'strip.yaml', STRIP);
  await told(page, /is open/);
  await idle(page);
  await page.getByRole('button', { name: 'A class' }).click();
  const panel = page.getByRole('region', { name: 'A class' });
  const rows = Array.from({ length: 60 }, (_, i) => `Student ${i},${40 + (i % 20)},5`);
  await panel.getByRole('textbox').fill(['name,length,width', ...rows].join('\n'));
  await page.getByText('Working out the class').waitFor();
  await page.getByRole('button', { name: 'Stop' }).click();
  await told(page, /^Stopped\./);
  expect(await panel.getByRole('status').textContent()).toBe('');
  const coming = page.waitForEvent('download', { timeout: 100_000 });
  await panel.getByRole('button', { name: 'Sheets for the class' }).click();
  await coming;
  expect(await told(page, /with your downloads/)).toContain('60 students');
  await context.close();
}, 300_000);
