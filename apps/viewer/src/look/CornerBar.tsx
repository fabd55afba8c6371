import type { AxisLock } from '../scene/index.ts';
import { store } from '../store/index.ts';
import { local } from './local.ts';
import { Seg } from './Seg.tsx';

type Way = NonNullable<AxisLock> | 'free';

const WAYS: readonly (readonly [Way, string])[] = [
  ['free', 'Free'],
  ['x', 'X'],
  ['y', 'Y'],
  ['z', 'Z'],
  ['leg', 'Leg'],
];

/** Which way a corner may be dragged; here while one is selected. */
export function CornerBar() {
  const [selection, line] = [store.selection.value, store.line.value];
  if (selection?.kind !== 'point' || !line) return null;
  const last = line.line.corners.length - 1;
  const name =
    selection.index === 0 ? 'End A' : selection.index === last ? 'End Z' : `Point ${selection.index}`;
  return (
    <div class="look-corner card">
      <strong>{name}</strong>
      <Seg
        label={`${name} is dragged along`}
        value={local.axisLock.value ?? 'free'}
        choices={WAYS}
        onChoose={(way) => {
          local.axisLock.value = way === 'free' ? null : way;
        }}
      />
    </div>
  );
}
