/** Which way a port points: in plain words where it is square to the machine, else in numbers. */
import { useState } from 'preact/hooks';
import { type Committed, Pick } from '../../parts/index.ts';
import { ReadInput } from '../bits/inputs.tsx';
import { set } from '../bits/now.ts';
import { readDirection, WAYS, wayOf, wayVector } from '../edits/ends.ts';
import type { EndPart } from './EndSection.tsx';

const NONE = '';
const OTHER = 'other';

export function DirectionField({ part: { now, written, at, name } }: { readonly part: EndPart }) {
  const { direction } = written;
  const { axes } = now.line;
  const [typing, setTyping] = useState(false);
  const way = wayOf(direction, axes);
  const put = (value: readonly number[] | undefined): Committed =>
    set(`change the direction of ${name}`, `${at}.direction`, value);
  const choose = (choice: string): Committed => {
    setTyping(choice === OTHER);
    if (choice === OTHER) return;
    return put(choice === NONE ? undefined : (wayVector(choice, axes) ?? undefined));
  };
  const other = typing || (direction !== undefined && way === null);
  return (
    <>
      <Pick
        label="Out of the port"
        value={other ? OTHER : (way ?? NONE)}
        options={[
          { value: NONE, label: 'not judged' },
          ...WAYS.map(([value, label]) => ({ value, label })),
          { value: OTHER, label: 'another way' },
        ]}
        onCommit={choose}
      />
      {other && (
        <ReadInput
          label="Its way: x y z"
          shown={direction?.join(' ')}
          placeholder="0 0 1"
          read={readDirection}
          onCommit={(value) => put(value)}
        />
      )}
    </>
  );
}
