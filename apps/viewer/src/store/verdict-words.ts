/** What is announced when the verdict of the chosen line changes. */
import type { Verdict, WorkedLine } from 'runback';

const count = (line: WorkedLine, verdict: Verdict): number =>
  line.findings.filter((finding) => finding.verdict === verdict).length;

const many = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;

/** A line's verdict as a person says it: "2 checks fail", "passes, with 1 note". */
export function verdictWords(line: WorkedLine): string {
  const [fails, notes] = [count(line, 'fail'), count(line, 'note')];
  if (line.centreline === null) return 'cannot exist: a corner does not fit';
  if (fails > 0) return many(fails, 'check fails', 'checks fail');
  return notes > 0 ? `passes, with ${many(notes, 'note', 'notes')}` : 'passes';
}

/** The words, or null when nothing changed that is worth saying. */
export function announcement(before: WorkedLine | null, after: WorkedLine | null): string | null {
  if (!before || !after || before.line.id !== after.line.id) return null;
  const [was, is] = [verdictWords(before), verdictWords(after)];
  return was === is ? null : `${after.line.name}: ${is}`;
}
