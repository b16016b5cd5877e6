/**
 * Keeps the page's own files, so that it opens without a connection after the first visit. Whatever is not one of
 * them is none of its business, and goes nowhere: the page's policy sees to that.
 */

interface ExtendedEvent {
  waitUntil(work: Promise<unknown>): void;
}

interface Fetching extends ExtendedEvent {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

interface Scope {
  readonly swagwright_own: { readonly version: string; readonly files: readonly string[] };
  readonly registration: { readonly scope: string };
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
  addEventListener(type: 'install' | 'activate', listen: (event: ExtendedEvent) => void): void;
  addEventListener(type: 'fetch', listen: (event: Fetching) => void): void;
}

const scope = globalThis as unknown as Scope;
const { version, files } = scope.swagwright_own;
const PREFIX = 'swagwright ';
const STORE = `${PREFIX}${version} ${scope.registration.scope}`;

scope.addEventListener('install', (event) => {
  const keep = async (): Promise<void> => {
    const store = await caches.open(STORE);
    // Past the browser's own cache, so that all files are of one version.
    await store.addAll(['./', ...files].map((file) => new Request(file, { cache: 'reload' })));
    await scope.skipWaiting();
  };
  event.waitUntil(keep());
});

scope.addEventListener('activate', (event) => {
  const tidy = async (): Promise<void> => {
    const mine = (name: string): boolean =>
      name.startsWith(PREFIX) && name.endsWith(scope.registration.scope);
    for (const name of await caches.keys()) if (name !== STORE && mine(name)) await caches.delete(name);
    await scope.clients.claim();
  };
  event.waitUntil(tidy());
});

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(scope.registration.scope)) return;
  const answer = async (): Promise<Response> => {
    const store = await caches.open(STORE);
    const kept = await store.match(request, { ignoreSearch: true });
    return kept ?? fetch(request);
  };
  event.respondWith(answer());
});
