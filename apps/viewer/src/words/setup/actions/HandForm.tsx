/** The opposite hand of the chosen line. */
import { useState } from 'preact/hooks';
import { LengthInput, Pick, TextInput, type WrittenLength } from '../../parts/index.ts';
import { Act } from '../bits/Act.tsx';
import { type Across, acrossOf, lineIdFrom, oppositeHand } from '../edits/lines.ts';
import { acrossChoices } from '../line/across.ts';
import { Cancel, make } from './finish.tsx';
import type { FormProps } from './LineActions.tsx';

export function HandForm({ now, done }: FormProps) {
  const { job, line, units, mirror } = now;
  const [name, setName] = useState(`${line.name}, opposite hand`);
  const [across, setAcross] = useState<Across>(acrossOf(line.axes.left));
  const [offset, setOffset] = useState<WrittenLength | undefined>(undefined);
  if (mirror)
    return (
      <>
        <p>This is itself the opposite hand of another line: mirrored again it would be that line.</p>
        <Cancel done={done} />
      </>
    );
  const made = oppositeHand(job, { of: line.id, name, across, offset });
  return (
    <div class="setup-grid">
      <div class="setup-wide">
        <TextInput
          label="Name"
          value={name}
          optional={false}
          hint={`In the file: ${lineIdFrom(job, name)}`}
          onCommit={(text) => setName(text ?? name)}
        />
      </div>
      <Pick
        label="Mirrored across"
        value={across}
        options={acrossChoices(line.axes)}
        onCommit={(axis) => setAcross(axis as Across)}
      />
      <LengthInput
        label={`where ${across} is`}
        value={offset}
        units={units}
        optional
        placeholder="0"
        onCommit={setOffset}
      />
      <div class="setup-wide setup-row">
        <Act
          look="btn-main"
          label="Make the opposite hand"
          onAct={() => make(`opposite hand of ${line.name}`, made, done)}
        />
        <Cancel done={done} />
      </div>
    </div>
  );
}
