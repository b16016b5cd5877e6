/** From tape measure to sheets, by keyboard alone; and what stays when the page or the network goes. */

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Download, Locator, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openedPlan } from '../../../src/cli/opened-plan.ts';
import { servePageAt } from '../../../src/cli/page-server.ts';
import { emptyFolder, run, testIo } from '../../cli/run.ts';
import { rawPages } from '../../output/pdf/read-back.ts';
import {
  BUILT,
  focused,
  forAllTests,
  idle,
  ownFiles,
  settled,
  tabTo,
  told,
  unversioned,
  visit,
} from './harness.ts';

const ours = forAllTests();

/** Fits that are shown before anyone asks for more. */
const SHOWN_FITS = 8;

const bytesOf = async (download: Download): Promise<Uint8Array> =>
  new Uint8Array(readFileSync(await download.path()));

const byEnter = async (page: Page, name: string): Promise<Download> => {
  await tabTo(page, name);
  const coming = page.waitForEvent('download', { timeout: 100_000 });
  await page.keyboard.press('Enter');
  return coming;
};

const typeInto = async (page: Page, label: string, text: string): Promise<void> => {
  await tabTo(page, label);
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
};

/** The page's sheets and the command's, from the plan that the page saves, hold the same. */
const expectSameAsCommand = async (planText: string, argv: readonly string[], ofPage: Uint8Array) => {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'plan.yaml'), planText);
  const ran = await run(folder, [argv[0]!, 'plan.yaml', '-o', 'out.pdf', ...argv.slice(1)]);
  expect(ran.code, ran.err).toBe(0);
  await expectSamePages(ofPage, new Uint8Array(readFileSync(join(folder, 'out.pdf'))));
};

const expectSamePages = async (ofPage: Uint8Array, ofCommand: Uint8Array) => {
  const theirs = await rawPages(ofCommand);
  const ours = await rawPages(ofPage);
  expect(ours.length).toBe(theirs.length);
  expect(ours.length).toBeGreaterThan(1);
  ours.forEach((page, i) => {
    expect(page.mediaBox).toEqual(theirs[i]!.mediaBox);
    expect(page.content).toBe(theirs[i]!.content);
    expect(page.forms).toEqual(theirs[i]!.forms);
  });
};

describe('the whole way by keyboard', () => {
  test('from four unequal sides to the sheets, the same as the command prints', async () => {
    const { context, page, asked, faults } = await ours.visit({ acceptDownloads: true });
    await settled(page);
    await typeInto(page, 'Top side', '50 3/8');
    // The order on the screen: top, left and right, then bottom.
    await typeInto(page, 'Right side', '64 1/4');
    await typeInto(page, 'Bottom side', '50 1/2');
    await typeInto(page, 'Left side', '64');
    await typeInto(page, 'Border width', '7');
    await idle(page);
    await expect
      .poll(() => page.locator('.verdict').textContent(), { timeout: 30_000 })
      .toMatch(/top: \d+ swags of/);
    // The second of the fits, by its radio button.
    await tabTo(page, /^1: /);
    await page.keyboard.press('ArrowDown');
    expect(await focused(page)).toMatch(/^2: /);
    await idle(page);
    expect(await page.locator('.fit input').nth(1).isChecked()).toBe(true);
    // Only what has its crown on the centre line can be dragged; the ranking may put others before it.
    await page.keyboard.press('ArrowUp');
    for (let i = 1; i < SHOWN_FITS && !/crown on centre/.test(await focused(page)); i++)
      await page.keyboard.press('ArrowDown');
    expect(await focused(page)).toMatch(/crown on centre/);
    await idle(page);
    // A narrower or wider count by the handle of the span.
    await tabTo(page, 'Span of the swag');
    const slider = page.getByRole('slider', { name: 'Span of the swag' });
    const before = await slider.getAttribute('aria-valuetext');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => slider.getAttribute('aria-valuetext')).not.toBe(before);
    await idle(page);
    // How many sheets there will be is told once they are in sight.
    await page.locator('#paper').scrollIntoViewIfNeeded();
    const about = page.locator('#paper .prints .about').first();
    const MANY = /, (\d+) sheets of Letter, .*, to tape together/;
    await expect.poll(() => about.textContent(), { timeout: 60_000 }).toMatch(MANY);
    const told = Number(MANY.exec((await about.textContent())!)![1]);
    const sheets = await byEnter(page, 'True-size sheets');
    expect(sheets.suggestedFilename()).toBe('my-border-mockup.pdf');
    const pdf = await bytesOf(sheets);
    expect((await rawPages(pdf)).length).toBe(told + 1);
    const saved = await byEnter(page, 'Save plan');
    const plan = Buffer.from(await bytesOf(saved)).toString();
    expect(plan).toContain('top: 50 3/8');
    expect(plan).toContain('repeats:');
    await expectSameAsCommand(plan, ['mockup'], pdf);
    const card = await byEnter(page, 'Marking card');
    await expectSameAsCommand(plan, ['card'], await bytesOf(card));
    expect(faults).toEqual([]);
    const own = new Set(['', ...ownFiles()].map((name) => ours.url() + name));
    expect(asked.filter((url) => !own.has(unversioned(url)) && !url.startsWith('blob:'))).toEqual([]);
    await context.close();
  });

  test('a frame round a motif, from its figures to the sheets', async () => {
    const { context, page, faults } = await ours.visit({ acceptDownloads: true });
    await settled(page);
    await tabTo(page, 'What is it?');
    await page.keyboard.type('A round');
    await idle(page);
    expect(await page.locator('#measure-title').textContent()).toBe('Your motif');
    await typeInto(page, 'Motif, across', '10 1/2');
    await typeInto(page, 'How many swags', '10');
    await typeInto(page, 'Clear of the motif', '3/8');
    await typeInto(page, 'Finished, at most', '17');
    await idle(page);
    await expect
      .poll(() => page.locator('.verdict').textContent(), { timeout: 30_000 })
      .toMatch(/frame: 10 swags of .*finished frame: .* across/);
    await tabTo(page, /^1: /);
    await page.keyboard.press('ArrowDown');
    await idle(page);
    const sheets = await bytesOf(await byEnter(page, 'True-size sheets'));
    const plan = Buffer.from(await bytesOf(await byEnter(page, 'Save plan'))).toString();
    expect(plan).toContain('around: 10 1/2');
    expect(plan).toContain('count: 10');
    await expectSameAsCommand(plan, ['mockup'], sheets);
    await expectSameAsCommand(plan, ['card'], await bytesOf(await byEnter(page, 'Marking card')));
    // Back at the border her figures are as they were.
    await tabTo(page, 'What is it?');
    await page.keyboard.type('A border');
    await idle(page);
    expect(await page.getByLabel('Top side').inputValue()).toBe('60 1/8');
    expect(faults).toEqual([]);
    await context.close();
  });

  test('a side that is typed over is no slip of the pen until its opposite is typed, or the sides are left', async () => {
    const { context, page, faults } = await ours.visit();
    await settled(page);
    // Everything that the page ever showed as wrong.
    await page.evaluate(() => {
      const seen: string[] = [];
      new MutationObserver(() => {
        const wrong = document.querySelector('.verdict.wrong, #measure [aria-invalid]');
        if (wrong) seen.push(wrong.textContent ?? '');
      }).observe(document.querySelector('#measure')!, { subtree: true, childList: true, attributes: true });
      Object.assign(window, { seen });
    });
    const seen = () => page.evaluate(() => (window as unknown as { seen: string[] }).seen);
    await tabTo(page, 'Top side');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('40');
    await idle(page);
    expect(await page.locator('.verdict').textContent()).toMatch(/Now type the bottom side/);
    await typeInto(page, 'Right side', '48');
    // What is waited for stands at both fields of the pair, and the picture says that it is of the figures before.
    const waiting =
      'Top 40 and bottom 60 differ by more than a tenth; opposite sides of a quilt are nearly equal.';
    expect(await page.locator('.at-top').textContent()).toContain(waiting);
    expect(await page.locator('.at-bottom').textContent()).toContain(waiting);
    expect(await page.locator('.quilt-picture.stale').count()).toBe(1);
    await typeInto(page, 'Bottom side', '40 1/4');
    await typeInto(page, 'Left side', '48');
    await idle(page);
    expect(await seen()).toEqual([]);
    expect(await page.locator('.verdict').textContent()).toMatch(/bottom: \d+ swags of/);
    // A real slip is told as soon as the field is left.
    await page.keyboard.press('Control+A');
    await page.keyboard.type('84');
    await idle(page);
    await page.keyboard.press('Tab');
    await page.locator('.verdict.wrong').waitFor();
    expect(await page.locator('.verdict.wrong').textContent()).toMatch(
      /Left 84 and right 48 differ by more than a tenth; .* Measure again\./,
    );
    for (const name of ['Left side', 'Right side'])
      expect(await page.getByLabel(name).getAttribute('aria-invalid')).toBe('true');
    expect(faults).toEqual([]);
    await context.close();
  });

  test('the correction of a measured print is the command’s', async () => {
    const { context, page } = await ours.visit({ acceptDownloads: true });
    await settled(page);
    await typeInto(page, '2 in square measures, along the paper’s short edge', '1.98');
    const sheets = await byEnter(page, 'True-size sheets');
    const pdf = await bytesOf(sheets);
    const plan = await page.evaluate(
      () => JSON.parse(sessionStorage.getItem('swagwright.window')!).plan as string,
    );
    await expectSameAsCommand(plan, ['mockup', '--measured', '1.98,2'], pdf);
    await context.close();
  });

  test('what was kept as across and up is told and not used, until it is measured again', async () => {
    const { context, page } = await ours.visit();
    await page.evaluate(() => localStorage.setItem('swagwright.measured', '1.98|2'));
    await page.reload();
    await settled(page);
    const short = page.getByLabel('2 in square measures, along the paper’s short edge');
    const hint = page.locator('#paper .hint', { hasText: 'edge' });
    expect(await short.inputValue()).toBe('');
    expect(await hint.textContent()).toContain(
      '(1.98 across and 2 up) may have been either edge of the paper',
    );
    await short.fill('1.98');
    expect(await hint.textContent()).toContain('short edge × 1.0101, long edge × 1.0000');
    await page.reload();
    await settled(page);
    expect(await short.inputValue()).toBe('1.98');
    expect(await page.evaluate(() => localStorage.getItem('swagwright.measured'))).toBeNull();
    await context.close();
  });
});

/** Every click, every key that is no letter of a figure, and every field typed, as a hand does them. */
const byHand = (page: Page) => {
  let actions = 0;
  const click = async (target: Locator): Promise<void> => {
    actions++;
    await target.click();
  };
  const type = async (text: string): Promise<void> => {
    actions++;
    await page.keyboard.type(text);
  };
  return {
    actions: () => actions,
    click,
    /** What stands in it is marked first; that is an action too. */
    typeOver: async (field: Locator, text: string): Promise<void> => {
      await click(field);
      actions++;
      await page.keyboard.press('Control+A');
      await type(text);
    },
    /** The next field, whose figure browsers mark as the Tab key comes to it. */
    typeNext: async (label: string, text: string): Promise<void> => {
      actions++;
      await page.keyboard.press('Tab');
      expect(await focused(page)).toBe(label);
      await type(text);
    },
    /** Opened and picked. */
    choose: async (label: string, option: string): Promise<void> => {
      actions += 2;
      await page.getByLabel(label, { exact: true }).selectOption({ label: option });
    },
  };
};

test('from a tape measure to the sheets, with a wish, channels and fills, in at most 25 actions', async () => {
  const { context, page, faults } = await ours.visit({
    acceptDownloads: true,
    viewport: { width: 1280, height: 800 },
  });
  await settled(page);
  const hand = byHand(page);
  await hand.typeOver(page.getByLabel('Top side'), '58 3/8');
  await hand.typeNext('Right side', '71 1/4');
  await hand.typeNext('Bottom side', '58 1/2');
  await hand.typeNext('Left side', '71');
  await hand.typeOver(page.getByLabel('Border width'), '6 1/2');
  await hand.choose('Width of a swag: how it is meant', 'about');
  expect(await page.getByLabel('Width of a swag', { exact: true }).inputValue()).toBe('9');
  await hand.typeOver(page.locator('#quilting input.length').first(), '3/8');
  await hand.click(page.getByText('Fills: feathers, pebbles'));
  await expect
    .poll(() => page.getByLabel('Inside the swags', { exact: true }).locator('option').count(), {
      timeout: 60_000,
    })
    .toBeGreaterThan(3);
  await hand.choose('Inside the swags', 'crosshatch');
  await hand.choose('Round the swags', 'lines');
  await idle(page);
  const coming = page.waitForEvent('download', { timeout: 100_000 });
  await hand.click(page.getByRole('button', { name: 'True-size sheets', exact: true }));
  const pdf = await bytesOf(await coming);
  expect(hand.actions()).toBeLessThanOrEqual(25);
  // 3 for each field that is clicked into, 2 for one that Tab comes to and for a choice, 1 for a click.
  expect(hand.actions()).toBe(3 + 3 * 2 + 3 + 2 + 3 + 1 + 2 * 2 + 1);
  // The plan says all that, and the sheets are those that the command makes of it.
  const plan = Buffer.from(await bytesOf(await byEnter(page, 'Save plan'))).toString();
  for (const line of [
    'top: 58 3/8',
    'right: 71 1/4',
    'bottom: 58 1/2',
    'left: 71',
    'width: 6 1/2',
    'span: about 9',
    'outward: [3/8]',
    'swag: crosshatch',
    'background: lines',
  ])
    expect(plan).toContain(line);
  const wide = [...(await page.locator('.verdict').textContent())!.matchAll(/swags of (\d+)/g)].map(
    ([, inches]) => Number(inches),
  );
  expect(wide.length).toBe(4);
  for (const inches of wide) expect([8, 9]).toContain(inches);
  await expectSameAsCommand(plan, ['mockup'], pdf);
  expect(faults).toEqual([]);
  await context.close();
});

test('the same way with a finger on a telephone', async () => {
  const { context, page, faults } = await ours.visit({
    acceptDownloads: true,
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  await settled(page);
  /** What a telephone's own keyboard types takes the place of what stood there. */
  const type = async (field: Locator, text: string): Promise<void> => {
    await field.tap();
    expect(await field.evaluate((one) => one === document.activeElement)).toBe(true);
    await field.fill(text);
  };
  for (const [side, length] of [
    ['Top side', '58 3/8'],
    ['Right side', '71 1/4'],
    ['Bottom side', '58 1/2'],
    ['Left side', '71'],
    ['Border width', '6 1/2'],
  ] as const)
    await type(page.getByLabel(side), length);
  await type(page.locator('#quilting input.length').first(), '3/8');
  await page.getByText('Fills: feathers, pebbles').tap();
  const inside = page.getByLabel('Inside the swags', { exact: true });
  await expect.poll(() => inside.locator('option').count(), { timeout: 60_000 }).toBeGreaterThan(3);
  await inside.selectOption('crosshatch');
  await idle(page);
  const about = page.locator('#paper .prints .about').first();
  await page.locator('#paper').scrollIntoViewIfNeeded();
  const MANY = /, (\d+) sheets of Letter/;
  await expect.poll(() => about.textContent(), { timeout: 60_000 }).toMatch(MANY);
  const told = Number(MANY.exec((await about.textContent())!)![1]);
  const coming = page.waitForEvent('download', { timeout: 100_000 });
  await page.getByRole('button', { name: 'True-size sheets', exact: true }).tap();
  // The map of the sheets is a page of its own.
  expect((await rawPages(await bytesOf(await coming))).length - told).toBe(1);
  expect(await page.locator('.verdict').textContent()).toMatch(/left: \d+ swags of/);
  expect(faults).toEqual([]);
  await context.close();
});

describe('opened with a plan', () => {
  test('the page begins with it and its templates, and prints what the command prints', async () => {
    const folder = emptyFolder();
    const sampled = (name: string) => readFileSync(join(import.meta.dirname, '../../..', name), 'utf8');
    writeFileSync(join(folder, 'mine.yaml'), sampled('profiles/finial.yaml').replace('Finial', 'My own'));
    const text = sampled('samples/medallion-frame.yaml')
      .replace('template: finial', 'template: ./mine.yaml')
      .replace(/^title:.*\n/m, '');
    writeFileSync(join(folder, 'sign.yaml'), text);
    const own = await servePageAt(BUILT, 0, (await openedPlan(testIo(folder).io, 'sign.yaml')).text);
    const { context, page, faults } = await visit(ours.browser(), own.url, { acceptDownloads: true });
    expect(await told(page, /is open/)).toContain('sign');
    await settled(page);
    expect(new URL(page.url()).hash).toBe('');
    expect(await page.getByLabel('Block width').inputValue()).toBe('14');
    expect(await page.locator('.template:has(:checked)').textContent()).toContain('My own');
    const sheets = await bytesOf(await byEnter(page, 'True-size sheets'));
    const ran = await run(folder, ['mockup', 'sign.yaml', '-o', 'out.pdf']);
    expect(ran.code, ran.err).toBe(0);
    await expectSamePages(sheets, new Uint8Array(readFileSync(join(folder, 'out.pdf'))));
    expect(faults).toEqual([]);
    // What she changes is hers, and stays after a reload.
    await page.getByLabel('Block width').fill('15');
    await idle(page);
    await page.reload();
    await settled(page);
    expect(await page.getByLabel('Block width').inputValue()).toBe('15');
    await context.close();
    await own.close();
  });
});

describe('nothing is lost', () => {
  test('the figures of a border outlive a look at a frame, in other units and over a reload', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    const typed = {
      'Top side': '61 1/2',
      'Right side': '70',
      'Bottom side': '61 3/4',
      'Left side': '70 1/8',
    };
    for (const [name, figure] of Object.entries(typed)) await page.getByLabel(name).fill(figure);
    await page.getByLabel('What is it?').selectOption('frame');
    await page.getByLabel('Motif, across').fill('11');
    await page.getByLabel('Figures in').selectOption('cm');
    await idle(page);
    await page.reload();
    await settled(page);
    await page.getByLabel('What is it?').selectOption('border');
    // 61.5 times 2.54, by hand.
    expect(await page.getByLabel('Top side').inputValue()).toBe('156.21');
    await page.getByLabel('Figures in').selectOption('in');
    for (const [name, figure] of Object.entries(typed))
      expect(await page.getByLabel(name).inputValue()).toBe(figure);
    await page.getByLabel('What is it?').selectOption('frame');
    expect(await page.getByLabel('Motif, across').inputValue()).toBe('11');
    await context.close();
  });

  test('what she did can be taken back after a reload, and done again', async () => {
    const { context, page, faults } = await ours.visit();
    await settled(page);
    const width = page.getByLabel('Border width');
    const [undo, redo] = ['Undo', 'Redo'].map((name) => page.getByRole('button', { name, exact: true }));
    expect(await undo!.isDisabled()).toBe(true);
    await page.getByLabel('What this plan is called').fill('Lathe Street raffle');
    await width.fill('8 1/4');
    await page.getByLabel('Paper', { exact: true }).selectOption('a4');
    // At once, before she rests.
    await page.reload();
    await settled(page);
    await undo!.click();
    expect(await page.getByLabel('Paper', { exact: true }).inputValue()).toBe('letter');
    await undo!.click();
    expect(await width.inputValue()).toBe('6');
    await page.reload();
    await settled(page);
    expect(await width.inputValue()).toBe('6');
    await redo!.click();
    expect(await width.inputValue()).toBe('8 1/4');
    await undo!.click();
    await undo!.click();
    expect(await page.locator('#title').inputValue()).toBe('My border');
    expect(await undo!.isDisabled()).toBe(true);
    // Another window has nothing to take back.
    const other = await context.newPage();
    await other.goto(ours.url());
    await settled(other);
    expect(await other.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true);
    expect(faults).toEqual([]);
    await context.close();
  });

  test('what went well is said where it was asked for, and no longer than until the next change', async () => {
    const { context, page } = await ours.visit({ acceptDownloads: true });
    await settled(page);
    await page.getByRole('button', { name: 'Marking card' }).click();
    expect(await page.locator('#paper .notice').textContent()).toMatch(/with your downloads/);
    await page.getByLabel('Border width').fill('7');
    await expect.poll(() => page.locator('.notice').count()).toBe(0);
    // What is in the way stays.
    await page.getByLabel('2 in square measures, along the paper’s short edge').fill('9');
    await page.getByRole('button', { name: 'Marking card' }).click();
    await page.locator('#paper .notice').waitFor();
    await page.getByLabel('Border width').fill('6');
    await idle(page);
    expect(await page.locator('#paper .notice').textContent()).toMatch(/not a length near 2 in/);
    await context.close();
  });

  test('a reload keeps the plan, and undo and redo go through the changes', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    const width = page.getByLabel('Border width');
    await width.fill('8');
    await page.getByLabel('Foot clearance').focus();
    await idle(page);
    await page.reload();
    await settled(page);
    expect(await width.inputValue()).toBe('8');
    await width.fill('9 1/2');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await width.inputValue()).toBe('8');
    await page.keyboard.press('Control+Shift+Z');
    await expect.poll(() => width.inputValue()).toBe('9 1/2');
    await page.keyboard.press('Control+z');
    await expect.poll(() => width.inputValue()).toBe('8');
    await context.close();
  });

  test('what she took stays taken while a figure is typed over, through whatever it says on the way', async () => {
    const { context, page } = await ours.visit();
    await settled(page);
    await page.locator('.fit').nth(2).click();
    await idle(page);
    const taken = await page.locator('.fit:has(:checked) .caption').textContent();
    const width = page.getByLabel('Border width');
    for (const text of ['2', '1', '6']) {
      await width.fill(text);
      await idle(page);
    }
    expect(await page.locator('.fit:has(:checked) .caption').textContent()).toBe(taken);
    await context.close();
  });

  test('from a folder on disk it fits and prints too', async () => {
    const { context, page, asked, faults } = await visit(
      ours.browser(),
      new URL('../../../dist/page/index.html', import.meta.url).href,
      { acceptDownloads: true },
    );
    await settled(page);
    const coming = page.waitForEvent('download', { timeout: 100_000 });
    await page.getByRole('button', { name: 'Marking card' }).click();
    expect((await rawPages(await bytesOf(await coming))).length).toBeGreaterThan(0);
    expect(faults).toEqual([]);
    expect(asked.filter((url) => !/^(file|blob|data):/.test(url))).toEqual([]);
    await context.close();
  });
});
