import type { EndName, Line } from 'runback';
import type { Done } from './done.ts';
import { ticksOf } from './progress.ts';
import { Stand } from './Stand.tsx';
import { canFill, fillScreen } from './screen.ts';
import type { Standings } from './standing.ts';
import type { Step } from './step-list.ts';

interface SettingsProps {
  readonly line: Line;
  readonly from: EndName;
  readonly setFrom: (from: EndName) => void;
  readonly standings: Standings;
  readonly steps: readonly Step[];
  readonly done: Done;
  readonly goTo: (at: number) => void;
  readonly clear: () => void;
  readonly answered: () => void;
}

/** What the words hang on: how one stands, which end is START; and ways to get about. */
export function Settings(props: SettingsProps) {
  const { line, from, setFrom, standings, steps, done, goTo, clear, answered } = props;
  return (
    <div class="steps-settings">
      <div class="steps-row">
        <fieldset class="steps-from">
          <legend>Work from</legend>
          <div class="seg">
            {(['A', 'Z'] as const).map((end) => (
              <button key={end} type="button" aria-pressed={from === end} onClick={() => setFrom(end)}>
                END {end}
              </button>
            ))}
          </div>
        </fieldset>
        {canFill() && (
          <button type="button" class="btn steps-big" onClick={() => void fillScreen()}>
            Full screen
          </button>
        )}
        {done.size > 0 && (
          <button type="button" class="btn steps-big" onClick={clear}>
            Another tube: take the ticks off
          </button>
        )}
      </div>
      {line.bender !== null && (
        <Stand key={line.bender.id} line={line} from={from} standings={standings} answered={answered} />
      )}
      {!standings.ask && <GoTo steps={steps} done={done} goTo={goTo} />}
    </div>
  );
}

const TICKS = { none: '', some: '… ', all: '✓ ' } as const;

function GoTo({ steps, done, goTo }: Pick<SettingsProps, 'steps' | 'done' | 'goTo'>) {
  return (
    <fieldset class="steps-goto">
      <legend>Go to</legend>
      {steps.map((step, i) => (
        <button key={step.id} type="button" class="btn steps-big" onClick={() => goTo(i)}>
          {TICKS[ticksOf(step, done)]}
          {step.title}
        </button>
      ))}
    </fieldset>
  );
}
