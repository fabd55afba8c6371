/** From the text of a job file to a Job, or to every fault in it. */
import type { Catalogue } from './catalogue-types.ts';
import { checksum } from './checksum.ts';
import { lookAtLines } from './faults/lines.ts';
import { Look } from './faults/look.ts';
import { lookAtReferences } from './faults/references.ts';
import { lookAtRuns } from './faults/runs.ts';
import { lookAtShop } from './faults/shop.ts';
import { lookAtSurroundings } from './faults/surroundings.ts';
import { describe, type Fault, faultPath, JobError, type JobIssue } from './issue.ts';
import { JOB_FORMAT, JOB_VERSION, migrate, versionOf } from './migrate.ts';
import { type JobInput, type JobValues, job as jobOf } from './schema/job.ts';
import { readLoose } from './schema/prune.ts';
import { faultsOf, valueAt } from './schema/words.ts';
import { readSource, type Source } from './source.ts';
import type { JobUnit } from './types.ts';

/** A job that was read without a fault. To change one, change its text and read it again. */
export interface Job {
  readonly text: string;
  /** Name of the file as handed in, or null. */
  readonly file: string | null;
  readonly checksum: string;
  readonly units: JobUnit;
  readonly title: string;
  /** As written: the job's units and degrees. */
  readonly written: JobInput;
  /** As read: millimetres and radians. */
  readonly values: JobValues;
}

export interface ParseOptions {
  /** What tubes, materials, fittings and services a job may name besides its own. */
  readonly catalogue: Catalogue;
  /** Name of the file, put in front of every fault. */
  readonly file?: string;
}

/**
 * Reads the text of a job file. A fault of syntax stops; all other faults are reported together, each with its
 * place and in plain words.
 * @throws JobError with every fault found; whatever the text is, nothing else is thrown for it.
 * @example
 * ```ts
 * import { catalogue } from '@runback/catalogue';
 * import { JobError, parseJob } from '@runback/job';
 * let said = '';
 * try {
 *   parseJob('{ "format": "runback-job", "version": 1, "units": "mm", "line": [] }', { catalogue });
 * } catch (error) {
 *   said = error instanceof JobError ? error.issues.map(({ message }) => message).join('; ') : '';
 * }
 * said; // => "this key is missing; unknown key \"line\": did you mean \"lines\"?"
 * ```
 */
export function parseJob(text: string, options: ParseOptions): Job {
  const file = options.file ?? null;
  const read = readSource(text);
  if (!read.ok) throw new JobError([{ path: '', ...read.fault, file }]);
  const { source } = read;
  const { faults, values } = judge(source, options.catalogue);
  if (values === null || faults.length > 0) throw new JobError(issuesOf(faults, source, file));
  const written = source.data as JobInput;
  const { units, title = 'Untitled' } = values;
  return { text, file, checksum: checksum(text), units, title, written, values };
}

const LOOKS = [lookAtReferences, lookAtShop, lookAtSurroundings, lookAtLines, lookAtRuns];

interface Judged {
  readonly faults: readonly Fault[];
  readonly values: JobValues | null;
}

function judge(source: Source, catalogue: Catalogue): Judged {
  const foreign = foreignFault(source.data);
  if (foreign) return { faults: [foreign], values: null };
  const data = migrate(source.data);
  const unit: JobUnit = valueAt(data, ['units']) === 'in' ? 'in' : 'mm';
  const read = jobOf({ unit, loose: false }).safeParse(data);
  const ofSchema = read.success ? [] : read.error.issues.flatMap((issue) => faultsOf(issue, data));
  const left = read.success ? read.data : readLoose(data, unit);
  const deeper: Fault[] = [];
  if (left !== null) {
    const look = new Look(left, catalogue, data);
    for (const lookAt of LOOKS) lookAt(look);
    deeper.push(...look.faults);
  }
  return { faults: [...source.faults, ...ofSchema, ...deeper], values: read.success ? read.data : null };
}

/** A file that is no job of this version at all: said alone, not buried among its consequences. */
function foreignFault(data: unknown): Fault | null {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    const message = 'a job file holds one object in braces';
    return { at: [], on: 'value', message, expected: 'an object { … }', got: describe(data) };
  }
  const format = valueAt(data, ['format']);
  if (format !== undefined && format !== JOB_FORMAT) {
    const message = 'this is not a job file';
    return { at: ['format'], on: 'value', message, expected: `"${JOB_FORMAT}"`, got: describe(format) };
  }
  const version = versionOf(data);
  if (version === null || version <= JOB_VERSION) return null;
  const message = 'this job was written by a newer Runback: bring Runback up to date to read it';
  const expected = `version ${JOB_VERSION} or older`;
  return { at: ['version'], on: 'value', message, expected, got: `version ${version}` };
}

function issuesOf(faults: readonly Fault[], source: Source, file: string | null): readonly JobIssue[] {
  const issues = faults.map((fault): JobIssue => {
    const { message, expected, got } = fault;
    return { path: faultPath(fault), ...source.place(fault), expected, got, message, file };
  });
  return issues.toSorted((a, b) => a.line - b.line || a.column - b.column);
}
