export * from '@runback/bending';
export { catalogue } from '@runback/catalogue';
export * from '@runback/checks';
export * from '@runback/geometry';
export {
  type Catalogue,
  editJob,
  formatDegrees,
  formatLength,
  formatMm,
  formatPath,
  type Job,
  type JobEdit,
  JobError,
  type JobIssue,
  type JobUnit,
  jobSchema,
  type LengthStyle,
  type Line,
  parseLength,
  parsePath,
  plainUnit,
  type ResolvedJob,
  resolve,
} from '@runback/job';
export { parseJob, type ReadOptions, workUp } from './work-up.ts';
