/**
 * Keeps the page's own files, so that it opens without a connection after the first visit. While there is one, the page
 * itself comes from where it is served, so that a new version takes the old one's place at the next visit; scripts and
 * style sheets have their version in their address, and those that are kept serve the pages of that version and no
 * other. Whatever is not one of them is none of its business, and goes nowhere: the page's policy sees to that.
 *
 * A page that this computer serves to itself has none: its address is another program's tomorrow. One that a page of
 * before has left there lets go of everything.
 */

import { isOfThisComputer } from './engine/this-computer.ts';

interface ExtendedEvent {
  waitUntil(work: Promise<unknown>): void;
}

interface Fetching extends ExtendedEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

interface Scope {
  readonly swagwright_own: { readonly version: string; readonly files: readonly string[] };
  readonly location: Location;
  readonly registration: { readonly scope: string; unregister(): Promise<boolean> };
  skipWaiting(): Promise<void>;
  readonly clients: {
    claim(): Promise<void>;
    matchAll(of: { readonly includeUncontrolled: boolean }): Promise<readonly unknown[]>;
  };
  addEventListener(type: 'install' | 'activate', listen: (event: ExtendedEvent) => void): void;
  addEventListener(type: 'fetch', listen: (event: Fetching) => void): void;
}

const scope = globalThis as unknown as Scope;
const { version, files } = scope.swagwright_own;
const PREFIX = 'swagwright ';
const STORE = `${PREFIX}${version} ${scope.registration.scope}`;
const isHere = isOfThisComputer(scope.location);

/** Of this page, whatever its version, with this one's before all others. */
const stores = async (): Promise<readonly string[]> => {
  const mine = (await caches.keys()).filter(
    (name) => name.startsWith(PREFIX) && name.endsWith(scope.registration.scope) && name !== STORE,
  );
  return [STORE, ...mine];
};

/**
 * A file past the browser's own cache. Throws where the host has it of another version, as while one is being put there:
 * then nothing is kept, the version before stays, and the next visit tries again.
 */
const ofThisVersion = async (file: string): Promise<readonly [Request, Response]> => {
  const request = new Request(file, { cache: 'reload' });
  const response = await fetch(request);
  const isWhole = response.ok && (!isVersioned(file) || (await response.clone().text()).includes(version));
  if (!isWhole) throw new Error(`${file} is not of this version`);
  return [request, response];
};

/** Each script and style sheet says its version, and the page those of what it begins with (scripts/build-page.mjs). */
const isVersioned = (file: string): boolean => file === './' || file === 'index.html' || file.includes('?');

scope.addEventListener('install', (event) => {
  const keep = async (): Promise<void> => {
    if (!isHere) {
      const got = await Promise.all(['./', ...files].map(ofThisVersion));
      const store = await caches.open(STORE);
      for (const [request, response] of got) await store.put(request, response);
    }
    await scope.skipWaiting();
  };
  event.waitUntil(keep());
});

scope.addEventListener('activate', (event) => {
  const tidy = async (): Promise<void> => {
    const [, ...others] = await stores();
    const open = await scope.clients.matchAll({ includeUncontrolled: true });
    // A window of the version before may want more of its scripts.
    if (isHere || open.length < 2) for (const name of others) await caches.delete(name);
    if (isHere) await scope.registration.unregister();
    else await scope.clients.claim();
  };
  event.waitUntil(tidy());
});

/** A page that is asked for by its address, with whatever that ends in. */
const isPage = ({ mode }: Request): boolean => mode === 'navigate';

const keptFor = async (request: Request): Promise<Response | undefined> => {
  for (const name of await stores()) {
    const found = await (await caches.open(name)).match(request, { ignoreSearch: isPage(request) });
    if (found) return found;
  }
  return undefined;
};

/** ms: a connection that is there in name only is as good as none. */
const PATIENCE = 4000;

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  if (isHere || request.method !== 'GET' || !request.url.startsWith(scope.registration.scope)) return;
  const answer = async (): Promise<Response> => {
    const kept = await keptFor(request);
    const isOfOneVersion = !isPage(request) && new URL(request.url).search !== '';
    if (kept && isOfOneVersion) return kept;
    try {
      // Asked of its host, whatever the browser itself has kept; and not for ever where there is something to show.
      const signal = kept ? AbortSignal.timeout(PATIENCE) : null;
      const fresh = await fetch(request, { cache: 'no-cache', signal });
      return fresh.ok || !kept ? fresh : kept;
    } catch (error) {
      if (kept) return kept;
      throw error;
    }
  };
  event.respondWith(answer());
});
