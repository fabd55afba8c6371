/** Dips of the distance between two pieces of one line of which only some places are far enough apart to count. */
import { pieceBetween } from './closest-part.ts';
import { offerPieces } from './closest-pieces.ts';
import type { Best } from './distance-best.ts';
import { piecePoint, pieceTangent } from './path.ts';
import type { Piece } from './types.ts';
import { dot, norm, sub } from './vec.ts';

/** Two pieces of a line, the first before the second, and how far apart places must be. */
export interface Legs {
  readonly a: Piece;
  readonly b: Piece;
  readonly apart: number;
}

/** A part of each, by distance along the line. */
interface Cell {
  readonly a0: number;
  readonly a1: number;
  readonly b0: number;
  readonly b1: number;
}

/**
 * Offers the dips inside both pieces, by halving: parts of which all places count are asked in full; parts of
 * which none do, that lie too far from each other, or across which the distance only rises or only falls, are
 * dropped. It ends: a part that shrinks onto places exactly `apart` apart comes within two tolerances of their
 * distance, which is known to one.
 */
export function offerDips(best: Best, legs: Legs, cell: Cell): void {
  const { a, b, apart } = legs;
  const { a0, a1, b0, b1 } = cell;
  if (b1 - a0 <= apart || hopeless(best, legs, cell)) return;
  if (b0 - a1 >= apart) {
    offerPieces(best, pieceBetween(a, a0, a1), pieceBetween(b, b0, b1));
    return;
  }
  if (a1 - a0 >= b1 - b0) {
    const middle = (a0 + a1) / 2;
    offerDips(best, legs, { a0, a1: middle, b0, b1 });
    offerDips(best, legs, { a0: middle, a1, b0, b1 });
  } else {
    const middle = (b0 + b1) / 2;
    offerDips(best, legs, { a0, a1, b0, b1: middle });
    offerDips(best, legs, { a0, a1, b0: middle, b1 });
  }
}

/**
 * True when a cell holds no dip that matters. With g the gap between the middles and t a tangent there: half the
 * derivative of the squared distance along a piece is g·t, and over the cell it changes by no more than both halves
 * are long, and g times how far t turns. And the distance itself is at least that along g, which falls by no more
 * than the halves reach along g and bulge.
 */
function hopeless(best: Best, { a, b }: Legs, { a0, a1, b0, b1 }: Cell): boolean {
  const [s, t] = [(a0 + a1) / 2, (b0 + b1) / 2];
  const [p, q] = [(a1 - a0) / 2, (b1 - b0) / 2];
  const gap = sub(piecePoint(b, t), piecePoint(a, s));
  const d = norm(gap);
  if (best.surpassed(d - p - q)) return true;
  const along = Math.abs(dot(gap, pieceTangent(a, s)));
  const across = Math.abs(dot(gap, pieceTangent(b, t)));
  const [m, n] = [p * curvature(a), q * curvature(b)];
  if (along > p + q + d * m || across > p + q + d * n) return true;
  return d > 0 && best.surpassed(d - (along * p + across * q) / d - (m * p + n * q) / 2);
}

const curvature = (piece: Piece): number => (piece.kind === 'arc' ? 1 / piece.radius : 0);
