/**
 * Serves the built page to this computer's own browser, and to nobody else: on the loopback address only, its own
 * files only, and only to requests that name that address. The last keeps out pages of other sites that have a
 * name of theirs point here (DNS rebinding).
 */

import { readdir, readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';
import { ProblemError } from '../document/index.ts';
import { OPENED_FILE } from '../jobs/one-file.ts';
import { errorCode } from './file-problem.ts';

export interface PageServer {
  readonly url: string;
  readonly close: () => Promise<void>;
}

const LOOPBACK = '127.0.0.1';

/**
 * Always the same, because a browser keeps plans by address and port: at another one she would find an empty page. From
 * the range that nobody assigns (RFC 6335, section 6).
 */
const OWN_PORT = 52_817;

/** Throws a ProblemError where something else is served there already. */
export const servePage = (folder: string, opened?: string): Promise<PageServer> =>
  servePageAt(folder, OWN_PORT, opened).catch((error: unknown) => {
    if (errorCode(error) !== 'EADDRINUSE') throw error;
    const address = `http://${LOOPBACK}:${OWN_PORT}/`;
    throw new ProblemError([
      {
        code: 'address-taken',
        message: `something is served at ${address} already: the page, if it is open from another terminal`,
        hint: 'stop that with Ctrl+C first, for at another address your browser would not find what you keep; or write the page as one file, with --save',
      },
    ]);
  });

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
};

const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "worker-src 'self' blob:",
  "connect-src 'self'",
  // What is printed.
  'frame-src blob:',
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cache-Control': 'no-cache',
};

/** Where the page finds the plan that it is opened with, and what its address ends in to say that there is one. */
const OPENED = `/${OPENED_FILE}`;
const OPENED_MARK = '#opened';

/**
 * Reads all files first: what is served is known, and no request's path is ever looked up on the disk. `opened` is
 * a plan for the page to open with, as JSON. Port 0 is any free one. Throws what the system says of a taken one.
 */
export const servePageAt = async (folder: string, port: number, opened?: string): Promise<PageServer> => {
  const files = new Map<string, { readonly type: string; readonly bytes: Uint8Array }>();
  for (const name of await readdir(folder)) {
    const type = TYPES[extname(name)];
    if (type !== undefined) files.set(`/${name}`, { type, bytes: await readFile(join(folder, name)) });
  }
  const index = files.get('/index.html');
  if (index) files.set('/', index);
  if (opened !== undefined)
    files.set(OPENED, { type: 'application/json', bytes: new TextEncoder().encode(opened) });
  const server = createServer((request, response) => {
    answer(request, response, files, portOf(server));
  });
  await listen(server, port);
  return {
    url: `http://${LOOPBACK}:${portOf(server)}/${opened === undefined ? '' : OPENED_MARK}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
};

const portOf = (server: Server): number => (server.address() as AddressInfo | null)?.port ?? 0;

const listen = (server: Server, port: number): Promise<void> =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, LOOPBACK, () => {
      server.off('error', reject);
      resolve();
    });
  });

const answer = (
  { method, url = '/', headers }: IncomingMessage,
  response: ServerResponse,
  files: ReadonlyMap<string, { readonly type: string; readonly bytes: Uint8Array }>,
  port: number,
): ServerResponse => {
  const refuse = (status: number, words: string, more: Record<string, string> = {}): ServerResponse => {
    response.writeHead(status, { ...HEADERS, 'Content-Type': 'text/plain; charset=utf-8', ...more });
    return response.end(`${words}\n`);
  };
  const { host } = headers;
  // Another name of this computer is another place to a browser, with another shelf.
  if (host === `localhost:${port}` && url.startsWith('/'))
    return refuse(307, 'The page is at another name.', { Location: `http://${LOOPBACK}:${port}${url}` });
  if (host !== `${LOOPBACK}:${port}`) return refuse(421, 'This page is for this computer only.');
  if (method !== 'GET' && method !== 'HEAD')
    return refuse(405, 'Nothing can be sent here.', { Allow: 'GET, HEAD' });
  const file = files.get(url.replace(/[?#].*$/, ''));
  if (!file) return refuse(404, 'There is no such file.');
  response.writeHead(200, { ...HEADERS, 'Content-Type': file.type, 'Content-Length': file.bytes.length });
  return response.end(method === 'HEAD' ? undefined : file.bytes);
};
