/** Tells when a file may have changed on disk and has come to rest. */
import { type FSWatcher, stat, unwatchFile, watch, watchFile } from 'node:fs';
import { basename, dirname } from 'node:path';

/** A file being written is looked at again after this long, until two looks see the same. */
const REST_MS = 50;
const POLL_MS = 1000;

/**
 * Watches the folder rather than the file: many editors write a new file and rename it over the old one, and a watch
 * on the file itself would stay with the old one. Where folders cannot be watched the file is looked at every second.
 * Returns the function that ends it.
 */
export function watchAtRest(path: string, changed: () => void): () => void {
  let timer: NodeJS.Timeout | undefined;
  let ended = false;
  let seen = '';

  const later = (): void => {
    if (ended) return;
    clearTimeout(timer);
    timer = setTimeout(look, REST_MS);
  };
  const look = (): void =>
    stat(path, (error, now) => {
      if (ended) return;
      const state = error ? 'gone' : `${now.ino} ${now.size} ${now.mtimeMs}`;
      if (state === seen) return changed();
      seen = state;
      later();
    });

  const poll = (): void => void watchFile(path, { interval: POLL_MS }, later);
  const watcher = folderWatch(path, later, poll);
  return () => {
    ended = true;
    clearTimeout(timer);
    watcher?.close();
    unwatchFile(path, later);
  };
}

function folderWatch(path: string, touched: () => void, failed: () => void): FSWatcher | null {
  try {
    const watcher = watch(dirname(path), (_, name) => {
      if (name === null || name === basename(path)) touched();
    });
    return watcher.on('error', () => {
      watcher.close();
      failed();
    });
  } catch {
    failed();
    return null;
  }
}
