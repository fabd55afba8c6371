/** The radius of a corner: the die's, another die of the rack, or one typed in. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { JobIssue } from 'runback';
import { type Committed, LengthInput, Pick, type WrittenLength, written } from '../parts/index.ts';
import { cellName } from './cells.ts';
import type { Editing } from './editing.ts';
import { dieWords, LEFT_OUT, OTHER, OWN, radiusChoices } from './radii.ts';
import type { PointRow } from './rows.ts';

export interface RadiusCellProps {
  readonly row: PointRow;
  readonly edits: Editing;
  readonly label: string;
}

const COLUMN = 3;

export function RadiusCell({ row, edits, label }: RadiusCellProps) {
  const [typing, setTyping] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const input = typing ? box.current?.querySelector('input') : null;
    input?.focus();
    input?.select();
  }, [typing]);
  if (row.end) return <span class="words-points-radius" />;
  const { dies } = edits;
  const value = row.written?.radius;
  const put = async (radius: WrittenLength | undefined): Promise<readonly JobIssue[]> => {
    const issues = await edits.radius(row.index, radius);
    if (issues.length === 0) setTyping(false);
    return issues;
  };
  const take = (choice: string): Committed => {
    if (choice === OTHER) setTyping(true);
    else if (choice !== OWN) return put(choice === LEFT_OUT ? undefined : dies[Number(choice)]?.radius);
  };
  // Left as it was: the list again. What is faulty stays, for its fault is beside it.
  const left = (input: EventTarget | null): void => {
    if (input instanceof HTMLInputElement && input.value === written(value)) setTyping(false);
  };
  const { chosen, options } = radiusChoices(dies, value, edits.written.units);
  const shared = { label, hideLabel: true, cell: cellName(row.index, COLUMN) };
  return (
    <div ref={box} class="words-points-radius" onFocusOut={(event) => left(event.target)}>
      {typing || dies.length === 0 ? (
        <LengthInput
          {...shared}
          value={value}
          units={edits.written.units}
          sign="more than 0"
          optional={dies.length > 0}
          placeholder={dieWords(dies)}
          onCommit={put}
        />
      ) : (
        <Pick {...shared} value={typing ? OTHER : chosen} options={options} onCommit={take} />
      )}
    </div>
  );
}
