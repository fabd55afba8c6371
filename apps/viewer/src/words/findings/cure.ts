import type { Cure, WorkedLine } from 'runback';
import type { Store } from '../../store/types.ts';

/** Makes the edits of a cure as one step, and says what the checks make of the line then; false when it was refused. */
export async function makeCure(
  store: Store,
  { line }: WorkedLine,
  { cure, verdict }: { readonly cure: Cure; readonly verdict: (worked: WorkedLine) => string },
): Promise<boolean> {
  const issues = await store.edit(`Cure: ${cure.text}`, cure.edits);
  if (issues.length > 0) return false;
  const now = store.worked.value?.lines.find((each) => each.line.id === line.id);
  store.say(now ? `Done. ${now.line.name}: ${verdict(now)}.` : 'Done.');
  return true;
}
