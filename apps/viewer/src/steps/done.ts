/** What is done at the bench, kept for this line of this text of the job, on this device alone. */
import { signal } from '@preact/signals';

const KEY = 'runback-steps-done';
/** Lines remembered; the oldest go first. */
const KEPT = 40;

export type Done = ReadonlySet<string>;

/** The text of the job, the line in it and the end worked from: with another of these nothing is done yet. */
export const doneKey = (checksum: string, line: string, from: string): string =>
  `${checksum} ${line} ${from}`;

type All = ReadonlyMap<string, Done>;

const all = signal<All>(read());
const NOTHING: Done = new Set();

export const doneOf = (key: string): Done => all.value.get(key) ?? NOTHING;

/** Ticks some things, or takes their ticks away. */
export function setDone(key: string, ids: readonly string[], done: boolean): void {
  const now = new Set(doneOf(key));
  for (const id of ids)
    if (done) now.add(id);
    else now.delete(id);
  const others = [...all.value].filter(([other]) => other !== key);
  all.value = new Map([...others, [key, now] as const].slice(-KEPT));
  keep(all.value);
}

/** Another tube of the same line. */
export function clearDone(key: string): void {
  all.value = new Map([...all.value].filter(([other]) => other !== key));
  keep(all.value);
}

function read(): All {
  try {
    const stored: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    return parseDone(stored);
  } catch {
    return new Map();
  }
}

/** Anything may be in the storage of a browser: what is no list of ticks is left out. */
export function parseDone(stored: unknown): All {
  if (!Array.isArray(stored)) return new Map();
  const rows = stored.filter(
    (row): row is [string, string[]] =>
      Array.isArray(row) &&
      typeof row[0] === 'string' &&
      Array.isArray(row[1]) &&
      row[1].every((id: unknown) => typeof id === 'string'),
  );
  return new Map(rows.map(([key, ids]) => [key, new Set(ids)]));
}

function keep(done: All): void {
  try {
    localStorage.setItem(KEY, JSON.stringify([...done].map(([key, ids]) => [key, [...ids]])));
  } catch {
    // Private windows and full disks: the ticks hold until the page closes.
  }
}
