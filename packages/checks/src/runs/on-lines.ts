/** What the runs say of a line, among its own findings. */
import { verdictOf } from '../finding.ts';
import type { Finding, WorkedLine } from '../types.ts';
import type { RunWork } from './work-run.ts';

/** A line with the findings of its runs. Where a run judged the same liquid, the line's own findings on it give way. */
export function withRuns(worked: WorkedLine, runs: readonly RunWork[]): WorkedLine {
  const here = runs.filter(({ worked: { run } }) => run.lines.includes(worked.line.id));
  const said = here.flatMap((run) => run.onLines[worked.line.id] ?? []);
  if (said.length === 0) return worked;
  const instead = new Set(here.flatMap(({ instead: checks }) => checks));
  const findings: readonly Finding[] = [
    ...worked.findings.filter(({ check }) => !instead.has(check)),
    ...said,
  ];
  return { ...worked, verdict: verdictOf(findings), findings };
}
