/** Which bench the steps are for: the job's, or another one chosen here for now. */
import { signal } from '@preact/signals';
import type { Line } from 'runback';
import { type Bench, canBe, sameBench } from './bench-choice.ts';

const KEY = 'runback-steps-bench';

type ByBender = Readonly<Record<string, Bench>>;

/**
 * By the bender's id. Where the job says how one stands, another choice holds until the page closes: nobody shall find
 * last week's choice in the words without having made it. Where the job says nothing, the answer is remembered.
 */
const here = signal<ByBender>({});
const remembered = signal<ByBender>(read());
/** Benders whose question was put off: words as seen from START. */
const unsure = signal<ReadonlySet<string>>(new Set());

export interface Standings {
  /** What the plan is worked with. */
  readonly bench: Bench | null;
  /** What the job says. */
  readonly job: Bench | null;
  /** Another than the job's. */
  readonly local: boolean;
  /** Nobody has said yet. */
  readonly ask: boolean;
}

const SEEN_FROM_START: Standings = { bench: null, job: null, local: false, ask: false };

/** A bench in the job that cannot be is none. */
export function standingsOf({ bender }: Line): Standings {
  if (bender === null) return SEEN_FROM_START;
  const job = bender.bench && canBe(bender.bench) ? bender.bench : null;
  const chosen = here.value[bender.id] ?? (job === null ? remembered.value[bender.id] : undefined) ?? null;
  const bench = chosen ?? job;
  return {
    bench,
    job,
    local: bench !== null && !sameBench(bench, job),
    ask: bench === null && !unsure.value.has(bender.id),
  };
}

/** Stands so for now. */
export function standSo(bender: string, bench: Bench): void {
  here.value = { ...here.value, [bender]: bench };
  remembered.value = { ...remembered.value, [bender]: bench };
  try {
    localStorage.setItem(KEY, JSON.stringify(remembered.value));
  } catch {
    // It holds until the page closes.
  }
}

/** Back to what the job says. */
export function standAsJob(bender: string): void {
  const { [bender]: _, ...others } = here.value;
  here.value = others;
}

export function putOff(bender: string): void {
  unsure.value = new Set([...unsure.value, bender]);
}

const WORDS: Readonly<Record<keyof Omit<Bench, 'turnCheck'>, readonly string[]>> = {
  stand: ['side', 'behind-free', 'at-start'],
  startOn: ['left', 'right'],
  plane: ['flat', 'upright'],
  former: ['near', 'far', 'above', 'below'],
  moves: ['tube', 'bender'],
};

const isBench = (value: unknown): value is Bench =>
  typeof value === 'object' &&
  value !== null &&
  Object.entries(WORDS).every(([key, words]) =>
    words.includes((value as Record<string, string>)[key] ?? ''),
  ) &&
  canBe(value as Bench);

function read(): ByBender {
  try {
    const stored = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Record<string, unknown>;
    return Object.fromEntries(Object.entries(stored).filter(([, value]) => isBench(value))) as ByBender;
  } catch {
    return {};
  }
}
