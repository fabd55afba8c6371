import { addScaled, fillet } from '@runback/geometry';
import type { Line } from '@runback/job';
import { withCorner } from '../edits.ts';
import type { Cured, Move } from '../work.ts';
import { fits } from './fits.ts';

/** First push tried, mm, and how much farther each next one goes. */
const FIRST_MM = 0.1;
const GROWTH = 1.4;
/** The push is narrowed to this: a tenth of the step that values in a job file are rounded to. */
const NARROW_MM = 0.001;

/** The line with the point of a move pushed `t` mm along it. */
export const pushed = (line: Line, move: Move, t: number): Line =>
  withCorner(line, move.point, { at: addScaled(line.corners[move.point]!.at, move.direction, t) });

/** True when the corners of a line fit and it is cured. */
export function fitsAndCured(line: Line, cured: Cured): boolean {
  if (!fits(line.corners)) return false;
  const filleted = fillet(line.corners);
  return filleted.ok && cured(line, filleted.centreline);
}

/**
 * The shortest push that cures along one move, mm, or null: pushes grow step by step until one cures, then the gap
 * to the last that did not is halved. Where cure and fault alternate along the way it is the first found.
 */
export function shortestPush(line: Line, move: Move, cured: Cured): number | null {
  let bad = 0;
  for (let t = FIRST_MM; t <= move.farthest; t *= GROWTH) {
    if (fitsAndCured(pushed(line, move, t), cured)) return narrowed(line, move, { cured, bad, good: t });
    bad = t;
  }
  return null;
}

function narrowed(line: Line, move: Move, span: { cured: Cured; bad: number; good: number }): number {
  let { bad, good } = span;
  while (good - bad > NARROW_MM) {
    const middle = (bad + good) / 2;
    if (fitsAndCured(pushed(line, move, middle), span.cured)) good = middle;
    else bad = middle;
  }
  return good;
}
