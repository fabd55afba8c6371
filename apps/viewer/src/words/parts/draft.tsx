/** What is being typed into a field, until it is committed or given up. */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { JobIssue } from 'runback';
import { sayIssues } from './issues.ts';
import type { Read } from './read.ts';

/** What a commit comes to: nothing to say, or the faults for which it was refused. `store.edit` answers like this. */
// biome-ignore lint/suspicious/noConfusingVoidType: a handler that answers nothing is as good as one that finds no fault
export type Committed = Promise<readonly JobIssue[]> | void;

export interface DraftOptions<T> {
  /** The text of the value as it stands in the job. */
  readonly shown: string;
  readonly read: (typed: string) => Read<T>;
  readonly onCommit: (value: T) => Committed;
}

export interface Draft {
  readonly text: string;
  readonly fault: string | null;
  type(text: string): void;
  /** False when what is typed cannot be read. */
  commit(): boolean;
  /** Back to what stands in the job; false when there was nothing to give up. */
  restore(): boolean;
}

interface Typed {
  readonly text: string;
  readonly fault: string | null;
  /** Handed in, and not answered yet. */
  readonly waits?: boolean;
  /** Typed on while what was handed in waits: the value that comes of that does not take its place. */
  readonly after?: boolean;
}

export function useDraft<T>({ shown, read, onCommit }: DraftOptions<T>): Draft {
  const [typed, setTyped] = useState<Typed | null>(null);
  // What is typed now, for answers that come later and for Enter followed by leaving the field.
  const now = useRef<Typed | null>(null);
  const put = (next: Typed | null): void => {
    now.current = next;
    setTyped(next);
  };
  // A value changed from outside takes the place of the draft; at once, for what is typed a moment later must stay.
  useLayoutEffect(() => {
    const draft = now.current;
    put(draft?.after ? { text: draft.text, fault: null } : null);
  }, [shown]);

  const commit = (): boolean => {
    const draft = now.current;
    if (draft === null || draft.waits === true) return true;
    if (draft.fault !== null) return false;
    const { text } = draft;
    const value = read(text);
    if (text.trim() === shown.trim()) {
      put(null);
      return true;
    }
    if (!value.ok) {
      put({ text, fault: value.words });
      return false;
    }
    const waiting: Typed = { text, fault: null, waits: true };
    put(waiting);
    void answer(onCommit(value.value), (fault) => {
      if (now.current === waiting) put(fault === null ? null : { text, fault });
      else if (fault !== null && now.current) put({ text: now.current.text, fault: now.current.fault });
    });
    return true;
  };
  const restore = (): boolean => {
    const had = now.current !== null;
    put(null);
    return had;
  };
  return {
    text: typed?.text ?? shown,
    fault: typed?.fault ?? null,
    type: (text) => {
      const { waits, after } = now.current ?? {};
      put({ text, fault: null, after: waits === true || after === true });
    },
    commit,
    restore,
  };
}

async function answer(committed: Committed, done: (fault: string | null) => void): Promise<void> {
  const issues = (await committed) ?? [];
  done(issues.length === 0 ? null : sayIssues(issues));
}
