/** Figures of the chosen line and of its runs: what is found, what it rests on, and what it is not. */
import { useId, useState } from 'preact/hooks';
import type { Fact, WorkedLine } from 'runback';
import { store } from '../../store/index.ts';
import { type FigureGroup, type FigureSet, figureSets } from './figures.ts';
import './figures.css';

export function Figures({ worked }: { readonly worked: WorkedLine }) {
  const [open, setOpen] = useState(false);
  const job = store.worked.value;
  const sets = job ? figureSets(worked, job) : [];
  if (sets.length === 0) return null;
  return (
    <details class="words-figures" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        Figures <span class="muted">{briefOf(sets)}</span>
      </summary>
      {open &&
        sets.map(({ id, run, groups }) => (
          <div key={id} class="words-figures-set">
            {run !== null && <h3>Run {run}</h3>}
            {groups.map((group) => (
              <Group key={group.group} {...group} />
            ))}
          </div>
        ))}
    </details>
  );
}

const briefOf = (sets: readonly FigureSet[]): string =>
  [...new Set(sets.flatMap(({ groups }) => groups.map(({ title }) => title.toLowerCase())))].join(', ');

function Group({ title, caution, facts }: FigureGroup) {
  return (
    <section class="words-figures-group card" aria-label={title}>
      <h4>{title}</h4>
      {caution !== null && <Caution words={caution} />}
      <ul>
        {facts.map((fact, i) => (
          <Figure key={i} fact={fact} told={caution} />
        ))}
      </ul>
    </section>
  );
}

const Caution = ({ words }: { readonly words: string }) => (
  <p class="words-figure-caution verdict-note">
    <span aria-hidden="true">! </span>
    {words}
  </p>
);

/** `told`: the caution that the head of its group has said already. */
function Figure({ fact, told }: { readonly fact: Fact; readonly told: string | null }) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const { label, text, basis, caution } = fact;
  return (
    <li>
      <div class="words-figure">
        <p>
          <span class="muted">{label}</span> <span class="mono">{text}</span>
        </p>
        <button
          type="button"
          class="btn-quiet"
          aria-expanded={open}
          aria-controls={id}
          onClick={() => setOpen(!open)}
        >
          why<span class="visually-hidden"> {label}</span>
        </button>
      </div>
      {caution !== null && caution !== told && <Caution words={caution} />}
      <p id={id} class="words-figure-basis" hidden={!open}>
        {basis}
      </p>
    </li>
  );
}
