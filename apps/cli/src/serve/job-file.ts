/** The job that is served: read, written and watched on disk, one thing at a time. */
import { createHash } from 'node:crypto';
import { stat } from 'node:fs/promises';
import { readText, writeWhole } from '../files.ts';
import { watchAtRest } from './watch.ts';

/** The text on disk with a tag that is the same for the same text and for no other. */
export interface Copy {
  readonly text: string;
  readonly tag: string;
}

export interface JobFile {
  readonly name: string;
  /** The text on disk; `null` when the file is gone. @throws Failure when it cannot be read as text */
  read(): Promise<Copy | null>;
  /**
   * Replaces the file when it still has `tag`, or is gone: then nobody's work is lost by it. Else nothing is written and
   * the copy on disk comes back.
   * @throws Failure when it cannot be written, or what is on disk is not a text
   */
  write(text: string, tag: string): Promise<{ readonly written: boolean; readonly copy: Copy }>;
  /** Calls with the new tag each time the text on disk is another one, our own writing included. */
  watch(told: (tag: string) => void): () => void;
}

const tagOf = (text: string): string => `"${createHash('sha256').update(text).digest('base64url')}"`;

async function copyOf(path: string): Promise<Copy | null> {
  const gone = await stat(path).then(
    () => false,
    (error: NodeJS.ErrnoException) => error.code === 'ENOENT',
  );
  if (gone) return null;
  const text = await readText(path);
  return { text, tag: tagOf(text) };
}

/** Calls of the function it returns run one after the other, in the order they came. */
function inTurn(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const next = last.then(work);
    last = next.catch(() => undefined);
    return next;
  };
}

/** `path` is where the file really is; `name` is what the person called it. */
export function jobFile(path: string, name: string): JobFile {
  const turn = inTurn();
  const read = (): Promise<Copy | null> => turn(() => copyOf(path));

  const write: JobFile['write'] = (text, tag) =>
    turn(async () => {
      const now = await copyOf(path);
      if (now !== null && now.tag !== tag) return { written: false, copy: now };
      await writeWhole(path, text);
      return { written: true, copy: { text, tag: tagOf(text) } };
    });

  const watch: JobFile['watch'] = (told) => {
    let last: string | null = null;
    const look = async (): Promise<void> => {
      // A file that is no text for the moment is no news; who saves over it is told then.
      const tag = await read().then(
        (copy) => copy?.tag ?? null,
        () => last,
      );
      if (tag !== null && tag !== last) told(tag);
      last = tag;
    };
    void look();
    return watchAtRest(path, () => void look());
  };
  return { name, read, write, watch };
}
