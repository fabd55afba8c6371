/** The exact bend plan of a line: rows from either end, marks, dial, cut length. Millimetres and radians. */
import { ANGLE_RAD, advanceClock, type Bend, type Centreline } from '@runback/geometry';
import type { Die, Line, LineEnd } from '@runback/job';
import { dialFor } from './spring-back.ts';
import type { BendPlan, EndName, MeasuredMark, PlanRow } from './types.ts';

/**
 * The exact bend plan of a line, worked from one of its ends.
 *
 * Worked from Z, the rows come in reverse, starts are measured from Z and every turn keeps its number: a turn is
 * right-hand about travel START→FREE, and turning both the order and the travel round changes it twice.
 * `mark` = start − stretch of the bends before + spare and flare use at START − markOffset of the die;
 * `cutLength` = developed length − stretch of all bends + spare and flare use at both ends.
 *
 * @param line what was asked for: dies, ends, tube
 * @param centreline its centreline, A→Z
 * @param from the end worked from
 * @throws RangeError when a bend names a point the line does not have
 * @example
 * import { bendPlan } from '@runback/bending';
 * import { catalogue } from '@runback/catalogue';
 * import { fillet } from '@runback/geometry';
 * import { parseJob, resolve } from '@runback/job';
 * const text = `{ "format": "runback-job", "version": 1, "units": "mm",
 *   "tubes": { "t": { "material": "stainless-304", "od": 12, "wall": 1 } },
 *   "lines": [{ "id": "vent", "tube": "t", "points": [
 *     { "at": [0, 0, 0] }, { "at": [0, 0, 136], "radius": 36 }, { "at": [116, 0, 136] }] }] }`;
 * const [line] = resolve(parseJob(text, { catalogue }), catalogue).lines;
 * const filleted = fillet(line.corners);
 * filleted.ok && bendPlan(line, filleted.centreline).rows.map((row) => row.mark); // => [100]
 */
export function bendPlan(line: Line, centreline: Centreline, from: EndName = 'A'): BendPlan {
  const bends = from === 'A' ? inOrder(centreline) : inReverse(centreline);
  const startExtra = extraAt(from === 'A' ? line.endA : line.endZ);
  const freeExtra = extraAt(from === 'A' ? line.endZ : line.endA);
  const rows: PlanRow[] = [];
  let stretch = 0;
  for (const bend of bends) {
    const die = dieOf(line, bend.points);
    const markFinished = bend.start - stretch - (die?.markOffset ?? 0);
    rows.push({
      ...bend,
      bend: rows.length + 1,
      clock: advanceClock(rows.at(-1)?.clock ?? 0, bend.turn ?? 0),
      mark: markFinished + startExtra,
      markFinished,
      measured: measuredMark(bend, rows.at(-1) ?? null, {
        od: line.tube.od,
        markOffset: die?.markOffset ?? 0,
      }),
      dial: dialFor(bend.angle, die),
      calibrated: (die?.springBack ?? null) !== null,
      die,
    });
    stretch += (die?.stretch ?? 0) * bend.angle;
  }
  const developedLength = centreline.length;
  const lastStraight = centreline.pieces.at(from === 'A' ? -1 : 0)!.length;
  const cutLength = developedLength - stretch + startExtra + freeExtra;
  return { from, rows, lastStraight, developedLength, cutLength, stretch, startExtra, freeExtra };
}

type PlacedBend = Pick<
  PlanRow,
  'bendFromA' | 'points' | 'straightBefore' | 'turn' | 'angle' | 'radius' | 'start' | 'end'
>;

const placed = (bend: Bend, i: number): PlacedBend => ({
  bendFromA: i + 1,
  points: bend.points,
  straightBefore: bend.straightBefore,
  turn: bend.turn,
  angle: bend.angle,
  radius: bend.radius,
  start: bend.start,
  end: bend.end,
});

const inOrder = ({ bends }: Centreline): readonly PlacedBend[] => bends.map(placed);

/** Read from Z: what was before a bend is what comes after it. */
function inReverse({ bends, length, pieces }: Centreline): readonly PlacedBend[] {
  return bends
    .map((bend, i) => ({
      ...placed(bend, i),
      straightBefore: bends[i + 1]?.straightBefore ?? pieces.at(-1)!.length,
      turn: bends[i + 1]?.turn ?? null,
      start: length - bend.end,
      end: length - bend.start,
    }))
    .reverse();
}

const extraAt = (end: LineEnd): number => end.spare.value + end.fitting.uses.value;

function dieOf(line: Line, points: readonly number[]): Die | null {
  const corner = line.corners[points[0] ?? -1];
  if (!corner) throw new RangeError(`bendPlan: bend must name a point of line ${line.id}, got [${points}]`);
  return corner.die;
}

/**
 * Where the next mark comes when it is measured on the bent tube ("bend and measure"), so that no error and no
 * stretch is carried on: the distance to lay off along the straight between the bends.
 *
 * - First bend: from the finished START end, `start − markOffset`.
 * - After a bend of 90° or more: from its back, the outermost plane of the tube square to the straight, which
 *   lies R + OD/2 behind the end of the bend: `R + OD/2 + straight − markOffset`.
 * - After a smaller bend, which has no back: from its corner, R·tan(bend/2) behind the end of the bend:
 *   `R·tan(bend/2) + straight − markOffset`.
 *
 * R and bend are those of the bend before, `markOffset` that of the die of this bend. Millimetres, radians.
 * The back is that of the bend alone: a tube that reaches back beyond it elsewhere must not be hooked on.
 * @example
 * import { measuredMark } from '@runback/bending';
 * const square = { angle: Math.PI / 2, radius: 36 };
 * measuredMark({ straightBefore: 50 }, square, { od: 12, markOffset: 5 }); // => { "from": "back", "distance": 87 }
 */
export function measuredMark(
  bend: { readonly straightBefore: number },
  before: { readonly angle: number; readonly radius: number } | null,
  { od, markOffset }: { readonly od: number; readonly markOffset: number },
): MeasuredMark {
  const along = bend.straightBefore - markOffset;
  if (before === null) return { from: 'end', distance: along };
  if (before.angle >= Math.PI / 2 - ANGLE_RAD)
    return { from: 'back', distance: before.radius + od / 2 + along };
  return { from: 'corner', distance: before.radius * Math.tan(before.angle / 2) + along };
}
