/** What is kept in the browser: the work that was not saved, and the jobs opened last. */
import { createStore, get, set, type UseStore } from 'idb-keyval';
import type { Origin } from './types.ts';

/** Unsaved work as it was left. */
export interface Draft {
  readonly name: string;
  readonly origin: Origin;
  readonly text: string;
  /** The text last opened or saved. */
  readonly saved: string;
  /** Of the file on disk it began from, where one is served. */
  readonly tag: string | null;
}

export interface Recent {
  readonly name: string;
  readonly text: string;
  readonly origin: Origin;
}

const SHELF = 'kept';
const shelf = createStore('runback', SHELF);

/** Told as kept only when it is on the disk: a browser killed at that moment has it, and a machine switched off too. */
const onDisk: UseStore = (mode, run) =>
  shelf('readonly', ({ transaction: { db } }) =>
    run(db.transaction(SHELF, mode, { durability: 'strict' }).objectStore(SHELF)),
  );

const DRAFT = 'runback-draft';
const RECENT = 'runback-recent';
const MOST_RECENT = 8;

/** A browser that forbids storage answers like an empty one. */
async function safely<T>(work: Promise<T>, otherwise: T): Promise<T> {
  try {
    return await work;
  } catch {
    return otherwise;
  }
}

/** A page served for one file keeps its draft apart from the others. */
const key = (served: string | null): string => (served === null ? DRAFT : `${DRAFT}:${served}`);

/** True once it is kept. */
export const keepDraft = (draft: Draft | null, served: string | null): Promise<boolean> =>
  safely(
    set(key(served), draft, onDisk).then(() => true),
    false,
  );

export const readDraft = async (served: string | null): Promise<Draft | null> =>
  (await safely(get<Draft | null>(key(served), onDisk), null)) ?? null;

export const readRecent = async (): Promise<readonly Recent[]> =>
  (await safely(get<readonly Recent[]>(RECENT, onDisk), [])) ?? [];

/** Puts a job in front of the recent ones. */
export async function keepRecent(job: Recent): Promise<readonly Recent[]> {
  const others = (await readRecent()).filter(({ name }) => name !== job.name);
  const all = [job, ...others].slice(0, MOST_RECENT);
  await safely(set(RECENT, all, onDisk), undefined);
  return all;
}
