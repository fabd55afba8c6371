/** From a job to its lines, nothing left to look up. */
import type { Catalogue } from '../catalogue-types.ts';
import type { Job } from '../parse.ts';
import type { MirroredValues } from '../schema/job.ts';
import type { Line, ResolvedJob } from '../types.ts';
import { axesOf } from './axes.ts';
import { lineOf } from './line.ts';
import { mirrorOf } from './mirror.ts';
import { runOf } from './runs.ts';
import type { Shelf } from './shelf.ts';
import { surroundingsOf } from './surroundings.ts';

/**
 * Looks everything up: tubes, dies, fittings, services, limits and distances, each figure with its source and, where
 * the job gave it, its path. Out come millimetres and radians. `catalogue` is the one the job was read with.
 * @throws RangeError when the job names something that is in neither: it was read with another catalogue.
 * @example
 * ```ts
 * import { catalogue } from '@runback/catalogue';
 * import { parseJob, resolve } from '@runback/job';
 * const text = `{ "format": "runback-job", "version": 1, "units": "in",
 *   "tubes": { "half": { "material": "stainless-304", "od": "1/2", "wall": 0.049 } },
 *   "lines": [{ "id": "vent", "tube": "half", "points": [{ "at": [0, 0, 0] }, { "at": [0, 0, "3 7/32"] }] }] }`;
 * const { lines } = resolve(parseJob(text, { catalogue }), catalogue);
 * [lines[0].tube.od, lines[0].corners[1].at[2]]; // => [12.7, 81.75625]
 * ```
 */
export function resolve(job: Job, catalogue: Catalogue): ResolvedJob {
  const shelf: Shelf = { job: job.values, catalogue };
  const axes = axesOf(job.values.up, job.values.forward);
  if (typeof axes === 'string') throw new RangeError(`resolve: up and forward make no axes (${axes})`);
  const measured = new Map<string, Line>();
  for (const [i, values] of job.values.lines.entries())
    if ('points' in values) measured.set(values.id, lineOf(shelf, { values, i, axes }));
  const lines = job.values.lines.map((values, i) =>
    'points' in values ? found(measured, values.id) : mirrored(shelf, values, { i, measured }),
  );
  return {
    title: job.title,
    revision: job.values.revision ?? null,
    units: job.units,
    axes,
    lines,
    runs: (job.values.runs ?? []).map((values, i) => runOf(shelf, values, i)),
    surroundings: surroundingsOf(shelf, null),
    checksum: job.checksum,
  };
}

function found(measured: ReadonlyMap<string, Line>, id: string): Line {
  const line = measured.get(id);
  if (!line) throw new RangeError(`resolve: no line ${JSON.stringify(id)} in the job`);
  return line;
}

interface MirrorHolder {
  readonly i: number;
  readonly measured: ReadonlyMap<string, Line>;
}

const mirrored = (shelf: Shelf, values: MirroredValues, { i, measured }: MirrorHolder): Line =>
  mirrorOf(shelf, { values, i, source: found(measured, values.mirrorOf) });
