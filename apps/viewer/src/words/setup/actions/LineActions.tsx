/** What is done with a line as a whole: a new one, once more, its other hand, another name, away with it. */

import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { type LineNow, lineNow } from '../bits/now.ts';
import { DuplicateForm, RemoveForm, RenameForm } from './forms.tsx';
import { HandForm } from './HandForm.tsx';
import { NewLineForm } from './NewLineForm.tsx';
import '../setup.css';

export interface FormProps {
  readonly now: LineNow;
  /** Closes the form. */
  readonly done: () => void;
}

const ACTIONS: readonly (readonly [string, (props: FormProps) => JSX.Element])[] = [
  ['New line', NewLineForm],
  ['Duplicate', DuplicateForm],
  ['Opposite hand', HandForm],
  ['Rename', RenameForm],
  ['Remove', RemoveForm],
];

export function LineActions() {
  const now = lineNow();
  const [chosen, setChosen] = useState<string | null>(null);
  const buttons = useRef<HTMLDivElement>(null);
  const form = useRef<HTMLDivElement>(null);
  useEffect(() => form.current?.querySelector<HTMLElement>('input, select, button')?.focus(), [chosen]);
  if (!now) return null;
  const Form = ACTIONS.find(([name]) => name === chosen)?.[1];
  const close = (): void => {
    const pressed = buttons.current?.querySelector<HTMLElement>('[aria-expanded="true"]');
    setChosen(null);
    pressed?.focus();
  };
  return (
    <div class="setup setup-actions">
      {/* biome-ignore lint/a11y/useSemanticElements: a toolbar of five, no set of fields */}
      <div ref={buttons} class="setup-row" role="group" aria-label={`Line ${now.line.name}`}>
        {ACTIONS.map(([name]) => (
          <button
            key={name}
            type="button"
            class="btn"
            aria-expanded={name === chosen}
            onClick={() => setChosen(name === chosen ? null : name)}
          >
            {name}
          </button>
        ))}
      </div>
      {Form && (
        // biome-ignore lint/a11y/noStaticElementInteractions: Escape closes what is in it, as its own button does
        <div
          ref={form}
          class="setup-form card"
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return;
            event.stopPropagation();
            close();
          }}
        >
          <Form key={`${chosen} ${now.line.id}`} now={now} done={close} />
        </div>
      )}
    </div>
  );
}
