/** Points along a line close enough together to pick it by. */
import { type Centreline, type Piece, piecePoint, type Vec3 } from 'runback';

export interface Sample {
  readonly at: number;
  readonly point: Vec3;
}

const PARTS = 160;
const ARC_STEP = 0.12;

export function samplesOf({ pieces, length }: Centreline): readonly Sample[] {
  return pieces.flatMap((piece) => {
    const parts = partsOf(piece, length);
    return Array.from({ length: parts + 1 }, (_, i) => {
      const at = piece.start + (i * piece.length) / parts;
      return { at, point: piecePoint(piece, at) };
    });
  });
}

function partsOf(piece: Piece, length: number): number {
  const even = Math.ceil((piece.length / length) * PARTS);
  return Math.max(1, even, piece.kind === 'arc' ? Math.ceil(piece.angle / ARC_STEP) : 1);
}
