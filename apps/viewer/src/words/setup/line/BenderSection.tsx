/** The bender of the line, its dies, and how you stand at it. */
import { useState } from 'preact/hooks';
import { type Committed, LengthInput, Pick, TextInput, type WrittenLength } from '../../parts/index.ts';
import { Act } from '../bits/Act.tsx';
import { change, type MeasuredNow, set } from '../bits/now.ts';
import { Section } from '../bits/Section.tsx';
import { diesOf, newBender, newDie } from '../edits/benders.ts';
import { alsoUsing } from '../edits/tubes.ts';
import { entry, nameOf, path, writtenOf } from '../edits/written.ts';
import { BenchFields } from './BenchFields.tsx';
import { DieFold } from './DieFold.tsx';

const NONE = '';

export function BenderSection({ now }: { readonly now: MeasuredNow }) {
  const { job, line, own, at } = now;
  const benders = Object.entries(job.benders ?? {}).map(([id, bender]) => ({
    value: id,
    label: nameOf({ ...bender, id }),
  }));
  const none = { value: NONE, label: 'none: each corner has its own radius' };
  return (
    <>
      <Pick
        label="Bender"
        value={own.bender ?? NONE}
        options={[...benders, none]}
        onCommit={(id) =>
          set(`change the bender of ${line.name}`, `${at}.bender`, id === NONE ? undefined : id)
        }
      />
      {own.bender !== undefined && <OneBender now={now} id={own.bender} />}
      <Section inner id="bender-new" title="Add a bender">
        <AddBender now={now} />
      </Section>
    </>
  );
}

function OneBender({ now, id }: { readonly now: MeasuredNow; readonly id: string }) {
  const { job, own } = now;
  const bender = entry(job.benders, id);
  const also = alsoUsing(job, 'bender', { id, but: own.id });
  return (
    <>
      <TextInput
        label="Name of this bender"
        value={bender?.name}
        placeholder={id}
        onCommit={(name) => set(`name bender ${id}`, path('benders', id, 'name'), name)}
      />
      {also.length > 0 && <p class="field-hint">Also bent on it, and changed with it: {also.join(', ')}.</p>}
      {diesOf(job, id).map(([index]) => (
        <DieFold key={index} now={now} bender={id} index={index} />
      ))}
      <Section inner id="die-new" title="Add a die">
        <AddDie now={now} bender={id} />
      </Section>
      <BenchFields bender={id} bench={bender?.bench} name={nameOf({ ...bender, id })} />
    </>
  );
}

interface Draft {
  readonly od: WrittenLength | undefined;
  readonly radius: WrittenLength | undefined;
}

/** Sizes of a die there is to be: for the tube of this line. */
function useDie({ line, units }: MeasuredNow) {
  const [die, setDie] = useState<Draft>({ od: writtenOf(line.tube.od, units), radius: undefined });
  const fields = (
    <>
      <LengthInput
        label="For tube diameter"
        value={die.od}
        units={units}
        sign="more than 0"
        onCommit={(od) => setDie((was) => ({ ...was, od }))}
      />
      <LengthInput
        label="Centreline radius"
        value={die.radius}
        units={units}
        sign="more than 0"
        onCommit={(radius) => setDie((was) => ({ ...was, radius }))}
      />
    </>
  );
  const { od, radius } = die;
  return { fields, die: od === undefined || radius === undefined ? null : { od, radius } };
}

function AddDie({ now, bender }: { readonly now: MeasuredNow; readonly bender: string }) {
  const { fields, die } = useDie(now);
  return (
    <div class="setup-grid">
      {fields}
      <div class="setup-wide setup-row">
        <Act
          label="Add this die"
          disabled={die === null}
          onAct={() => (die ? change(`add a die to ${bender}`, ...newDie(now.job, bender, die)) : undefined)}
        />
      </div>
    </div>
  );
}

function AddBender({ now }: { readonly now: MeasuredNow }) {
  const { job, line, at } = now;
  const [name, setName] = useState<string | undefined>(undefined);
  const { fields, die } = useDie(now);
  const add = (use: boolean): Committed => {
    if (!die || name === undefined) return;
    const made = newBender(job, name, die);
    const used = use ? [{ path: `${at}.bender`, value: made.id }] : [];
    return change(`add bender ${name}`, ...made.edits, ...used);
  };
  const ready = die !== null && name !== undefined;
  return (
    <div class="setup-grid">
      <div class="setup-wide">
        <TextInput label="Name" value={name} onCommit={setName} />
      </div>
      {fields}
      <div class="setup-wide setup-row">
        <Act label={`Bend ${line.name} on it`} disabled={!ready} onAct={() => add(true)} />
        <Act look="btn-quiet" label="Only put it into the job" disabled={!ready} onAct={() => add(false)} />
      </div>
    </div>
  );
}
