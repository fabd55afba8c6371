import { distance, POINT_MM } from '@runback/geometry';
import type { Line } from '@runback/job';
import { pointEdit, pointFromJob, pointInJob, tidyPoint, withCorner } from '../edits.ts';
import type { Cure, Finding } from '../types.ts';
import type { Attempt, Cured, CureTools, Move, Seek } from '../work.ts';
import { moveText } from './move-text.ts';
import { fitsAndCured, pushed, shortestPush } from './shortest.ts';

/** Findings of a changed line without cures; null when its corners do not fit. */
export type Judge = (line: Line) => Iterable<Finding> | null;

/** Rounding a point to a readable value may just miss; then it is pushed on by these, mm, before giving up on rounding. */
const NUDGES_MM = [0, 0.01, 0.02, 0.05, 0.1];

/** Checks whose worst place may wander along the line: the rule is the same wherever it is missed. */
const WANDERING: ReadonlySet<string> = new Set(['slope', 'clearance', 'self-clearance']);

/** Which rule failed where: a cure may not add one. */
const keyOf = (f: Finding): string =>
  [f.check, WANDERING.has(f.check) ? '' : f.bend, f.to, f.path, f.unit, f.basis].join('|');

const shortfall = (f: Finding): number =>
  f.found === null || f.limit === null ? Number.POSITIVE_INFINITY : Math.abs(f.found - f.limit);

/** The failing rules and how far each is missed at worst. */
function failures(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const f of findings) {
    if (f.verdict === 'fail') found.set(keyOf(f), Math.max(found.get(keyOf(f)) ?? 0, shortfall(f)));
  }
  return found;
}

/** A clip that is misplaced anyway is moved last of all: it may be a little more so. */
const MOVED_LAST = 'clips';

/** True when the changed line fails nothing that the line did not fail, and nothing worse than it did. */
function noWorse(before: ReadonlyMap<string, number>, after: Iterable<Finding> | null): boolean {
  if (after === null) return false;
  for (const f of after) {
    if (f.verdict !== 'fail') continue;
    const was = before.get(keyOf(f));
    if (was === undefined) return false;
    if (f.check !== MOVED_LAST && shortfall(f) > was + POINT_MM) return false;
  }
  return true;
}

/** Cure tools for one line with the findings it has now. */
export function cureTools(line: Line, now: readonly Finding[], judge: Judge): CureTools {
  const before = failures(now);
  const attempt: Attempt = (changed, cure, cured) =>
    fitsAndCured(changed, cured) && noWorse(before, judge(changed)) ? cure : null;
  const seek: Seek = (moves, cured) => {
    const pushes = moves
      .map((move) => ({ move, t: shortestPush(line, move, cured) }))
      .filter((p): p is { move: Move; t: number } => p.t !== null)
      .sort((a, b) => a.t - b.t);
    for (const { move, t } of pushes) {
      const cure = written(line, { move, t, cured }, attempt);
      if (cure !== null) return cure;
    }
    return null;
  };
  return { seek, attempt };
}

/** The push as an edit with readable values that still cure; with exact ones where no readable value does. */
function written(line: Line, push: { move: Move; t: number; cured: Cured }, attempt: Attempt): Cure | null {
  const { move, t, cured } = push;
  const was = line.corners[move.point]!.at;
  const values = NUDGES_MM.map((nudge) =>
    tidyPoint(line, pushed(line, move, t + nudge).corners[move.point]!.at, was),
  );
  values.push(pointInJob(line, pushed(line, move, t).corners[move.point]!.at));
  for (const value of values) {
    const at = pointFromJob(line, value);
    const cure: Cure = {
      text: moveText(line, move.point, { by: distance(was, at), value }),
      edits: [pointEdit(line, move.point, value)],
    };
    const changed = withCorner(line, move.point, { at });
    if (fitsAndCured(changed, cured)) return attempt(changed, cure, cured);
  }
  return null;
}
