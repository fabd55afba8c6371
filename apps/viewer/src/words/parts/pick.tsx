/** One of a few, as the system's own list. */
import { useId, useState } from 'preact/hooks';
import type { Committed } from './draft.tsx';
import { describedBy, Frame } from './field.tsx';
import { sayIssues } from './issues.ts';

export interface PickOption {
  readonly value: string;
  readonly label: string;
}

export interface PickProps {
  readonly label: string;
  readonly hideLabel?: boolean;
  readonly hint?: string;
  /** One of the options' values. */
  readonly value: string;
  readonly options: readonly PickOption[];
  readonly disabled?: boolean;
  readonly cell?: string;
  readonly onCommit: (value: string) => Committed;
}

/** A choice that is refused goes back to what stands in the job, with the fault beside it. */
export function Pick({ label, hideLabel, hint, value, options, disabled, cell, onCommit }: PickProps) {
  const id = useId();
  const [fault, setFault] = useState<string | null>(null);
  const choose = async (select: HTMLSelectElement): Promise<void> => {
    setFault(null);
    const issues = (await onCommit(select.value)) ?? [];
    if (issues.length === 0) return;
    select.value = value;
    setFault(sayIssues(issues));
  };
  return (
    <Frame id={id} label={label} hideLabel={hideLabel} hint={hint} fault={fault}>
      <select
        id={id}
        value={value}
        disabled={disabled}
        data-cell={cell}
        aria-invalid={fault !== null}
        aria-describedby={describedBy(id, fault, hint)}
        onChange={(event) => void choose(event.currentTarget)}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </Frame>
  );
}
