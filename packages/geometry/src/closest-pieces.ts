/** The closest places of two pieces. */
import { ArcBody } from './closest-arc.ts';
import type { Body } from './closest-body.ts';
import { Course } from './closest-course.ts';
import { pointToPiece } from './closest-point.ts';
import { BodyGap, leastOf } from './closest-search.ts';
import type { Best } from './distance-best.ts';
import { segmentBody } from './solid-box.ts';
import type { Piece, Straight } from './types.ts';
import { cross, dot, sub } from './vec.ts';

/** Straights whose directions have a squared sine below this (about 0.06°) are searched: closed forms lose digits. */
const NEARLY_PARALLEL = 2 ** -20;

/** A piece as something to measure against, made once for each piece. */
export function bodyOfPiece(piece: Piece): Body {
  const known = bodies.get(piece);
  if (known) return known;
  const body = piece.kind === 'arc' ? new ArcBody(piece) : segmentBody(piece);
  bodies.set(piece, body);
  return body;
}

const bodies = new WeakMap<Piece, Body>();

/** Offers the closest places of two pieces, as far as they can still matter. */
export function offerPieces(best: Best, a: Piece, b: Piece): void {
  if (b.kind === 'arc') offerFeet(best, a, b);
  const straights = a.kind === 'straight' && b.kind === 'straight';
  if (!straights || !offerStraights(best, a, b)) offerSearch(best, a, b);
}

/** From the ends of a to b. */
function offerEnds(best: Best, piece: Piece, across: Piece): void {
  best.offer({ distance: pointToPiece(piece.from, across).distance, at: piece.start, piece, across });
  best.offer({ distance: pointToPiece(piece.to, across).distance, at: piece.end, piece, across });
}

/** From the ends of b to a. */
function offerFeet(best: Best, piece: Piece, across: Piece): void {
  for (const end of [across.from, across.to]) {
    const foot = pointToPiece(end, piece);
    best.offer({ distance: foot.distance, at: foot.at, piece, across });
  }
}

/**
 * Two straights well across each other: their lines come closest at one place each. Where those are not both
 * within the straights, an end is nearest, and all four ends have been asked. False when they are too nearly parallel.
 */
function offerStraights(best: Best, a: Straight, b: Straight): boolean {
  offerEnds(best, a, b);
  offerFeet(best, a, b);
  const across = cross(a.direction, b.direction);
  const square = dot(across, across);
  if (square < NEARLY_PARALLEL) return false;
  const gap = sub(a.from, b.from);
  const cosine = dot(a.direction, b.direction);
  const [p, q] = [dot(gap, a.direction), dot(gap, b.direction)];
  const s = (cosine * q - p) / square;
  const t = (q - cosine * p) / square;
  if (s >= 0 && s <= a.length && t >= 0 && t <= b.length) {
    const d = Math.abs(dot(gap, across)) / Math.sqrt(square);
    best.offer({ distance: d, at: a.start + s, piece: a, across: b });
  }
  return true;
}

/** Moves along `piece` and measures against what lies across. */
export function offerSearch(best: Best, piece: Piece, across: Piece | Body): void {
  const body = 'kind' in across ? bodyOfPiece(across) : across;
  const course = new Course(piece, body);
  const range = { cut: best.cut(piece.start), tolerance: best.tolerance };
  const found = leastOf(new BodyGap(course, body), course.to, range);
  if (found === null) return;
  best.offer({ distance: found.first, at: piece.start, piece, across });
  const at = found.t === course.to ? piece.end : piece.start + found.t * course.speed;
  best.offer({ distance: found.value, at: Math.min(at, piece.end), piece, across });
}
