/** How far the line keeps off itself, other lines and single surroundings. */
import { LengthInput, Pick } from '../../parts/index.ts';
import { Act } from '../bits/Act.tsx';
import { FigureInput } from '../bits/inputs.tsx';
import { change, type LineNow, set } from '../bits/now.ts';
import { path, writtenOf } from '../edits/written.ts';

const KINDS = [
  ['self', 'From itself'],
  ['lines', 'From other lines'],
] as const;

export function ClearanceSection({ now }: { readonly now: LineNow }) {
  const { job, line, units, at, i } = now;
  const given = job.lines[i]?.clearance;
  return (
    <>
      <div class="setup-grid">
        {KINDS.map(([key, label]) => (
          <FigureInput
            key={key}
            label={label}
            value={given?.[key]}
            figure={line.clearance[key]}
            elsewhere={job.clearance?.[key] === undefined ? 'catalogue' : 'job'}
            units={units}
            onCommit={(value) => set(`change the clearance of ${line.name}`, `${at}.clearance.${key}`, value)}
          />
        ))}
      </div>
      <Overrides now={now} />
    </>
  );
}

const ADD = '';

function Overrides({ now }: { readonly now: LineNow }) {
  const { job, line, units, at, i } = now;
  const given = job.lines[i]?.clearance?.to ?? {};
  const others = line.surroundings.filter(({ id }) => !Object.hasOwn(given, id));
  const where = (id: string): string => `${at}.${path('clearance', 'to', id)}`;
  const label = `change how far ${line.name} keeps off`;
  const add = (id: string) => {
    const keepOff = line.clearance.to[id] ?? line.surroundings.find((one) => one.id === id)?.keepOff;
    return keepOff ? set(`${label} ${id}`, where(id), writtenOf(keepOff.value, units)) : undefined;
  };
  const remove = (id: string) => {
    const last = Object.keys(given).length === 1;
    return change(`${label} ${id}`, { path: last ? `${at}.clearance.to` : where(id), value: undefined });
  };
  return (
    <>
      {Object.entries(given).map(([id, value]) => (
        <div key={id} class="setup-rowed">
          <LengthInput
            label={`From ${id}`}
            value={value}
            units={units}
            sign="not negative"
            onCommit={(typed) => set(`${label} ${id}`, where(id), typed)}
          />
          <Act
            look="btn-quiet"
            label="×"
            name={`From ${id}: as it keeps off itself`}
            onAct={() => remove(id)}
          />
        </div>
      ))}
      {others.length > 0 && (
        <Pick
          key={Object.keys(given).join(' ')}
          label="Another distance of this line from"
          value={ADD}
          options={[{ value: ADD, label: '…' }, ...others.map(({ id }) => ({ value: id, label: id }))]}
          onCommit={(id) => (id === ADD ? undefined : add(id))}
        />
      )}
    </>
  );
}
