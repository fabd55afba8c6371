import { type Bend, RADIUS_MM } from '@runback/geometry';
import { type Bender, type Die, fromMm } from '@runback/job';
import { withCorner } from '../edits.ts';
import { finding, unjudged } from '../finding.ts';
import { dieOf } from '../straights-of.ts';
import type { Cure, Finding } from '../types.ts';
import { list, say } from '../words.ts';
import type { Work } from '../work.ts';
import { bendPlace } from './bend-place.ts';
import { dials } from './dial.ts';

const CHECK = 'die';
const RACK = "the job: the bender's dies";
const SOLID = 'geometry: at a centreline radius of OD/2 the inside of the bend has no length left';

/** A die in the rack for every bend, a dial it can reach, and a radius larger than half the OD. */
export function die(work: Work): Finding[] {
  const { line, centreline } = work;
  if (centreline.bends.length === 0) {
    const message = 'No bend, no die.';
    return [finding({ check: CHECK, verdict: 'pass', message, found: 0, unit: 'count', basis: RACK })];
  }
  return [...tooTight(work), ...(line.bender === null ? noBender() : inRack(work, line.bender))];
}

const noBender = (): Finding[] => [
  unjudged(CHECK, 'No bender is named: whether a die makes these bends is not judged.', { basis: RACK }),
];

function tooTight(work: Work): Finding[] {
  const { line, centreline } = work;
  const least = line.tube.od / 2;
  return centreline.bends.flatMap((bend, i) =>
    bend.radius > least
      ? []
      : [
          finding({
            check: CHECK,
            ...bendPlace(work, bend, i),
            verdict: 'fail',
            message:
              `B${i + 1} has radius ${say(bend.radius, line.units)}: it must be more than half the OD, ` +
              `${say(least, line.units)}.`,
            found: bend.radius,
            limit: least,
            unit: 'mm',
            cure: radiusCure(work, bend),
            basis: SOLID,
          }),
        ],
  );
}

function inRack(work: Work, bender: Bender): Finding[] {
  const { line } = work;
  const fits = bender.dies.filter((d) => Math.abs(d.od - line.tube.od) <= RADIUS_MM);
  if (fits.length === 0) {
    const message = `Bender "${bender.id}" has no die for tube of OD ${say(line.tube.od, line.units)}.`;
    return [
      finding({
        check: CHECK,
        verdict: 'fail',
        message,
        found: 0,
        limit: 1,
        unit: 'count',
        path: `${bender.path}.dies`,
        basis: RACK,
      }),
    ];
  }
  return [...notInRack(work, bender, fits), ...dials(work)];
}

function notInRack(work: Work, bender: Bender, fits: readonly Die[]): Finding[] {
  const { line, centreline } = work;
  return centreline.bends.flatMap((bend, i) => {
    if (dieOf(line, centreline, i) !== null) return [];
    const near = nearest(fits, bend.radius);
    return [
      finding({
        check: CHECK,
        ...bendPlace(work, bend, i),
        verdict: 'fail',
        message:
          `B${i + 1} wants radius ${say(bend.radius, line.units)}: no die of bender "${bender.id}" makes it ` +
          `(${list(fits.map((d) => say(d.radius, line.units)))} for this tube).`,
        found: bend.radius,
        limit: near.radius,
        unit: 'mm',
        cure: radiusCure(work, bend),
        basis: RACK,
      }),
    ];
  });
}

const nearest = (dies: readonly Die[], radius: number): Die =>
  [...dies].sort((a, b) => Math.abs(a.radius - radius) - Math.abs(b.radius - radius))[0]!;

/** The nearest die of the rack whose radius fits at the corner. */
function radiusCure({ line, tools }: Work, bend: Bend): Cure | null {
  const [point] = bend.points;
  if (tools === null || point === undefined || bend.points.length > 1) return null;
  const dies = (line.bender?.dies ?? [])
    .filter((d) => Math.abs(d.od - line.tube.od) <= RADIUS_MM && d.radius > line.tube.od / 2)
    .sort((a, b) => Math.abs(a.radius - bend.radius) - Math.abs(b.radius - bend.radius));
  for (const chosen of dies) {
    const value = fromMm(chosen.radius, line.units);
    const cure = tools.attempt(
      withCorner(line, point, { radius: chosen.radius, die: chosen }),
      {
        text: `Bend point ${point} on the die of radius ${say(chosen.radius, line.units)}.`,
        edits: [{ path: `${line.corners[point]!.path}.radius`, value }],
      },
      () => true,
    );
    if (cure !== null) return cure;
  }
  return null;
}
