/** One finding: what, where, why, and the cure with a button that makes it. */
import { useEffect, useRef } from 'preact/hooks';
import type { Cure, WorkedLine } from 'runback';
import { store, verdictWords } from '../../store/index.ts';
import { pointOf } from '../parts/chosen.ts';
import { VerdictChip } from '../parts/verdict.tsx';
import { makeCure } from './cure.ts';
import { checkName } from './names.ts';
import { type FindingRow, measured, ofRun, where } from './rows.ts';

export interface FindingProps {
  readonly row: FindingRow;
  readonly worked: WorkedLine;
  readonly chosen: boolean;
  readonly onCured: () => void;
}

export function FindingView({ row, worked, chosen, onCured }: FindingProps) {
  const { finding, index } = row;
  const style = store.style.value;
  const box = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (chosen) box.current?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);
  const figures = measured(finding, style);
  const named = ofRun(finding, store.worked.value?.runs ?? []);
  const place = where(named.finding, worked, style);
  return (
    <li ref={box} class={`words-finding words-finding-${finding.verdict}${chosen ? ' selected' : ''}`}>
      <p class="words-finding-head">
        <VerdictChip verdict={finding.verdict} />
        <strong>{checkName(finding.check)}</strong>
      </p>
      <p>{finding.message}</p>
      {figures && <p class="words-finding-figures mono">{figures}</p>}
      <div class="words-finding-more">
        {place !== null && !named.shows && <p class="words-finding-of muted">{place}</p>}
        {(named.shows || pointOf(worked, finding) !== null) && (
          <button
            type="button"
            class="btn-quiet words-finding-where"
            aria-pressed={chosen}
            onClick={() => {
              store.select({ kind: 'finding', index });
              if (finding.at !== null) store.setBead(finding.at);
            }}
          >
            {place !== null && named.shows ? `Show it: ${place}` : 'Show it'}
          </button>
        )}
        <details>
          <summary>why</summary>
          <p>{finding.basis}</p>
        </details>
      </div>
      {finding.verdict !== 'pass' && (
        <CureOf worked={worked} cure={finding.cure} fails={finding.verdict === 'fail'} onCured={onCured} />
      )}
    </li>
  );
}

interface CureProps {
  readonly worked: WorkedLine;
  readonly cure: Cure | null;
  readonly fails: boolean;
  readonly onCured: () => void;
}

function CureOf({ worked, cure, fails, onCured }: CureProps) {
  if (cure)
    return (
      <button
        type="button"
        class="btn words-finding-cure"
        onClick={() =>
          void makeCure(store, worked, { cure, verdict: verdictWords }).then((made) => made && onCured())
        }
      >
        <span>
          <strong>Do it:</strong> {cure.text}
        </span>
      </button>
    );
  if (!fails) return null;
  return (
    <p class="muted words-finding-no-cure">
      {store.working.value ? 'looking for a cure…' : 'No single change was found that cures it.'}
    </p>
  );
}
