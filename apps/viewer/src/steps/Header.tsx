import { useEffect, useRef } from 'preact/hooks';
import { type BenchPlan, type Line, plainUnit } from 'runback';
import { standShort } from './bench-words.ts';

interface HeaderProps {
  readonly line: Line;
  readonly plan: BenchPlan;
  readonly title: string;
  readonly place: string | null;
  /** Another bench than the job's is in use. */
  readonly local: boolean;
  readonly leave: () => void;
  readonly settings: () => void;
}

/** Which line, which step, which end is START and on which hand. */
export function Header({ line, plan, title, place, local, leave, settings }: HeaderProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus({ preventScroll: true }), [title]);
  return (
    <header class="steps-header">
      <button type="button" class="btn steps-leave" aria-label="Leave the bend steps" onClick={leave}>
        ✕
      </button>
      <div class="steps-titles">
        <h1 id="steps-title" tabIndex={-1} ref={heading}>
          {title}
        </h1>
        <p class="steps-line">
          {place !== null && `${place} · `}
          {line.name}
        </p>
      </div>
      {plan.hand === 'OPPOSITE HAND' && <strong class="steps-hand">OPPOSITE HAND</strong>}
      <button
        type="button"
        class={`btn steps-stance ${local ? 'steps-local' : ''}`}
        onClick={settings}
        aria-label={`${standShort(plan)}${local ? ', for now' : ''}: change`}
      >
        <span>START is END {plan.from}</span>
        <span>{standShort(plan)}</span>
        {local && <span class="steps-now">for now</span>}
      </button>
      <strong class="steps-unit">{plainUnit(plan.unit)}</strong>
    </header>
  );
}
