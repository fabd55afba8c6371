import type { Finding, Verdict } from './types.ts';

/** What a check has to say; everything it leaves out is `null`. */
export type Said = Pick<Finding, 'check' | 'verdict' | 'message' | 'unit' | 'basis'> & Partial<Finding>;

/** A whole finding from what a check has to say. */
export function finding(said: Said): Finding {
  return {
    check: said.check,
    verdict: said.verdict,
    message: said.message,
    found: said.found ?? null,
    limit: said.limit ?? null,
    unit: said.unit,
    at: said.at ?? null,
    point: said.point ?? null,
    bend: said.bend ?? null,
    to: said.to ?? null,
    path: said.path ?? null,
    cure: said.cure ?? null,
    basis: said.basis,
  };
}

/** A note that a check had nothing to judge with: lack of data is never a pass. */
export const unjudged = (
  check: string,
  message: string,
  more: Partial<Finding> & { basis: string },
): Finding => finding({ check, verdict: 'note', message, unit: '', ...more });

/** Fail when one fails, note when one notes, else pass. */
export function worst(verdicts: readonly Verdict[]): Verdict {
  if (verdicts.includes('fail')) return 'fail';
  return verdicts.includes('note') ? 'note' : 'pass';
}

/** The verdict over some findings. */
export const verdictOf = (findings: readonly Finding[]): Verdict => worst(findings.map((f) => f.verdict));
