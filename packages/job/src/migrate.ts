/** Brings a job written for an older version up to this one. */

/** The version of the job format this code writes and reads. */
export const JOB_VERSION = 1;
export const JOB_FORMAT = 'runback-job';

type Step = (data: unknown) => unknown;

/** Step n brings a job from version n to n + 1. Version 1 is the first, so there is none yet. */
const STEPS: readonly Step[] = [];

/** The version a job says it has, or null when it says none that can be. */
export function versionOf(data: unknown): number | null {
  if (typeof data !== 'object' || data === null || !('version' in data)) return null;
  const { version } = data;
  return typeof version === 'number' && Number.isInteger(version) && version >= 1 ? version : null;
}

/** The same job as `JOB_VERSION` writes it; data of this version, or without one, comes back as it is. */
export function migrate(data: unknown): unknown {
  const from = versionOf(data) ?? JOB_VERSION;
  return STEPS.slice(from - 1).reduce((job, step) => step(job), data);
}
