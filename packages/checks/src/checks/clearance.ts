import { POINT_MM, pathToSolid, sub, type Vec3 } from '@runback/geometry';
import type { Line, Surrounding } from '@runback/job';
import { judgedPath, keepOffOf } from '../clearance-rows.ts';
import { pushAway } from '../cures/push-away.ts';
import { finding, unjudged } from '../finding.ts';
import { bendAt, where } from '../place.ts';
import type { ClearanceRow, Finding } from '../types.ts';
import { because, list, say, sayBoth } from '../words.ts';
import type { Work } from '../work.ts';

const CHECK = 'clearance';
const MODEL = 'exact distance from the tube surface, its ends taken as round, to the solid';

/** Keeps off every surrounding; one finding for each too near, else one that names the tightest. */
export function clearance(work: Work): Finding[] {
  const { line, surroundings } = work;
  if (line.surroundings.length === 0)
    return [unjudged(CHECK, 'The job gives no surroundings: clearance is not judged.', { basis: MODEL })];
  const bad = surroundings.filter(tooNear);
  const findings = bad.map((row) => near(work, row));
  if (bad.length === 0 && surroundings.length > 0) findings.push(tightest(work));
  const skipped = line.surroundings.filter((s) => !surroundings.some((row) => row.to === s.id));
  if (skipped.length > 0) findings.push(joinedAllAlong(skipped));
  return findings;
}

const tooNear = (row: ClearanceRow): boolean => row.distance < row.keepOff - POINT_MM;

function near(work: Work, row: ClearanceRow): Finding {
  const { line, centreline } = work;
  const surrounding = surroundingOf(line, row);
  const [found, wanted] = sayBoth(row.distance, row.keepOff, line.units);
  const how =
    row.distance < 0
      ? `overlaps "${row.to}" by ${say(-row.distance, line.units)}`
      : `passes "${row.to}" at ${found}`;
  return finding({
    ...measured(work, row),
    verdict: 'fail',
    message: `The tube ${how} ${where(centreline, row.at)} (${wanted} wanted${because(surrounding.because)}).`,
    cure: cureFor(work, row, surrounding),
  });
}

function tightest(work: Work): Finding {
  const { line, centreline, surroundings } = work;
  const margin = (row: ClearanceRow): number => row.distance - row.keepOff;
  const row = [...surroundings].sort((a, b) => margin(a) - margin(b))[0]!;
  const reason = because(surroundingOf(line, row).because);
  return finding({
    ...measured(work, row),
    verdict: 'pass',
    message:
      `Clears everything given; the tightest is "${row.to}" at ${say(row.distance, line.units)}, ` +
      `${where(centreline, row.at)} (${say(row.keepOff, line.units)} wanted${reason}).`,
  });
}

function measured({ line, centreline }: Work, row: ClearanceRow) {
  const limit = keepOffOf(line, surroundingOf(line, row));
  return {
    check: CHECK,
    found: row.distance,
    limit: row.keepOff,
    unit: 'mm' as const,
    at: row.at,
    point: row.point,
    bend: bendAt(centreline, row.at),
    to: row.to,
    path: limit.path ?? surroundingOf(line, row).path,
    basis: `${MODEL}; limit: ${limit.source}`,
  };
}

const surroundingOf = (line: Line, row: ClearanceRow): Surrounding =>
  line.surroundings.find((s) => s.id === row.to)!;

function joinedAllAlong(skipped: readonly Surrounding[]): Finding {
  const names = list(skipped.map((s) => `"${s.id}"`));
  const message = `Clearance to ${names} is not judged: the whole line lies within the free part of the ends that join it.`;
  return unjudged(CHECK, message, { to: skipped[0]!.id, path: skipped[0]!.path, basis: MODEL });
}

/** The shortest push of a corner near the place, straight away from the surrounding. */
function cureFor(work: Work, row: ClearanceRow, surrounding: Surrounding) {
  const away: Vec3 =
    row.distance + work.line.tube.od / 2 > 0 ? sub(row.point, row.other) : sub(row.other, row.point);
  return pushAway(work, { at: row.at, away }, (line, centreline) => {
    const path = judgedPath(line, centreline, surrounding.id);
    return path === null || pathToSolid(path, surrounding.solid).distance - line.tube.od / 2 >= row.keepOff;
  });
}
