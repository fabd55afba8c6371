import type { Verdict } from 'runback';
import { type Face, store } from '../store/index.ts';
import { JobMenu } from './JobMenu.tsx';
import { dialog, wide } from './layout.ts';
import { Mark } from './Mark.tsx';

export const VERDICT_MARK: Readonly<Record<Verdict, string>> = { pass: '✓', note: '!', fail: '✕' };
const VERDICT_WORD: Readonly<Record<Verdict, string>> = { pass: 'passes', note: 'notes', fail: 'fails' };

const FACES: readonly { readonly face: Face; readonly label: string; readonly narrow: boolean }[] = [
  { face: 'checks', label: 'Checks', narrow: true },
  { face: 'steps', label: 'Bend steps', narrow: false },
  { face: 'look', label: 'Look', narrow: false },
  { face: 'words', label: 'Words', narrow: true },
  { face: 'sheet', label: 'Sheet', narrow: false },
];

/** Which face is up; on a wide screen checks and words stand beside the scene, and count as Look. */
export function FaceSwitch() {
  const shown = FACES.filter(({ narrow }) => !wide.value || !narrow);
  const face = store.face.value;
  const now = wide.value && (face === 'checks' || face === 'words') ? 'look' : face;
  const ordered = wide.value ? [shown[1]!, shown[2]!, shown[0]!] : shown;
  return (
    <nav class={wide.value ? 'seg app-faces' : 'app-faces-narrow'} aria-label="Faces of the line">
      {ordered.map(({ face: to, label }) => (
        <button
          key={to}
          type="button"
          aria-pressed={now === to}
          aria-current={now === to ? 'page' : undefined}
          onClick={() => store.setFace(to)}
        >
          {label}
        </button>
      ))}
    </nav>
  );
}

function JobVerdict() {
  const worked = store.worked.value;
  if (!worked) return null;
  return (
    <span class={`chip verdict-${worked.verdict}`} title="The whole job">
      <span aria-hidden="true">{VERDICT_MARK[worked.verdict]}</span> job {VERDICT_WORD[worked.verdict]}
    </span>
  );
}

function Undo() {
  const [undo, redo] = [store.canUndo.value, store.canRedo.value];
  return (
    <span class="app-undo">
      <button
        type="button"
        class="btn-quiet"
        disabled={undo === null}
        title={undo === null ? 'Nothing to undo' : `Undo: ${undo}`}
        aria-label={undo === null ? 'Undo' : `Undo: ${undo}`}
        onClick={store.undo}
      >
        <Mark name="undo" />
      </button>
      <button
        type="button"
        class="btn-quiet"
        disabled={redo === null}
        title={redo === null ? 'Nothing to redo' : `Redo: ${redo}`}
        aria-label={redo === null ? 'Redo' : `Redo: ${redo}`}
        onClick={store.redo}
      >
        <Mark name="redo" />
      </button>
    </span>
  );
}

/** Before the name, which may be cut short; nothing when it is saved. What is not saved is kept in the browser meanwhile, where the browser can. */
function savedWords(): string {
  if (!store.unsaved.value) return '';
  return store.kept.value ? 'not saved, kept here · ' : 'not saved · ';
}

export function TopBar() {
  const title = store.worked.value?.title ?? 'Runback';
  return (
    <header class="app-top">
      <JobMenu />
      <span class="app-title">
        <h1>{title}</h1>
        <span class="muted app-file">
          {savedWords()}
          {store.name.value}
        </span>
      </span>
      <JobVerdict />
      <Undo />
      {wide.value && <FaceSwitch />}
      <button
        type="button"
        class="btn-quiet app-keys-button"
        onClick={() => {
          dialog.value = 'keys';
        }}
      >
        Keys
      </button>
    </header>
  );
}
