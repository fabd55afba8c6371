import { useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Centreline, EndName, WorkedLine } from 'runback';
import { store } from '../store/index.ts';
import { clearDone, type Done, doneKey, doneOf, setDone } from './done.ts';
import { Footer } from './Footer.tsx';
import { Forbidden } from './Forbidden.tsx';
import { useFit } from './fit.ts';
import { Header } from './Header.tsx';
import { type Moves, useKeys, useSwipe } from './moving.ts';
import { clampStep, resumeAt } from './progress.ts';
import { Screen } from './Screen.tsx';
import { Settings } from './Settings.tsx';
import { keepAwake } from './screen.ts';
import { standingsOf } from './standing.ts';
import { planFor, type Step, stepList } from './step-list.ts';

interface StepsProps {
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

/** The steps of a line that can exist. */
export function Steps({ worked, centreline, checksum, leave }: StepsProps) {
  const { line, findings } = worked;
  const fails = worked.verdict === 'fail';
  const from = useSignal<EndName>('A');
  const settings = useSignal(false);
  const root = useRef<HTMLDivElement>(null);
  const body = useRef<HTMLElement>(null);
  const unit = store.style.value;
  const standings = standingsOf(line);
  const { bench } = standings;
  const end = from.value;
  const plan = useMemo(
    () => planFor({ line, centreline, from: end, unit, bench }),
    [line, centreline, end, unit, bench],
  );
  const steps = useMemo(() => stepList(plan, worked), [plan, worked]);
  const key = doneKey(checksum, line.id, end);
  const done = doneOf(key);
  const { at, go, by } = usePlace(key, steps, done);
  const step = steps[at]!;
  const asking = standings.ask || settings.value;
  const moves: Moves = {
    next: () => !asking && by(1),
    back: () => !asking && by(-1),
    done: () => {
      if (asking) return;
      if (!fails)
        setDone(
          key,
          step.items.map(({ id }) => id),
          true,
        );
      go(at + 1);
    },
    leave: () => {
      if (settings.value) settings.value = false;
      else leave();
    },
  };
  useKeys(moves);
  useSwipe(root, moves);
  useEffect(keepAwake, []);
  useFit(body, asking ? null : step);
  return (
    <div class={`steps ${fails ? 'steps-failing' : ''}`} ref={root}>
      <div class="steps-frame">
        <Header
          line={line}
          plan={plan}
          title={asking ? 'How you stand' : step.title}
          place={asking ? null : `step ${at + 1} of ${steps.length}`}
          local={standings.local}
          leave={moves.leave}
          settings={() => {
            settings.value = !settings.value;
          }}
        />
        <section class="steps-body" aria-labelledby="steps-title" ref={body}>
          <Forbidden findings={findings} open={!asking && step.kind === 'saw'} />
          {asking ? (
            <Settings
              line={line}
              from={end}
              setFrom={(next) => {
                from.value = next;
              }}
              standings={standings}
              steps={steps}
              done={done}
              goTo={(to) => {
                settings.value = false;
                go(to);
              }}
              clear={() => clearDone(key)}
              answered={() => {
                settings.value = false;
              }}
            />
          ) : (
            <Screen
              plan={plan}
              line={line}
              step={step}
              done={done}
              toggle={(id) => setDone(key, [id], !done.has(id))}
              fails={fails}
              change={() => {
                settings.value = true;
              }}
            />
          )}
        </section>
        {!asking && <Footer steps={steps} at={at} done={done} moves={moves} locked={fails} />}
      </div>
    </div>
  );
}
