/** Between two points: what is left straight of their leg, and a point more in its middle. */
import { formatLength } from 'runback';
import { store } from '../../store/index.ts';
import type { LegRow, PointRow, StraightLeft } from './rows.ts';
import { pointWords } from './words.ts';

export interface LegStripProps {
  readonly row: PointRow;
  readonly leg: LegRow;
  readonly chosen: boolean;
  readonly onSplit: () => void;
}

export function LegStrip({ row, leg, chosen, onSplit }: LegStripProps) {
  const after = pointWords(row);
  return (
    <div class={chosen ? 'words-points-leg selected' : 'words-points-leg'}>
      <button
        type="button"
        class="btn-quiet words-points-straight"
        aria-pressed={chosen}
        aria-label={`Select the leg after ${after}`}
        onClick={() => store.select({ kind: 'leg', index: row.index })}
      >
        <LegWords leg={leg} />
      </button>
      <button type="button" class="btn-quiet" aria-label={`Add a point after ${after}`} onClick={onSplit}>
        <span aria-hidden="true">+ point</span>
      </button>
    </div>
  );
}

function LegWords({ leg: { length, straight } }: { readonly leg: LegRow }) {
  const say = (mm: number): string => formatLength(mm, store.style.value);
  if (straight.kind === 'short')
    return (
      <span class="verdict-fail">
        <span aria-hidden="true">✕</span> leg {say(length)}, needs {say(straight.needed)}
      </span>
    );
  return (
    <span>
      leg {formatLength(length, store.style.value, { bare: true })} · {straightWords(straight, say)}
    </span>
  );
}

function straightWords(straight: StraightLeft, say: (mm: number) => string): string {
  switch (straight.kind) {
    case 'straight':
      return `straight ${say(straight.left)}`;
    case 'shared':
      return `straight ${say(straight.left)} from ${straight.from} to ${straight.to}`;
    case 'bent':
      return 'all of it in one bend';
    default:
      return 'straight not known';
  }
}
