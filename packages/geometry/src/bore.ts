/** The round bore of a piece: how high its floor is, and how much of its cross-section lies under a level. */
import { ROUNDING } from './numeric.ts';
import { piecePoint, pieceTangent } from './path.ts';
import type { Piece, Vec3 } from './types.ts';
import { dot, norm, scale, sub, unit } from './vec.ts';

/** A length of bore: a piece of the centreline with its radius of bore, and which way is up. */
export interface BorePiece {
  readonly piece: Piece;
  /** Half the bore, mm. */
  readonly r: number;
  /** Unit. */
  readonly up: Vec3;
}

/** 1 where the tube lies level, 0 where it stands plumb: how much of a step across the bore is a step up. */
function across({ piece, up }: BorePiece, s: number): number {
  const t = pieceTangent(piece, s);
  return norm([t[1] * up[2] - t[2] * up[1], t[2] * up[0] - t[0] * up[2], t[0] * up[1] - t[1] * up[0]]);
}

/** Height of the lowest place of the bore's cross-section at distance `s` along the line, mm along up. */
export const floorAt = (bore: BorePiece, s: number): number =>
  dot(piecePoint(bore.piece, s), bore.up) - bore.r * across(bore, s);

/**
 * Area of a disc of radius `r` on the low side of a chord at signed distance `d` from its centre, mm²; and the first
 * moment of that area about the centre, along the direction `d` is measured in, mm³ (never positive).
 */
export function segment(r: number, d: number): { readonly area: number; readonly moment: number } {
  if (d >= r) return { area: Math.PI * r * r, moment: 0 };
  if (d <= -r) return { area: 0, moment: 0 };
  const half = Math.sqrt(r * r - d * d);
  return { area: r * r * Math.atan2(half, -d) + d * half, moment: (-2 / 3) * half * half * half };
}

/** Chords as close as this, as a part of r, have one area. */
const SAME_CHORD = 2 ** -20;

/**
 * Mean, over chords from one distance to another, of the area of the segment on the low side plus `outer` (1/mm) times
 * the size of its first moment about the centre: volume per mm of a bent bore. mm²
 */
export function meanSegment(r: number, [from, to]: readonly [number, number], outer: number): number {
  if (from >= r && to >= r) return Math.PI * r * r;
  if (Math.abs(to - from) < r * SAME_CHORD) {
    const { area, moment } = segment(r, Math.max(from, to));
    return area - outer * moment;
  }
  return (upTo(r, to, outer) - upTo(r, from, outer)) / (to - from);
}

/** The integral from −r to d. */
function upTo(r: number, d: number, outer: number): number {
  if (d <= -r) return 0;
  const square = r * r;
  if (d >= r) return Math.PI * square * (d + (outer * square) / 4);
  const half = Math.sqrt(square - d * d);
  const angle = Math.atan2(half, -d);
  const areas = d * (square * angle + d * half) + (2 / 3) * half * half * half;
  if (outer === 0) return areas;
  return areas + outer * ((d * (5 * square - 2 * d * d) * half) / 12 + (square * square * angle) / 4);
}

/**
 * Volume per mm of centreline under the level `level` (mm along up) at distance `s`, mm². In a bend the inside of the
 * bore is shorter than the centreline and the outside longer, by 1 − x/R at distance x towards the centre: so the
 * first moment of the wetted area enters with the curvature.
 */
export function wettedAt(bore: BorePiece, level: number, s: number): number {
  const { piece, r, up } = bore;
  const point = piecePoint(piece, s);
  const depth = level - dot(point, up);
  const c = across(bore, s);
  const d = c * r > Math.abs(depth) ? depth / c : depth > 0 ? r : -r;
  const { area, moment } = segment(r, d);
  if (piece.kind === 'straight' || moment === 0) return area;
  const tangent = pieceTangent(piece, s);
  const rise = unit(sub(up, scale(tangent, dot(up, tangent))));
  const inward = unit(sub(piece.centre, point));
  return area - (moment * dot(rise, inward)) / piece.radius;
}

/** Volume of a straight bore under a level between two distances along the line, mm³: in closed form. */
export function straightWetted(
  bore: BorePiece,
  level: number,
  [from, to]: readonly [number, number],
): number {
  const { piece, r, up } = bore;
  const slant = 1 / Math.max(ROUNDING, across(bore, from));
  const chord = (s: number): number => (level - dot(piecePoint(piece, s), up)) * slant;
  return (to - from) * meanSegment(r, [chord(from), chord(to)], 0);
}
