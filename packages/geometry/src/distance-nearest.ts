import { pointToPiece } from './closest-point.ts';
import type { Pair } from './distance-best.ts';
import { piecePoint } from './path.ts';
import type { Nearest, Piece } from './types.ts';

/** A pair of places on two paths as plain data, with the points on both. */
export function nearestOf({ distance, at, piece, across, otherAt }: Pair): Nearest {
  const point = piecePoint(piece, at);
  const second = across as Piece;
  if (otherAt !== undefined) return { distance, at, point, other: piecePoint(second, otherAt), otherAt };
  const foot = pointToPiece(point, second);
  return { distance, at, point, other: foot.point, otherAt: foot.at };
}
