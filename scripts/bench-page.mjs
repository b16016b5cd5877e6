/**
 * The page's first picture, and a hand that drags: `npm run bench:page`. Needs Debian's chromium, as its tests do.
 *
 * The first picture: what was taken of the processor from an empty window until the template and the quilt are drawn, by
 * the page and its worker, and by all threads of their process; least and middle of some fresh windows. Dragging: with a fill in the
 * swags and round them, the time from the hand's move until the picture of the swag is another, for each of many moves.
 */

import { chromium } from 'playwright-core';
import { fillWith, still, WAIT } from './page-at-work.mjs';

const PAGE = new URL('../dist/page/index.html', import.meta.url).href;
const VISITS = Number(process.env.ROUNDS ?? '9');
const MOVES = 240;
const AIM = { picture: 0.6, drag: 16.7 };

const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--headless', '--no-sandbox', '--disable-gpu'],
});
const sorted = (times) => times.toSorted((a, b) => a - b);
const at = (times, part) => sorted(times)[Math.min(times.length - 1, Math.floor(times.length * part))];

const session = await browser.newBrowserCDPSession();

/** What each process that shows pages has taken so far, seconds, by its number. */
const taken = async () => {
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  return new Map(
    processInfo.filter(({ type }) => type === 'renderer').map(({ id, cpuTime }) => [id, cpuTime]),
  );
};

/** The page at work, of the threads of a trace. */
const WORKING = /^(CrRendererMain|DedicatedWorker thread)$/;

/** What the page's thread and its worker's took, seconds. */
const ofItsThreads = (trace) => {
  const { traceEvents } = JSON.parse(trace.toString());
  const threadOf = ({ pid, tid }) => `${pid} ${tid}`;
  const working = traceEvents
    .filter((e) => e.name === 'thread_name' && WORKING.test(e.args.name))
    .map(threadOf);
  const tasks = traceEvents.filter(
    (e) => e.ph === 'X' && /RunTask$/.test(e.name) && working.includes(threadOf(e)),
  );
  return tasks.reduce((sum, { tdur = 0 }) => sum + tdur, 0) / 1e6;
};

const firstPicture = async (isTraced) => {
  const before = await taken();
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  if (isTraced) await browser.startTracing(page, { categories: ['toplevel', '__metadata'] });
  await page.goto(PAGE, { waitUntil: 'commit' });
  await page.locator('svg.board').waitFor(WAIT);
  await page.locator('.quilt svg, svg.quilt').first().waitFor(WAIT);
  const after = await taken();
  const threads = isTraced ? ofItsThreads(await browser.stopTracing()) : undefined;
  await context.close();
  return threads ?? [...after].reduce((sum, [id, time]) => sum + time - (before.get(id) ?? 0), 0);
};

for (const [words, isTraced] of [
  [`by the page and its worker (aim ${AIM.picture})`, true],
  ['by all of its process, with what the browser compiles beside them', false],
]) {
  const visits = [];
  for (let i = 0; i < VISITS; i++) visits.push(await firstPicture(isTraced));
  console.log(
    `first picture   ${at(visits, 0).toFixed(2)} s of the processor, ${at(visits, 0.5).toFixed(2)} at the middle of ${VISITS} visits, ${words}`,
  );
}

const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
await page.goto(PAGE);
await page.locator('.fit').first().waitFor(WAIT);
await still(page);
await page.locator('.fit').filter({ hasText: 'crown on centre' }).first().click();
await fillWith(page, [
  ['Inside the swags', 'feather'],
  ['Round the swags', 'stipple'],
]);

for (const { where, name, dx, dy } of [
  { where: 'top', name: 'Span of the swag', dx: -0.5, dy: 0 },
  { where: 'corner', name: 'Depth of the corner swag', dx: -0.25, dy: 0.25 },
]) {
  await page.getByLabel('On the', { exact: true }).selectOption(where);
  await still(page);
  const knob = page.getByRole('slider', { name }).locator('.knob');
  await knob.scrollIntoViewIfNeeded();
  const box = await knob.boundingBox();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.evaluate(() => {
    window.times = [];
    let began = 0;
    const board = document.querySelector('.board');
    board.addEventListener('pointermove', () => (began ||= performance.now()), { capture: true });
    new MutationObserver(() => {
      if (began > 0) window.times.push(performance.now() - began);
      began = 0;
    }).observe(board, { subtree: true, attributes: true, attributeFilter: ['d'] });
  });
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= MOVES; i++) {
    await page.mouse.move(x + dx * i, y + dy * i);
    await page.waitForTimeout(20);
  }
  const times = await page.evaluate(() => window.times);
  await page.mouse.up();
  await still(page);
  console.log(
    `drag, ${where.padEnd(8)}  ${at(times, 0.5).toFixed(1)} ms from hand to picture at the middle, ${at(times, 0.95).toFixed(1)} at the 95th of 100, of ${times.length}   (aim ${AIM.drag})`,
  );
}
await browser.close();
