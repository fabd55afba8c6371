/** The pour test of the chosen line. */
import { formatLength } from 'runback';
import { pourWords, stayWords } from '../pockets/index.ts';
import { store } from '../store/index.ts';

/** Lets a drop go at the bead, as often as wanted, and takes it away; over it what became of the drop. */
export function PourTest() {
  const [line, drop, style] = [store.line.value, store.pour.value, store.style.value];
  if (!line?.centreline) return null;
  const at = store.bead.value;
  const length = (mm: number): string => formatLength(mm, style);
  return (
    <div class="look-pour">
      <div class="look-poured" role="status">
        {drop && !drop.moving && (
          <span>
            Let go at {length(drop.from)}: {pourWords(drop, line, style)}.
          </span>
        )}
      </div>
      <button type="button" class="btn" onClick={store.letGo}>
        Let a drop go{at !== null && <span class="mono"> at {length(at)}</span>}
      </button>
      {drop && (
        <button type="button" class="btn" onClick={store.takeDrop}>
          Take it away
        </button>
      )}
    </div>
  );
}

/** What stays as the machine is tipped now, in words. */
export function Staying() {
  const [line, pockets] = [store.line.value, store.pockets.value];
  if (!line || !pockets) return null;
  return (
    <div class="look-staying" role="status">
      {stayWords(pockets, line, store.style.value).map((words) => (
        <p key={words}>{words}</p>
      ))}
    </div>
  );
}
