import { fillet } from '@runback/geometry';
import type { Line } from '@runback/job';
import { cornerMisfits } from './checks/corner-fit.ts';
import { cureTools } from './cures/seek.ts';
import { verdictOf } from './finding.ts';
import { deepFreeze } from './freeze.ts';
import { judge, judgeLine } from './judge.ts';
import { prepare } from './prepare.ts';
import { stickOf } from './runs/of-line.ts';
import type { WorkedLine, WorkOptions } from './types.ts';
import type { Work } from './work.ts';
import { factsOf } from './worked/facts.ts';

const NOTHING = {
  pockets: null,
  passage: null,
  stick: null,
  facts: [],
  pressure: null,
  flow: null,
  thermal: null,
  mass: null,
} as const;

/** Default options of `workLine` and `workJob`. */
export const WORK_DEFAULTS: Required<Omit<WorkOptions, 'memory'>> = { cures: true };

/**
 * Works one line: centreline, bend plan read from A, slope, clearance and the findings of every check but the one
 * between lines. Frozen, JSON-able, millimetres and radians. A line whose corners do not fit has verdict `fail`,
 * no centreline, and only the findings that say why.
 *
 * @example
 * ```ts
 * import { catalogue } from '@runback/catalogue';
 * import { workLine } from '@runback/checks';
 * import { parseJob, resolve } from '@runback/job';
 * const text = `{ "format": "runback-job", "version": 1, "title": "Pump", "units": "mm",
 *   "tubes": { "t": { "material": "stainless-304", "od": 12, "wall": 1 } },
 *   "lines": [{ "id": "drain", "tube": "t", "points": [
 *     { "at": [0, 0, 100] }, { "at": [0, 0, 0], "radius": 36 }, { "at": [100, 0, 0] }] }] }`;
 * const [line] = resolve(parseJob(text, { catalogue }), catalogue).lines;
 * workLine(line).plan.rows.map((row) => row.straightBefore); // => [64]
 * ```
 */
export function workLine(line: Line, options: WorkOptions = {}): WorkedLine {
  const { cures } = { ...WORK_DEFAULTS, ...options };
  const filleted = fillet(line.corners);
  if (!filleted.ok) return impossible(line, cornerMisfits(line, filleted.misfits));
  const work = prepare(line, filleted.centreline, { search: cures });
  return deepFreeze(assembled(work, cures ? judgedWithCures(work) : judge(work)));
}

const impossible = (line: Line, findings: WorkedLine['findings']): WorkedLine =>
  deepFreeze({
    line,
    verdict: 'fail',
    centreline: null,
    plan: null,
    slope: null,
    clearance: [],
    ...NOTHING,
    findings,
  });

/** Judged once to know what fails, and again with the tools to look for cures that make nothing else fail. */
function judgedWithCures(work: Work): WorkedLine['findings'] {
  return judge({ ...work, tools: cureTools(work.line, judge(work), judgeLine) });
}

function assembled(work: Work, findings: WorkedLine['findings']): WorkedLine {
  const self = work.self();
  const { facts, ...stick } = stickOf(work.line, work.centreline);
  return {
    line: work.line,
    verdict: verdictOf(findings),
    centreline: work.centreline,
    plan: work.plan,
    slope: work.slope,
    clearance: [...work.surroundings, ...(self === null ? [] : [self])],
    pockets: work.pockets(),
    ...stick,
    ...work.estimates(),
    facts: factsOf(work, facts),
    findings,
  };
}
