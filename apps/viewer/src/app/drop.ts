import type { Store } from '../store/index.ts';

/** The way back to the file, in browsers that give one. */
const handleOf = (item: DataTransferItem): Promise<FileSystemHandle | null> =>
  (item as { getAsFileSystemHandle?: () => Promise<FileSystemHandle | null> }).getAsFileSystemHandle?.() ??
  Promise.resolve(null);

/** A job file dropped anywhere on the page is opened. */
export function receiveDrops(store: Store): void {
  addEventListener('dragover', (event) => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  });
  addEventListener('drop', (event) => {
    const item = [...(event.dataTransfer?.items ?? [])].find(({ kind }) => kind === 'file');
    const file = item?.getAsFile();
    if (!item || !file) return;
    event.preventDefault();
    // Both asked for now: the browser empties the transfer once this returns.
    void handleOf(item)
      .catch(() => null)
      .then((handle) =>
        store.openDropped(file, handle?.kind === 'file' ? (handle as FileSystemFileHandle) : null),
      );
  });
}
