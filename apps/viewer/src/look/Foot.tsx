import { formatLength } from 'runback';
import { readingAt } from '../profile/readings.ts';
import { store } from '../store/index.ts';
import { local } from './local.ts';
import { misfitWords, readOuts } from './words.ts';

const MARK = { pass: '✓', note: '!', fail: '✕' } as const;

/** What is read at the bead. */
function BeadWords() {
  const [line, profile, falls, bead] = [
    store.line.value,
    store.profile.value,
    store.falls.value,
    store.bead.value,
  ];
  if (!line || !profile || !falls || bead === null) return null;
  const parts = readOuts(readingAt({ profile, falls }, bead), line.line, store.style.value);
  return (
    <ul class="look-bead mono">
      {parts.map(({ words, verdict }) => (
        <li key={words} class={verdict ? `verdict-${verdict}` : ''}>
          {verdict && <span aria-hidden="true">{MARK[verdict]} </span>}
          {words}
        </li>
      ))}
    </ul>
  );
}

/** Why there is no tube: what does not fit, by how much, and what would cure it. */
function MisfitWords() {
  const line = store.line.value;
  if (!line || line.centreline !== null) return null;
  return (
    <ul class="look-misfit verdict-fail">
      {misfitWords(line).map((words) => (
        <li key={words}>✕ {words}</li>
      ))}
    </ul>
  );
}

export function Foot() {
  const grid = local.grid.value;
  return (
    <div class="look-foot">
      <div class="look-said" role="status">
        <MisfitWords />
        <BeadWords />
      </div>
      {grid > 0 && <span class="look-grid mono">Grid {formatLength(grid, store.style.value)}</span>}
    </div>
  );
}
