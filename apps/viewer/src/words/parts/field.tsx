/** The frame of a field: its label, its input, what is wrong with it, and a hint. */
import type { ComponentChildren } from 'preact';
import './parts.css';

export interface FrameProps {
  readonly id: string;
  readonly label: string;
  /** The label is for screen readers alone: something visible beside the field names it. */
  readonly hideLabel?: boolean | undefined;
  readonly hint?: string | undefined;
  readonly fault: string | null;
  readonly children: ComponentChildren;
}

export function Frame({ id, label, hideLabel = false, hint, fault, children }: FrameProps) {
  return (
    <div class={hideLabel ? 'field words-field words-field-bare' : 'field words-field'}>
      <label for={id} class={hideLabel ? 'visually-hidden' : undefined}>
        {label}
      </label>
      {children}
      {fault !== null && (
        <span id={`${id}-fault`} class="field-fault" role="alert">
          {hideLabel ? `${label}: ${fault}` : fault}
        </span>
      )}
      {hint !== undefined && (
        <span id={`${id}-hint`} class="field-hint">
          {hint}
        </span>
      )}
    </div>
  );
}

/** Ids of what describes a field, for aria-describedby. */
export function describedBy(id: string, fault: string | null, hint: string | undefined): string | undefined {
  const ids = [fault === null ? '' : `${id}-fault`, hint === undefined ? '' : `${id}-hint`];
  return ids.filter((part) => part !== '').join(' ') || undefined;
}
