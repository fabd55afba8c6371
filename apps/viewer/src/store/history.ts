/** Every text a job has had, oldest first: undo and redo without limit. Never changed in place. */

export interface Step {
  readonly text: string;
  /** What made this text out of the one before. */
  readonly label: string;
  /** Steps of one gesture replace each other. */
  readonly gesture: string | null;
}

export interface History {
  readonly past: readonly Step[];
  readonly now: Step;
  readonly future: readonly Step[];
}

export const begun = (text: string): History => ({
  past: [],
  now: { text, label: '', gesture: null },
  future: [],
});

/** The history with one more step; a step of the gesture that is going on takes the place of its last one. */
export function stepped(history: History, step: Step): History {
  const { past, now } = history;
  if (step.text === now.text) return history;
  const same = step.gesture !== null && step.gesture === now.gesture;
  return { past: same ? past : [...past, now], now: step, future: [] };
}

export function undone(history: History): History {
  const { past, now, future } = history;
  const last = past.at(-1);
  return last ? { past: past.slice(0, -1), now: last, future: [now, ...future] } : history;
}

export function redone(history: History): History {
  const [next, ...future] = history.future;
  return next ? { past: [...history.past, history.now], now: next, future } : history;
}

/** What undo would take back, or null. */
export const undoLabel = ({ past, now }: History): string | null => (past.length > 0 ? now.label : null);

/** What redo would do again, or null. */
export const redoLabel = ({ future }: History): string | null => future[0]?.label ?? null;
