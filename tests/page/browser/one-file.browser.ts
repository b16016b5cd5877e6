/** The page as one file: opened from the disk without a connection it does all that the page does, and hands itself on. */

import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Download, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { withOpened } from '../../../src/jobs/one-file.ts';
import { emptyFolder, run } from '../../cli/run.ts';
import { rawPages } from '../../output/pdf/read-back.ts';
import { bracket, give } from './bracket.ts';
import { BUILT, forAllTests, idle, settled, told, visit } from './harness.ts';

const ours = forAllTests();

const PLAN = `title: Lathe <Street> & "raffle" </script>
template: ./corbel.yaml
layout: { border: { width: 9 1/4, inner: { top: 61 3/8, right: 74, bottom: 61 1/8, left: 74 1/4 } } }
`;
const CORBEL = `title: Corbel
edge:
  - start: [0, 0]
  - arc: { to: [6, 2], rise: 3/4 }
`;

const byButton = async (page: Page, name: string): Promise<Download> => {
  const coming = page.waitForEvent('download', { timeout: 100_000 });
  await page.getByRole('button', { name, exact: true }).click();
  return coming;
};

const offline = { acceptDownloads: true, offline: true };

test('made by the command, it fits, prints and traces from the disk, and hands itself on', async () => {
  const folder = emptyFolder();
  writeFileSync(join(folder, 'raffle.yaml'), PLAN);
  writeFileSync(join(folder, 'corbel.yaml'), CORBEL);
  const made = await run(folder, ['open', 'raffle.yaml', '--save', 'raffle.html']);
  expect(made.code, made.err).toBe(0);
  expect(made.err).toMatch(/^raffle\.html: the whole page as one file, with raffle\.yaml in it\./);
  const first = await visit(ours.browser(), pathToFileURL(join(folder, 'raffle.html')).href, offline);
  const { page } = first;
  await told(page, /is open/);
  await settled(page);
  const title = 'Lathe <Street> & "raffle" </script>';
  expect(await page.locator('#title').inputValue()).toBe(title);
  expect(await page.getByRole('checkbox', { name: /^Corbel/ }).isChecked()).toBe(true);
  // What comes later is in it: fonts and the thorough worker, fills, a class, the swag on glass, tracing.
  const sheets = await byButton(page, 'True-size sheets');
  const pages = await rawPages(new Uint8Array(readFileSync(await sheets.path())));
  expect(pages.length).toBeGreaterThan(2);
  await give(page, 'bracket.png', bracket());
  await page.locator('#trace').waitFor({ timeout: 60_000 });
  await idle(page);
  await page.getByRole('button', { name: 'Put the picture away' }).click();

  // A copy holds what she has changed; the one that was opened stays as it is.
  await page.getByLabel('Border width').fill('8 1/4');
  await idle(page);
  const copy = await byButton(page, 'Save page');
  await told(page, /is with your downloads: this page with the plan in it/);
  expect(copy.suggestedFilename()).toMatch(/^lathe-.*\.html$/);
  const second = join(folder, 'second.html');
  copyFileSync(await copy.path(), second);

  // Opened again, she goes on where she left off.
  const again = await first.context.newPage();
  await again.goto(pathToFileURL(join(folder, 'raffle.html')).href);
  await settled(again);
  expect(await again.getByLabel('Border width').inputValue()).toBe('8 1/4');
  // A page with another plan, in the same window, is another place: neither plan takes the other's.
  writeFileSync(
    join(folder, 'strip.yaml'),
    'title: A strip\ntemplate: newel\nlayout: { strip: { length: 60, width: 8 } }\n',
  );
  expect((await run(folder, ['open', 'strip.yaml', '--save', 'strip.html'])).code).toBe(0);
  await again.goto(pathToFileURL(join(folder, 'strip.html')).href);
  await told(again, /“A strip” is open/);
  await again.getByLabel('What this plan is called').fill('A long strip');
  await idle(again);
  await again.reload();
  await settled(again);
  expect(await again.locator('#title').inputValue()).toBe('A long strip');
  await again.goto(pathToFileURL(join(folder, 'raffle.html')).href);
  await settled(again);
  expect(await again.locator('#title').inputValue()).toBe(title);
  expect(await again.getByLabel('Border width').inputValue()).toBe('8 1/4');
  expect(first.faults).toEqual([]);
  expect(first.asked.filter((url) => !/^(file|blob|data):/.test(url))).toEqual([]);
  await first.context.close();

  const other = await visit(ours.browser(), pathToFileURL(second).href, offline);
  await told(other.page, /is open/);
  await settled(other.page);
  expect(await other.page.locator('#title').inputValue()).toBe(title);
  expect(await other.page.getByLabel('Border width').inputValue()).toBe('8 1/4');
  expect(await other.page.getByRole('checkbox', { name: /^Corbel/ }).isChecked()).toBe(true);
  expect(other.faults).toEqual([]);
  await other.context.close();
});

test('a page that only this computer reaches gives the file, and no link', async () => {
  const { context, page, faults } = await ours.visit({ acceptDownloads: true });
  await settled(page);
  expect(await page.getByRole('button', { name: 'Copy link' }).count()).toBe(0);
  await page.getByLabel('Border width').fill('8 1/4');
  await idle(page);
  const saved = await byButton(page, 'Save page');
  expect(saved.suggestedFilename()).toBe('my-border.html');
  const path = join(emptyFolder(), 'saved.html');
  copyFileSync(await saved.path(), path);
  await context.close();
  const other = await visit(ours.browser(), pathToFileURL(path).href, offline);
  await told(other.page, /is open/);
  expect(await other.page.getByLabel('Border width').inputValue()).toBe('8 1/4');
  expect([...faults, ...other.faults]).toEqual([]);
  await other.context.close();
});

test('a design that was kept in it is there the next time', async () => {
  const one = pathToFileURL(join(BUILT, 'swagwright.html')).href;
  const { page, faults, context } = await visit(ours.browser(), one, offline);
  await settled(page);
  await page.getByRole('button', { name: 'Keep design' }).click();
  await told(page, /is kept in this browser/);
  // What shows designs comes with the page itself now, and no longer after it.
  await page.reload();
  await page.getByLabel('What the design My border is called').waitFor({ timeout: 60_000 });
  expect(faults).toEqual([]);
  await context.close();
});

test('from the folder on disk it says which file does that', async () => {
  const { context, page } = await visit(ours.browser(), pathToFileURL(join(BUILT, 'index.html')).href);
  await settled(page);
  await page.getByRole('button', { name: 'Save page' }).click();
  await told(page, /Open swagwright\.html, which lies beside it/);
  await context.close();
});

test('a plan that is put into it runs as nothing else, whatever it says', async () => {
  const page = readFileSync(join(BUILT, 'swagwright.html'), 'utf8');
  const plan =
    'title: "</script><script>document.title=1</script><!-- <script>"\ntemplate: baluster\nlayout: { strip: { length: 60, width: 8 } }\n';
  const folder = emptyFolder();
  const path = join(folder, 'strange.html');
  writeFileSync(path, withOpened(page, JSON.stringify({ plan, own: [] })));
  const { page: opened, faults, context } = await visit(ours.browser(), pathToFileURL(path).href, offline);
  await told(opened, /is open/);
  expect(await opened.title()).not.toBe('1');
  expect(faults).toEqual([]);
  // Another script in it is refused by its policy.
  const changed = join(folder, 'changed.html');
  writeFileSync(changed, page.replace('</body>', '<script>document.title="changed"</script></body>'));
  const other = await visit(ours.browser(), pathToFileURL(changed).href, offline);
  await settled(other.page);
  expect(await other.page.title()).not.toBe('changed');
  expect(other.faults.join()).toMatch(/Content Security Policy/);
  await Promise.all([context.close(), other.context.close()]);
});

test('closed before its plan is open, it opens that at the next visit', async () => {
  const page = readFileSync(join(BUILT, 'swagwright.html'), 'utf8');
  const plan = 'title: A strip\ntemplate: newel\nlayout: { strip: { length: 60, width: 8 } }\n';
  const path = join(emptyFolder(), 'early.html');
  writeFileSync(path, withOpened(page, JSON.stringify({ plan, own: [] })));
  const { page: early, context } = await visit(ours.browser(), pathToFileURL(path).href, offline);
  // The figures to begin with are kept before the plan has been looked at.
  const kept = await early.evaluate(() =>
    Object.keys(localStorage).filter((key) => key.startsWith('swagwright.last ')),
  );
  expect(kept).toHaveLength(1);
  await early.close();
  const next = await context.newPage();
  await next.goto(pathToFileURL(path).href);
  await expect.poll(() => next.locator('#title').inputValue(), { timeout: 30_000 }).toBe('A strip');
  await context.close();
});
