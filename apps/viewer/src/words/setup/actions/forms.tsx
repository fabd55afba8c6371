/** The short forms: duplicate, rename, remove. */
import { useState } from 'preact/hooks';
import type { JobEdit } from 'runback';
import { store } from '../../../store/index.ts';
import { TextInput } from '../../parts/index.ts';
import { Act } from '../bits/Act.tsx';
import { change } from '../bits/now.ts';
import { duplicate, handsOf, lineIdFrom, removeLine, renameLineId, runsOf } from '../edits/lines.ts';
import { nameOf } from '../edits/written.ts';
import { Cancel, make } from './finish.tsx';
import type { FormProps } from './LineActions.tsx';

export function DuplicateForm({ now: { job, line }, done }: FormProps) {
  return (
    <>
      <p>The same line once more, in the same place, as “{line.name}, copy”.</p>
      <div class="setup-row">
        <Act
          look="btn-main"
          label="Duplicate it"
          onAct={() => make(`duplicate ${line.name}`, duplicate(job, line.id), done)}
        />
        <Cancel done={done} />
      </div>
    </>
  );
}

export function RenameForm({ now: { job, line, i, at }, done }: FormProps) {
  const was = job.lines[i]?.name;
  const [name, setName] = useState(was ?? line.name);
  const [id, setId] = useState(line.id);
  const edits: readonly JobEdit[] = [
    ...(name === line.name ? [] : [{ path: `${at}.name`, value: name }]),
    ...(id === line.id ? [] : renameLineId(job, line.id, id)),
  ];
  return (
    <>
      <TextInput label="Name" value={name} optional={false} onCommit={(text) => setName(text ?? name)} />
      <TextInput
        label="Id in the file"
        value={id}
        optional={false}
        longest={64}
        hint={`Letters, digits, - _ and . ; from this name: ${lineIdFrom(job, name)}`}
        onCommit={(text) => setId(text ?? id)}
      />
      <div class="setup-row">
        <Act
          look="btn-main"
          label="Rename"
          disabled={edits.length === 0}
          onAct={() => make(`rename ${line.name}`, { id, edits }, done)}
        />
        <Cancel done={done} />
      </div>
    </>
  );
}

export function RemoveForm({ now: { job, line, i }, done }: FormProps) {
  const hands = handsOf(job, line.id);
  const gone = [line.id, ...hands];
  const left = job.lines.filter(({ id }) => !gone.includes(id));
  const next = left[Math.min(i, left.length - 1)];
  const names = job.lines.filter(({ id }) => hands.includes(id)).map(nameOf);
  const runs = runsOf(job, gone);
  if (!next)
    return (
      <>
        <p>A job has at least one line, and this is the last one: make another first.</p>
        <Cancel done={done} label="Keep it" />
      </>
    );
  const remove = async () => {
    const issues = await change(`remove ${line.name}`, ...removeLine(job, line.id));
    if (issues.length > 0) return issues;
    store.chooseLine(next.id);
    done();
    return issues;
  };
  return (
    <>
      <p>
        Remove {line.name}?{names.length > 0 && ` ${names.join(' and ')} is made from it and goes too.`}
        {runs.length > 0 && ` It is taken out of the run ${runs.join(' and ')}.`} Undo brings it back.
      </p>
      <div class="setup-row">
        <Cancel done={done} label="Keep it" look="btn" />
        <Act look="btn-main" label="Remove it" onAct={remove} />
      </div>
    </>
  );
}
