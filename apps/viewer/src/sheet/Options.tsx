/** How it is printed: paper, units, end worked from, pages, aids. */
import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import type { LengthStyle } from 'runback';
import { AIDS, type Aid, PAGE_KINDS, type PageKind, type PaperName } from 'runback/sheet';
import { store } from '../store/index.ts';
import { switched, UNITS } from './choice.ts';
import { choice, choose } from './live.ts';

interface OneOfProps<T> {
  readonly label: string;
  readonly known: readonly (readonly [T, string])[];
  readonly now: T;
  readonly onChoose: (one: T) => void;
}

/** One of a few, side by side. */
export function OneOf<T extends string>({ label, known, now, onChoose }: OneOfProps<T>) {
  const id = useId();
  return (
    <div class="sheet-field">
      <span id={id} class="field-label">
        {label}
      </span>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a row of buttons */}
      <div class="seg" role="group" aria-labelledby={id}>
        {known.map(([one, words]) => (
          <button key={one} type="button" aria-pressed={one === now} onClick={() => onChoose(one)}>
            {words}
          </button>
        ))}
      </div>
    </div>
  );
}

interface SomeOfProps<T> {
  readonly label: string;
  readonly known: readonly T[];
  readonly words: Readonly<Record<string, string>>;
  readonly now: readonly T[];
  readonly onChoose: (some: readonly T[]) => void;
  readonly children?: ComponentChildren;
}

function SomeOf<T extends string>({ label, known, words, now, onChoose }: SomeOfProps<T>) {
  return (
    <fieldset class="sheet-some">
      <legend class="field-label">{label}</legend>
      {known.map((one) => (
        <label key={one} class="sheet-check">
          <input
            type="checkbox"
            checked={now.includes(one)}
            onChange={() => onChoose(switched(known, now, one))}
          />
          {words[one]}
        </label>
      ))}
    </fieldset>
  );
}

const UNIT_WORDS: Readonly<Record<LengthStyle, string>> = {
  mm: 'mm',
  in: 'inches, 1/32',
  'in-16': 'inches, 1/16',
  'in-decimal': 'inches, decimal',
};
const PAPERS: readonly (readonly [PaperName, string])[] = [
  ['a4', 'A4'],
  ['letter', 'Letter'],
];
const ENDS = [
  ['A', 'END A'],
  ['Z', 'END Z'],
] as const;
const PAGE_WORDS: Readonly<Record<PageKind, string>> = {
  bench: 'Bench table',
  pictures: 'Picture of each bend',
  views: 'Views of the line',
  values: 'Exact values, findings',
};
const AID_WORDS: Readonly<Record<Aid, string>> = {
  tape: 'Marking tape',
  wheel: 'Turn wheel',
  strip: 'Wrap strip',
  cards: 'Angle cards',
  'side-views': 'Side views',
  stick: 'Stick strip',
};
const AS_JOB = 'as-job';

function Units() {
  const id = useId();
  const job = store.worked.value?.units ?? 'mm';
  return (
    <div class="field">
      <label for={id}>Units</label>
      <select
        id={id}
        value={choice.value.units ?? AS_JOB}
        onChange={({ currentTarget: { value } }) =>
          choose({ units: UNITS.find((style) => style === value) ?? null })
        }
      >
        <option value={AS_JOB}>As the job ({UNIT_WORDS[job]})</option>
        {UNITS.map((style) => (
          <option key={style} value={style}>
            {UNIT_WORDS[style]}
          </option>
        ))}
      </select>
    </div>
  );
}

export function Options() {
  const { paper, from, pages, aids } = choice.value;
  return (
    <div class="sheet-options">
      <OneOf label="Work from" known={ENDS} now={from} onChoose={(end) => choose({ from: end })} />
      <OneOf label="Paper" known={PAPERS} now={paper} onChoose={(one) => choose({ paper: one })} />
      <Units />
      <SomeOf
        label="Pages"
        known={PAGE_KINDS}
        words={PAGE_WORDS}
        now={pages}
        onChoose={(some) => choose({ pages: some })}
      />
      <SomeOf
        label="Aids at full size, to cut out"
        known={AIDS}
        words={AID_WORDS}
        now={aids}
        onChoose={(some) => choose({ aids: some })}
      />
    </div>
  );
}
