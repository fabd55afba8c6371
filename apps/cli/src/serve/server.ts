/** A small server for this machine only: the built viewer and, when there is one, the job it shows. */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { EXIT, Failure } from '../failure.ts';
import { inWords, send } from './answer.ts';
import { type Desk, makeDesk } from './desk.ts';
import type { JobFile } from './job-file.ts';
import { makeSite, type Site } from './site.ts';
import { turnedAway } from './visitor.ts';

const HOST = '127.0.0.1';

export interface Serving {
  /** Folder of the built viewer. */
  readonly dist: string;
  /** `null`: the page shows the demo. */
  readonly job: JobFile | null;
  /** 0 takes any free one. */
  readonly port: number;
  /** When the port is taken, take any free one instead of failing. */
  readonly orFree?: boolean;
}

export interface Running {
  readonly url: string;
  readonly port: number;
  /** Lets everyone go; a save that has begun is finished. */
  close(): Promise<void>;
}

/** Serves until closed. @throws Failure when the port cannot be had */
export async function serve({ dist, job, port, orFree = false }: Serving): Promise<Running> {
  const site = makeSite(dist, job ? 'job' : 'demo');
  const server = createServer();
  const mine = await listening(server, port).catch((error: NodeJS.ErrnoException) => {
    if (orFree) return listening(server, 0);
    const why = error.code === 'EADDRINUSE' ? 'something else has it' : error.message;
    throw new Failure(`port ${port} cannot be used: ${why}; --port 0 takes a free one`, EXIT.notUnderstood);
  });
  const desk = job ? makeDesk(job) : null;
  server.on('request', (request: IncomingMessage, response: ServerResponse) => {
    const away = turnedAway(request, mine);
    if (away) return send(response, away);
    route({ site, desk }, request, response).catch(() => broken(response));
  });
  return {
    url: `http://${HOST}:${mine}/`,
    port: mine,
    close: () =>
      new Promise((resolve) => {
        desk?.end();
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

function listening(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen({ host: HOST, port, exclusive: true }, () => {
      server.off('error', reject);
      resolve((server.address() as AddressInfo).port);
    });
  });
}

/** The path asked for, without its leading slash; `null` when it is none. */
function pathOf(url: string): string | null {
  const path = url.replace(/[?#].*$/s, '');
  if (!path.startsWith('/')) return null;
  try {
    return decodeURIComponent(path.slice(1));
  } catch {
    return null;
  }
}

async function route(
  { site, desk }: { readonly site: Site; readonly desk: Desk | null },
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const path = pathOf(request.url ?? '');
  if (path === null) return send(response, inWords(400, 'That is no address of a page.'));
  const served = /^served\/(.*)$/s.exec(path)?.[1];
  if (desk && served !== undefined) return desk.serve(served, request, response);
  if (request.method !== 'GET' && request.method !== 'HEAD')
    return send(response, inWords(405, 'The pages of the viewer are only read.', { Allow: 'GET, HEAD' }));
  send(response, await site.answer(path, request.headers['if-none-match']));
}

function broken(response: ServerResponse): void {
  if (response.headersSent) response.destroy();
  else send(response, inWords(500, 'This could not be answered.'));
}
