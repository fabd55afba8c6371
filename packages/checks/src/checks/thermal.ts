import { CAUTION } from '@runback/bending';
import { norm, POINT_MM } from '@runback/geometry';
import type { JobUnit, Line } from '@runback/job';
import { finding, unjudged } from '../finding.ts';
import type { LineThermal } from '../fluid-types.ts';
import type { Finding } from '../types.ts';
import { sayBoth, thickness } from '../words.ts';
import type { Work } from '../work.ts';
import { sayDifference } from '../worked/facts-say.ts';
import { THERMAL_BASIS } from '../worked/facts-thermal.ts';

const CHECK = 'thermal';

type Leg = NonNullable<LineThermal['leg']>;

/** Whether the bends of a line held at both ends take its growth, where the job gives a range of temperature. */
export function thermal({ line, estimates }: Work): Finding[] {
  const { temperature } = line.duty;
  if (temperature === null || !line.endA.rigid || !line.endZ.rigid) return [];
  const found = estimates().thermal;
  const path = (temperature.highest ?? temperature.lowest ?? temperature.fitted).path;
  const shared = { path, basis: THERMAL_BASIS };
  if (found === null || found.leg === null)
    return [unjudged(CHECK, `Whether its bends take the heat is not judged: ${missing(line)}.`, shared)];
  const { leg, movement, deltaK } = found;
  const grows = `${deltaK < 0 ? 'Cooled' : 'Warmed'} by ${sayDifference(deltaK, line.units)}, end Z wants to move ${thickness(norm(movement), line.units)}`;
  return [
    finding({
      ...shared,
      check: CHECK,
      verdict: leg.takes ? 'pass' : 'note',
      message: `${grows}; ${legWords(leg, line.units)}: ${CAUTION}.`,
      found: leg.length,
      limit: leg.needed,
      unit: 'mm',
    }),
  ];
}

function legWords({ takes, length, needed }: Leg, units: JobUnit): string {
  const [is, wanted] = sayBoth(length, needed, units);
  if (length <= POINT_MM)
    return takes ? 'no leg gives, and the metal itself takes it' : `no leg gives, one of ${wanted} is needed`;
  return takes
    ? `its leg of ${is} takes it, ${wanted} needed`
    : `its leg of ${is} is too short to take it, ${wanted} needed`;
}

function missing({ tube, duty }: Line): string {
  if (!duty.temperature?.lowest && !duty.temperature?.highest)
    return 'the job gives no lowest or highest temperature';
  const { expansion, youngs } = tube.material;
  if (expansion === null) return `how ${tube.material.name} expands is not known`;
  if (youngs === null) return `the modulus of ${tube.material.name} is not known`;
  return `neither allowable stress nor yield strength of ${tube.material.name} is known`;
}
