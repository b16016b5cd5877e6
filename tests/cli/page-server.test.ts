/** The page's server answers its own browser with its own files, and nobody else with anything. */

import { mkdirSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { type PageServer, servePage, servePageAt } from '../../src/cli/page-server.ts';
import { ProblemError } from '../../src/document/index.ts';
import { emptyFolder } from './run.ts';

const servers: PageServer[] = [];
afterEach(async () => {
  for (const server of servers.splice(0)) await server.close();
});

const served = async (port = 0, opened?: string): Promise<PageServer> => {
  const folder = join(emptyFolder(), 'page');
  mkdirSync(folder);
  writeFileSync(join(folder, 'index.html'), '<p>page</p>');
  writeFileSync(join(folder, 'page.js'), '1');
  writeFileSync(join(folder, 'secret.key'), 'no');
  writeFileSync(join(folder, '../outside.js'), 'no');
  const server = await servePageAt(folder, port, opened);
  servers.push(server);
  return server;
};

interface Got {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly body: string;
}

const get = (url: string, path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Got> =>
  new Promise((resolve, reject) => {
    const { hostname, port } = new URL(url);
    const asking = request({ hostname, port, path, method, headers }, (response) => {
      let body = '';
      response.setEncoding('utf8').on('data', (text: string) => {
        body += text;
      });
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
      );
    });
    asking.on('error', reject).end();
  });

describe('the page’s server', () => {
  test('listens on the loopback address only, on a free port', async () => {
    const [a, b] = [await served(), await served()];
    for (const { url } of [a, b]) expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    expect(a.url).not.toBe(b.url);
  });

  test('has one address or none: at another one a browser would not find what it keeps', async () => {
    const first = await servePage(emptyFolder()).catch(() => undefined);
    if (first) servers.push(first);
    // Whoever has it now, this test or another program, the page goes nowhere else.
    const refused = await servePage(emptyFolder()).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(ProblemError);
    const [problem] = (refused as ProblemError).problems;
    expect(problem!.message).toMatch(
      /^something is served at http:\/\/127\.0\.0\.1:\d+\/ already: the page, if/,
    );
    if (first) expect(problem!.message).toContain(first.url);
    expect(problem!.hint).toMatch(/Ctrl\+C.*--save/);
    await first?.close();
    if (!first) return;
    const again = await servePage(emptyFolder());
    servers.splice(servers.indexOf(first), 1, again);
    expect(again.url).toBe(first.url);
  });

  test('gives its files, with a policy that lets nothing else in', async () => {
    const { url } = await served();
    const index = await get(url, '/');
    expect(index).toMatchObject({ status: 200, body: '<p>page</p>' });
    expect((await get(url, '/page.js?x#y')).headers['content-type']).toBe('text/javascript; charset=utf-8');
    const policy = String(index.headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/unsafe|\*|http:|https:/);
    expect(index.headers['x-content-type-options']).toBe('nosniff');
    expect((await get(url, '/', {}, 'HEAD')).body).toBe('');
  });

  test('refuses every other host name, so that no other site’s name can lead here', async () => {
    const { url } = await served();
    const { port } = new URL(url);
    for (const host of [
      'evil.example',
      `evil.example:${port}`,
      '127.0.0.1',
      `127.0.0.1.evil.example:${port}`,
      `[::1]:${port}`,
    ])
      expect(await get(url, '/', { Host: host })).toMatchObject({ status: 421 });
    // The computer's other name is another place to a browser: it goes to where hers is.
    const elsewhere = await get(url, '/page.js?x', { Host: `localhost:${port}` });
    expect(elsewhere).toMatchObject({ status: 307, headers: { location: `${url}page.js?x` } });
  });

  test('has nothing else: no other file, no way out of its folder, nothing to send', async () => {
    const { url } = await served();
    for (const path of [
      '/../outside.js',
      '/%2e%2e/outside.js',
      '/secret.key',
      '/..%5coutside.js',
      '//etc/passwd',
      '/page.js/',
    ])
      expect((await get(url, path)).status).toBe(404);
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS'])
      expect((await get(url, '/', {}, method)).status).toBe(405);
  });

  test('serves the plan that it is opened with as one more file, and none where there is none', async () => {
    const with1 = await served(0, '{"plan":"x"}');
    expect(new URL(with1.url).hash).toBe('#opened');
    const got = await get(with1.url, '/opened.json');
    expect(got).toMatchObject({ status: 200, body: '{"plan":"x"}' });
    expect(got.headers['content-type']).toBe('application/json');
    const { port } = new URL(with1.url);
    expect((await get(with1.url, '/opened.json', { Host: `evil.example:${port}` })).status).toBe(421);
    const without = await served();
    expect(without.url).not.toContain('#');
    expect((await get(without.url, '/opened.json')).status).toBe(404);
  });
});
