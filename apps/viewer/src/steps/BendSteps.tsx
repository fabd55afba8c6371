import './steps.css';
import './items.css';
import './pictures.css';
import type { WorkedLine } from 'runback';
import { store } from '../store/index.ts';
import { Forbidden } from './Forbidden.tsx';
import { useKeys } from './moving.ts';
import { Steps } from './Steps.tsx';

const leave = (): void => store.setFace('look');

/** The chosen line at the bender: one thing at a time, for greasy hands. */
export function BendSteps() {
  const worked = store.line.value;
  const job = store.worked.value;
  if (!worked || !job) return <p class="steps-wait muted">Working …</p>;
  if (!worked.centreline) return <Impossible worked={worked} />;
  return (
    <Steps
      key={worked.line.id}
      worked={worked}
      centreline={worked.centreline}
      checksum={job.checksum}
      leave={leave}
    />
  );
}

const NOWHERE = { next: () => undefined, back: () => undefined, done: () => undefined, leave };

/** A line that cannot exist has no steps: only why. */
function Impossible({ worked }: { readonly worked: WorkedLine }) {
  useKeys(NOWHERE);
  return (
    <div class="steps">
      <div class="steps-frame">
        <header class="steps-header">
          <button type="button" class="btn steps-leave" aria-label="Leave the bend steps" onClick={leave}>
            ✕
          </button>
          <h1>{worked.line.name}</h1>
        </header>
        <div class="steps-body">
          <Forbidden findings={worked.findings} open />
        </div>
      </div>
    </div>
  );
}
