import { useMemo } from 'preact/hooks';
import { type BenchPlan, type Line, toolPose } from 'runback';
import { BenchPicture } from './BenchPicture.tsx';
import { arrowWords } from './bench-words.ts';
import type { Done } from './done.ts';
import { EndView } from './EndView.tsx';
import { Items } from './Items.tsx';
import { StandDrawing } from './StandDrawing.tsx';
import type { Step } from './step-list.ts';

interface ScreenProps {
  readonly plan: BenchPlan;
  readonly line: Line;
  readonly step: Step;
  readonly done: Done;
  readonly toggle: (id: string) => void;
  /** Nothing is ticked on a line that fails. */
  readonly fails: boolean;
  /** Stands otherwise. */
  readonly change: () => void;
}

/** One step: what to do, and a picture where there is one. */
export function Screen({ plan, line, step, done, toggle, fails, change }: ScreenProps) {
  const pose = useMemo(() => (step.index === null ? null : toolPose(plan, step.index)), [plan, step]);
  return (
    <div class={`steps-screen steps-screen-${step.kind}`}>
      {pose && <Picture plan={plan} od={line.tube.od} index={step.index ?? 0} turns={pose.turns !== null} />}
      {step.kind === 'stand' && line.bender !== null && (
        <div class="steps-stand-box">
          {plan.bench && <StandDrawing bench={plan.bench} tool from={plan.from} />}
          <p>
            <strong>If yours differs: STOP.</strong>{' '}
            <button type="button" class="btn steps-big" onClick={change}>
              Change
            </button>
          </p>
        </div>
      )}
      <Items
        step={step}
        locked={fails}
        done={done}
        toggle={toggle}
        turning={pose && <EndView plan={plan} pose={pose} />}
      />
      {step.cautions.length > 0 && (
        <ul class="steps-cautions">
          {step.cautions.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

interface PictureProps {
  readonly plan: BenchPlan;
  readonly od: number;
  readonly index: number;
  readonly turns: boolean;
}

function Picture({ plan, od, index, turns }: PictureProps) {
  const { words } = plan.rows[index]!;
  return (
    <BenchPicture
      plan={plan}
      index={index}
      od={od}
      says={`Bend ${index + 1} from where you stand. ${words.line}.`}
      amount={turns ? arrowWords(words) : null}
    />
  );
}
