/** The steps of a line as they stand: plan, place, ticks, what the keys do. */
import { signal, useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import type { BenchPlan, Centreline, EndName, WorkedLine } from 'runback';
import { store } from '../store/index.ts';
import { clearDone, type Done, doneKey, doneOf, setDone } from './done.ts';
import type { Moves } from './moving.ts';
import { clampStep, resumeAt } from './progress.ts';
import { type Standings, standingsOf } from './standing.ts';
import { planFor, type Step, stepList } from './step-list.ts';

export interface StepsAsk {
  readonly worked: WorkedLine;
  readonly centreline: Centreline;
  readonly checksum: string;
  readonly leave: () => void;
}

interface Place {
  readonly at: number;
  readonly go: (at: number) => void;
  readonly by: (steps: number) => void;
}

/** Where one is, for these steps; with others (another end, another text) one begins where something is left to do. */
function usePlace(key: string, steps: readonly Step[], done: Done): Place {
  const place = useSignal({ key: '', at: 0 });
  const first = useMemo(() => resumeAt(steps, done), [key]);
  // Read when it is asked for: keys may come faster than the screen is drawn.
  const now = (): number => clampStep(place.peek().key === key ? place.peek().at : first, steps);
  const go = (at: number): void => {
    place.value = { key, at: clampStep(at, steps) };
  };
  return {
    at: clampStep(place.value.key === key ? place.value.at : first, steps),
    go,
    by: (count) => go(now() + count),
  };
}

/** The end each line is worked from, until the page closes. */
const ends = signal<Readonly<Record<string, EndName>>>({});

export interface StepsModel {
  readonly standings: Standings;
  readonly from: EndName;
  readonly setFrom: (from: EndName) => void;
  readonly plan: BenchPlan;
  readonly steps: readonly Step[];
  readonly at: number;
  readonly step: Step;
  readonly done: Done;
  /** Nothing is ticked, and nobody bends. */
  readonly fails: boolean;
  /** How one stands is being asked, or changed: no step is shown. */
  readonly asking: boolean;
  readonly setSettings: (open: boolean) => void;
  readonly go: (at: number) => void;
  readonly toggle: (id: string) => void;
  readonly clear: () => void;
  readonly moves: Moves;
}

export function useSteps({ worked, centreline, checksum, leave }: StepsAsk): StepsModel {
  const { line } = worked;
  const fails = worked.verdict === 'fail';
  const settings = useSignal(false);
  const unit = store.style.value;
  const standings = standingsOf(line);
  const { bench } = standings;
  const from = ends.value[line.id] ?? 'A';
  const plan = useMemo(
    () => planFor({ line, centreline, from, unit, bench }),
    [line, centreline, from, unit, bench],
  );
  const steps = useMemo(() => stepList(plan, worked), [plan, worked]);
  const key = doneKey(checksum, line.id, from);
  const done = doneOf(key);
  const { at, go, by } = usePlace(key, steps, done);
  const step = steps[at]!;
  const asking = standings.ask || settings.value;
  const setSettings = (open: boolean): void => {
    settings.value = open;
  };
  const tickAll = (): void => {
    if (!fails) setDone(key, idsOf(step), true);
    go(at + 1);
  };
  return {
    standings,
    from,
    setFrom: (end) => {
      ends.value = { ...ends.value, [line.id]: end };
    },
    plan,
    steps,
    at,
    step,
    done,
    fails,
    asking,
    setSettings,
    go: (to) => {
      setSettings(false);
      go(to);
    },
    toggle: (id) => setDone(key, [id], !done.has(id)),
    clear: () => clearDone(key),
    moves: {
      next: () => !asking && by(1),
      back: () => !asking && by(-1),
      done: () => !asking && tickAll(),
      leave: () => (settings.value ? setSettings(false) : leave()),
    },
  };
}

const idsOf = ({ items }: Step): readonly string[] => items.map(({ id }) => id);
