/** The service worker: answers with the files of its own version, kept on the device when it was installed. */
import { addressOf, isOld, type Kept, keptFor, storeName, TAKE_OVER } from './kept.ts';

/** Put in by the build. */
declare const KEPT: Pick<Kept, 'version' | 'files'>;

/** The part of a service worker's surroundings that is used here; the types of the page do not know it. */
interface Extendable extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Surroundings {
  readonly registration: ServiceWorkerRegistration;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', heard: (event: Extendable) => void): void;
  addEventListener(type: 'fetch', heard: (event: Fetching) => void): void;
  addEventListener(type: 'message', heard: (event: MessageEvent) => void): void;
}

const worker = self as unknown as Surroundings;
const kept: Kept = { ...KEPT, scope: worker.registration.scope };

/** Asks the server whether what the browser has is still so: old files must not get into a new version. */
async function keep(store: Cache, file: string): Promise<void> {
  const response = await fetch(addressOf(kept, file), { cache: 'no-cache' });
  if (!response.ok) throw new Error(`${file}: ${response.status}`);
  const { status, statusText, headers, redirected } = response;
  // Some servers send `index.html` on to `./`; a page may not be answered with an answer that was sent on.
  const plain = redirected ? new Response(await response.blob(), { status, statusText, headers }) : response;
  await store.put(addressOf(kept, file), plain);
}

async function install(): Promise<void> {
  const store = await caches.open(storeName(kept));
  await Promise.all(kept.files.map((file) => keep(store, file)));
}

async function activate(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => isOld(kept, name)).map((name) => caches.delete(name)));
  await worker.clients.claim();
}

async function answer(address: string, request: Request): Promise<Response> {
  // Of this version only, or pages of one would get pieces of another; servers that vary by origin answer the same here.
  const found = await caches.match(address, {
    cacheName: storeName(kept),
    ignoreSearch: true,
    ignoreVary: true,
  });
  return found ?? fetch(request);
}

worker.addEventListener('install', (event) => event.waitUntil(install()));
worker.addEventListener('activate', (event) => event.waitUntil(activate()));
worker.addEventListener('message', ({ data }) => {
  if (data === TAKE_OVER) void worker.skipWaiting();
});
worker.addEventListener('fetch', (event) => {
  const address = keptFor(kept, event.request);
  if (address !== null) event.respondWith(answer(address, event.request));
});
