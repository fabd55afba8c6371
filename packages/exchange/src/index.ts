export { bendsCsv } from './bends-csv.ts';
export { report } from './report.ts';
export type * from './report-duty-types.ts';
export type * from './report-fluid-types.ts';
export type * from './report-types.ts';
export { reportSchema } from './schema/report-schema.ts';
export { VERSION } from './version.ts';
