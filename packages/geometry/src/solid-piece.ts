/** The place of one piece nearest to a solid. */
import { type Body, type Measurable, measureAt, outward } from './closest-body.ts';
import { offerSearch } from './closest-pieces.ts';
import { pointToPiece } from './closest-point.ts';
import type { Best } from './distance-best.ts';
import { ROUNDING } from './numeric.ts';
import { piecePoint } from './path.ts';
import type { PlainSolid } from './solid-body.ts';
import type { Piece, Straight, Vec3 } from './types.ts';
import { dot } from './vec.ts';

/** A solid and what measures it, and the best so far. */
export interface SolidLook {
  readonly best: Best;
  readonly solid: PlainSolid;
  readonly body: Measurable | Body;
}

/** Offers the place of a piece nearest to a solid: in closed form for spheres and half-spaces, else by search. */
export function offerSolid(look: SolidLook, piece: Piece): void {
  const { best, solid, body } = look;
  if (solid.kind === 'sphere') offerAt(look, piece, pointToPiece(solid.centre, piece).at);
  else if (solid.kind === 'half-space') offerHalfSpace(look, piece, solid.normal);
  else {
    offerSearch(best, piece, body as Body);
    if (piece.kind === 'straight') offerEarlier(look, piece);
  }
}

function offerAt({ best, body }: SolidLook, piece: Piece, at: number): void {
  best.offer({ distance: measureAt(body, piecePoint(piece, at)), at, piece, across: body });
}

/** Height over a plane is a sinusoid along an arc: lowest at an end or opposite to the normal. */
function offerHalfSpace(look: SolidLook, piece: Piece, normal: Vec3): void {
  offerAt(look, piece, piece.start);
  offerAt(look, piece, piece.end);
  if (piece.kind !== 'arc') return;
  const turn = Math.atan2(-dot(normal, piece.v), -dot(normal, piece.u));
  const t = turn < 0 ? turn + 2 * Math.PI : turn;
  if (t < piece.angle) offerAt(look, piece, piece.start + t * piece.radius);
}

/**
 * Along a straight the distance to a convex solid falls, may stay, and rises: where it stays (a straight along a
 * face), the first place where it no longer falls is found by halving.
 */
function offerEarlier(look: SolidLook, piece: Straight): void {
  const { best, body } = look;
  const pair = best.pair;
  if (pair === null || pair.piece !== piece || pair.across !== body) return;
  const falls = (at: number): boolean => {
    measureAt(body, piecePoint(piece, at));
    return dot(outward(body), piece.direction) < -ROUNDING;
  };
  let [low, high] = [piece.start, pair.at];
  if (falls(Math.max(low, high - STEP_MM))) return;
  while (high - low > SHARP_MM) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (falls(middle)) low = middle;
    else high = middle;
  }
  offerAt(look, piece, falls(piece.start) ? high : piece.start);
}

/** Level parts shorter than this are a single place. mm. */
const STEP_MM = 2 ** -8;
const SHARP_MM = 2 ** -32;
