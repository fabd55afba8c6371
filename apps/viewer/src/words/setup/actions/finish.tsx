/** How a form ends. */
import type { JobIssue } from 'runback';
import { store } from '../../../store/index.ts';
import { change } from '../bits/now.ts';
import type { Made } from '../edits/lines.ts';

/** Makes a line, and goes to it when it could be made. */
export async function make(label: string, made: Made, done: () => void): Promise<readonly JobIssue[]> {
  const issues = await change(label, ...made.edits);
  if (issues.length > 0) return issues;
  store.chooseLine(made.id);
  done();
  return issues;
}

export interface CancelProps {
  readonly done: () => void;
  readonly label?: string;
  readonly look?: 'btn' | 'btn-quiet';
}

export function Cancel({ done, label = 'Cancel', look = 'btn-quiet' }: CancelProps) {
  return (
    <button type="button" class={look} onClick={done}>
      {label}
    </button>
  );
}
