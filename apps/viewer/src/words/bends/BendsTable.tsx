/** The bends of the chosen line as they are made at the bench, from either end. */
import { useEffect, useRef, useState } from 'preact/hooks';
import { type BenchPlan, type EndName, formatLength, type WorkedLine } from 'runback';
import { store } from '../../store/index.ts';
import { benchOf } from '../parts/bench.ts';
import { chosenBend } from '../parts/chosen.ts';
import { BendRowView } from './BendRowView.tsx';
import { benchNotes, bendRows, estimates } from './rows.ts';
import './bends.css';

const ENDS: readonly EndName[] = ['A', 'Z'];

export function BendsTable() {
  const [from, setFrom] = useState<EndName>('A');
  const worked = store.line.value;
  if (!worked) return <p class="muted words-empty">Reading the job…</p>;
  const bench = benchOf(worked, from, store.style.value);
  return (
    <section class="words-bends" aria-label={`Bends of ${worked.line.name}`}>
      <div class="words-bends-from">
        <span class="field-label" id="words-bends-from">
          Worked from end
        </span>
        {/* biome-ignore lint/a11y/useSemanticElements: two buttons side by side, named by the words before them */}
        <div class="seg" role="group" aria-labelledby="words-bends-from">
          {ENDS.map((end) => (
            <button key={end} type="button" aria-pressed={from === end} onClick={() => setFrom(end)}>
              {end}
            </button>
          ))}
        </div>
        {worked.line.mirror && <strong>OPPOSITE HAND</strong>}
      </div>
      {bench ? <Plan worked={worked} bench={bench} /> : <NoPlan />}
    </section>
  );
}

function NoPlan() {
  return (
    <p class="words-bends-none">
      This line cannot exist as drawn, so it has no bends to make: a corner does not fit. The points and the
      checks say which.
    </p>
  );
}

interface PlanProps {
  readonly worked: WorkedLine;
  readonly bench: BenchPlan;
}

function Plan({ worked, bench }: PlanProps) {
  const chosen = chosenBend(worked, store.selection.value);
  const unit = bench.unit === 'mm' ? 'mm' : 'in';
  const body = useRef<HTMLTableSectionElement>(null);
  useEffect(() => {
    if (chosen !== null) body.current?.querySelector('.selected')?.scrollIntoView({ block: 'nearest' });
  }, [chosen]);
  return (
    <>
      <Lengths bench={bench} />
      {bench.rows.length === 0 ? (
        <p class="words-bends-none">A straight tube: no bends.</p>
      ) : (
        <table class="words-bends-table" aria-label="Bends in the order they are made">
          <Head unit={unit} />
          <tbody ref={body}>
            {bendRows(bench).map((row) => (
              <BendRowView key={row.index} row={row} unit={unit} chosen={row.index === chosen} />
            ))}
          </tbody>
        </table>
      )}
      {benchNotes(bench).map((note) => (
        <p key={note} class="words-bends-note">
          {note}
        </p>
      ))}
      <details class="words-bends-estimates">
        <summary>Estimates: wall and stretch</summary>
        <ul>
          {estimates(worked, bench.unit).map((estimate) => (
            <li key={estimate}>{estimate}</li>
          ))}
        </ul>
      </details>
    </>
  );
}

function Head({ unit }: { readonly unit: string }) {
  const names = [
    'bend',
    `mark,\u00a0${unit}`,
    'turn',
    'dial,\u00a0°',
    'angle wanted,\u00a0°',
    `radius,\u00a0${unit}`,
    `straight before,\u00a0${unit}`,
  ];
  return (
    <thead class="words-bends-head">
      <tr>
        {names.map((name, i) => (
          <th key={name} scope="col" class={i === 0 || i === 2 ? undefined : 'words-bends-num'}>
            {name}
          </th>
        ))}
      </tr>
    </thead>
  );
}

function Lengths({ bench }: { readonly bench: BenchPlan }) {
  const rows = [
    ['cut length', bench.cutLength],
    ['developed length', bench.finishedLength],
    ['last straight', bench.lastStraight],
  ] as const;
  return (
    <dl class="words-bends-lengths">
      {rows.map(([name, mm]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd class="mono">{formatLength(mm, bench.unit)}</dd>
        </div>
      ))}
    </dl>
  );
}
