/** What `open` does. */

import { spawn } from 'node:child_process';
import { ProblemError } from '../../document/index.ts';
import { errorCode } from '../file-problem.ts';
import type { Io } from '../io.ts';
import { say } from '../messages.ts';
import { openedPlan } from '../opened-plan.ts';
import { ownFile } from '../own-files.ts';
import { servePage } from '../page-server.ts';

export interface OpenOptions {
  /** False after --no-browser. */
  readonly browser: boolean;
}

export const runOpen = async (io: Io, file: string | undefined, { browser }: OpenOptions): Promise<void> => {
  const opened = file === undefined ? undefined : await openedPlan(io, file);
  const server = await servePage(ownFile('dist/page/'), undefined, opened).catch((error: unknown) => {
    if (errorCode(error) !== 'ENOENT') throw error;
    throw new ProblemError([
      { code: 'not-built', message: 'the page has not been built', hint: 'run npm run build' },
    ]);
  });
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
