/** Parts of pieces. */
import { arcRadial, arcTangent } from './arc.ts';
import { piecePoint } from './path.ts';
import type { Piece } from './types.ts';

/** The part of a piece between two distances along the line, held to the piece; it keeps its distances along the line. */
export function pieceBetween(piece: Piece, from: number, to: number): Piece {
  const start = Math.max(piece.start, Math.min(from, piece.end));
  const end = Math.max(start, Math.min(to, piece.end));
  if (start === piece.start && end === piece.end) return piece;
  const length = end - start;
  const ends = { from: piecePoint(piece, start), to: piecePoint(piece, end), length, start, end };
  if (piece.kind === 'straight') return { ...piece, ...ends };
  const t = (start - piece.start) / piece.radius;
  return { ...piece, ...ends, u: arcRadial(piece, t), v: arcTangent(piece, t), angle: length / piece.radius };
}
