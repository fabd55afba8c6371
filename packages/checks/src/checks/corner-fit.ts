import { distance, fillet, type Misfit } from '@runback/geometry';
import { type Corner, fromMm, type Line } from '@runback/job';
import { moveText } from '../cures/move-text.ts';
import { pointEdit, pointFromJob, pointInJob, tidyPoint, withCorner } from '../edits.ts';
import { finding } from '../finding.ts';
import type { Cure, Finding } from '../types.ts';
import { say } from '../words.ts';

const CHECK = 'corner-fit';
const BASIS =
  'geometry: each bend takes radius × tan(half its angle) of the leg on either side of its corner';
const HALF_TURN_DEG = 180;

/** What to say of the corners of a line that do not fit: one finding each, each with the smallest cure known. */
export const cornerMisfits = (line: Line, misfits: readonly Misfit[]): Finding[] =>
  misfits.map((misfit) =>
    misfit.reason === 'turns-back' ? turnsBack(line, misfit) : tooShort(line, misfit),
  );

/** All corners fit: how many were rounded. */
export const cornersFit = (bends: number): Finding =>
  finding({
    check: CHECK,
    verdict: 'pass',
    message: bends === 0 ? 'No corner to round.' : 'Every corner has room for its bend.',
    found: bends,
    unit: 'count',
    basis: BASIS,
  });

function turnsBack(line: Line, misfit: Misfit): Finding {
  return finding({
    check: CHECK,
    verdict: 'fail',
    message: `Corner at point ${misfit.point} turns straight back on itself: no bend can do that.`,
    found: HALF_TURN_DEG,
    limit: HALF_TURN_DEG,
    unit: 'deg',
    point: cornerOf(line, misfit).at,
    path: `${cornerOf(line, misfit).path}.at`,
    cure: moveCure(line, misfit),
    basis: BASIS,
  });
}

function tooShort(line: Line, misfit: Misfit): Finding {
  const { units } = line;
  const [from, to] = misfit.leg;
  const largest =
    misfit.largestRadius > 0
      ? `the largest radius that fits there is ${say(misfit.largestRadius, units)}`
      : 'no radius fits there while its neighbours keep theirs';
  return finding({
    check: CHECK,
    verdict: 'fail',
    message:
      `Corner at point ${misfit.point}, radius ${say(misfit.radius, units)}, does not fit: the leg from point ${from} ` +
      `to point ${to} is ${say(misfit.found, units)} long and needs ${say(misfit.needed, units)}; ${largest}.`,
    found: misfit.found,
    limit: misfit.needed,
    unit: 'mm',
    point: cornerOf(line, misfit).at,
    path: `${cornerOf(line, misfit).path}.at`,
    cure: moveCure(line, misfit) ?? radiusCure(line, misfit),
    basis: BASIS,
  });
}

const cornerOf = (line: Line, misfit: Misfit): Corner => line.corners[misfit.point]!;

/** True when the leg of a misfit is no longer too short, whatever else is wrong with the line. */
function legCured(line: Line, misfit: Misfit): boolean {
  const again = fillet(line.corners);
  if (again.ok) return true;
  return !again.misfits.some((m) =>
    misfit.reason === 'turns-back'
      ? m.point === misfit.point
      : m.leg[0] === misfit.leg[0] && m.leg[1] === misfit.leg[1],
  );
}

/** The move the geometry found, with readable values where those still cure. */
function moveCure(line: Line, misfit: Misfit): Cure | null {
  if (misfit.cure === null) return null;
  const { point, to } = misfit.cure;
  const was = line.corners[point]!.at;
  for (const value of [tidyPoint(line, to, was), pointInJob(line, to)]) {
    const at = pointFromJob(line, value);
    if (legCured(withCorner(line, point, { at }), misfit))
      return {
        text: moveText(line, point, { by: distance(was, at), value }),
        edits: [pointEdit(line, point, value)],
      };
  }
  return null;
}

/** A smaller die of the same rack that fits. */
function radiusCure(line: Line, misfit: Misfit): Cure | null {
  const dies = (line.bender?.dies ?? [])
    .filter((die) => die.od === line.tube.od && die.radius <= misfit.largestRadius)
    .sort((a, b) => b.radius - a.radius);
  for (const { radius } of dies) {
    if (!legCured(withCorner(line, misfit.point, { radius }), misfit)) continue;
    return {
      text: `Bend point ${misfit.point} on the die of radius ${say(radius, line.units)}.`,
      edits: [{ path: `${cornerOf(line, misfit).path}.radius`, value: fromMm(radius, line.units) }],
    };
  }
  return null;
}
