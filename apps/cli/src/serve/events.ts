/** News of the job for every page that listens, as server-sent events. */
import type { ServerResponse } from 'node:http';
import { begin } from './answer.ts';

/** Between signs of life; a connection that sleeps longer is cut by some. */
const BEAT_MS = 25_000;
/** A page that lost us asks again after this long. */
const RETRY_MS = 2_000;

export interface Events {
  /** Keeps the answer open; `now` is the tag at present, for a page that missed something. */
  add(response: ServerResponse, now: string | null): void;
  tell(tag: string): void;
  end(): void;
}

const change = (tag: string): string => `event: change\ndata: ${tag}\n\n`;

export function makeEvents(): Events {
  const listening = new Set<ServerResponse>();
  const all = (words: string): void => {
    for (const response of listening) response.write(words);
  };
  const beat = setInterval(() => all(': still here\n\n'), BEAT_MS);
  return {
    add(response, now) {
      begin(response, { 'Content-Type': 'text/event-stream; charset=utf-8', 'Cache-Control': 'no-store' });
      response.write(`retry: ${RETRY_MS}\n\n${now === null ? '' : change(now)}`);
      listening.add(response);
      response.on('close', () => listening.delete(response));
    },
    tell: (tag) => all(change(tag)),
    end() {
      clearInterval(beat);
      for (const response of listening) response.end();
    },
  };
}
