/** A run of tubes joined end to end, each piece of bore at its place along the run. */
import type { BorePiece } from './bore.ts';
import type { Piece, Vec3 } from './types.ts';

/**
 * One tube of a run: its pieces from A to Z, and its bore (diameter), mm.
 * A lip is a span of its own: one straight piece of length 0, its direction along the tube, with the smaller bore.
 */
export interface BoreSpan {
  readonly pieces: readonly Piece[];
  readonly bore: number;
}

/** A piece with its place along the run. A lip has its `from` at its `to`. */
export interface PlacedBore {
  readonly bore: BorePiece;
  readonly from: number;
  readonly to: number;
}

/**
 * The pieces that have a length, and the lips, from A to Z.
 * @throws RangeError when the run is empty, or a bore is not > 0 or as large as twice the radius of a bend.
 */
export function placedBores(run: readonly BoreSpan[], up: Vec3, caller: string): readonly PlacedBore[] {
  let start = 0;
  const bores: PlacedBore[] = [];
  for (const { pieces, bore } of run) {
    if (!(bore > 0)) throw new RangeError(`${caller}: bore must be > 0 mm, got ${bore}`);
    const lip = pieces.every(({ length }) => length === 0);
    for (const piece of lip ? pieces.slice(0, 1) : pieces) {
      if (piece.kind === 'arc' && piece.radius <= bore / 2)
        throw new RangeError(
          `${caller}: the radius of a bend must be > half the bore (${bore / 2} mm), got ${piece.radius}`,
        );
      const from = start;
      start += piece.length;
      if (lip || piece.length > 0) bores.push({ bore: { piece, r: bore / 2, up }, from, to: start });
    }
  }
  if (!(start > 0)) throw new RangeError(`${caller}: a run must have at least one tube`);
  return bores;
}
