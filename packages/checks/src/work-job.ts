import type { ResolvedJob } from '@runback/job';
import { verdictOf, worst } from './finding.ts';
import { deepFreeze } from './freeze.ts';
import { type Around, beside } from './line-to-line.ts';
import { WorkMemory } from './memory.ts';
import { joinedBy } from './runs/joined.ts';
import { withRuns } from './runs/on-lines.ts';
import { softened } from './soften.ts';
import type { WorkedJob, WorkedLine, WorkOptions } from './types.ts';

/**
 * Works a whole job: every line, every run of lines, and every two lines against each other. Frozen and JSON-able, millimetres and
 * radians. What is wrong for the shop is a finding, never thrown. With a `memory` from the last time, only lines that
 * changed since are worked; the result is the same.
 *
 * @example
 * ```ts
 * import { catalogue } from '@runback/catalogue';
 * import { workJob } from '@runback/checks';
 * import { parseJob, resolve } from '@runback/job';
 * const text = `{ "format": "runback-job", "version": 1, "title": "Pump", "units": "mm",
 *   "tubes": { "t": { "material": "stainless-304", "od": 12, "wall": 1 } },
 *   "lines": [{ "id": "back", "tube": "t", "points": [
 *     { "at": [0, 0, 0] }, { "at": [100, 0, 0], "radius": 36 }, { "at": [50, 0, 0] }] }] }`;
 * workJob(resolve(parseJob(text, { catalogue }), catalogue)).verdict; // => "fail"
 * ```
 */
export function workJob(job: ResolvedJob, options: WorkOptions = {}): WorkedJob {
  const { memory = new WorkMemory() } = options;
  const alone = memory.lines(job.lines, options);
  const runs = memory.runs(job.runs, alone, options);
  const around = { recall: memory.pair, joined: joinedBy(job.runs, alone) };
  const lines = alone.map((worked) => withRuns(together(worked, alone, around), runs));
  return deepFreeze({
    title: job.title,
    revision: job.revision,
    units: job.units,
    checksum: job.checksum,
    verdict: worst(lines.map((line) => line.verdict)),
    lines,
    runs: runs.map(({ worked }) => worked),
    surroundings: job.surroundings,
  });
}

/** A worked line with what comparing it with the others adds. */
function together(worked: WorkedLine, all: readonly WorkedLine[], around: Around): WorkedLine {
  const { rows, findings } = beside(worked, all, around);
  if (findings.length === 0) return worked;
  const [own, self] = [
    worked.clearance.filter((r) => r.kind !== 'self'),
    worked.clearance.filter((r) => r.kind === 'self'),
  ];
  const every = [...worked.findings, ...findings.map((f) => softened(worked.line.service, f))];
  return { ...worked, verdict: verdictOf(every), clearance: [...own, ...rows, ...self], findings: every };
}
