/** What there is to keep clear of. */
import type { JobIssue, Vec3 } from 'runback';
import { store } from '../../../store/index.ts';
import { Pick, TextInput } from '../../parts/index.ts';
import { Act } from '../bits/Act.tsx';
import { FigureInput } from '../bits/inputs.tsx';
import { change, type JobNow, set } from '../bits/now.ts';
import { openFold, Section } from '../bits/Section.tsx';
import {
  type NewShape,
  newSurrounding,
  removeSurrounding,
  renameSurrounding,
} from '../edits/surroundings.ts';
import { path, type WrittenSurrounding } from '../edits/written.ts';
import { ShapeFields } from './ShapeFields.tsx';

const SHAPES: readonly NewShape[] = ['box', 'cylinder', 'sphere'];

export function Surroundings({ now }: { readonly now: JobNow }) {
  const { job } = now;
  const add = async (shape: NewShape) => {
    const made = newSurrounding(job, shape, placeForNew());
    const issues = await change(`add a ${shape}`, ...made.edits);
    if (issues.length === 0) store.select({ kind: 'surrounding', id: made.id });
    return issues;
  };
  return (
    <>
      {(job.surroundings ?? []).map((one, i) => (
        // Not by its id: the fields of one that is renamed stay, and the hand in them.
        <OneSurrounding key={i} now={now} one={one} i={i} />
      ))}
      <div class="setup-row setup-add">
        {SHAPES.map((shape) => (
          <Act key={shape} label={`Add a ${shape}`} onAct={() => add(shape)} />
        ))}
      </div>
    </>
  );
}

/** Left of the end of the chosen line, where it can be seen and is in nobody's way, mm. */
const ASIDE = 250;

function placeForNew(): Vec3 {
  const line = store.line.value?.line;
  const end = line?.corners.at(-1)?.at ?? [0, 0, 0];
  const [x, y, z] = line?.axes.left ?? [0, 1, 0];
  return [end[0] + ASIDE * x, end[1] + ASIDE * y, end[2] + ASIDE * z];
}

const foldOf = (id: string): string => `surrounding ${id}`;

interface OneProps {
  readonly now: JobNow;
  readonly one: WrittenSurrounding;
  readonly i: number;
}

const UNSAID = '';
const REASONS = [
  { value: 'hot', label: 'hot' },
  { value: 'moving', label: 'moving' },
  { value: 'fixed', label: 'fixed' },
  { value: 'wiring', label: 'wiring' },
  { value: UNSAID, label: 'not said' },
];

function OneSurrounding({ now, one, i }: OneProps) {
  const selection = store.selection.value;
  const selected = selection?.kind === 'surrounding' && selection.id === one.id;
  const brief = one.because === undefined ? one.shape : `${one.shape}, ${one.because}`;
  const open = (): void => {
    if (!selected) store.select({ kind: 'surrounding', id: one.id });
  };
  return (
    <Section inner id={foldOf(one.id)} title={one.id} brief={brief} wanted={selected} onOpen={open}>
      <div class="setup-grid">
        <KeepOff now={now} one={one} i={i} />
      </div>
      <ShapeFields one={one} i={i} units={now.units} />
      <TextInput
        label="Note"
        multiline
        longest={2000}
        value={one.note}
        onCommit={(note) => set(`note on ${one.id}`, path('surroundings', i, 'note'), note)}
      />
      <Act
        look="btn-quiet"
        label={`Remove ${one.id}`}
        onAct={() => change(`remove ${one.id}`, ...removeSurrounding(now.job, one.id))}
      />
    </Section>
  );
}

/** Stays selected, and so open, under its new id. */
async function rename({ job }: JobNow, id: string, to: string): Promise<readonly JobIssue[]> {
  const leave = openFold(foldOf(to));
  const issues = await change(`call ${id} ${to}`, ...renameSurrounding(job, id, to));
  if (issues.length === 0) store.select({ kind: 'surrounding', id: to });
  else leave();
  return issues;
}

function KeepOff({ now, one, i }: OneProps) {
  const worked = store.worked.value?.surroundings.find(({ id }) => id === one.id);
  const at = path('surroundings', i);
  const ownTable = one.because !== undefined && now.job.keepOff?.[one.because] !== undefined;
  return (
    <>
      <div class="setup-wide">
        <TextInput
          label="Id"
          value={one.id}
          optional={false}
          longest={64}
          onCommit={(id) => (id === undefined ? undefined : rename(now, one.id, id))}
        />
      </div>
      <Pick
        label="It is"
        value={one.because ?? UNSAID}
        options={REASONS}
        onCommit={(reason) =>
          set(`say what ${one.id} is`, `${at}.because`, reason === UNSAID ? undefined : reason)
        }
      />
      {worked && (
        <FigureInput
          label="Keep off"
          value={one.keepOff}
          figure={worked.keepOff}
          elsewhere={ownTable ? 'job' : 'catalogue'}
          units={now.units}
          onCommit={(keepOff) => set(`change how far to keep off ${one.id}`, `${at}.keepOff`, keepOff)}
        />
      )}
    </>
  );
}
