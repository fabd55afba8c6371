/** A verdict: its mark, its word and its colour, never the colour alone. */
import type { Verdict } from 'runback';
import './parts.css';

const MARKS: Readonly<Record<Verdict, string>> = { pass: '✓', note: '!', fail: '✕' };

export const verdictMark = (verdict: Verdict): string => MARKS[verdict];

export interface VerdictProps {
  readonly verdict: Verdict;
  /** Default: the verdict's own word. */
  readonly words?: string;
}

export function VerdictChip({ verdict, words = verdict }: VerdictProps) {
  return (
    <span class={`chip verdict-${verdict} words-verdict`}>
      <span class="words-mark" aria-hidden="true">
        {MARKS[verdict]}
      </span>
      {words}
    </span>
  );
}
