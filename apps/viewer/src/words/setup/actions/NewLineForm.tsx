/** A new line: a straight between two points, to be bent from there. */

import { useState } from 'preact/hooks';
import { catalogue } from 'runback';
import { Pick, TextInput, type WrittenLength } from '../../parts/index.ts';
import { Act } from '../bits/Act.tsx';
import { PointInput } from '../bits/inputs.tsx';
import type { LineNow } from '../bits/now.ts';
import { serviceChoices } from '../edits/ends.ts';
import { firstPoints, lineIdFrom, type NewLine, newLine } from '../edits/lines.ts';
import { tubeChoices } from '../edits/tubes.ts';
import { nameOf, type Written, type WrittenPoint } from '../edits/written.ts';
import { Cancel, make } from './finish.tsx';
import type { FormProps } from './LineActions.tsx';

const NONE = '';

function begun({ job, line }: LineNow): NewLine {
  const { forward, left } = line.axes;
  const [from, to] = firstPoints(job, { end: line.corners.at(-1)?.at ?? null, forward, left });
  return {
    name: '',
    tube: line.tube.id,
    bender: line.bender?.id ?? null,
    service: 'general',
    from,
    to,
  };
}

export function NewLineForm({ now, done }: FormProps) {
  const { job, units } = now;
  const [draft, setDraft] = useState<NewLine>(() => begun(now));
  const put = (change: Partial<NewLine>): void => setDraft((was) => ({ ...was, ...change }));
  const ends = [
    ['from', 'End A'],
    ['to', 'End Z'],
  ] as const;
  return (
    <div class="setup-grid">
      <div class="setup-wide">
        <TextInput
          label="Name"
          value={draft.name}
          hint={
            draft.name === '' ? 'such as “Oil feed, left”' : `In the file: ${lineIdFrom(job, draft.name)}`
          }
          onCommit={(name) => put({ name: name ?? '' })}
        />
      </div>
      <Choices job={job} draft={draft} put={put} />
      {ends.map(([key, name]) => (
        <PointInput
          key={key}
          name={name}
          value={draft[key]}
          units={units}
          onCommit={(axis, value) => put({ [key]: replaced(draft[key], axis, value) })}
        />
      ))}
      <div class="setup-wide setup-row">
        <Act
          look="btn-main"
          label="Add this line"
          disabled={draft.name === ''}
          onAct={() => make(`add line ${draft.name}`, newLine(job, draft), done)}
        />
        <Cancel done={done} />
      </div>
    </div>
  );
}

const replaced = (point: WrittenPoint, axis: 0 | 1 | 2, value: WrittenLength): WrittenPoint => {
  const [x, y, z] = point.with(axis, value);
  return [x!, y!, z!];
};

interface ChoicesProps {
  readonly job: Written;
  readonly draft: NewLine;
  readonly put: (change: Partial<NewLine>) => void;
}

function Choices({ job, draft, put }: ChoicesProps) {
  const benders = Object.entries(job.benders ?? {}).map(([id, bender]) => ({
    value: id,
    label: nameOf({ ...bender, id }),
  }));
  return (
    <div class="setup-wide setup-stack">
      <Pick
        label="Tube"
        value={draft.tube}
        options={tubeChoices(job, catalogue, draft.tube)}
        onCommit={(tube) => put({ tube })}
      />
      <Pick
        label="Bender"
        value={draft.bender ?? NONE}
        options={[...benders, { value: NONE, label: 'none yet' }]}
        onCommit={(id) => put({ bender: id === NONE ? null : id })}
      />
      <Pick
        label="Service: what it is for"
        value={draft.service}
        options={serviceChoices(job, catalogue)}
        onCommit={(service) => put({ service })}
      />
    </div>
  );
}
