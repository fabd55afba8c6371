/** The same line read from the other end, of the other hand, or moved. */
import { arcRadial, arcTangent } from './arc.ts';
import { UNIT_OFF } from './numeric.ts';
import { advanceClock } from './turn.ts';
import type { Bend, Centreline, Mat3, Piece, Vec3 } from './types.ts';
import { add, cross, distance, dot, norm, sub } from './vec.ts';

/** A rotation (proper: no mirror) about the origin, then a shift in mm. */
export interface RigidMotion {
  readonly rotation: Mat3;
  readonly shift: Vec3;
}

/** −a without making −0 of 0. */
const opposite = (a: Vec3): Vec3 => sub([0, 0, 0], a);

/**
 * The same line travelled from Z to A: pieces and bends in the other order, each turn kept (it goes to the bend
 * on the other side of its straight). Distances run from the old end Z. A bend keeps the numbers of the points
 * it rounds, so that point 3 on the drawing is still point 3.
 * @example
 * import { fromRows, reversed } from '@runback/geometry';
 * const line = fromRows([{ straightBefore: 40, turn: null, angle: 1, radius: 60 }], 25);
 * reversed(line).bends[0].straightBefore; // => 25
 */
export function reversed(c: Centreline): Centreline {
  const pieces = reversedPieces(c.pieces);
  const turns = c.bends.map(({ turn }) => turn).reverse();
  let clock = 0;
  const bends = c.bends.toReversed().map((bend, i): Bend => {
    // turns[i] belongs to the bend before this one in the new order.
    const turn = i === 0 ? null : turns[i - 1]!;
    clock = advanceClock(clock, turn ?? 0);
    const piece = 2 * i + 1;
    const [before, arc] = [pieces[piece - 1]!, pieces[piece]!];
    const place = { start: arc.start, end: arc.end, straightBefore: before.length, piece, turn, clock };
    return { ...bend, ...place, normal: opposite(bend.normal), points: bend.points.toReversed() };
  });
  return { pieces, bends, length: pieces.at(-1)?.end ?? 0 };
}

/** Pieces travelled the other way, in the other order; `start` and `end` run from 0 at what was the far end. */
export function reversedPieces(pieces: readonly Piece[]): readonly Piece[] {
  let at = 0;
  return pieces.toReversed().map((piece) => {
    const start = at;
    at += piece.length;
    return { ...turnedAround(piece), start, end: at };
  });
}

function turnedAround(piece: Piece): Piece {
  const { from: to, to: from } = piece;
  if (piece.kind === 'straight') return { ...piece, from, to, direction: opposite(piece.direction) };
  const u = arcRadial(piece, piece.angle);
  const v = opposite(arcTangent(piece, piece.angle));
  return { ...piece, from, to, u, v, normal: opposite(piece.normal) };
}

/**
 * The line of the opposite hand: mirrored in the plane where coordinate `axis` (0 x, 1 y, 2 z) equals `offset` mm.
 * Every turn changes sign but half turns and zeros; nothing else in the rows changes.
 * @throws RangeError when `offset` is not finite.
 * @example
 * import { fromRows, mirrored } from '@runback/geometry';
 * mirrored(fromRows([], 100), 0, 30).pieces[0].to; // => [-40, 0, 0]
 */
export function mirrored(c: Centreline, axis: 0 | 1 | 2, offset: number): Centreline {
  if (!Number.isFinite(offset)) throw new RangeError(`mirrored: offset must be finite, got ${offset}`);
  const point = (a: Vec3): Vec3 => withAxis(a, axis, 2 * offset - a[axis]);
  const direction = (a: Vec3): Vec3 => withAxis(a, axis, 0 - a[axis]);
  // d_in × d_out of the mirrored directions is minus the mirrored normal.
  const normal = (a: Vec3): Vec3 => opposite(direction(a));
  const pieces = c.pieces.map((piece) => mapped(piece, { point, direction, normal }));
  let clock = 0;
  const bends = c.bends.map((bend): Bend => {
    const turn = bend.turn === null || bend.turn === Math.PI ? bend.turn : 0 - bend.turn;
    clock = advanceClock(clock, turn ?? 0);
    return { ...bend, turn, clock, normal: normal(bend.normal) };
  });
  return { pieces, bends, length: c.length };
}

function withAxis(a: Vec3, axis: 0 | 1 | 2, value: number): Vec3 {
  return [axis === 0 ? value : a[0], axis === 1 ? value : a[1], axis === 2 ? value : a[2]];
}

/**
 * The line rotated about the origin and then shifted (mm). Lengths, angles and turns are taken over as they are.
 * @throws RangeError when `rotation` is not a proper rotation.
 * @example
 * import { fromRows, moved } from '@runback/geometry';
 * const quarterAboutZ = [[0, -1, 0], [1, 0, 0], [0, 0, 1]];
 * moved(fromRows([], 100), { rotation: quarterAboutZ, shift: [5, 0, 0] }).pieces[0].to; // => [5, 100, 0]
 */
export function moved(c: Centreline, { rotation, shift }: RigidMotion): Centreline {
  checkRotation(rotation);
  const direction = (a: Vec3): Vec3 => [dot(rotation[0], a), dot(rotation[1], a), dot(rotation[2], a)];
  const point = (a: Vec3): Vec3 => add(direction(a), shift);
  const pieces = c.pieces.map((piece) => mapped(piece, { point, direction, normal: direction }));
  const bends = c.bends.map((bend) => ({ ...bend, normal: direction(bend.normal) }));
  return { pieces, bends, length: c.length };
}

type Change = (a: Vec3) => Vec3;

function mapped(
  piece: Piece,
  {
    point,
    direction,
    normal,
  }: { readonly point: Change; readonly direction: Change; readonly normal: Change },
): Piece {
  const ends = { from: point(piece.from), to: point(piece.to) };
  if (piece.kind === 'straight') return { ...piece, ...ends, direction: direction(piece.direction) };
  const axes = { u: direction(piece.u), v: direction(piece.v), normal: normal(piece.normal) };
  return { ...piece, ...ends, ...axes, centre: point(piece.centre) };
}

function checkRotation(rotation: Mat3): void {
  const [a, b, c] = rotation;
  const off = Math.max(
    Math.abs(norm(a) - 1),
    Math.abs(norm(b) - 1),
    Math.abs(dot(a, b)),
    distance(cross(a, b), c),
  );
  if (!(off < UNIT_OFF))
    throw new RangeError(`moved: rotation must be a proper rotation, got [${rotation.join('], [')}]`);
}
