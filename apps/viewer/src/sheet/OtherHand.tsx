/** The way to the sheet of the opposite hand. */
import type { WorkedJob, WorkedLine } from 'runback';
import { store } from '../store/index.ts';
import { acrossOf } from '../words/setup/edits/lines.ts';
import { addedHand, otherHands } from './hand.ts';

interface Props {
  readonly job: WorkedJob;
  readonly worked: WorkedLine;
}

async function add({ line }: WorkedLine): Promise<void> {
  const job = store.job.value;
  if (!job) return;
  const { id, edits } = addedHand(job.written, line);
  const faults = await store.edit(`add the opposite hand of ${line.name}`, edits);
  if (faults.length === 0) store.chooseLine(id);
}

export function OtherHand({ job, worked }: Props) {
  const { line } = worked;
  const hands = otherHands(job, line);
  return (
    <section class="sheet-hand" aria-label="Opposite hand">
      <h3>Opposite hand</h3>
      {hands.length === 0 && (
        <>
          <p class="field-hint">
            This job has none of {line.name} yet. It is the mirror image across {acrossOf(line.axes.left)} =
            0, checked like any line.
          </p>
          <button type="button" class="btn" onClick={() => void add(worked)}>
            Add the opposite hand
          </button>
        </>
      )}
      {hands.map(({ line: hand }) => (
        <button key={hand.id} type="button" class="btn" onClick={() => store.chooseLine(hand.id)}>
          Print the opposite hand: {hand.name}
        </button>
      ))}
    </section>
  );
}
