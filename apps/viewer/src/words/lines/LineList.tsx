/** All lines of the job with their verdicts; one is chosen. */
import type { TargetedKeyboardEvent } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { store } from '../../store/index.ts';
import { VerdictChip, verdictMark } from '../parts/verdict.tsx';
import { jobWords, type LineRow, lineAfter, lineRows, type RunRow, runRows } from './rows.ts';
import './lines.css';

export interface LineListProps {
  /** A strip beside each other, for where there is little height. */
  readonly compact?: boolean;
}

export function LineList({ compact = false }: LineListProps) {
  const list = useRef<HTMLDivElement>(null);
  const worked = store.worked.value;
  const chosen = store.lineId.value;
  useEffect(() => {
    list.current
      ?.querySelector('[aria-selected="true"]')
      ?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [chosen, worked === null]);
  if (!worked) return null;
  const rows = lineRows(worked, store.style.value);
  const move = (event: TargetedKeyboardEvent<HTMLElement>): void => {
    const to = lineAfter(
      rows.map(({ id }) => id),
      chosen ?? '',
      event.key,
    );
    if (to === null) return;
    event.preventDefault();
    store.chooseLine(to);
    list.current
      ?.querySelectorAll<HTMLElement>('[role="option"]')
      [rows.findIndex(({ id }) => id === to)]?.focus();
  };
  return (
    <div class={compact ? 'words-lines words-lines-compact' : 'words-lines'}>
      {!compact && (
        <p class="words-lines-job">
          <VerdictChip verdict={worked.verdict} words={`job: ${worked.verdict}`} />
          <span>{jobWords(worked)}</span>
        </p>
      )}
      <div
        ref={list}
        class="words-lines-list"
        role="listbox"
        aria-label={`Lines of the job. ${jobWords(worked)}`}
        aria-orientation={compact ? 'horizontal' : 'vertical'}
        onKeyDown={move}
      >
        {rows.map((row) => (
          <Line key={row.id} row={row} chosen={row.id === chosen} compact={compact} />
        ))}
      </div>
      <Runs rows={runRows(worked)} />
    </div>
  );
}

/** Runs that lines are joined to: each leads to its first line. */
function Runs({ rows }: { readonly rows: readonly RunRow[] }) {
  if (rows.length === 0) return null;
  return (
    <ul class="words-runs" aria-label="Runs of lines joined end to end">
      {rows.map(({ id, name, verdict, lines, first }) => (
        <li key={id}>
          <button type="button" class="btn-quiet words-run" onClick={() => store.chooseLine(first)}>
            <VerdictChip verdict={verdict} />
            <span>
              Run {name}: {lines}
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}

interface LineProps {
  readonly row: LineRow;
  readonly chosen: boolean;
  readonly compact: boolean;
}

function Line({ row, chosen, compact }: LineProps) {
  const { id, name, verdict, tube, bends, cut, quantity, oppositeHand } = row;
  const parts = [tube, bends, cut, quantity].filter((part) => part !== null);
  // A figure and its unit stay on one line.
  const about = parts.map((part) => part.replaceAll(' ', '\u00a0')).join(' · ');
  const hand = oppositeHand && <span class="words-lines-hand">opposite hand</span>;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the list takes the keys for all its options
    <div
      role="option"
      class="words-line"
      aria-selected={chosen}
      tabIndex={chosen ? 0 : -1}
      onClick={() => store.chooseLine(id)}
    >
      <span class={`words-line-verdict verdict-${verdict}`}>
        <span aria-hidden="true">{verdictMark(verdict)}</span> {verdict}
      </span>
      <span class="words-line-name">
        {name} {hand}
      </span>
      <span class={compact ? 'visually-hidden' : 'words-line-about mono'}>{about}</span>
    </div>
  );
}
