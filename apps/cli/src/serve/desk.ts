/** What the page asks about the job it is served: its text, to save it, and news of it. */
import type { IncomingMessage, ServerResponse } from 'node:http';
import { Failure } from '../failure.ts';
import { type Answer, inWords, send, TEXT } from './answer.ts';
import { type Events, makeEvents } from './events.ts';
import type { Copy, JobFile } from './job-file.ts';
import { mayNotWrite, strange } from './visitor.ts';

const BYTES_MAX = 16 * 1024 * 1024;

export interface Desk {
  /** Answers to a path below `served/`. */
  serve(path: string, request: IncomingMessage, response: ServerResponse): Promise<void>;
  end(): void;
}

export function makeDesk(job: JobFile): Desk {
  const events = makeEvents();
  const unwatch = job.watch(events.tell);
  return {
    async serve(path, request, response) {
      const foreign = strange(request);
      if (foreign) send(response, foreign);
      else if (path === 'events' && request.method === 'GET') await listen(job, events, response);
      else if (path === 'job') send(response, await answer(job, request));
      else send(response, inWords(404, 'There is nothing of that name here.'));
    },
    end() {
      unwatch();
      events.end();
    },
  };
}

async function listen(job: JobFile, events: Events, response: ServerResponse): Promise<void> {
  const now = await job.read().catch(() => null);
  if (!response.destroyed) events.add(response, now?.tag ?? null);
}

async function answer(job: JobFile, request: IncomingMessage): Promise<Answer> {
  try {
    if (request.method === 'PUT') return await written(job, request);
    if (request.method === 'GET' || request.method === 'HEAD') return await asItIs(job);
  } catch (error) {
    if (error instanceof Failure) return inWords(500, error.message);
    throw error;
  }
  return inWords(405, 'A job is read or saved.', { Allow: 'GET, HEAD, PUT' });
}

async function asItIs(job: JobFile): Promise<Answer> {
  const copy = await job.read();
  if (copy === null) return inWords(404, `${job.name} is gone from the disk; saving writes it again.`);
  return { status: 200, headers: { ...TEXT, ...named(job, copy) }, body: copy.text };
}

async function written(job: JobFile, request: IncomingMessage): Promise<Answer> {
  const refused = mayNotWrite(request);
  if (refused) return refused;
  const bytes = await bodyOf(request);
  if (bytes === null) return inWords(413, 'A job file is 16 MB at most.');
  const text = decoded(bytes);
  if (text === null) return inWords(422, 'A job is text in UTF-8; nothing was written.');
  const done = await job.write(text, request.headers['if-match'] ?? '');
  if (!done.written)
    return { status: 412, headers: { ...TEXT, ...named(job, done.copy) }, body: done.copy.text };
  return { status: 204, headers: named(job, done.copy) };
}

/** A name with half a character in it, as some disks allow, still makes a header. */
const named = (job: JobFile, copy: Copy): { ETag: string; 'X-Runback-Name': string } => ({
  ETag: copy.tag,
  'X-Runback-Name': encodeURIComponent(job.name.replace(/\p{Surrogate}/gu, '\uFFFD')),
});

/** The whole body, or `null` when it is too large. */
async function bodyOf(request: IncomingMessage): Promise<Uint8Array | null> {
  if (Number(request.headers['content-length'] ?? 0) > BYTES_MAX) return null;
  const chunks: Buffer[] = [];
  let size = 0;
  // Not destroyed on return: the answer still has to go out by the same connection, once the rest has run off.
  for await (const chunk of request.iterator({ destroyOnReturn: false })) {
    size += (chunk as Buffer).length;
    if (size > BYTES_MAX) return null;
    chunks.push(chunk as Buffer);
  }
  return Buffer.concat(chunks);
}

function decoded(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
