import type { Fact, Worked, WorkedRun } from '@runback/checks';
import { orNull } from './plain.ts';
import { reportFinding } from './report-finding.ts';
import type { ReportWorked } from './report-fluid-types.ts';
import { pocketsReport } from './report-pockets.ts';
import { passageReport, stickReport } from './report-stick.ts';
import type { ReportRun } from './report-types.ts';

/** What a line and a run both have; `ids` are those of its lines, from end A. */
export const workedReport = (
  { pockets, passage, stick, facts }: Worked,
  ids: readonly string[],
): ReportWorked => ({
  pockets: orNull(pockets, pocketsReport),
  passage: orNull(passage, (found) => passageReport(found, ids)),
  stick: orNull(stick, stickReport),
  facts: facts.map(fact),
});

const fact = ({ group, label, text, basis, caution }: Fact): Fact => ({
  group,
  label,
  text,
  basis,
  caution,
});

/** A run of lines: what is worked over all of them together. */
export const runReport = (worked: WorkedRun): ReportRun => ({
  id: worked.run.id,
  name: worked.run.name,
  lines: worked.run.lines,
  drain: worked.run.drain,
  verdict: worked.verdict,
  ...workedReport(worked, worked.run.lines),
  findings: worked.findings.map(reportFinding),
});
