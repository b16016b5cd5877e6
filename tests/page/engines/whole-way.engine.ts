/**
 * The whole way in each engine that is on the machine: the page as one file, opened from the disk with no way to the
 * network, does what the tests in Chromium hold more closely (tests/page/browser).
 */

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { servePageAt } from '../../../src/cli/page-server.ts';
import { emptyFolder, run } from '../../cli/run.ts';
import { rawPages } from '../../output/pdf/read-back.ts';
import { bracket } from '../browser/bracket.ts';
import { BUILT } from '../browser/harness.ts';
import { ENGINES, missing, start, until } from './engines.ts';
import { personAt } from './person.ts';

const TITLE = 'Lathe <Street> & "raffle"';
const PLAN = `title: ${TITLE}
template: ./corbel.yaml
layout: { border: { width: 9 1/4, inner: { top: 61 3/8, right: 74, bottom: 61 1/8, left: 74 1/4 } } }
fills: { swag: feather }
`;
const CORBEL = `title: Corbel
edge:
  - start: [0, 0]
  - arc: { to: [6, 2], rise: 3/4 }
`;

const DESIGNS =
  'return [...document.querySelectorAll(".kept-designs input:not([type=checkbox])")].map((one) => one.value)';
const FILLED = 'return document.querySelectorAll("svg .fill").length';
const SWAG =
  'return document.querySelector("[role=slider][aria-label^=Span]").getAttribute("aria-valuetext")';
const TRACED = 'return document.querySelector("#trace") !== null';

for (const engine of ENGINES)
  test(`${engine.name}: the whole way from one file`, async (context) => {
    const without = missing(engine);
    context.skip(without.length > 0, `${engine.name} is not tried: install ${without.join(' ')}`);
    const folder = emptyFolder();
    writeFileSync(join(folder, 'raffle.yaml'), PLAN);
    writeFileSync(join(folder, 'corbel.yaml'), CORBEL);
    writeFileSync(join(folder, 'bracket.png'), bracket());
    const made = await run(folder, ['open', 'raffle.yaml', '--save', 'raffle.html']);
    expect(made.code, made.err).toBe(0);

    const browser = await start(engine);
    context.onTestFinished(browser.stop);
    const { go, look, settled, told, value, fill, press, drag, download, give, reload } = personAt(browser);
    await go(pathToFileURL(join(folder, 'raffle.html')).href);
    await told(/is open/);
    await settled();
    expect(await value('What this plan is called')).toBe(TITLE);
    expect(await look(FILLED)).toBeGreaterThan(0);

    const first = await look(SWAG);
    await fill('Border width', '5 1/4');
    await settled();
    const second = await look(SWAG);
    expect(second).not.toBe(first);
    await drag('Span of the swag', 120, 0);
    await settled();
    expect(await look(SWAG)).not.toBe(second);
    await press('Undo');
    await settled();
    expect(await look(SWAG)).toBe(second);

    const sheets = await download('True-size sheets');
    expect(sheets.file).toMatch(/\.pdf$/);
    expect((await rawPages(sheets.bytes)).length).toBeGreaterThan(2);

    await press('Keep design');
    await told(/is kept in this browser/);
    await give(join(folder, 'bracket.png'));
    await until(() => look(TRACED), 'the picture of a template is traced', 180_000);
    await settled();
    const copy = await download('Save page');
    expect(copy.file).toMatch(/^lathe-.*\.html$/);

    // All of it is there the next time, and so is what was before.
    await reload();
    await settled();
    expect(await value('Border width')).toBe('5 1/4');
    await until(async () => (await look<string[]>(DESIGNS)).join() === TITLE, 'the design is found again');
    await press('Go on with bracket.png');
    await until(() => look(TRACED), 'the picture is found again', 180_000);
    await press('Put the picture away');
    await press('Undo');
    await settled();
    expect(await value('Border width')).toBe('9 1/4');

    await go(pathToFileURL(copy.path).href);
    await told(/is open/);
    await settled();
    expect(await value('Border width')).toBe('5 1/4');
    expect(await value('What this plan is called')).toBe(TITLE);

    // And served on this computer, where workers have addresses.
    const server = await servePageAt(BUILT, 0);
    context.onTestFinished(server.close);
    await go(server.url);
    await settled();
    await give(join(folder, 'bracket.png'));
    await until(() => look(TRACED), 'the picture of a template is traced', 180_000);
    expect((await rawPages((await download('Marking card')).bytes)).length).toBeGreaterThan(0);
    expect(await browser.faults()).toEqual([]);
  });

test('there is an engine to try it in', () => {
  expect(ENGINES.filter((engine) => missing(engine).length === 0)).not.toEqual([]);
});
