import type { Finding } from '@runback/checks';
import { orNull, plain, triple } from './plain.ts';
import type { ReportFinding } from './report-types.ts';

/** A finding as the report has it: the same, with units in the names of its place. */
export const reportFinding = (finding: Finding): ReportFinding => ({
  check: finding.check,
  verdict: finding.verdict,
  message: finding.message,
  found: orNull(finding.found, plain),
  limit: orNull(finding.limit, plain),
  unit: finding.unit,
  at_mm: orNull(finding.at, plain),
  point_mm: orNull(finding.point, triple),
  bend: finding.bend,
  to: finding.to,
  path: finding.path,
  cure: finding.cure,
  basis: finding.basis,
});
