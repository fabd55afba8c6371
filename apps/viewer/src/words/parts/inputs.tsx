/** Fields of one line: a length, an angle, a text. Enter or leaving commits, Escape restores. */
import type { TargetedInputEvent, TargetedKeyboardEvent } from 'preact';
import { useId } from 'preact/hooks';
import type { JobUnit } from 'runback';
import { type Committed, type Draft, useDraft } from './draft.tsx';
import { describedBy, Frame } from './field.tsx';
import { readAngle, readLength, readText, type Sign, type WrittenLength, written } from './read.ts';

interface Common {
  readonly label: string;
  readonly hideLabel?: boolean;
  readonly hint?: string;
  /** Shown in an empty field: what holds when it is left out. */
  readonly placeholder?: string;
  readonly disabled?: boolean;
  /** `data-cell` of the input, for tables that move between their cells. */
  readonly cell?: string;
}

export interface LengthInputProps extends Common {
  /** As written in the job; undefined: left out. */
  readonly value: WrittenLength | undefined;
  readonly units: JobUnit;
  readonly sign?: Sign;
  /** An empty field commits undefined. */
  readonly optional?: boolean;
  readonly onCommit: (value: WrittenLength | undefined) => Committed;
}

export function LengthInput({ value, units, sign, optional, onCommit, ...common }: LengthInputProps) {
  const wanted = { units, ...(sign && { sign }), ...(optional && { optional }) };
  const draft = useDraft({ shown: written(value), read: (typed) => readLength(typed, wanted), onCommit });
  return <LineInput {...common} draft={draft} kind="number" />;
}

export interface AngleInputProps extends Common {
  /** Degrees; undefined: left out. */
  readonly value: number | undefined;
  readonly lowest: number;
  readonly highest: number;
  readonly optional?: boolean;
  readonly onCommit: (value: number | undefined) => Committed;
}

export function AngleInput({ value, lowest, highest, optional, onCommit, ...common }: AngleInputProps) {
  const wanted = { lowest, highest, ...(optional && { optional }) };
  const draft = useDraft({ shown: written(value), read: (typed) => readAngle(typed, wanted), onCommit });
  return <LineInput {...common} draft={draft} kind="number" />;
}

export interface TextInputProps extends Common {
  readonly value: string | undefined;
  readonly longest?: number;
  /** Default true: an empty field commits undefined. */
  readonly optional?: boolean;
  /** Several lines: Shift+Enter begins a new one. */
  readonly multiline?: boolean;
  readonly onCommit: (value: string | undefined) => Committed;
}

export function TextInput({ value, longest, optional, multiline, onCommit, ...common }: TextInputProps) {
  const wanted = { ...(longest !== undefined && { longest }), ...(optional !== undefined && { optional }) };
  const draft = useDraft({ shown: value ?? '', read: (typed) => readText(typed, wanted), onCommit });
  return <LineInput {...common} draft={draft} kind={multiline ? 'lines' : 'text'} />;
}

interface LineInputProps extends Common {
  readonly draft: Draft;
  readonly kind: 'number' | 'text' | 'lines';
}

function LineInput({ label, hideLabel, hint, placeholder, disabled, cell, draft, kind }: LineInputProps) {
  const id = useId();
  const input = {
    id,
    value: draft.text,
    placeholder,
    disabled,
    'data-cell': cell,
    autocomplete: 'off',
    autocapitalize: kind === 'number' ? 'off' : 'sentences',
    spellcheck: kind !== 'number',
    enterkeyhint: 'done',
    'aria-invalid': draft.fault !== null,
    'aria-describedby': describedBy(id, draft.fault, hint),
    onInput: (event: TypedEvent) => draft.type(event.currentTarget.value),
    onBlur: () => draft.commit(),
    onKeyDown: (event: KeyEvent) => keys(event, draft),
  } as const;
  return (
    <Frame id={id} label={label} hideLabel={hideLabel} hint={hint} fault={draft.fault}>
      {kind === 'lines' ? (
        <textarea {...input} rows={2} />
      ) : (
        <input {...input} type="text" class={kind === 'number' ? 'words-number' : undefined} />
      )}
    </Frame>
  );
}

type Input = HTMLInputElement | HTMLTextAreaElement;
type KeyEvent = TargetedKeyboardEvent<Input>;
type TypedEvent = TargetedInputEvent<Input>;

/** Enter at a fault stays in the field; Escape with nothing to give up goes on to whoever else waits for it. */
function keys(event: KeyEvent, draft: Draft): void {
  if (event.key === 'Enter' && !event.shiftKey) {
    event.preventDefault();
    if (!draft.commit()) event.stopPropagation();
  }
  if (event.key === 'Escape' && draft.restore()) {
    event.preventDefault();
    event.stopPropagation();
  }
}
