/** Keeps the worked job in step with the text: edits one after the other, of many moves only the latest. */
import { batch } from '@preact/signals';
import type { JobEdit, JobIssue } from 'runback';
import type { Answered, WorkAnswer, WorkAsk } from '../worker/types.ts';
import { stepped } from './history.ts';
import type { State } from './state.ts';
import { announcement } from './verdict-words.ts';

/** The hand has rested: time to look for cures. */
const REST_MS = 250;

export type WorkFn = (ask: WorkAsk) => Promise<WorkAnswer>;

export interface Change {
  readonly label: string;
  readonly gesture: string | null;
  readonly edits: readonly JobEdit[];
}

export class Working {
  readonly #state: State;
  readonly #work: WorkFn;
  readonly #say: (words: string) => void;
  #queue: Promise<unknown> = Promise.resolve();
  #waiting: Change | null = null;
  #rest: ReturnType<typeof setTimeout> | undefined;

  constructor(state: State, work: WorkFn, say: (words: string) => void) {
    this.#state = state;
    this.#work = work;
    this.#say = say;
  }

  /** Makes the edits as one step; the faults when the text could not be read then. */
  change({ label, gesture, edits }: Change): Promise<readonly JobIssue[]> {
    const { text, history } = this.#state;
    return this.#enqueue(async () => {
      const before = text.value;
      const answer = await this.#work(this.#ask({ edits }));
      if (!answer.ok) return answer.issues;
      // Undone or opened anew while the worker was at it: that goes first.
      if (before !== text.value) return [];
      batch(() => {
        history.value = stepped(history.value, { text: answer.text, label, gesture });
        this.take(answer);
      });
      this.#cureLater();
      return [];
    });
  }

  /** As `change`, but only the latest of those that wait is made. */
  changeLatest(latest: Change): void {
    const idle = this.#waiting === null;
    this.#waiting = latest;
    if (!idle) return;
    void this.#queue.then(async () => {
      const next = this.#waiting;
      this.#waiting = null;
      const issues = next ? await this.change(next) : [];
      if (issues[0]) this.#say(issues[0].message);
    });
  }

  /** Works the present text again (after undo, another line, …). */
  refresh(): void {
    void this.#enqueue(async () => {
      const answer = await this.#work(this.#ask({}));
      if (answer.ok && answer.text === this.#state.text.value) this.take(answer);
    });
    this.#cureLater();
  }

  /** Whether a text can be read, and it worked; nothing is changed. */
  look(text: string, file: string): Promise<WorkAnswer> {
    return this.#enqueue(() => this.#work(this.#ask({ text, file, lineId: null })));
  }

  /** Shows an answer. */
  take({ job, worked, profile, lineId }: Answered): void {
    const state = this.#state;
    const before = state.line.value;
    batch(() => {
      state.job.value = job;
      state.worked.value = worked;
      // Asked for before another line was chosen: that one's own answer is on its way.
      if (lineId === state.lineId.value) state.profile.value = profile;
      keepInside(state);
    });
    const words = announcement(before, state.line.value);
    if (words) this.#say(words);
  }

  #ask(over: Partial<WorkAsk>): WorkAsk {
    const { text, name, wantedLine } = this.#state;
    const plain = { edits: [], cures: false };
    return { text: text.value, file: name.value, lineId: wantedLine.value, ...plain, ...over };
  }

  #enqueue<T>(job: () => Promise<T>): Promise<T> {
    const run = this.#queue.then(job);
    this.#queue = run.catch(() => undefined);
    return run;
  }

  #cureLater(): void {
    const { text, working } = this.#state;
    clearTimeout(this.#rest);
    working.value = true;
    this.#rest = setTimeout(() => {
      void this.#enqueue(async () => {
        const asked = text.value;
        const answer = await this.#work(this.#ask({ cures: true }));
        if (asked !== text.value) return;
        if (answer.ok) this.take(answer);
        working.value = false;
      });
    }, REST_MS);
  }
}

/** What was selected and is no longer there is let go; a bead past the end stands at the end. */
function keepInside({ line, stand, peek, selection }: State): void {
  const now = line.value;
  const length = now?.centreline?.length ?? 0;
  for (const bead of [stand, peek])
    if (bead.value !== null && bead.value > length) bead.value = length > 0 ? length : null;
  const chosen = selection.value;
  if (!now || chosen === null || chosen.kind === 'surrounding') return;
  const count = {
    point: now.line.corners.length,
    leg: now.line.corners.length - 1,
    bend: now.centreline?.bends.length ?? 0,
    finding: now.findings.length,
  }[chosen.kind];
  if (chosen.index >= count) selection.value = null;
}
