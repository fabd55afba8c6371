export type * from './types.ts';
export { workJob } from './work-job.ts';
export { WORK_DEFAULTS, workLine } from './work-line.ts';
