/** What the checks say of the chosen line, worst first. */
import { useRef } from 'preact/hooks';
import type { WorkedLine } from 'runback';
import { store, verdictWords } from '../../store/index.ts';
import { Figures } from '../figures/Figures.tsx';
import { VerdictChip } from '../parts/verdict.tsx';
import { FindingView } from './FindingView.tsx';
import { type FindingRow, grouped } from './rows.ts';
import './findings.css';

export function Findings() {
  const head = useRef<HTMLParagraphElement>(null);
  const worked = store.line.value;
  if (!worked) return <p class="muted words-empty">Reading the job…</p>;
  const { fail, note, pass } = grouped(worked);
  // The button that made a cure goes with its finding: the reader is taken to the new verdict.
  const shared = { worked, onCured: () => head.current?.focus() };
  return (
    <section class="words-findings" aria-label={`Checks of ${worked.line.name}`}>
      <p class="words-findings-head" ref={head} tabIndex={-1}>
        <VerdictChip verdict={worked.verdict} />
        <span>
          <strong>{worked.line.name}</strong> {verdictWords(worked)}
        </span>
      </p>
      {worked.slope && worked.slope.proof.text !== '' && <p>{worked.slope.proof.text}</p>}
      <Group {...shared} rows={fail} heading="What fails" />
      <Group {...shared} rows={note} heading={many(note.length, 'note', 'notes')} />
      {pass.length > 0 && (
        <details class="words-findings-passed" open={holdsChosen(pass) || undefined}>
          <summary>
            <span class="verdict-pass" aria-hidden="true">
              ✓
            </span>
            {many(pass.length, 'check passes', 'checks pass')}
          </summary>
          <List {...shared} rows={pass} />
        </details>
      )}
      <Figures worked={worked} />
    </section>
  );
}

const many = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;

function holdsChosen(rows: readonly FindingRow[]): boolean {
  const selection = store.selection.value;
  return selection?.kind === 'finding' && rows.some(({ index }) => index === selection.index);
}

interface ListProps {
  readonly worked: WorkedLine;
  readonly rows: readonly FindingRow[];
  readonly onCured: () => void;
}

function Group({ heading, ...list }: ListProps & { readonly heading: string }) {
  if (list.rows.length === 0) return null;
  return (
    <>
      <h3>{heading}</h3>
      <List {...list} />
    </>
  );
}

function List({ worked, rows, onCured }: ListProps) {
  const selection = store.selection.value;
  return (
    <ul class="words-findings-list">
      {rows.map((row) => (
        <FindingView
          key={row.index}
          row={row}
          worked={worked}
          onCured={onCured}
          chosen={selection?.kind === 'finding' && selection.index === row.index}
        />
      ))}
    </ul>
  );
}
