import { nutPassesRadius } from '@runback/bending';
import { POINT_MM } from '@runback/geometry';
import type { Line, LineEnd, Nut } from '@runback/job';
import { finding, unjudged } from '../finding.ts';
import { endStraight, isFormed } from '../straights-of.ts';
import type { Finding } from '../types.ts';
import { say } from '../words.ts';
import type { Work } from '../work.ts';

const CHECK = 'nuts';
const BASIS =
  'a nut passes a bend of radius L²/(8 × slack) or more (sagitta of its length); order of work: common practice, no source';

type End = 'A' | 'Z';

/** Nuts and sleeves that a formed end or a bend traps: which must be on before what, and whether they have room. */
export const nuts = (work: Work): Finding[] => [...atEnd(work, 'A'), ...atEnd(work, 'Z')];

const endOf = (line: Line, name: End): LineEnd => (name === 'A' ? line.endA : line.endZ);

function atEnd(work: Work, name: End): Finding[] {
  const end = endOf(work.line, name);
  if (end.nut !== null) return [withNut(work, name, end.nut)];
  if (end.sleeve !== null) return [sleeveAlone(work, name, end.sleeve.length)];
  if (!end.fitting.traps) {
    const message = `End ${name} has no nut to forget.`;
    return [
      finding({
        check: CHECK,
        verdict: 'pass',
        message,
        found: 0,
        unit: 'count',
        path: end.path,
        basis: BASIS,
      }),
    ];
  }
  const message = `End ${name} (${end.fitting.name}) traps a nut, but the job gives none: room and order are not judged.`;
  return [unjudged(CHECK, message, { path: end.path, basis: BASIS })];
}

/** Parked on its own straight, tight against the first bend, nut and sleeve must clear the formed end. */
function withNut(work: Work, name: End, nut: Nut): Finding {
  const { line, centreline } = work;
  const end = endOf(line, name);
  const found = endStraight(centreline, name);
  const limit = nut.length + (end.sleeve?.length ?? 0);
  const short = found < limit - POINT_MM;
  const both = `nut${end.sleeve ? ' and sleeve' : ''}`;
  return finding({
    check: CHECK,
    verdict: short ? 'fail' : mustGoFirst(line, name) ? 'note' : 'pass',
    message: short
      ? `The ${both} at end ${name} ${end.sleeve ? 'are' : 'is'} ${say(limit, line.units)} long, the straight there only ${say(found, line.units)}.`
      : order(work, name, both),
    found,
    limit,
    unit: 'mm',
    at: name === 'A' ? 0 : centreline.length,
    point: line.corners.at(name === 'A' ? 0 : -1)!.at,
    path: `${end.path}.nut`,
    basis: BASIS,
  });
}

/** True when the nut cannot be put on from its own end after bending: that end is formed before. */
const mustGoFirst = (line: Line, name: End): boolean =>
  isFormed(endOf(line, name)) && endOf(line, name).flareWhen === 'before';

function order(work: Work, name: End, both: string): string {
  const { line, centreline } = work;
  const { fitting, nut } = endOf(line, name);
  if (!isFormed(endOf(line, name))) return `The ${both} at end ${name} can go on after bending.`;
  if (!mustGoFirst(line, name))
    return `The ${both} at end ${name} go${both === 'nut' ? 'es' : ''} on after bending and before the ${fitting.name} is formed.`;
  const radii = centreline.bends.map((bend) => bend.radius);
  const passes = nut === null ? null : nutPassesRadius(nut, line.tube.od);
  const trapped = radii.length > 0 && passes !== null && passes > Math.min(...radii);
  const stays = trapped
    ? ` It passes no bend here${bendsItPasses(line, passes)}: keep it parked on its straight.`
    : '';
  return `Put the ${both} on before end ${name} is formed and before bending: afterwards nothing goes on there.${stays}`;
}

const bendsItPasses = (line: Line, radius: number): string =>
  Number.isFinite(radius) ? ` (it would one of radius ${say(radius, line.units)})` : '';

function sleeveAlone(work: Work, name: End, length: number): Finding {
  const found = endStraight(work.centreline, name);
  const ok = found >= length - POINT_MM;
  const { units } = work.line;
  return finding({
    check: CHECK,
    verdict: ok ? 'note' : 'fail',
    message: `End ${name} has a sleeve of ${say(length, units)} and no nut in the job; the straight there is ${say(found, units)}.`,
    found,
    limit: length,
    unit: 'mm',
    path: `${endOf(work.line, name).path}.sleeve`,
    basis: BASIS,
  });
}
