/** What `open` does. */

import { spawn } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { ProblemError } from '../../document/index.ts';
import { ONE_FILE, withOpened } from '../../jobs/one-file.ts';
import { errorCode } from '../file-problem.ts';
import type { Io } from '../io.ts';
import { say } from '../messages.ts';
import { openedPlan } from '../opened-plan.ts';
import { checkOutputOption } from '../output-option.ts';
import { ownFile } from '../own-files.ts';
import { servePage } from '../page-server.ts';
import { openOutput } from '../write-set.ts';
import { wrongValue } from '../wrong-use.ts';

export interface OpenOptions {
  /** False after --no-browser. */
  readonly browser: boolean;
  readonly save?: string;
}

export const runOpen = async (
  io: Io,
  file: string | undefined,
  { browser, save }: OpenOptions,
): Promise<void> => {
  if (save !== undefined) {
    await savePage(io, file, save);
    return;
  }
  const opened = file === undefined ? undefined : (await openedPlan(io, file)).text;
  const server = await servePage(PAGE, opened).catch(notBuilt);
  await io.stdout.write(`${server.url}\n`);
  await say(
    io,
    file === undefined
      ? 'The page is open to this computer only. Stop it with Ctrl+C.'
      : `The page is open to this computer only, with ${file}; the file itself stays as it is. Stop it with Ctrl+C.`,
  );
  if (browser) show(server.url);
  // The server keeps the process alive; nothing else is left to do.
};

/** The page as one file, with the plan in it. */
const savePage = async (io: Io, file: string | undefined, save: string): Promise<void> => {
  checkOutputOption({ output: save }, 'html', '--save');
  if (save !== '-' && !/\.html?$/i.test(save))
    throw wrongValue('--save', 'a browser opens a page by its ending', {
      found: save,
      expected: `${save}.html`,
    });
  const opened = file === undefined ? undefined : await openedPlan(io, file);
  const output = await openOutput(io, { asked: save, option: '--save' }, opened?.inputs ?? []);
  const page = await readFile(join(PAGE, ONE_FILE), 'utf8').catch(notBuilt);
  await output.write(opened ? withOpened(page, opened.text) : page);
  const plan = file === undefined ? '' : `, with ${file} in it`;
  await say(
    io,
    `${output.name}: the whole page as one file${plan}. Open it in a browser, here or on a tablet, a telephone or another computer; it needs no connection.`,
  );
};

const PAGE = ownFile('dist/page/');

const notBuilt = (error: unknown): never => {
  if (errorCode(error) !== 'ENOENT') throw error;
  throw new ProblemError([
    { code: 'not-built', message: 'the page has not been built', hint: 'run npm run build' },
  ]);
};

/** How each system opens an address with the person's own browser. */
const OPENERS: Readonly<Record<string, readonly string[]>> = {
  darwin: ['open'],
  win32: ['rundll32', 'url.dll,FileProtocolHandler'],
};

/** Where that fails, the address stands on the terminal. */
const show = (url: string): void => {
  const [command, ...before] = OPENERS[process.platform] ?? ['xdg-open'];
  const child = spawn(command!, [...before, url], { stdio: 'ignore', detached: true });
  child.on('error', () => {});
  child.unref();
};
