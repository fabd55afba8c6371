/** What the set-up is about now: the chosen line and the job as written. Read while rendering, so that it follows. */
import type { Job, JobEdit, JobIssue, JobUnit, Line } from 'runback';
import { store } from '../../../store/index.ts';
import { isMirror, type Written, type WrittenMeasured, type WrittenMirror } from '../edits/written.ts';

export interface JobNow {
  readonly job: Written;
  /** As read: mm and radians. */
  readonly read: Job;
  readonly units: JobUnit;
}

export interface LineNow extends JobNow {
  readonly line: Line;
  /** Index in the job's `lines`, and the path of it. */
  readonly i: number;
  readonly at: string;
  /** As written: one of its own, or the opposite hand of another. */
  readonly own: WrittenMeasured | null;
  readonly mirror: WrittenMirror | null;
}

export interface MeasuredNow extends LineNow {
  readonly own: WrittenMeasured;
}

export function jobNow(): JobNow | null {
  const read = store.job.value;
  return read === null ? null : { read, job: read.written, units: read.units };
}

export function lineNow(): LineNow | null {
  const now = jobNow();
  const line = store.line.value?.line;
  if (!now || !line) return null;
  const i = now.job.lines.findIndex(({ id }) => id === line.id);
  const written = now.job.lines[i];
  if (!written) return null;
  const own = isMirror(written) ? null : written;
  const mirror = isMirror(written) ? written : null;
  return { ...now, line, i, at: `lines[${i}]`, own, mirror };
}

/** One step of the history. */
export const change = (label: string, ...edits: readonly JobEdit[]): Promise<readonly JobIssue[]> =>
  store.edit(label, edits);

/** Sets a key of the job; undefined takes it out. */
export const set = (label: string, path: string, value: unknown): Promise<readonly JobIssue[]> =>
  change(label, { path, value });

/** A refusal before anything is edited, told as the job tells its own. */
export const refused = (message: string, expected: string): Promise<readonly JobIssue[]> =>
  Promise.resolve([{ path: '', line: 0, column: 0, expected, got: '', message, file: null }]);
