/** Signed dimensions to check while bending and after it, from the exact shape. Millimetres and radians. */
import {
  addScaled,
  type Centreline,
  distance,
  dot,
  frameAt,
  fromRows,
  pointAt,
  rotate,
  scale,
  sub,
  type Vec3,
} from '@runback/geometry';
import type { LengthStyle, Line } from '@runback/job';
import { endOf, formedBefore } from './ends.ts';
import { endWords, isLevel, offToolPlane, otherEnd, sayHeight } from './say.ts';
import { sideOf, stanceOf } from './stance.ts';
import { SHALLOW_RAD, viewNote } from './turn-checks.ts';
import type { BendCheck, BendPlan, DimensionChecks, EndName, FinalCheck, FlatHeight } from './types.ts';

/** A check that reads less than this different for the wrong way cannot tell it. mm; judgement, no source. */
export const TELLS_MM = 3;
/** A height under this is no good check; a taller one along the tube is taken instead. mm; judgement, no source. */
const GOOD_HEIGHT_MM = 10;

/** A bend of a shape: where it lies along the finished centreline from START, and how much the tube grows in it. */
export interface ShapeBend {
  readonly start: number;
  readonly end: number;
  readonly turn: number | null;
  readonly angle: number;
  readonly stretch: number;
}

/** A line as it is made: in the START frame, with the tube it is made from. */
export interface Shape {
  readonly from: EndName;
  readonly bends: readonly ShapeBend[];
  readonly centreline: Centreline;
  /** Sawn length, and what of it lies before the finished START end and behind the finished FREE end. */
  readonly sawn: number;
  readonly startExtra: number;
  readonly freeExtra: number;
}

/**
 * The dimensions to check at the bench, of the exact plan (`roundPlan` gives the same for the rounded one).
 *
 * Before each bend is pulled: how far the START end stands off the tool plane, and on which side; end-to-end
 * cannot show a turn made the wrong way, this can (`tells`). After each bend: end-to-end. When all is done:
 * end-to-end and two signed heights: with the plane of the first bend flat that of the FREE end, with the plane of
 * the last bend flat that of the START end (bends under 20° left out where there are others).
 */
export function checkDimensions(line: Line, plan: BendPlan): DimensionChecks {
  const bends = plan.rows.map((row) => ({ ...row, stretch: (row.die?.stretch ?? 0) * row.angle }));
  const centreline = fromRows(plan.rows, plan.lastStraight);
  const { from, cutLength: sawn, startExtra, freeExtra } = plan;
  return checksOf(line, { from, bends, centreline, sawn, startExtra, freeExtra }, line.units);
}

/** The same of any shape. */
export function checksOf(line: Line, shape: Shape, unit: LengthStyle): DimensionChecks {
  return {
    rows: shape.bends.map((_, i) => bendCheck({ line, shape, unit }, i)),
    final: finalCheck(shape, unit),
  };
}

/** Normal of a bend, taken in the middle of it: its ends may belong to its neighbours too. */
const normalOf = ({ centreline, bends }: Shape, i: number): Vec3 =>
  frameAt(centreline, (bends[i]!.start + bends[i]!.end) / 2).normal;

interface Checking {
  readonly line: Line;
  readonly shape: Shape;
  readonly unit: LengthStyle;
}

function bendCheck({ line, shape, unit }: Checking, i: number): BendCheck {
  const bend = i + 1;
  const endToEnd = endToEndAfter(line, shape, i);
  const turn = shape.bends[i]!.turn;
  if (turn === null)
    return { bend, over: null, overIfWrongWay: null, tells: false, side: null, words: null, endToEnd };
  const here = frameAt(shape.centreline, shape.bends[i]!.start);
  const start = sub(pointAt(shape.centreline, 0), here.point);
  const normal = normalOf(shape, i);
  const over = dot(start, normal) + 0;
  const overIfWrongWay = dot(start, rotate(normal, here.tangent, -2 * turn)) + 0;
  const stance = stanceOf(line.bender?.bench ?? null);
  const side = isLevel(over, unit) ? null : sideOf(scale(stance.plane, over));
  const off = offToolPlane(over, side, unit);
  const words = `end ${shape.from} ${off}${viewNote(stance, shape.from)}`;
  return {
    bend,
    over,
    overIfWrongWay,
    tells: Math.abs(over - overIfWrongWay) >= TELLS_MM,
    side,
    words,
    endToEnd,
  };
}

/** START end to FREE end after bend i, as they are then: an end formed before bending is finished, else sawn. */
function endToEndAfter(line: Line, shape: Shape, i: number): number {
  const { bends, centreline, from } = shape;
  const grown = bends.slice(0, i + 1).reduce((sum, bend) => sum + bend.stretch, 0);
  const freeCut = formedBefore(endOf(line, otherEnd(from))) ? shape.freeExtra : 0;
  const left = shape.sawn + grown - shape.startExtra - freeCut - bends[i]!.end;
  const startLeft = formedBefore(endOf(line, from)) ? 0 : shape.startExtra;
  const first = frameAt(centreline, 0);
  const last = endFrame(shape, i);
  return distance(
    addScaled(first.point, first.tangent, -startLeft),
    addScaled(last.point, last.tangent, left),
  );
}

/** Place and travel at the end of bend i. */
function endFrame({ centreline, bends }: Shape, i: number): { point: Vec3; tangent: Vec3 } {
  const { point, tangent } = frameAt(centreline, bends[i]!.end);
  return { point, tangent };
}

/**
 * What to check on the finished tube: end-to-end, and two signed heights.
 *
 * Lay the tube with the plane of a bend flat so that, going from START to FREE, that bend curves to the LEFT: up
 * is then its normal. With bend 1 so, the height of the FREE end; with the last bend so, that of the START end.
 * Bends under 20° do not lie firmly in their plane and are passed over where there are others. Where a height is
 * under 10 mm, the middle of the bend that stands highest is taken instead. An end on a leg of the bend that lies
 * flat is level whatever was bent, so its height is left out. A tube of the other hand reads each height with the
 * opposite sign, however it is laid.
 */
function finalCheck(shape: Shape, unit: LengthStyle): FinalCheck {
  const { centreline, bends, from } = shape;
  const endToEnd = distance(pointAt(centreline, 0), pointAt(centreline, centreline.length));
  const all = bends.map((_, i) => i);
  const firm = all.filter((i) => bends[i]!.angle >= SHALLOW_RAD);
  const lie = firm.length > 0 ? firm : all;
  if (lie.length === 0) return { endToEnd, heights: [] };
  const asked: readonly FlatAsk[] = [
    { flat: lie[0]!, end: otherEnd(from), unit },
    { flat: lie.at(-1)!, end: from, unit },
  ];
  const heights = asked
    .map((ask) => ({ ask, height: heightOver(shape, ask) }))
    .filter(({ ask, height }) => !('end' in height.of && onItsLeg(shape, ask)))
    .map(({ height }) => height);
  return { endToEnd, heights };
}

/** The end's own leg is a leg of the bend laid flat. */
const onItsLeg = ({ bends, from }: Shape, { flat, end }: FlatAsk): boolean =>
  flat === (end === from ? 0 : bends.length - 1);

interface FlatAsk {
  readonly flat: number;
  readonly end: EndName;
  readonly unit: LengthStyle;
}

function heightOver(shape: Shape, { flat, end, unit }: FlatAsk): FlatHeight {
  const { centreline, bends, from } = shape;
  const level = pointAt(centreline, bends[flat]!.start);
  const up = normalOf(shape, flat);
  const heightAt = (s: number): number => dot(sub(pointAt(centreline, s), level), up) + 0;
  let best: Pick<FlatHeight, 'of' | 'height'> = {
    of: { end },
    height: heightAt(end === from ? 0 : centreline.length),
  };
  if (Math.abs(best.height) < GOOD_HEIGHT_MM)
    bends.forEach((bend, i) => {
      const height = heightAt((bend.start + bend.end) / 2);
      if (Math.abs(height) > Math.abs(best.height) + TELLS_MM) best = { of: { bend: i + 1 }, height };
    });
  const flatBend = flat + 1;
  return { flatBend, ...best, words: flatWords({ flatBend, ...best }, from, unit) };
}

function flatWords(
  { flatBend, of, height }: Omit<FlatHeight, 'words'>,
  from: EndName,
  unit: LengthStyle,
): string {
  const what = 'end' in of ? endWords(of.end) : `middle of bend ${of.bend}`;
  const said = isLevel(height, unit)
    ? 'level'
    : `${sayHeight(height, unit)} ${height > 0 ? 'ABOVE' : 'BELOW'}`;
  return `bend ${flatBend} flat, curving LEFT as you go from ${endWords(from)}: ${what} ${said}`;
}
