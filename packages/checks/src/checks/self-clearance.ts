import { POINT_MM } from '@runback/geometry';
import { selfApart } from '../clearance-rows.ts';
import { finding } from '../finding.ts';
import { bendAt, where } from '../place.ts';
import type { Finding } from '../types.ts';
import { say, sayBoth } from '../words.ts';
import type { Work } from '../work.ts';

const CHECK = 'self-clearance';
const MODEL =
  'smallest distance between places at least π/2 × (OD + limit) apart along the line, less the OD: a plain bend passes, a hairpin does not';

/** Keeps off itself where it comes back past itself. */
export function selfClearance(work: Work): Finding[] {
  const { line, centreline } = work;
  const self = work.self();
  const limit = line.clearance.self;
  const shared = {
    check: CHECK,
    limit: limit.value,
    unit: 'mm' as const,
    path: limit.path,
    basis: `${MODEL}; limit: ${limit.source}`,
  };
  if (self === null) {
    const message =
      `The line is ${say(centreline.length, line.units)} long: too short to come back to itself ` +
      `(places under ${say(selfApart(line), line.units)} apart along it are not compared).`;
    return [
      finding({
        check: CHECK,
        verdict: 'pass',
        message,
        found: centreline.length,
        limit: selfApart(line),
        unit: 'mm',
        path: limit.path,
        basis: MODEL,
      }),
    ];
  }
  const ok = self.distance >= self.keepOff - POINT_MM;
  const [found, wanted] = sayBoth(self.distance, self.keepOff, line.units);
  const how =
    self.distance < 0
      ? `runs into itself by ${say(-self.distance, line.units)}`
      : `comes back to itself no nearer than ${found}`;
  return [
    finding({
      ...shared,
      verdict: ok ? 'pass' : 'fail',
      message: `The tube ${how}, ${where(centreline, self.at)} (${wanted} wanted).`,
      found: self.distance,
      at: self.at,
      point: self.point,
      bend: bendAt(centreline, self.at),
      to: line.id,
    }),
  ];
}
