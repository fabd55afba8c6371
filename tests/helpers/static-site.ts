/** A plain web server, such as anybody may put the viewer on: files by name, nothing else. */
import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { ROOT } from './run.ts';

export const DIST = join(ROOT, 'apps', 'viewer', 'dist');

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
};

export interface Site {
  /** With the sub-path the viewer was put under. */
  readonly url: string;
  stop(): Promise<void>;
}

export async function staticSite(under = '/shop/viewer/'): Promise<Site> {
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url!, 'http://localhost').pathname);
    const inside = path.startsWith(under) ? path.slice(under.length) : null;
    const file = inside === null ? null : join(DIST, normalize(inside === '' ? 'index.html' : inside));
    if (!file?.startsWith(DIST) || !existsSync(file) || statSync(file).isDirectory()) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' });
    createReadStream(file).pipe(response);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}${under}`,
    stop: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
