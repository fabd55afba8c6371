import type { ProfileFall } from 'runback';
import { shownPockets } from '../pockets/index.ts';
import { isShort } from '../profile/readings.ts';
import { type ColourMode, store } from '../store/index.ts';
import { Seg } from './Seg.tsx';

const MODES: readonly (readonly [ColourMode, string])[] = [
  ['slope', 'Slope'],
  ['clearance', 'Clearance'],
  ['plain', 'Plain'],
];

interface Key {
  readonly look: 'pass' | 'note' | 'fail' | 'room' | 'way' | 'drop' | 'bubble';
  readonly words: string;
}

/** What is to be seen just now, and no more. */
function keysNow(mode: ColourMode): readonly Key[] | string {
  const line = store.line.value;
  if (!line?.centreline || mode === 'plain') return [];
  if (mode === 'clearance') return clearanceKeys();
  if (line.line.drain === null) return 'Slope is not judged: the job asks for no drain.';
  return slopeKeys(store.falls.value ?? []);
}

function slopeKeys(falls: readonly ProfileFall[]): readonly Key[] {
  const pockets = store.pockets.value;
  const has = (verdict: ProfileFall['verdict']): boolean => falls.some((fall) => fall.verdict === verdict);
  const keys: Key[] = [];
  if (has('fail')) keys.push({ look: 'fail', words: 'too little fall' });
  if (has('note')) keys.push({ look: 'note', words: 'little fall' });
  if (has('pass')) keys.push({ look: 'pass', words: 'falls enough' });
  if (falls.length > 0) keys.push({ look: 'way', words: 'liquid runs' });
  if (shownPockets(pockets?.liquid ?? null).length > 0) keys.push({ look: 'drop', words: 'liquid stays' });
  if (shownPockets(pockets?.air ?? null).length > 0) keys.push({ look: 'bubble', words: 'air stays' });
  return keys;
}

function clearanceKeys(): readonly Key[] | string {
  const places = store.profile.value?.places ?? [];
  if (places.every(({ nearest }) => nearest === null))
    return 'Clearance is not judged: nothing near is given.';
  const near = places.some(({ nearest }) => nearest !== null && isShort(nearest));
  const room: Key = { look: 'room', words: 'just enough → room to spare' };
  return near ? [{ look: 'fail', words: 'too near' }, room] : [room];
}

function Legend({ mode }: { readonly mode: ColourMode }) {
  const keys = keysNow(mode);
  if (keys.length === 0) return null;
  if (typeof keys === 'string') return <p class="look-legend">{keys}</p>;
  return (
    <ul class="look-legend" aria-label="Legend">
      {keys.map(({ look, words }) => (
        <li key={look}>
          <span class={`look-key look-key-${look}`} aria-hidden="true" />
          {words}
        </li>
      ))}
    </ul>
  );
}

export function ColourSwitch() {
  const { colour } = store.looks.value;
  return (
    <div class="look-colour">
      <Seg
        label="Colours show"
        value={colour}
        choices={MODES}
        onChoose={(mode) => store.setLooks({ colour: mode })}
      />
      <Legend mode={colour} />
    </div>
  );
}
