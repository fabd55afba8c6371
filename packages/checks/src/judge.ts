/** All checks of one line, in the order they are reported: the costly one last. Those between lines are in `line-to-line.ts`. */
import { fillet } from '@runback/geometry';
import type { Line } from '@runback/job';
import { clearance } from './checks/clearance.ts';
import { clips } from './checks/clips.ts';
import { cornersFit } from './checks/corner-fit.ts';
import { die } from './checks/die.ts';
import { flare } from './checks/flare.ts';
import { nuts } from './checks/nuts.ts';
import { portDirection } from './checks/port-direction.ts';
import { rigidEnds } from './checks/rigid-ends.ts';
import { selfClearance } from './checks/self-clearance.ts';
import { slope } from './checks/slope.ts';
import { stock } from './checks/stock.ts';
import { straights } from './checks/straights.ts';
import { wall } from './checks/wall.ts';
import { prepare } from './prepare.ts';
import { softened } from './soften.ts';
import type { Finding } from './types.ts';
import type { Check, Work } from './work.ts';

const CHECKS: readonly Check[] = [
  ({ centreline }) => [cornersFit(centreline.bends.length)],
  straights,
  die,
  slope,
  clearance,
  rigidEnds,
  clips,
  wall,
  nuts,
  flare,
  portDirection,
  stock,
  selfClearance,
];

/** What every check says of a line. */
export const judge = (work: Work): Finding[] => [...judging(work)];

/** The findings one by one, so that whoever has heard enough can stop before the costly checks at the end. */
function* judging(work: Work): Generator<Finding> {
  for (const check of CHECKS) {
    for (const finding of check(work)) yield softened(work.line.service, finding);
  }
}

/** The same without cures, from the line alone; null when its corners do not fit. */
export function judgeLine(line: Line): Iterable<Finding> | null {
  const filleted = fillet(line.corners);
  return filleted.ok ? judging(prepare(line, filleted.centreline)) : null;
}
