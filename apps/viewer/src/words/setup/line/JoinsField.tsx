/** What an end is seated in: some of the surroundings. */
import { Pick } from '../../parts/index.ts';
import { Act } from '../bits/Act.tsx';
import { change } from '../bits/now.ts';
import { toggleJoin } from '../edits/surroundings.ts';
import type { EndPart } from './EndSection.tsx';

const ADD = '';

export function JoinsField({ part: { now, written, at, name } }: { readonly part: EndPart }) {
  const joins = written.joins ?? [];
  const others = (now.job.surroundings ?? []).filter(({ id }) => !joins.includes(id));
  const toggle = (id: string) => change(`change what ${name} is seated in`, toggleJoin(at, joins, id));
  return (
    <div class="setup-wide setup-joins">
      {joins.length > 0 && (
        <ul class="setup-chips" aria-label="Seated in">
          {joins.map((id) => (
            <li key={id} class="chip">
              {id}
              <Act look="btn-quiet" label="×" name={`Not seated in ${id}`} onAct={() => toggle(id)} />
            </li>
          ))}
        </ul>
      )}
      {others.length > 0 && (
        <Pick
          key={joins.join(' ')}
          label={joins.length === 0 ? 'Seated in' : 'Also seated in'}
          value={ADD}
          options={[
            { value: ADD, label: joins.length === 0 ? 'none of the surroundings' : '…' },
            ...others.map(({ id }) => ({ value: id, label: id })),
          ]}
          onCommit={(id) => (id === ADD ? undefined : toggle(id))}
        />
      )}
    </div>
  );
}
