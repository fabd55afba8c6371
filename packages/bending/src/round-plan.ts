/** The plan for the bench: rounded, worked again from the rounded numbers, in words. */
import { type Centreline, fromRows } from '@runback/geometry';
import { type Bench, type LengthStyle, type Line, toRadians } from '@runback/job';
import { checksOf, type Shape } from './check-dimensions.ts';
import { endOf, formedBefore, hookOf } from './ends.ts';
import { missOf } from './miss.ts';
import { benchOrder, trimOf } from './order.ts';
import { type ReworkedRow, rework } from './rework.ts';
import { LENGTH_STEP, roundLength } from './rounding.ts';
import { otherEnd } from './say.ts';
import { contradicts } from './stance.ts';
import { type LastLeg, legReach, turnChecks } from './turn-checks.ts';
import { turnWords } from './turn-words.ts';
import type { BenchPlan, BenchRow, BendCheck, BendPlan, MeasuredMark } from './types.ts';

export interface RoundOptions {
  /** Rounds to 0.5 mm or to the inch step of the style. Default: the units of the line. */
  readonly unit?: LengthStyle;
  /** Working numbers of bends whose turn is made exactly half ("flat jog"). Default none. */
  readonly snap?: readonly number[];
  /** Turns after a bend under 20° to 1° too (true) or to 5° whatever it costs (false). Default: to 5° where that costs little. */
  readonly fineTurns?: boolean;
}

/**
 * The plan as it is printed and done at the bench.
 *
 * Marks are rounded as cumulative lengths to 0.5 mm, or 1/32, 1/16 or 0.01 in, the dial to 0.5°, turns to 1° (5° after a bend
 * under 20°, unless that alone puts the FREE end more than 3 mm further off), a half turn after rounding is +180. Then the line is worked again from these numbers, and with
 * START and the first plane of bend held, `miss` is what that does to the FREE end. All checks are of the line so
 * worked: what the person will read who does exactly what is printed.
 * @throws RangeError when a bend to snap has no turn
 */
export function roundPlan(line: Line, plan: BendPlan, options: RoundOptions = {}): BenchPlan {
  const { unit = line.units, snap = [] } = options;
  for (const bend of snap)
    if (!(plan.rows[bend - 1]?.turn != null))
      throw new RangeError(`roundPlan: snap must name bends with a turn, got ${bend}`);
  const wanted = fromRows(plan.rows, plan.lastStraight);
  const again = (fine: boolean): Made => makeAgain(line, plan, { unit, snap, fineTurns: fine });
  const fineTurns = options.fineTurns ?? coarseCosts(again, wanted);
  const made = again(fineTurns);
  const checks = checksOf(line, made.shape, unit);
  const flat = (bend: number): BenchRow['flatJog'] =>
    missOf(makeAgain(line, plan, { unit, fineTurns, snap: [...snap, bend] }).shape.centreline, wanted);
  const context = { line, plan, unit, made: made.rows, flat };
  return {
    from: plan.from,
    free: otherEnd(plan.from),
    unit,
    step: LENGTH_STEP[unit],
    hand: line.mirror ? 'OPPOSITE HAND' : 'AS DRAWN',
    bench: usable(line.bender?.bench ?? null),
    hook: hookOf(line, plan.from),
    rows: checks.rows.map((check, i) => benchRow(context, i, check)),
    cutLength: made.shape.sawn,
    finishedLength: roundLength(plan.developedLength, unit),
    lastStraight: made.lastStraight,
    centreline: made.shape.centreline,
    miss: missOf(made.shape.centreline, wanted),
    final: checks.final,
    order: benchOrder(line, plan, unit),
  };
}

/** What fives after a shallow bend may put the FREE end off beyond what whole degrees do. Judgement, no source. mm. */
const COARSE_MAY_COST = 3;

function coarseCosts(again: (fine: boolean) => Made, wanted: Centreline): boolean {
  const off = (fine: boolean): number => missOf(again(fine).shape.centreline, wanted).distance;
  return off(false) - off(true) > COARSE_MAY_COST;
}

const usable = (bench: Bench | null): Bench | null => (bench && !contradicts(bench) ? bench : null);

interface Made {
  readonly rows: readonly ReworkedRow[];
  readonly lastStraight: number;
  readonly shape: Shape;
}

function makeAgain(line: Line, plan: BendPlan, options: Required<RoundOptions>): Made {
  const { from, startExtra, freeExtra } = plan;
  const hookExtra = formedBefore(endOf(line, from)) ? 0 : startExtra;
  const rows = rework(plan, { ...options, hookExtra });
  const sawn = roundLength(plan.cutLength, options.unit);
  const lastStraight = lastStraightOf(line, plan, { rows, sawn, unit: options.unit });
  const centreline = fromRows(rows, lastStraight);
  return { rows, lastStraight, shape: { from, bends: rows, centreline, sawn, startExtra, freeExtra } };
}

interface Ending {
  readonly rows: readonly ReworkedRow[];
  readonly sawn: number;
  readonly unit: LengthStyle;
}

/** Where the FREE end comes: at the trim mark, or where the sawn length leaves it when nothing is trimmed. */
function lastStraightOf(line: Line, plan: BendPlan, { rows, sawn, unit }: Ending): number {
  const trim = trimOf(line, plan, unit);
  if (trim !== null) return Math.max(0, trim - endOf(line, otherEnd(plan.from)).fitting.uses.value);
  const grown = rows.reduce((sum, row) => sum + row.stretch, 0);
  return Math.max(0, sawn + grown - plan.startExtra - plan.freeExtra - (rows.at(-1)?.end ?? 0));
}

interface RowContext {
  readonly line: Line;
  readonly plan: BendPlan;
  readonly unit: LengthStyle;
  readonly made: readonly ReworkedRow[];
  readonly flat: (bend: number) => BenchRow['flatJog'];
}

function benchRow({ line, plan, unit, made, flat }: RowContext, i: number, check: BendCheck): BenchRow {
  const exact = plan.rows[i]!;
  const row = made[i]!;
  const leg = lastLeg(made, i);
  const bench = line.bender?.bench ?? null;
  const { mark, turnDeg, turn, dialDeg, angle, radius, straightBefore } = row;
  const legSide = leg === null ? 1 : (Math.sign(roundLength(legReach(leg), 'mm')) as 1 | 0 | -1);
  const words = turnWords(turnDeg, bench, { from: plan.from, legSide });
  return {
    bend: exact.bend,
    bendFromA: exact.bendFromA,
    exact,
    mark,
    measured: roundMeasured(exact.measured, unit),
    turn,
    turnDeg,
    dial: toRadians(dialDeg),
    dialDeg,
    calibrated: exact.calibrated,
    angle,
    radius,
    straightBefore,
    words,
    turnCheck: leg && turnChecks(leg, bench, { from: plan.from, unit }),
    check,
    pencil: pencilOf(made, i),
    flatJog: words.offerFlat ? flat(exact.bend) : null,
  };
}

/** The leg before the last bend, or null at the first one. */
function lastLeg(made: readonly ReworkedRow[], i: number): LastLeg | null {
  const last = made[i - 1];
  const turn = made[i]?.turn;
  if (!last || turn == null) return null;
  const { angle, radius, straightBefore: straight } = last;
  return { angle, radius, straight, turn, fromStart: i === 1 };
}

const roundMeasured = ({ from, distance }: MeasuredMark, unit: LengthStyle): MeasuredMark => ({
  from,
  distance: roundLength(distance, unit),
});

/** The tube turns by minus the turn: its line goes back against the hour of the bends. */
function pencilOf(made: readonly ReworkedRow[], i: number): BenchRow['pencil'] {
  const hour = (rows: readonly ReworkedRow[]): number => {
    const sum = rows.reduce((total, row) => total + (row.turnDeg ?? 0), 0);
    return toRadians(((-sum % 360) + 360) % 360);
  };
  return { before: hour(made.slice(0, i)), after: hour(made.slice(0, i + 1)) };
}
