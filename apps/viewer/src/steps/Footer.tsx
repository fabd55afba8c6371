import type { Done } from './done.ts';
import type { Moves } from './moving.ts';
import { ticksOf } from './progress.ts';
import type { Step } from './step-list.ts';

interface FooterProps {
  readonly steps: readonly Step[];
  readonly at: number;
  readonly done: Done;
  readonly moves: Moves;
  /** Nothing is ticked on a line that fails. */
  readonly locked: boolean;
}

/** Back, done, on: large enough for a thumb in a glove. */
export function Footer({ steps, at, done, moves, locked }: FooterProps) {
  const step = steps[at]!;
  const ticked = step.items.filter(({ id }) => done.has(id)).length;
  const all = locked || ticked === step.items.length;
  const last = at === steps.length - 1;
  return (
    <footer class="steps-footer">
      <div class="steps-rail" aria-hidden="true">
        {steps.map((one, i) => (
          <span
            key={one.id}
            class={`steps-stop steps-stop-${ticksOf(one, done)} ${i === at ? 'steps-stop-here' : ''}`}
          />
        ))}
      </div>
      <div class="steps-buttons">
        <button type="button" class="btn steps-move" disabled={at === 0} onClick={moves.back}>
          <span aria-hidden="true">‹</span> Back
        </button>
        <button
          type="button"
          class="btn-main steps-move"
          onClick={all ? (last ? moves.leave : moves.next) : moves.done}
        >
          {all ? (last ? 'Leave' : 'Next') : last ? '✓ Done' : '✓ Done, next'}
        </button>
        <button type="button" class="btn steps-move" disabled={last} onClick={moves.next}>
          Skip <span aria-hidden="true">›</span>
        </button>
      </div>
      <p class="visually-hidden" aria-live="polite">
        {step.items.length > 0 && !locked && `${ticked} of ${step.items.length} done`}
      </p>
    </footer>
  );
}
