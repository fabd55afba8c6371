/** Print, and what can be saved. */
import { store } from '../store/index.ts';
import { busy, type ExportAction, exportActions } from './actions.ts';
import { sheetCall, typed } from './command.ts';
import { choice } from './live.ts';

const action = (id: ExportAction['id']): ExportAction => exportActions.find((one) => one.id === id)!;

function ActionButton({ id, kind }: { readonly id: ExportAction['id']; readonly kind: string }) {
  const { label, run } = action(id);
  const now = busy.value;
  return (
    <button type="button" class={kind} aria-disabled={now !== null} onClick={() => void run()}>
      {now === id ? 'At it …' : label}
    </button>
  );
}

export function PrintAndSave() {
  return (
    <div class="sheet-take">
      <ActionButton id="print" kind="btn-main" />
      <ActionButton id="pdf" kind="btn" />
      <p class="field-hint">Print at 100 %, then lay a rule on the bar at the foot.</p>
    </div>
  );
}

export function OtherFiles() {
  const command = typed(sheetCall(store.name.value, store.lineId.value, choice.value));
  return (
    <details class="sheet-more">
      <summary>Other files</summary>
      <div class="sheet-more-files">
        {exportActions
          .filter(({ id }) => id !== 'print' && id !== 'pdf')
          .map(({ id }) => (
            <ActionButton key={id} id={id} kind="btn" />
          ))}
      </div>
      <p class="field-hint">The same PDF from the command line:</p>
      <code class="sheet-command">{command}</code>
    </details>
  );
}
