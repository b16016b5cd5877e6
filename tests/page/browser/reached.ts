/**
 * The built page at an address that others reach, as far as the browser can tell, with a service worker: a name that
 * leads to this computer and is treated as a secure place.
 */

import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';
import { launch } from './harness.ts';

const NAME = 'quilts.example';
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
};

export interface Host {
  readonly url: string;
  /** The folder whose files it has; those of another one from then on. */
  folder: string;
  readonly browser: Browser;
  /** Files that it still has of another folder, by their names: those that are not yet put there. */
  late: readonly string[];
  lateFolder: string;
  /** Whether it takes what it is asked, and never answers. */
  isDumb: boolean;
  /** As where the connection is gone: the browser stays. */
  readonly stop: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** A host of files, as anyone may have one: it lets browsers keep what they got. */
export const host = async (folder: string): Promise<Host> => {
  const has = { folder, isDumb: false, late: [] as readonly string[], lateFolder: folder };
  const server: Server = createServer((request, response) => {
    if (has.isDumb) return;
    const name = new URL(request.url ?? '/', 'http://x').pathname.slice(1) || 'index.html';
    readFile(join(has.late.includes(name) ? has.lateFolder : has.folder, name)).then(
      (bytes) => {
        const type = TYPES[extname(name)] ?? 'application/octet-stream';
        response.writeHead(200, { 'Content-Type': type, 'Cache-Control': 'max-age=600' }).end(bytes);
      },
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const origin = `http://${NAME}:${(server.address() as AddressInfo).port}`;
  const browser = await launch([
    `--host-resolver-rules=MAP ${NAME} 127.0.0.1`,
    `--unsafely-treat-insecure-origin-as-secure=${origin}`,
  ]);
  const stop = (): Promise<void> =>
    new Promise((resolve) => {
      server.close(() => resolve());
      server.closeAllConnections();
    });
  return Object.assign(has, {
    url: `${origin}/`,
    browser,
    stop,
    close: async () => {
      await browser.close();
      await stop();
    },
  });
};

/** Its service worker has all files, and answers for the page. */
export const kept = async (page: Page): Promise<void> => {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await expect
    .poll(() => page.evaluate(() => navigator.serviceWorker.controller?.state), { timeout: 60_000 })
    .toBe('activated');
};
