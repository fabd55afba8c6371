/** The line that the rounded numbers give: marks back to straights, dial back to bends. Millimetres and radians. */
import { ANGLE_RAD, type Row } from '@runback/geometry';
import { type LengthStyle, toDegrees, toRadians } from '@runback/job';
import { DIAL_STEP_DEG, roundDialDeg, roundLength, roundLengthUp, roundTurnDeg } from './rounding.ts';
import { angleFor } from './spring-back.ts';
import { SHALLOW_RAD } from './turn-checks.ts';
import type { BendPlan, PlanRow } from './types.ts';

/** A row as rounded and as it then comes out. `start` and `end` run along the finished line from START. */
export interface ReworkedRow extends Row {
  readonly mark: number;
  readonly turnDeg: number | null;
  readonly dialDeg: number;
  readonly start: number;
  readonly end: number;
  /** How much the tube grows in this bend. */
  readonly stretch: number;
}

export interface ReworkOptions {
  readonly unit: LengthStyle;
  /** From the end the tape hooks on to the finished START end: 0 when that is formed before bending. */
  readonly hookExtra: number;
  /** Working numbers of bends whose turn is made exactly half. */
  readonly snap: readonly number[];
  /** Turns after a shallow bend to whole degrees, not to fives. */
  readonly fineTurns: boolean;
}

/**
 * Rounds the rows and works the line again from what is printed.
 *
 * The mark gives the start of the bend: mark − hookExtra + markOffset + stretch of the bends before, as they come
 * out. The dial gives the bend by the inverse of the spring-back. A dial never rounds a bend away, and a mark
 * whose bend would begin inside the last one goes up instead of down.
 */
export function rework(plan: BendPlan, options: ReworkOptions): readonly ReworkedRow[] {
  const rows: ReworkedRow[] = [];
  let stretch = 0;
  for (const row of plan.rows) {
    const before = rows.at(-1);
    const at = {
      shift: options.hookExtra - stretch - (row.die?.markOffset ?? 0),
      earliest: before?.end ?? 0,
    };
    const { mark, start } = roundMark(row.markFinished + options.hookExtra, at, options.unit);
    const dialDeg = dialOf(row);
    const angle = angleFor(toRadians(dialDeg), row.die);
    const turnDeg = turnOf(row, plan.rows[row.bend - 2], options);
    const grows = (row.die?.stretch ?? 0) * angle;
    rows.push({
      mark,
      turnDeg,
      dialDeg,
      straightBefore: start - at.earliest,
      turn: turnDeg === null ? null : toRadians(turnDeg),
      angle,
      radius: row.radius,
      start,
      end: start + row.radius * angle,
      stretch: grows,
    });
    stretch += grows;
  }
  return rows;
}

/** `shift` is what a mark is ahead of the start of its bend. */
function roundMark(
  wanted: number,
  { shift, earliest }: { readonly shift: number; readonly earliest: number },
  unit: LengthStyle,
): { readonly mark: number; readonly start: number } {
  const nearest = roundLength(wanted, unit);
  const mark = nearest - shift < earliest ? roundLengthUp(earliest + shift, unit) : nearest;
  return { mark, start: Math.max(mark - shift, earliest) };
}

/** The dial in degrees, at least so far that something of the bend is left, at most short of a whole turn. */
function dialOf(row: PlanRow): number {
  let dialDeg = roundDialDeg(row.dial);
  const most = toDegrees(row.dial) + DIAL_STEP_DEG;
  while (angleFor(toRadians(dialDeg), row.die) <= ANGLE_RAD && dialDeg < most) dialDeg += DIAL_STEP_DEG;
  while (angleFor(toRadians(dialDeg), row.die) >= 2 * Math.PI) dialDeg -= DIAL_STEP_DEG;
  return dialDeg;
}

function turnOf(row: PlanRow, before: PlanRow | undefined, options: ReworkOptions): number | null {
  if (row.turn === null || before === undefined) return null;
  if (options.snap.includes(row.bend)) return 180;
  return roundTurnDeg(row.turn, !options.fineTurns && before.angle < SHALLOW_RAD);
}
