/** A button that edits the job, with what is wrong under it when it is refused. */
import { useState } from 'preact/hooks';
import { type Committed, sayIssues } from '../../parts/index.ts';

export interface ActProps {
  readonly label: string;
  /** What a screen reader says, where the label alone is too short. */
  readonly name?: string;
  readonly look?: 'btn' | 'btn-quiet' | 'btn-main';
  readonly disabled?: boolean;
  readonly onAct: () => Committed;
}

export function Act({ label, name, look = 'btn', disabled, onAct }: ActProps) {
  const [fault, setFault] = useState<string | null>(null);
  const act = async (): Promise<void> => {
    const issues = (await onAct()) ?? [];
    setFault(issues.length === 0 ? null : sayIssues(issues));
  };
  return (
    <span class="setup-act">
      <button type="button" class={look} aria-label={name} disabled={disabled} onClick={() => void act()}>
        {label}
      </button>
      {fault !== null && (
        <span class="field-fault" role="alert">
          {fault}
        </span>
      )}
    </span>
  );
}

/** Takes a key out of the job, so that the catalogue (or the job) says it again. */
export function Reset({
  of,
  says,
  onAct,
}: {
  readonly of: string;
  readonly says: string;
  readonly onAct: () => Committed;
}) {
  return <Act look="btn-quiet" label={says} name={`${of}: ${says.replace('↺ ', '')}`} onAct={onAct} />;
}
