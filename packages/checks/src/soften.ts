import type { Service } from '@runback/job';
import type { Finding } from './types.ts';

const ruleOf = (service: Service, ...names: readonly string[]): Service['notes'][number] | undefined =>
  service.notes.find(({ check }) => names.includes(check));

/** Whether the service takes a failure of this name for a note: nobody needs a cure for what is no fault. */
export const takenAsNote = (service: Service, ...names: readonly string[]): boolean =>
  ruleOf(service, ...names) !== undefined;

/**
 * A failure that the service takes for a note, with the service's reason; anything else as it is.
 * `also` is a narrower name than the check's own that a service may use for this finding.
 */
export function softened(service: Service, finding: Finding, also: string = finding.check): Finding {
  if (finding.verdict !== 'fail') return finding;
  const rule = ruleOf(service, finding.check, also);
  if (rule === undefined) return finding;
  return {
    ...finding,
    verdict: 'note',
    message: `${finding.message} A note for a ${service.name}: ${rule.reason}.`,
  };
}
