import { finding, unjudged } from '../finding.ts';
import type { Kept, WorstKept } from '../fluid-types.ts';
import { onlyLevel } from '../only-level.ts';
import { bendAt } from '../place.ts';
import type { Finding } from '../types.ts';
import type { Work } from '../work.ts';
import { inMl } from '../worked/facts-say.ts';
import {
  largestOf,
  linePlace,
  POCKET_MODEL,
  type Staying,
  saidAtRest,
  saidAtWorst,
  WORST_MODEL,
} from '../worked/pocket-words.ts';

const TIGHT = 'a bend is tighter than half the bore';

/** What is judged: liquid of a line that drains, or air of one that is bled. */
interface Asked extends Staying {
  readonly check: 'pockets' | 'air';
  readonly path: string | null;
}

/** Liquid that stays in a line that drains, at rest and in the worst attitude. Notes only: the fall is what fails. */
export function pockets(work: Work): Finding[] {
  const { drain } = work.line;
  if (drain === null) return [];
  const asked = askedOf(work, { check: 'pockets', what: 'liquid', outlets: drain.to, path: null });
  const found = work.pockets();
  return found === null ? [notJudged(asked)] : stays(work, asked, { kept: found.liquid, worst: found.worst });
}

/** Air that stays in a line that is bled: at rest, and where the job wants it in every attitude. */
export function air(work: Work): Finding[] {
  const { bleed } = work.line;
  if (bleed === null) return [];
  const asked = askedOf(work, { check: 'air', what: 'air', outlets: bleed.to, path: bleed.path });
  const found = work.pockets()?.air;
  return found ? stays(work, asked, { kept: found, worst: found.worst }) : [notJudged(asked)];
}

const askedOf = (work: Work, asked: Pick<Asked, 'check' | 'what' | 'outlets' | 'path'>): Asked => ({
  ...asked,
  attitudes: work.line.attitudes,
  axes: work.line.axes,
  place: linePlace(work),
  run: null,
});

const notJudged = ({ check, what, path }: Asked): Finding =>
  unjudged(check, `What ${what} stays is not worked out: ${TIGHT}.`, { path, basis: POCKET_MODEL });

interface Stays {
  readonly kept: Kept;
  readonly worst: WorstKept | null;
}

/** Of a line that is only ever level, or whose worst attitude was not looked for, there is no more to say than at rest. */
function stays(work: Work, asked: Asked, { kept, worst }: Stays): Finding[] {
  const atRest = { ...measured(work, asked, kept), ...saidAtRest(kept, asked), basis: POCKET_MODEL };
  if (worst === null || onlyLevel(asked.attitudes)) return [finding(atRest)];
  const basis = `${POCKET_MODEL}; ${WORST_MODEL}`;
  return [finding(atRest), finding({ ...measured(work, asked, worst), ...saidAtWorst(worst, asked), basis })];
}

function measured({ centreline }: Work, { check, path }: Asked, kept: Kept) {
  const most = largestOf(kept);
  return {
    check,
    found: inMl(kept.volume),
    limit: 0,
    unit: 'ml' as const,
    at: most?.lowest ?? null,
    point: most?.point ?? null,
    bend: most && bendAt(centreline, most.lowest),
    path,
  };
}
