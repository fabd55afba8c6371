/** Hands files to the person: the browser's save dialog where there is one, else its downloads. */
import { fileSave } from 'browser-fs-access';

export interface NamedFile {
  readonly name: string;
  readonly type: string;
  readonly content: string | Uint8Array;
}

/** The name it was given; null when the person changed their mind. */
export async function takeFile(file: NamedFile): Promise<string | null> {
  const { name } = file;
  try {
    const handle = await fileSave(blobOf(file), {
      fileName: name,
      extensions: [extension(name)],
      id: 'sheets',
    });
    return handle?.name ?? name;
  } catch (error) {
    if (named(error, 'AbortError')) return null;
    // The click that asked is too long ago for a dialog.
    if (!named(error, 'SecurityError') && !named(error, 'NotAllowedError')) throw error;
    download(file);
    return name;
  }
}

/** Several files go into a folder where the browser can write to one. False when the person changed their mind. */
export async function takeFiles(files: readonly NamedFile[]): Promise<boolean> {
  if (files.length === 1) return (await takeFile(files[0]!)) !== null;
  try {
    const folder = await askFolder();
    if (folder === null) await downloadAll(files);
    else for (const file of files) await write(folder, file);
    return true;
  } catch (error) {
    if (named(error, 'AbortError')) return false;
    if (!named(error, 'SecurityError') && !named(error, 'NotAllowedError')) throw error;
    await downloadAll(files);
    return true;
  }
}

type AskFolder = (options: {
  readonly id: string;
  readonly mode: 'readwrite';
}) => Promise<FileSystemDirectoryHandle>;

/** Null where the browser has no such dialog. */
async function askFolder(): Promise<FileSystemDirectoryHandle | null> {
  const { showDirectoryPicker: ask } = window as { showDirectoryPicker?: AskFolder };
  return ask ? ask({ id: 'sheets', mode: 'readwrite' }) : null;
}

async function write(folder: FileSystemDirectoryHandle, file: NamedFile): Promise<void> {
  const handle = await folder.getFileHandle(file.name, { create: true });
  const stream = await handle.createWritable();
  await stream.write(blobOf(file));
  await stream.close();
}

/** Browsers drop downloads that come too close behind each other. */
const BETWEEN_MS = 150;
const KEPT_MS = 60_000;

async function downloadAll(files: readonly NamedFile[]): Promise<void> {
  for (const [i, file] of files.entries()) {
    if (i > 0) await new Promise((resolve) => setTimeout(resolve, BETWEEN_MS));
    download(file);
  }
}

function download(file: NamedFile): void {
  const anchor = document.createElement('a');
  anchor.href = URL.createObjectURL(blobOf(file));
  anchor.download = file.name;
  anchor.click();
  setTimeout(() => URL.revokeObjectURL(anchor.href), KEPT_MS);
}

const blobOf = ({ content, type }: NamedFile): Blob => new Blob([content as BlobPart], { type });

const extension = (name: string): string => name.slice(name.lastIndexOf('.'));

const named = (error: unknown, name: string): boolean => error instanceof DOMException && error.name === name;
