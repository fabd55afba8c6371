/** What the page asks of the worker, and what it answers. */
import type { Job, JobEdit, JobIssue, LineProfile, WorkedJob } from 'runback';
import type { ThinJob } from './thin.ts';

export interface WorkAsk {
  readonly text: string;
  /** Made in the text first. */
  readonly edits: readonly JobEdit[];
  readonly file: string;
  /** Line whose readings along its length are wanted. */
  readonly lineId: string | null;
  /** Also look for the cure of each failure: slower, asked once the hand rests. */
  readonly cures: boolean;
}

export interface Answered {
  readonly ok: true;
  /** The text that was worked, edits made. */
  readonly text: string;
  readonly job: Job;
  readonly worked: WorkedJob;
  /** Of `lineId`: the line asked for, or the first when the job has no such line; `null` when it cannot exist. */
  readonly profile: LineProfile | null;
  readonly lineId: string;
}

/** A text that cannot be read as a job. */
export interface Refused {
  readonly ok: false;
  readonly issues: readonly JobIssue[];
}

export type WorkAnswer = Answered | Refused;

/** As it comes from the worker: lines that did not change are left out. */
export type ThinAnswer = (Omit<Answered, 'worked'> & { readonly worked: ThinJob }) | Refused;

export interface JobWorker {
  work(ask: WorkAsk): ThinAnswer;
}
