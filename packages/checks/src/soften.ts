import type { Service } from '@runback/job';
import type { Finding } from './types.ts';

/**
 * A failure that the service takes for a note, with the service's reason; anything else as it is.
 * `also` is a narrower name than the check's own that a service may use for this finding.
 */
export function softened(service: Service, finding: Finding, also: string = finding.check): Finding {
  if (finding.verdict !== 'fail') return finding;
  const rule = service.notes.find(({ check }) => check === finding.check || check === also);
  if (rule === undefined) return finding;
  return {
    ...finding,
    verdict: 'note',
    message: `${finding.message} A note for a ${service.name}: ${rule.reason}.`,
  };
}
