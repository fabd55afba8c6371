/** Lines joined end to end: which, where they drain to, and the stick that goes through all of them. */
import type { Vec3 } from 'runback';
import { store } from '../../../store/index.ts';
import { Pick, TextInput } from '../../parts/index.ts';
import { type JobNow, set } from '../bits/now.ts';
import { Section } from '../bits/Section.tsx';
import { nameOf, type Written } from '../edits/written.ts';
import { StickFields } from '../line/StickFields.tsx';

const UNSAID = '';
const DRAINS = [
  { value: UNSAID, label: 'not said: not judged' },
  { value: 'A', label: 'to end A of the first' },
  { value: 'Z', label: 'to end Z of the last' },
  { value: 'both', label: 'to both ends' },
];

/** The end of the run where the tip of its stick comes out, mm. */
function footOf({ lines, stick }: NonNullable<Written['runs']>[number]): Vec3 {
  const first = (stick?.enters ?? 'Z') === 'Z';
  const id = lines.at(first ? 0 : -1);
  const worked = store.worked.value?.lines.find(({ line }) => line.id === id);
  return worked?.line.corners.at(first ? 0 : -1)?.at ?? [0, 0, 0];
}

export function Runs({ now }: { readonly now: JobNow }) {
  return (
    <>
      {now.job.runs?.map((run, r) => {
        const at = `runs[${r}]`;
        const name = nameOf(run);
        return (
          <Section inner key={run.id} id={`run-${run.id}`} title={name} brief={run.lines.join(' → ')}>
            <TextInput
              label="Name"
              value={run.name}
              placeholder={run.id}
              onCommit={(to) => set(`rename ${name}`, `${at}.name`, to)}
            />
            <Pick
              label="It drains"
              value={run.drain ?? UNSAID}
              options={DRAINS}
              onCommit={(to) =>
                set(`change where ${name} drains`, `${at}.drain`, to === UNSAID ? undefined : to)
              }
            />
            <StickFields now={now} stick={run.stick} at={`${at}.stick`} of={name} foot={footOf(run)} />
            <TextInput
              label="Note on the run"
              multiline
              longest={2000}
              value={run.note}
              onCommit={(note) => set(`note on ${name}`, `${at}.note`, note)}
            />
          </Section>
        );
      })}
      <p class="field-hint">
        Which lines make a run is edited in the job file: the ids in “lines” of each of its “runs”, from end A
        to end Z.
      </p>
    </>
  );
}
