/** One point: its name, coordinates, radius, note, and what is wrong with it. */
import { type Finding, formatLength, type Verdict } from 'runback';
import { store } from '../../store/index.ts';
import { LengthInput, TextInput } from '../parts/index.ts';
import { verdictMark } from '../parts/verdict.tsx';
import { cellName } from './cells.ts';
import type { Editing } from './editing.ts';
import { RadiusCell } from './RadiusCell.tsx';
import type { PointRow } from './rows.ts';
import { pointWords } from './words.ts';

const LONGEST_NOTE = 2000;
const NOTE_COLUMN = 4;

export interface PointRowProps {
  readonly row: PointRow;
  readonly names: readonly string[];
  readonly chosen: boolean;
  readonly edits: Editing;
  readonly onMenu: (anchor: HTMLElement) => void;
}

export function PointRowView({ row, names, chosen, edits, onMenu }: PointRowProps) {
  const { index, written, findings } = row;
  if (!written) return null;
  const called = pointWords(row);
  const worst = worstOf(findings);
  const classes = [
    'words-points-row',
    chosen ? 'selected' : '',
    row.end ? 'words-points-end' : '',
    worst ? `words-points-${worst}` : '',
  ];
  return (
    <fieldset aria-label={called} class={classes.join(' ')} onFocusCapture={() => edits.choose(index)}>
      <Name row={row} chosen={chosen} worst={worst} onChoose={() => edits.choose(index)} />
      {written.at.map((value, axis) => (
        <LengthInput
          key={names[axis]}
          label={`${called}, ${names[axis]}`}
          hideLabel
          value={value}
          units={edits.written.units}
          cell={cellName(index, axis)}
          onCommit={(typed) => edits.coordinate(index, axis, typed ?? value)}
        />
      ))}
      <RadiusCell row={row} edits={edits} label={`${called}, radius`} />
      <TextInput
        label={`${called}, note`}
        hideLabel
        placeholder="note"
        value={written.note}
        longest={LONGEST_NOTE}
        multiline={written.note?.includes('\n') ?? false}
        cell={cellName(index, NOTE_COLUMN)}
        onCommit={(note) => edits.note(index, note)}
      />
      <button
        type="button"
        class="btn-quiet words-points-more"
        aria-haspopup="menu"
        aria-label={`More for ${called}`}
        onClick={(event) => onMenu(event.currentTarget)}
      >
        <span aria-hidden="true">⋯</span>
      </button>
      <Faults row={row} />
    </fieldset>
  );
}

const worstOf = (findings: readonly Finding[]): Verdict | null =>
  findings.length === 0 ? null : findings.some(({ verdict }) => verdict === 'fail') ? 'fail' : 'note';

interface NameProps {
  readonly row: PointRow;
  readonly chosen: boolean;
  readonly worst: Verdict | null;
  readonly onChoose: () => void;
}

function Name({ row, chosen, worst, onChoose }: NameProps) {
  return (
    <button
      type="button"
      class="btn-quiet words-points-name"
      aria-pressed={chosen}
      aria-label={`Select ${pointWords(row)}${worst ? `: ${worst}` : ''}`}
      onClick={onChoose}
    >
      {row.name}
      {worst && (
        <span class={`verdict-${worst}`} aria-hidden="true">
          {verdictMark(worst)}
        </span>
      )}
    </button>
  );
}

function Faults({ row: { findings, largestRadius } }: { readonly row: PointRow }) {
  return (
    <>
      {findings.map((finding) => (
        <p key={finding.message} class={`words-points-finding verdict-${finding.verdict}`}>
          <span aria-hidden="true">{verdictMark(finding.verdict)}</span>{' '}
          <span class="visually-hidden">{finding.verdict}: </span>
          {finding.check === 'corner-fit' && largestRadius !== null
            ? `Does not fit: the largest radius that fits here is ${formatLength(largestRadius, store.style.value)}.`
            : finding.message}
        </p>
      ))}
    </>
  );
}
