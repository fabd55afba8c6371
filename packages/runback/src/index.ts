export * from '@runback/bending';
export { catalogue } from '@runback/catalogue';
export * from '@runback/checks';
export * from '@runback/geometry';
export {
  type Catalogue,
  formatLength,
  formatMm,
  type Job,
  JobError,
  type JobIssue,
  type JobUnit,
  jobSchema,
  type LengthStyle,
  type Line,
  parseLength,
  type ResolvedJob,
  resolve,
} from '@runback/job';
export { parseJob, type ReadOptions, workUp } from './work-up.ts';
