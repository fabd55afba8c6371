import { ANGLE_RAD } from '@runback/geometry';
import { finding, unjudged } from '../finding.ts';
import type { Finding } from '../types.ts';
import { degrees } from '../units.ts';
import { list, sayAngle } from '../words.ts';
import type { Work } from '../work.ts';
import { bendPlace } from './bend-place.ts';

const CHECK = 'die';
const RACK = "the job: the bender's dies";

/** What the dial must show against what it can. */
export function dials(work: Work): Finding[] {
  const { plan } = work;
  const made = plan.rows.filter((row) => row.die !== null);
  const limited = made.filter((row) => row.die!.maxAngle !== null);
  const findings = limited
    .filter((row) => row.dial > row.die!.maxAngle!.value + ANGLE_RAD)
    .map((row) => beyondDial(work, row));
  const bare = made.filter((row) => !row.calibrated);
  if (bare.length > 0) {
    const bends = list(bare.map((row) => `B${row.bendFromA}`));
    const message = `NOT CALIBRATED: no spring-back is set for ${bends}, so the dial shows the bend wanted. Try on scrap.`;
    findings.push(unjudged(CHECK, message, { path: bare[0]!.die!.path, basis: RACK }));
  }
  if (limited.length < made.length) {
    const message = 'The reach of the dial is not judged: the die names no largest angle (maxAngle).';
    findings.push(unjudged(CHECK, message, { path: made[0]!.die!.path, basis: RACK }));
  }
  const all = made.length === work.centreline.bends.length && limited.length === made.length;
  if (all && findings.every((f) => f.verdict !== 'fail')) findings.push(withinDial(work));
  return findings;
}

type Row = Work['plan']['rows'][number];

const dialFigures = (row: Row) => ({
  found: degrees(row.dial),
  limit: degrees(row.die!.maxAngle!.value),
  unit: 'deg' as const,
  path: row.die!.maxAngle!.path,
  basis: `the die: how far its dial goes (${row.die!.maxAngle!.source})`,
});

function beyondDial(work: Work, row: Row): Finding {
  const bend = work.centreline.bends[row.bendFromA - 1]!;
  return finding({
    check: CHECK,
    ...bendPlace(work, bend, row.bendFromA - 1),
    ...dialFigures(row),
    verdict: 'fail',
    message:
      `B${row.bendFromA} wants ${sayAngle(row.dial)} on the dial for a bend of ${sayAngle(row.angle)}; the tool ` +
      `goes to ${sayAngle(row.die!.maxAngle!.value)}.`,
  });
}

function withinDial(work: Work): Finding {
  const margin = (row: Row): number => row.die!.maxAngle!.value - row.dial;
  const [row] = [...work.plan.rows].sort((a, b) => margin(a) - margin(b));
  const bend = work.centreline.bends[row!.bendFromA - 1]!;
  return finding({
    check: CHECK,
    ...bendPlace(work, bend, row!.bendFromA - 1),
    ...dialFigures(row!),
    verdict: 'pass',
    message:
      `The rack has a die for every bend; the largest dial, at B${row!.bendFromA}, is ${sayAngle(row!.dial)} ` +
      `of ${sayAngle(row!.die!.maxAngle!.value)}.`,
  });
}
