/** Places along straights and arcs at which a swept tube has a ring: only where it bends, changes colour or ends. */
import { anyNormal, type Piece, piecePoint, pieceTangent, rotate, type Vec3 } from 'runback';

export interface Ring {
  /** mm from end A. */
  readonly at: number;
  readonly point: Vec3;
  /** Unit, towards Z. */
  readonly tangent: Vec3;
  /** Unit, square to the tangent; carried along without twist. */
  readonly side: Vec3;
}

/** Places closer than this are one ring, mm: far below a pixel. */
export const SAME_RING_MM = 1e-4;

/** Largest step, radians, of a polygon in a circle of radius `radius` that stays within `chord` of it. */
export const stepWithin = (radius: number, chord: number): number =>
  4 * Math.asin(Math.sqrt(Math.min(1, chord / (2 * Math.max(radius, chord)))));

/** Sides of a polygon in a circle so that it stays within `chord` of it. */
export const sidesWithin = (radius: number, chord: number, least = 12): number =>
  Math.max(least, Math.ceil((2 * Math.PI) / stepWithin(radius, chord)));

export interface RingAsk {
  /** Radius of what is swept, mm. */
  readonly outer: number;
  /** How far a chord along the bend may lie inside the true surface, mm. */
  readonly chord: number;
  /** More places for rings, mm from end A, in any order. */
  readonly cuts?: readonly number[];
}

export function ringsAlong(pieces: readonly Piece[], { outer, chord, cuts = [] }: RingAsk): readonly Ring[] {
  const solid = pieces.filter((piece) => piece.length > 0);
  const first = solid[0];
  if (first === undefined) return [];
  const places = [...cuts].sort((a, b) => a - b);
  const rings: Ring[] = [];
  let side = startSide(solid);
  for (const piece of solid) {
    const from = side;
    const sideAt = (at: number): Vec3 =>
      piece.kind === 'straight' ? from : rotate(from, piece.normal, (at - piece.start) / piece.radius);
    for (const at of placesOf(piece, { outer, chord }, places)) {
      if (rings.length > 0 && at - rings[rings.length - 1]!.at < SAME_RING_MM) continue;
      rings.push({ at, point: piecePoint(piece, at), tangent: pieceTangent(piece, at), side: sideAt(at) });
    }
    side = sideAt(piece.end);
  }
  return rings;
}

/** In the plane of the first bend, so that rings lie alike wherever the line is. */
function startSide(pieces: readonly Piece[]): Vec3 {
  const tangent = pieceTangent(pieces[0]!, pieces[0]!.start);
  const bend = pieces.find((piece) => piece.kind === 'arc');
  return bend?.kind === 'arc' && pieces.indexOf(bend) <= 1 ? bend.normal : anyNormal(tangent);
}

function placesOf(piece: Piece, { outer, chord }: RingAsk, cuts: readonly number[]): readonly number[] {
  const inside = cuts.filter((at) => at > piece.start + SAME_RING_MM && at < piece.end - SAME_RING_MM);
  if (piece.kind === 'straight') return [piece.start, ...inside, piece.end];
  const steps = Math.max(1, Math.ceil(piece.angle / stepWithin(piece.radius + outer, chord)));
  const between = Array.from({ length: steps - 1 }, (_, i) => piece.start + ((i + 1) * piece.length) / steps);
  return [piece.start, ...[...inside, ...between].sort((a, b) => a - b), piece.end];
}
