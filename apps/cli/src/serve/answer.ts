/** What goes back to the browser, and the headers that go with all of it. */
import type { ServerResponse } from 'node:http';

export interface Answer {
  readonly status: number;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Uint8Array;
}

/** Nothing but what this server gives may run, be shown or be called; no other page may frame it. */
const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self' blob:",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

const ALWAYS = {
  'Content-Security-Policy': POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
} as const;

export const TEXT = { 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-store' } as const;

/** A short answer in words. */
export const inWords = (status: number, words: string, headers: Record<string, string> = {}): Answer => ({
  status,
  headers: { ...TEXT, ...headers },
  body: `${words}\n`,
});

/** Starts an answer of unknown length that stays open. */
export const begin = (response: ServerResponse, headers: Readonly<Record<string, string>>): void => {
  response.writeHead(200, { ...ALWAYS, ...headers });
};

export function send(response: ServerResponse, { status, headers, body }: Answer): void {
  const bytes = body === undefined ? null : Buffer.from(body);
  response.writeHead(status, { ...ALWAYS, ...headers, ...(bytes && { 'Content-Length': bytes.length }) });
  response.end(response.req.method === 'HEAD' ? undefined : bytes);
}
