/** All checks of one line, in the order they are reported: the costly one last. Those between lines are in `line-to-line.ts`. */
import { fillet } from '@runback/geometry';
import type { Line } from '@runback/job';
import { clearance } from './checks/clearance.ts';
import { clips } from './checks/clips.ts';
import { cornersFit } from './checks/corner-fit.ts';
import { die } from './checks/die.ts';
import { flare } from './checks/flare.ts';
import { nuts } from './checks/nuts.ts';
import { air, pockets } from './checks/pockets.ts';
import { portDirection } from './checks/port-direction.ts';
import { pressure } from './checks/pressure.ts';
import { rigidEnds } from './checks/rigid-ends.ts';
import { selfClearance } from './checks/self-clearance.ts';
import { slope } from './checks/slope.ts';
import { stock } from './checks/stock.ts';
import { straights } from './checks/straights.ts';
import { thermal } from './checks/thermal.ts';
import { wall } from './checks/wall.ts';
import { prepare } from './prepare.ts';
import { stickCheck } from './runs/of-line.ts';
import { softened } from './soften.ts';
import type { Finding } from './types.ts';
import type { Check, Work } from './work.ts';

const CHECKS: readonly Check[] = [
  ({ centreline }) => [cornersFit(centreline.bends.length)],
  straights,
  die,
  slope,
  pockets,
  air,
  clearance,
  rigidEnds,
  clips,
  wall,
  pressure,
  thermal,
  nuts,
  flare,
  portDirection,
  stock,
  stickCheck,
  selfClearance,
];

/** They only tell, and never fail: no cure is refused for what they say. */
const TELLING: ReadonlySet<Check> = new Set([pockets, air, thermal]);
const FAILING = CHECKS.filter((check) => !TELLING.has(check));

/** What every check says of a line. */
export const judge = (work: Work): Finding[] => [...judging(work, CHECKS)];

/** The findings one by one, so that whoever has heard enough can stop before the costly checks at the end. */
function* judging(work: Work, checks: readonly Check[]): Generator<Finding> {
  for (const check of checks) {
    for (const finding of check(work)) yield softened(work.line.service, finding);
  }
}

/** What may fail, without cures, from the line alone; null when its corners do not fit. */
export function judgeLine(line: Line): Iterable<Finding> | null {
  const filleted = fillet(line.corners);
  return filleted.ok ? judging(prepare(line, filleted.centreline), FAILING) : null;
}
