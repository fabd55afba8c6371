/** The choice, and the pages of the present job: drawn line by line while a sheet is shown, so that the page stays quick. */
import { computed, effect, signal } from '@preact/signals';
import type { WorkedJob } from 'runback';
import { store } from '../store/index.ts';
import { readChoice, type SheetChoice } from './choice.ts';
import { coverOf, type LineSheet, lineSheet, linesOf, type SheetSet, sheetSet } from './sheets.ts';

const KEY = 'runback-sheet';

function kept(): unknown {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? 'null');
  } catch {
    return null;
  }
}

const chosen = signal(readChoice(kept()));

export const choice = computed(() => chosen.value);

export function choose(change: Partial<SheetChoice>): void {
  chosen.value = { ...chosen.value, ...change };
  try {
    localStorage.setItem(KEY, JSON.stringify(chosen.value));
  } catch {
    // Private windows and full disks: the choice holds until the page closes.
  }
}

/** The pages shown; `null` before the first. */
export const shown = signal<SheetSet | null>(null);
/** True while pages are being drawn, or shown of a job that has changed since. */
export const drawing = signal(false);

/** What is to be printed now, drawn at once; `null` while no job is open. */
export function setNow(): SheetSet | null {
  const job = store.worked.peek();
  return job && sheetSet(job, store.lineId.peek(), chosen.peek());
}

/** A hand that drags has moved on sooner than this. */
const REST_MS = 160;

interface Wanted {
  readonly job: WorkedJob;
  readonly lineId: string | null;
  readonly choice: SheetChoice;
}

/** What the pages hang on: not on how large they are shown. */
const wanted = computed(() => {
  const { zoom: _, ...printed } = chosen.value;
  return JSON.stringify(printed);
});

/** Keeps `shown` in step with the job and the choice until it is stopped. */
export function follow(): () => void {
  let before: Wanted | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let round = 0;
  const stop = effect(() => {
    const job = store.worked.value;
    const lineId = store.lineId.value;
    void wanted.value;
    clearTimeout(timer);
    round += 1;
    if (!job) {
      shown.value = null;
      return;
    }
    const now: Wanted = { job, lineId, choice: chosen.peek() };
    const edited = before !== null && before.job !== job && before.lineId === lineId;
    before = now;
    drawing.value = true;
    const mine = round;
    const draw = (): void => {
      drawn(now, () => mine === round).catch((error: unknown) => {
        drawing.value = false;
        store.say(`The sheet cannot be drawn: ${error instanceof Error ? error.message : error}.`, 'fault');
      });
    };
    if (edited) timer = setTimeout(draw, REST_MS);
    else draw();
  });
  return () => {
    clearTimeout(timer);
    round += 1;
    stop();
  };
}

/** Cover and lines one after the other; what was shown of the same lines stays until its own pages are there. */
async function drawn({ job, lineId, choice }: Wanted, wantedStill: () => boolean): Promise<void> {
  const lines = linesOf(job, lineId, choice);
  const before = shown.peek()?.lines ?? [];
  const same = lines.every((worked, i) => worked.line.id === before[i]?.worked.line.id);
  const cover = coverOf(job, choice);
  const done: LineSheet[] = [];
  const show = (): void => {
    shown.value = {
      job,
      choice,
      cover,
      lines: same ? [...done, ...before.slice(done.length, lines.length)] : [...done],
    };
  };
  for (const worked of lines) {
    show();
    if (done.length > 0 || cover.length > 0) await frame();
    if (!wantedStill()) return;
    done.push(lineSheet(worked, job, choice));
  }
  show();
  drawing.value = false;
}

/** Lets the browser show what is there; a page that is not looked at goes on when it is. */
const frame = (): Promise<void> => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
