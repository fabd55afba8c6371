/** Places along a Centreline. Distances run along the line from point 0 (end A), mm. */
import { arcPoint, arcRadial, arcTangent } from './arc.ts';
import { POINT_MM } from './numeric.ts';
import type { Centreline, Frame, Piece, Vec3 } from './types.ts';
import { addScaled, anyNormal } from './vec.ts';

/**
 * The point of a piece at distance `s` along the whole line (so between `piece.start` and `piece.end`; held to
 * them outside), mm. At both ends it is exactly `from` and `to`.
 */
export function piecePoint(piece: Piece, s: number): Vec3 {
  if (s <= piece.start) return piece.from;
  if (s >= piece.end) return piece.to;
  const along = s - piece.start;
  if (piece.kind === 'straight') return addScaled(piece.from, piece.direction, along);
  return arcPoint(piece, along / piece.radius);
}

/** The unit vector of travel A→Z of a piece at distance `s` along the whole line (held to the piece outside it). */
export function pieceTangent(piece: Piece, s: number): Vec3 {
  if (piece.kind === 'straight') return piece.direction;
  return arcTangent(piece, angleAt(piece, s));
}

/** Angle from the start of an arc to distance `s` along the whole line; exactly its `angle` at its end. */
function angleAt(arc: Piece & { kind: 'arc' }, s: number): number {
  if (s >= arc.end) return arc.angle;
  return Math.max(0, s - arc.start) / arc.radius;
}

/**
 * The point at distance `s` along the line from end A, mm.
 * @throws RangeError when `s` is not on the line (1e-6 mm beyond an end still counts as that end).
 * @example
 * import { fromRows, pointAt } from '@runback/geometry';
 * pointAt(fromRows([], 100), 25); // => [25, 0, 0]
 */
export function pointAt(c: Centreline, s: number): Vec3 {
  const at = onLine(c, s, 'pointAt');
  return piecePoint(c.pieces[pieceIndexAt(c, at)]!, at);
}

/**
 * Where the line is and which way it goes at distance `s` from end A: point (mm), unit tangent A→Z, and the unit
 * normal (d_in × d_out) of the last bend that starts at or before `s`; before the first bend, that of the first;
 * on a line without bends, some unit vector square to it, always the same.
 * @throws RangeError when `s` is not on the line (1e-6 mm beyond an end still counts as that end).
 * @example
 * import { frameAt, fromRows } from '@runback/geometry';
 * const line = fromRows([{ straightBefore: 40, turn: null, angle: Math.PI / 2, radius: 60 }], 40);
 * frameAt(line, line.length); // => { "point": [100, 100, 0], "tangent": [0, 1, 0], "normal": [0, 0, 1] }
 */
export function frameAt(c: Centreline, s: number): Frame {
  const at = onLine(c, s, 'frameAt');
  const index = pieceIndexAt(c, at);
  const piece = c.pieces[index]!;
  const tangent = pieceTangent(piece, at);
  // Piece 2k+1 is bend k, and the straight 2k follows bend k − 1.
  const bend = c.bends[Math.max(0, Math.floor((index - 1) / 2))];
  return { point: piecePoint(piece, at), tangent, normal: bend?.normal ?? anyNormal(tangent) };
}

/** Index of the piece at distance `s`: at a joint the later one, so that a bend holds its own start. Binary search. */
function pieceIndexAt(c: Centreline, s: number): number {
  let [low, high] = [0, c.pieces.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (c.pieces[middle]!.start <= s) low = middle;
    else high = middle - 1;
  }
  return low;
}

function onLine(c: Centreline, s: number, caller: string): number {
  if (!(s >= -POINT_MM && s <= c.length + POINT_MM))
    throw new RangeError(`${caller}: distance must be from 0 to ${c.length} mm, got ${s}`);
  return Math.min(Math.max(s, 0), c.length);
}

/**
 * The part of the line between two distances from end A, mm: whole pieces, the first and the last clipped, all
 * keeping their true `start` and `end` along the line. Pieces of length 0 are left out, unless nothing else is
 * left: then it is one straight of length 0 at that place.
 * @throws RangeError when a distance is not on the line or `from` lies beyond `to`.
 */
export function subPath(c: Centreline, from: number, to: number): readonly Piece[] {
  const [a, b] = [onLine(c, from, 'subPath'), onLine(c, to, 'subPath')];
  if (a > b) throw new RangeError(`subPath: from must be <= to, got ${from} and ${to} mm`);
  const parts: Piece[] = [];
  if (a < b)
    for (let i = pieceIndexAt(c, a); i < c.pieces.length && c.pieces[i]!.start < b; i++) {
      const piece = c.pieces[i]!;
      if (piece.length > 0 && piece.end > a)
        parts.push(clipped(piece, Math.max(a, piece.start), Math.min(b, piece.end)));
    }
  return parts.length > 0 ? parts : [placeOnly(c, a)];
}

function clipped(piece: Piece, start: number, end: number): Piece {
  if (start === piece.start && end === piece.end) return piece;
  const [from, to, length] = [piecePoint(piece, start), piecePoint(piece, end), end - start];
  if (piece.kind === 'straight') return { ...piece, from, to, length, start, end };
  const t = angleAt(piece, start);
  const [u, v] = [arcRadial(piece, t), arcTangent(piece, t)];
  return { ...piece, from, to, u, v, angle: length / piece.radius, length, start, end };
}

function placeOnly(c: Centreline, s: number): Piece {
  const { point, tangent } = frameAt(c, s);
  return { kind: 'straight', from: point, to: point, direction: tangent, length: 0, start: s, end: s };
}
