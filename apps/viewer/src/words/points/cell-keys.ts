import type { TargetedKeyboardEvent } from 'preact';
import { nextCell, stepOf } from './cells.ts';

/** For the list that holds the cells, each an input or a select with `data-cell`. */
export function moveBetweenCells(event: TargetedKeyboardEvent<HTMLElement>): void {
  const { target, currentTarget, key } = event;
  if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
  // The arrows of a list of choices are its own.
  if (!(target instanceof HTMLInputElement)) return;
  const cell = target.dataset.cell;
  const step = cell === undefined ? null : stepOf(key, caretOf(target));
  if (cell === undefined || step === null) return;
  const cells = [...currentTarget.querySelectorAll<HTMLElement>('[data-cell]')];
  const wanted = nextCell(
    cells.map((each) => each.dataset.cell ?? ''),
    cell,
    step,
  );
  const next = cells.find((each) => each.dataset.cell === wanted) ?? target;
  event.preventDefault();
  next.focus();
  if (next instanceof HTMLInputElement) next.select();
}

function caretOf({ selectionStart, selectionEnd, value }: HTMLInputElement) {
  const collapsed = selectionStart === selectionEnd;
  return { atStart: collapsed && selectionStart === 0, atEnd: collapsed && selectionEnd === value.length };
}
