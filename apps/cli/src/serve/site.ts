/** The files of the built viewer. Only what a walk through its folder finds is ever read: no path can lead out of it. */
import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { type Answer, inWords } from './answer.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
};

/** A name that changes with the content, as the build gives it: `assets/main-B3hx9_2k.js`. */
const HASHED = /^assets\/.+-[\w-]{8}\.\w+$/;

/** Where the built page lets it be known that it is served by this command. */
const PLACE = '<!--served-->';

const WORKER = 'sw.js';

/**
 * A page kept by the browser from an earlier Runback on this port would hide the one served now, and the job with it.
 * The browser asks for this worker behind every kept page; it throws away what was kept and loads the page anew.
 */
const LETS_GO = `self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith('runback ')) await caches.delete(name);
  await self.registration.unregister();
  for (const page of await self.clients.matchAll({ type: 'window' })) await page.navigate(page.url);
})()));
`;

export interface Site {
  /** The answer to a path without its leading slash; `known` is the tag the browser has of it. */
  answer(path: string, known: string | undefined): Promise<Answer>;
}

/** `serves` is what the page is told: a job, or the demo alone. */
export function makeSite(dist: string, serves: 'job' | 'demo'): Site {
  const meta = `<meta name="runback-served" content="${serves === 'job' ? 1 : 0}">`;
  let files: ReadonlySet<string> = new Set();

  /** Walks again when a name is unknown: the viewer may have been built anew meanwhile. */
  const has = async (name: string): Promise<boolean> => {
    if (!files.has(name)) files = new Set(await filesUnder(dist, ''));
    return files.has(name);
  };
  const content = async (name: string): Promise<string | Uint8Array> => {
    if (name === WORKER) return LETS_GO;
    const bytes = await readFile(join(dist, name));
    return name === 'index.html' ? bytes.toString('utf8').replace(PLACE, meta) : bytes;
  };
  return {
    async answer(path, known) {
      const name = path === '' ? 'index.html' : path;
      if (name !== WORKER && !(await has(name))) return inWords(404, 'There is no such page here.');
      const body = await content(name);
      const tag = `"${createHash('sha256').update(body).digest('base64url')}"`;
      const kept = HASHED.test(name) ? 'public, max-age=31536000, immutable' : 'no-cache';
      const headers = { ETag: tag, 'Cache-Control': kept };
      if (known === tag) return { status: 304, headers };
      const type = TYPES[extname(name)] ?? 'application/octet-stream';
      return { status: 200, headers: { ...headers, 'Content-Type': type }, body };
    },
  };
}

/** Names of the plain files in a folder and below, with `/` between; links are not followed. */
async function filesUnder(top: string, under: string): Promise<string[]> {
  const found: string[] = [];
  for (const entry of await readdir(join(top, under), { withFileTypes: true })) {
    const name = under === '' ? entry.name : `${under}/${entry.name}`;
    if (entry.isDirectory()) found.push(...(await filesUnder(top, name)));
    else if (entry.isFile()) found.push(name);
  }
  return found;
}
