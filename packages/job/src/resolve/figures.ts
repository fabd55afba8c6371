/** Figures with where they came from. */
import type { Sourced } from '../catalogue-types.ts';
import { formatPath, type Segment } from '../path.ts';
import type { Told } from '../quantities.ts';
import type { Figure } from '../types.ts';

const THE_JOB = 'the job';

/** A figure the job gives at `at`; `source` where the job names one. */
export const fromJob = (value: number, at: readonly Segment[], source = THE_JOB): Figure => ({
  value,
  source,
  path: formatPath(at),
});

/** A figure of the catalogue, or one that holds when nobody says otherwise. */
export const fromCatalogue = ({ value, source }: Sourced): Figure => ({ value, source, path: null });

/** The job's figure where it gives one, else the other. */
export const jobOr = <F extends Figure | null>(
  value: number | undefined,
  at: readonly Segment[],
  other: F,
): Figure | F => (value === undefined ? other : fromJob(value, at));

/** The same for a figure that may be written with a unit: its source tells it as written. */
export const fromTold = <F extends Figure | null>(
  told: Told | undefined,
  at: readonly Segment[],
  other: F,
): Figure | F => (told === undefined ? other : fromJob(told.value, at, toldSource(told)));

/** "the job: 1/4 in/ft"; a source the job names stands for "the job". */
export const toldSource = ({ text }: Told, source = THE_JOB): string =>
  text === null ? source : `${source}: ${text.trim()}`;

/** An own entry of a record; what every object inherits is none. */
export const entry = <T>(record: Readonly<Record<string, T>> | undefined, key: string): T | undefined =>
  record && Object.hasOwn(record, key) ? record[key] : undefined;
