/** Everything about the chosen line but its points. */
import { catalogue, type Line } from 'runback';
import { written } from '../../parts/index.ts';
import { AttitudeFields } from '../bits/AttitudeFields.tsx';
import { lineNow, type MeasuredNow } from '../bits/now.ts';
import { Section } from '../bits/Section.tsx';
import { sayAttitudes } from '../edits/attitudes.ts';
import { sayFall } from '../edits/fall.ts';
import { runsOf } from '../edits/lines.ts';
import { ruleFall } from '../edits/rules.ts';
import { kindWords } from '../edits/stick.ts';
import { sizeOf } from '../edits/tubes.ts';
import { entry, nameOf } from '../edits/written.ts';
import { Basics } from './Basics.tsx';
import { BenderSection } from './BenderSection.tsx';
import { ClearanceSection } from './ClearanceSection.tsx';
import { ClipsSection } from './ClipsSection.tsx';
import { DutySection } from './DutySection.tsx';
import { EndSection } from './EndSection.tsx';
import { FallSection } from './FallSection.tsx';
import { Mirrored } from './Mirrored.tsx';
import { StickFields } from './StickFields.tsx';
import { TubeSection } from './TubeSection.tsx';
import '../setup.css';

const UNITS = { mm: 'mm', in: 'inches' } as const;

export function LineSetup() {
  const now = lineNow();
  if (!now) return <p class="field-hint">There is no line yet.</p>;
  const { own, mirror, line, job } = now;
  // What is typed and not committed belongs to this line and to no other.
  return (
    <div class="setup" key={line.id}>
      <p class="field-hint">Lengths in {UNITS[job.units]} unless they say otherwise, angles in degrees.</p>
      {mirror && <Mirrored now={now} mirror={mirror} />}
      {own && <Measured now={{ ...now, own }} />}
    </div>
  );
}

function Measured({ now }: { readonly now: MeasuredNow }) {
  const { job, line, own, at } = now;
  const quantity = line.quantity === 1 ? '' : `, ${line.quantity} pieces`;
  const bender = entry(job.benders, own.bender ?? '');
  const tube = entry(job.tubes, own.tube);
  return (
    <>
      <Section id="what" title="What it is" brief={`${line.service.name}${quantity}`}>
        <Basics now={now} />
      </Section>
      <Section id="tube" title="Tube" brief={tube ? `${sizeOf(tube)}, ${line.tube.material.name}` : own.tube}>
        <TubeSection now={now} />
      </Section>
      <Section
        id="bender"
        title="Bender and die"
        brief={own.bender ? nameOf({ ...bender, id: own.bender }) : 'none'}
      >
        <BenderSection now={now} />
      </Section>
      <Section id="end-a" title="End A" brief={sayEnd(line.endA)}>
        <EndSection now={now} end="A" />
      </Section>
      <Section id="end-z" title="End Z" brief={sayEnd(line.endZ)}>
        <EndSection now={now} end="Z" />
      </Section>
      <Section id="fall" title="Fall" brief={sayDrain(now)}>
        <FallSection now={now} />
      </Section>
      <Section id="duty" title="Liquid and duty" brief={line.fluid?.name ?? 'no liquid given'}>
        <DutySection now={now} />
      </Section>
      <Section id="stick" title="Stick" brief={own.stick ? kindWords(own.stick.kind) : 'none'}>
        <Stick now={now} />
      </Section>
      <Section id="clearance" title="Clearance" brief={sayClearance(now)}>
        <ClearanceSection now={now} />
      </Section>
      <Section id="clips" title="Clips" brief={sayClips(own.clips)}>
        <ClipsSection now={now} />
      </Section>
      <Section
        id="tilt"
        title="Tilting in use"
        brief={own.attitudes ? sayAttitudes(own.attitudes) : 'as the job’s'}
      >
        <AttitudeFields
          at={`${at}.attitudes`}
          values={own.attitudes}
          inherit={{ values: job.attitudes, says: sayAttitudes(job.attitudes) }}
          of={`of ${line.name}`}
        />
      </Section>
    </>
  );
}

function Stick({ now }: { readonly now: MeasuredNow }) {
  const { line, own, job } = now;
  const runs = runsOf(job, [line.id]);
  const foot = line.corners.at((own.stick?.enters ?? 'Z') === 'Z' ? 0 : -1)?.at ?? [0, 0, 0];
  return (
    <>
      {runs.length > 0 && (
        <p class="field-hint">
          One that goes through {runs.join(' and ')} is set under “Runs” of the whole job, below.
        </p>
      )}
      <StickFields now={now} stick={own.stick} at={`${now.at}.stick`} of={line.name} foot={foot} />
    </>
  );
}

const sayEnd = ({ fitting, joins }: Line['endA']): string =>
  joins.length === 0 ? fitting.name : `${fitting.name}, in ${joins.join(' and ')}`;

function sayDrain({ own, line }: MeasuredNow): string {
  const { drain } = own;
  if (!drain || !line.drain) return 'not judged';
  const to = drain.to === 'both' ? 'to both ends' : `to ${drain.to}`;
  const rule = drain.rule === undefined ? '' : `, ${ruleFall(catalogue, drain.rule)} by a rule`;
  const least = drain.minSlope === undefined ? rule : `, ${sayDegrees(drain.minSlope)}`;
  return `${to}${least}`;
}

function sayDegrees(degrees: number | string): string {
  if (typeof degrees === 'string') return degrees;
  const fall = sayFall(degrees);
  return fall.startsWith('1 in') ? fall : `${written(degrees)}°`;
}

function sayClearance({ own }: MeasuredNow): string {
  const { self, lines, to } = own.clearance ?? {};
  const count = Object.keys(to ?? {}).length + (self === undefined ? 0 : 1) + (lines === undefined ? 0 : 1);
  if (count === 0) return 'nothing of its own';
  return count === 1 ? 'one distance of its own' : `${count} distances of its own`;
}

function sayClips(clips: MeasuredNow['own']['clips']): string {
  if (clips === undefined) return 'not given';
  return clips.length === 0 ? 'none' : String(clips.length);
}
