/** What holds for the whole job. */
import type { LengthStyle } from 'runback';
import { store } from '../../../store/index.ts';
import { Pick, TextInput } from '../../parts/index.ts';
import { Act } from '../bits/Act.tsx';
import { AttitudeFields } from '../bits/AttitudeFields.tsx';
import { change, type JobNow, jobNow, set } from '../bits/now.ts';
import { Section } from '../bits/Section.tsx';
import { sayAttitudes } from '../edits/attitudes.ts';
import { unitEdits } from '../edits/units.ts';
import { Runs } from './Runs.tsx';
import { Surroundings } from './Surroundings.tsx';
import '../setup.css';
import { sayAxes } from './say-axes.ts';

export function JobSetup() {
  const now = jobNow();
  if (!now) return null;
  const { job, read } = now;
  const count = job.surroundings?.length ?? 0;
  const revision = job.revision === undefined ? '' : `, revision ${job.revision}`;
  return (
    <div class="setup">
      <h2>The whole job</h2>
      <Section id="job" title="Title" brief={`${read.title}${revision}`}>
        <Head now={now} />
      </Section>
      <Section id="units" title="Units" brief={UNIT_NAMES[job.units]}>
        <Units now={now} />
      </Section>
      <Section id="job-tilt" title="Tilting in use" brief={sayAttitudes(job.attitudes)}>
        <AttitudeFields at="attitudes" values={job.attitudes} of="of the job" />
        <p class="field-hint">{sayAxes(job)}</p>
      </Section>
      {job.runs && job.runs.length > 0 && (
        <Section id="runs" title="Runs" brief={String(job.runs.length)}>
          <Runs now={now} />
        </Section>
      )}
      <Section
        id="surroundings"
        title="Surroundings"
        brief={count === 0 ? 'none' : String(count)}
        wanted={store.selection.value?.kind === 'surrounding'}
      >
        <Surroundings now={now} />
      </Section>
    </div>
  );
}

interface NowProps {
  readonly now: JobNow;
}

function Head({ now: { job } }: NowProps) {
  return (
    <div class="setup-grid">
      <div class="setup-wide setup-most">
        <TextInput
          label="Title"
          value={job.title}
          placeholder="Untitled"
          onCommit={(title) => set('change the title', 'title', title)}
        />
        <TextInput
          label="Revision"
          value={job.revision}
          onCommit={(revision) => set('change the revision', 'revision', revision)}
        />
      </div>
      <div class="setup-wide">
        <TextInput
          label="Note on the job"
          multiline
          longest={2000}
          value={job.note}
          onCommit={(note) => set('note on the job', 'note', note)}
        />
      </div>
    </div>
  );
}

const UNIT_NAMES = { mm: 'millimetres', in: 'inches' } as const;
const AS_JOB = '';

function Units({ now: { job } }: NowProps) {
  const other = job.units === 'mm' ? 'in' : 'mm';
  const styles = [
    { value: AS_JOB, label: `as the job: ${UNIT_NAMES[job.units]}` },
    { value: 'mm', label: 'millimetres' },
    { value: 'in', label: 'inches in 1/32' },
    { value: 'in-16', label: 'inches in 1/16' },
    { value: 'in-decimal', label: 'inches with decimals' },
  ];
  return (
    <>
      <Pick
        label="Read lengths as"
        hint="On this device only; the job stays as it is."
        value={store.looks.value.style ?? AS_JOB}
        options={styles}
        onCommit={(style) => store.setLooks({ style: style === AS_JOB ? null : (style as LengthStyle) })}
      />
      <p>
        The job is written in {UNIT_NAMES[job.units]}: a length without a unit is in {UNIT_NAMES[job.units]}.
      </p>
      <Act
        label={`Write the job in ${UNIT_NAMES[other]}`}
        onAct={() => change(`write the job in ${UNIT_NAMES[other]}`, ...unitEdits(job, other))}
      />
      <p class="field-hint">
        Nothing changes its size: every length without a unit gets “{job.units}” behind it, 82.5 becomes “82.5{' '}
        {job.units}”. From then on a new length without a unit is in {UNIT_NAMES[other]}.
      </p>
    </>
  );
}
