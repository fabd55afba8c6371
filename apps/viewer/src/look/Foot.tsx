import { formatLength } from 'runback';
import { store } from '../store/index.ts';
import { local } from './local.ts';
import { PourTest } from './PourTest.tsx';
import { misfitWords } from './words.ts';

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

/** Under the picture; an open panel has the pour test in itself. What is read at the bead stands over the run profile, which is always beside the scene. */
export function Foot() {
  const grid = local.grid.value;
  return (
    <div class="look-foot">
      {!local.panel.value && <PourTest />}
      <div class="look-said" role="status">
        <MisfitWords />
      </div>
      {grid > 0 && <span class="look-grid mono">Grid {formatLength(grid, store.style.value)}</span>}
    </div>
  );
}
