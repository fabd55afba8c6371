/**
 * Who may ask. The server listens on this machine only, but every page that a browser has open can send to it: a page
 * elsewhere whose name is made to point here is known by its Host, and a page that sends by its Origin.
 */
import type { IncomingMessage } from 'node:http';
import { type Answer, inWords } from './answer.ts';

const DEFAULT_PORT = 80;

/** The names under which a browser on this machine reaches us. */
const hosts = (port: number): string[] =>
  ['127.0.0.1', 'localhost'].map((name) => (port === DEFAULT_PORT ? name : `${name}:${port}`));

/** The answer to one who may not ask at all, else `null`. */
export function turnedAway({ headers }: IncomingMessage, port: number): Answer | null {
  if (hosts(port).includes(headers.host ?? '')) return null;
  return inWords(403, 'Runback answers only under its own address on this machine.');
}

/** The answer to a page of another site that reaches for the job, else `null`. Typing the address is no other site. */
export function strange({ headers }: IncomingMessage): Answer | null {
  const site = headers['sec-fetch-site'];
  const foreign = site !== undefined && site !== 'same-origin' && site !== 'none';
  return foreign ? inWords(403, 'The job is for the page of Runback only.') : null;
}

/** The answer to one who may not write, else `null`: only our own page may, and it says what it sends. */
export function mayNotWrite({ headers }: IncomingMessage): Answer | null {
  const site = headers['sec-fetch-site'];
  const ours = headers.origin === `http://${headers.host}` && (site === undefined || site === 'same-origin');
  if (!ours) return inWords(403, 'Only the page of Runback may save the job.');
  if (!/^text\/plain(; ?charset=utf-8)?$/i.test(headers['content-type'] ?? ''))
    return inWords(415, 'A job is saved as text/plain in UTF-8.');
  if (headers['content-encoding'] !== undefined) return inWords(415, 'A job is saved as it is, not packed.');
  if (headers['if-match'] === undefined)
    return inWords(428, 'Say with If-Match which text this one replaces.');
  return null;
}
