import { arcPoint, arcTangent } from './arc.ts';
import { assemble, isNoLength, type LooseArc, type LooseStraight } from './assemble.ts';
import type { CornerPoint } from './corners.ts';
import { ANGLE_RAD, PARALLEL, POINT_MM } from './numeric.ts';
import { cleanTurn } from './turn.ts';
import type { Arc, Centreline, Row, Vec3 } from './types.ts';
import { addScaled, cross, dot, norm, rotate, sinCos, unit } from './vec.ts';

/** Where a line given by rows begins: point 0 (mm), travel there, and the normal of its first bend. */
export interface Placement {
  readonly origin: Vec3;
  readonly direction: Vec3;
  readonly normal: Vec3;
}

/** Point 0 at the origin, travel along +X, the first bend leaves toward +Y. */
export const defaultPlacement: Placement = { origin: [0, 0, 0], direction: [1, 0, 0], normal: [0, 0, 1] };

/**
 * The bend rows of a line, from A to Z, and its last straight: what defines it without a place in space. mm, radians.
 * @example
 * import { fromRows, rowsOf } from '@runback/geometry';
 * rowsOf(fromRows([{ straightBefore: 40, turn: null, angle: 1, radius: 60 }], 30)).lastStraight; // => 30
 */
export function rowsOf(c: Centreline): { readonly rows: readonly Row[]; readonly lastStraight: number } {
  const rows = c.bends.map(({ straightBefore, turn, angle, radius }) => ({
    straightBefore,
    turn,
    angle,
    radius,
  }));
  return { rows, lastStraight: c.pieces.at(-1)?.length ?? 0 };
}

/**
 * The line that rows describe, exactly, mm and radians. Angles may be anything in (0, 2π), turns any finite angle
 * (brought into (−π, π]); the turn of the first row is `null`, as it has no bend before it. The direction of
 * `placement` need not be unit; its normal is made square to it. A bend's `points` are indices into `cornersOf`.
 * @throws RangeError on a straight < 0, an angle outside (0, 2π), a radius not > 0, a turn missing or given on the
 * first row, or a placement whose normal is parallel to its direction.
 * @example
 * import { fromRows } from '@runback/geometry';
 * const quarter = Math.PI / 2;
 * fromRows([
 *   { straightBefore: 40, turn: null, angle: quarter, radius: 60 },
 *   { straightBefore: 10, turn: quarter, angle: quarter, radius: 60 },
 * ], 40).pieces.at(-1).to; // => [100, 130, 100]
 */
export function fromRows(
  rows: readonly Row[],
  lastStraight: number,
  placement: Placement = defaultPlacement,
): Centreline {
  const straights: LooseStraight[] = [];
  const arcs: LooseArc[] = [];
  let { origin: at, direction, normal } = squared(placement);
  let corner = 1;
  rows.forEach((row, i) => {
    checkRow(row, i);
    const straight = straightFrom(at, direction, row.straightBefore);
    normal = squareTo(direction, rotate(normal, direction, row.turn ?? 0));
    const arc = arcFrom(straight.to, { direction, normal, row });
    const parts = partsOf(row.angle);
    const points = Array.from({ length: parts }, (_, k) => corner + k);
    corner += parts;
    straights.push(straight);
    arcs.push({ ...arc, points, turn: row.turn === null ? null : cleanTurn(row.turn) });
    at = arc.to;
    direction = unit(arcTangent(arc, arc.angle));
  });
  checkLength(lastStraight, 'last straight');
  straights.push(straightFrom(at, direction, lastStraight));
  return assemble({ straights, arcs });
}

function straightFrom(from: Vec3, direction: Vec3, asked: number): LooseStraight {
  if (isNoLength(asked)) return { from, to: from, direction, length: 0 };
  return { from, to: addScaled(from, direction, asked), direction, length: asked };
}

function arcFrom(
  from: Vec3,
  { direction: v, normal, row }: { readonly direction: Vec3; readonly normal: Vec3; readonly row: Row },
): Omit<LooseArc, 'points' | 'turn'> {
  const { radius, angle } = row;
  const u = cross(v, normal);
  const circle = { from, centre: addScaled(from, u, -radius), normal, u, v, radius, angle };
  return { ...circle, to: arcPoint(circle, angle) };
}

function squared(placement: Placement): Placement {
  const direction = unit(placement.direction);
  const normal = unit(placement.normal);
  if (norm(cross(direction, normal)) < PARALLEL)
    throw new RangeError(`fromRows: normal must not be parallel to direction, got [${normal.join(', ')}]`);
  return { origin: placement.origin, direction, normal: squareTo(direction, normal) };
}

const squareTo = (direction: Vec3, normal: Vec3): Vec3 =>
  unit(addScaled(normal, direction, -dot(normal, direction)));

function checkRow({ straightBefore, turn, angle, radius }: Row, i: number): void {
  checkLength(straightBefore, `straight before row ${i}`);
  if (!(angle > ANGLE_RAD && angle < 2 * Math.PI))
    throw new RangeError(`fromRows: angle of row ${i} must be between 0 and 2π, got ${angle}`);
  if (!(radius > 0 && radius < Number.POSITIVE_INFINITY))
    throw new RangeError(`fromRows: radius of row ${i} must be > 0 mm, got ${radius}`);
  if (i === 0 ? turn !== null : turn === null || !Number.isFinite(turn))
    throw new RangeError(`fromRows: turn of row ${i} must be ${i === 0 ? 'null' : 'a number'}, got ${turn}`);
}

function checkLength(length: number, what: string): void {
  if (!(length >= -POINT_MM && length < Number.POSITIVE_INFINITY))
    throw new RangeError(`fromRows: ${what} must be >= 0 mm, got ${length}`);
}

/** From here on a bend is given by several corners: the set-back of one would run away towards 180°. 170°. */
const SPLIT = (170 * Math.PI) / 180;

/** Into how many equal corners of less than 170° a bend is split. */
const partsOf = (angle: number): number => Math.floor(angle / SPLIT) + 1;

/**
 * The points and radii that `fillet` rounds into this line, mm: both ends (radius 0) and every corner. A bend of
 * 170° or more becomes equal corners of less than that, which `fillet` makes one bend again.
 * @example
 * import { cornersOf, fromRows } from '@runback/geometry';
 * const uBend = fromRows([{ straightBefore: 50, turn: null, angle: Math.PI, radius: 60 }], 50);
 * cornersOf(uBend).length; // => 4
 */
export function cornersOf(c: Centreline): readonly CornerPoint[] {
  const inner = c.pieces.flatMap((piece) => (piece.kind === 'arc' ? cornersOfArc(piece) : []));
  return [{ at: c.pieces[0]!.from, radius: 0 }, ...inner, { at: c.pieces.at(-1)!.to, radius: 0 }];
}

function cornersOfArc(arc: Arc): readonly CornerPoint[] {
  const parts = partsOf(arc.angle);
  const part = arc.angle / parts;
  const [sine, cosine] = sinCos(part);
  const setback = (arc.radius * sine) / (1 + cosine);
  return Array.from({ length: parts }, (_, k) => ({
    at: addScaled(arcPoint(arc, k * part), arcTangent(arc, k * part), setback),
    radius: arc.radius,
  }));
}
