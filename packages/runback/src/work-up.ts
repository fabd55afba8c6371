import { catalogue as ours } from '@runback/catalogue';
import { type WorkedJob, workJob } from '@runback/checks';
import { type Catalogue, type Job, parseJob as parse, resolve } from '@runback/job';

/** Options of `parseJob` and `workUp`: name the file for messages, or bring a catalogue of your own. */
export interface ReadOptions {
  /** Name of the file, put in front of every message. */
  readonly file?: string;
  /** Materials, tubes, fittings, services and spacing to draw on. */
  readonly catalogue?: Catalogue;
}

/**
 * Reads the text of a job file.
 * @throws JobError with every fault, each with its line and column.
 */
export function parseJob(text: string, options: ReadOptions = {}): Job {
  const { catalogue = ours, file } = options;
  return parse(text, file === undefined ? { catalogue } : { catalogue, file });
}

/**
 * Works a job up from its text: every line's centreline, bend plan, slope, clearance and findings,
 * as frozen JSON-able data in millimetres and radians.
 * @throws JobError with every fault of the text. What is wrong for the shop is a finding, never thrown.
 * @example
 * import { workUp } from 'runback';
 * const job = workUp(`{ "format": "runback-job", "version": 1, "title": "Pump", "units": "mm",
 *   "tubes": { "t": { "material": "stainless-304", "od": 12, "wall": 1 } },
 *   "lines": [{ "id": "drain", "tube": "t", "points": [
 *     { "at": [0, 0, 100] }, { "at": [0, 0, 0], "radius": 36 }, { "at": [100, 0, 0] } ] }] }`);
 * Math.round(job.lines[0].centreline.length * 10); // => 1845
 */
export function workUp(text: string, options: ReadOptions = {}): WorkedJob {
  return workJob(resolve(parseJob(text, options), options.catalogue ?? ours));
}
