/** Keys that work everywhere. Those of the scene, the run profile and the steps live with them. */
import { tinykeys } from 'tinykeys';
import type { Face, Store } from '../store/index.ts';
import { dialog } from './layout.ts';

export interface KeyRow {
  readonly keys: string;
  readonly does: string;
}

/** The list a person can ask for. */
export const KEY_ROWS: readonly { readonly where: string; readonly rows: readonly KeyRow[] }[] = [
  {
    where: 'Everywhere',
    rows: [
      { keys: 'Ctrl O', does: 'open a job file' },
      { keys: 'Ctrl S', does: 'save' },
      { keys: 'Ctrl Shift S', does: 'save under another name' },
      { keys: 'Ctrl Z', does: 'undo' },
      { keys: 'Ctrl Shift Z', does: 'redo' },
      { keys: 'Alt 1 … 5', does: 'look, checks, words, sheet, bend steps' },
      { keys: 'F1', does: 'this list' },
      { keys: 'Tab', does: 'next control' },
    ],
  },
  {
    where: 'In the scene',
    rows: [
      { keys: 'Arrows', does: 'look from another side' },
      { keys: 'Shift arrows', does: 'move across' },
      { keys: '+ −', does: 'nearer, farther' },
      { keys: 'F', does: 'fit the line' },
      { keys: '1 … 6', does: 'standard views' },
      { keys: '[ ]', does: 'move the bead along the tube' },
      { keys: 'D', does: 'let a drop go at the bead' },
      { keys: 'Alt arrows, Alt Page up/down', does: 'move the selected corner by a step' },
      { keys: 'Shift, Alt while dragging', does: 'hold it to an axis, to a leg' },
      { keys: 'Esc', does: 'take the drop away, let go of the selection' },
    ],
  },
  {
    where: 'On the run profile',
    rows: [
      { keys: 'Left, right', does: 'move the bead (Shift: farther)' },
      { keys: 'Home, End', does: 'to end A, to end Z' },
      { keys: 'D', does: 'let a drop go at the bead (Esc: take it away)' },
    ],
  },
  {
    where: 'In the bend steps',
    rows: [
      { keys: 'Left, right, Space', does: 'back, next' },
      { keys: 'Esc', does: 'leave' },
    ],
  },
];

const FACES: readonly Face[] = ['look', 'checks', 'words', 'sheet', 'steps'];

/** Undo inside a field that is being typed in is the browser's. */
const typing = (event: KeyboardEvent): boolean =>
  event.target instanceof HTMLInputElement ||
  event.target instanceof HTMLTextAreaElement ||
  (event.target instanceof HTMLElement && event.target.isContentEditable);

export function bindKeys(store: Store): void {
  const on = (run: () => void, alsoTyping: boolean) => (event: KeyboardEvent) => {
    if (!alsoTyping && typing(event)) return;
    event.preventDefault();
    run();
  };
  const faces = FACES.map((face, i) => [`Alt+Digit${i + 1}`, on(() => store.setFace(face), true)] as const);
  tinykeys(window, {
    Escape: (event) => {
      if (!event.defaultPrevented) store.takeDrop();
    },
    '$mod+KeyO': on(() => void store.openFile(), true),
    '$mod+KeyS': on(() => void store.save(), true),
    '$mod+Shift+KeyS': on(() => void store.saveAs(), true),
    '$mod+KeyZ': on(store.undo, false),
    '$mod+Shift+KeyZ': on(store.redo, false),
    '$mod+KeyY': on(store.redo, false),
    F1: on(() => {
      dialog.value = dialog.value === 'keys' ? null : 'keys';
    }, true),
    ...Object.fromEntries(faces),
  });
}
