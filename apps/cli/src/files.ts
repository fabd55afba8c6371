import { mkdir, open, readFile, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { EXIT, Failure } from './failure.ts';

const JOB_BYTES_MAX = 16 * 1024 * 1024;

const reason = (error: unknown): string => {
  const code = (error as { code?: string }).code;
  const words: Record<string, string> = {
    ENOENT: 'there is no such file',
    EISDIR: 'that is a folder',
    EACCES: 'no permission',
    ENOTDIR: 'part of the path is not a folder',
    ENOSPC: 'the disk is full',
    EROFS: 'the disk cannot be written to',
    EEXIST: 'something of that name is in the way',
    ENAMETOOLONG: 'the name is too long',
  };
  return (code && words[code]) ?? (error instanceof Error ? error.message : String(error));
};

async function standardInput(): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
  return decode(Buffer.concat(chunks), 'standard input');
}

function decode(bytes: Uint8Array, name: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Failure(
      `${name}:${firstOdd(bytes)}: this is not a text file (UTF-8 expected)`,
      EXIT.notUnderstood,
    );
  }
}

/** Line and column of the first byte that is no text. */
function firstOdd(bytes: Uint8Array): string {
  const before = new TextDecoder().decode(bytes).split('\uFFFD')[0] ?? '';
  const lines = before.split('\n');
  return `${lines.length}:${(lines.at(-1)?.length ?? 0) + 1}`;
}

/** Reads a text file, or standard input for `-`. */
export async function readText(path: string): Promise<string> {
  if (path === '-') return standardInput();
  try {
    const { size } = await stat(path);
    if (size > JOB_BYTES_MAX)
      throw new Failure(
        `${path}: ${size} bytes is too large for a job file (16 MB at most)`,
        EXIT.notUnderstood,
      );
    return decode(await readFile(path), path);
  } catch (error) {
    if (error instanceof Failure) throw error;
    throw new Failure(`${path}: cannot be read: ${reason(error)}`, EXIT.notUnderstood);
  }
}

/**
 * Writes a whole file or leaves the old one whole: to a temporary name beside it, then renamed.
 * With `keep`, an existing file is never replaced.
 */
export async function writeWhole(
  path: string,
  content: string | Uint8Array,
  options: { keep?: boolean } = {},
): Promise<void> {
  const temporary = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    if (options.keep && (await exists(path)))
      throw new Failure(`${path} exists already; give --force to replace it`, EXIT.notWritten);
    await mkdir(dirname(path), { recursive: true });
    const file = await open(temporary, 'w');
    try {
      await file.writeFile(content);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(temporary, path);
  } catch (error) {
    await rm(temporary, { force: true }).catch(() => undefined);
    if (error instanceof Failure) throw error;
    throw new Failure(`${path}: cannot be written: ${reason(error)}`, EXIT.notWritten);
  }
}

async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}
