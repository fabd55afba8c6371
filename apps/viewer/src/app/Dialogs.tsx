import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { store } from '../store/index.ts';
import { KEY_ROWS } from './keys.ts';
import { dialog } from './layout.ts';

interface BoxProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

/** A modal dialog: the browser keeps the focus inside and closes it on Escape. */
function Box({ title, onClose, children }: BoxProps) {
  const box = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    box.current?.showModal();
    return () => {
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  return (
    <dialog ref={box} class="app-dialog card" aria-labelledby="dialog-title" onClose={onClose}>
      <h2 id="dialog-title">{title}</h2>
      {children}
    </dialog>
  );
}

function FaultBox() {
  const fault = store.openFault.value;
  if (!fault) return null;
  const { issues, name } = fault;
  return (
    <Box title={`${name} cannot be read as a job`} onClose={store.dismissFault}>
      <p>
        {store.worked.value ? 'What was open is still open. ' : ''}
        {issues.length === 1 ? 'One fault:' : `${issues.length} faults:`}
      </p>
      <ol class="app-faults">
        {issues.map((issue) => (
          <li key={`${issue.line}:${issue.column}:${issue.message}`}>
            <strong class="mono">
              line {issue.line}, column {issue.column}
            </strong>
            {issue.path ? <code> {issue.path}</code> : null}
            <br />
            {issue.message}: expected {issue.expected}, found {issue.got}
          </li>
        ))}
      </ol>
      <p class="app-dialog-buttons">
        <button type="button" class="btn" onClick={() => void store.openFile()}>
          Open another
        </button>
        <button type="button" class="btn-main" onClick={store.dismissFault}>
          Close
        </button>
      </p>
    </Box>
  );
}

function DiskBox() {
  if (!store.diskChange.value) return null;
  return (
    <Box title="The file changed on disk" onClose={() => store.diskChange.value && store.answerDisk('keep')}>
      <p>
        {store.name.value} was changed by somebody else, and you have edits that are not saved. Nothing is
        lost either way: undo goes back to your edits.
      </p>
      <p class="app-dialog-buttons">
        <button type="button" class="btn" onClick={() => store.answerDisk('take')}>
          Take the file on disk
        </button>
        <button type="button" class="btn-main" onClick={() => store.answerDisk('keep')}>
          Keep my edits
        </button>
      </p>
    </Box>
  );
}

function KeysBox() {
  if (dialog.value !== 'keys') return null;
  const close = (): void => {
    dialog.value = null;
  };
  return (
    <Box title="Keys" onClose={close}>
      <div class="app-keys">
        {KEY_ROWS.map(({ where, rows }) => (
          <section key={where}>
            <h3>{where}</h3>
            <dl>
              {rows.map(({ keys, does }) => (
                <div key={keys}>
                  <dt>{keys}</dt>
                  <dd>{does}</dd>
                </div>
              ))}
            </dl>
          </section>
        ))}
      </div>
      <p class="app-dialog-buttons">
        <button type="button" class="btn-main" onClick={close}>
          Close
        </button>
      </p>
    </Box>
  );
}

export const Dialogs = () => (
  <>
    <FaultBox />
    <DiskBox />
    <KeysBox />
  </>
);
