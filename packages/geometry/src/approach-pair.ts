/** Two pieces of one line of which only some places are far enough apart along the line to count. */
import { ChordGap } from './approach-chord.ts';
import { type Legs, offerDips } from './approach-dip.ts';
import { pieceBetween } from './closest-part.ts';
import { offerPieces } from './closest-pieces.ts';
import { pointToPiece } from './closest-point.ts';
import { leastOf } from './closest-search.ts';
import { Best } from './distance-best.ts';
import { piecePoint } from './path.ts';

/**
 * Offers the closest places of two pieces at least `apart` along the line apart; `a` is not after `b`. When all
 * their places are, this is the plain closest approach. Otherwise the least is at one of: places exactly `apart`
 * apart (`offerChord`), an end of either piece (`offerEnds`), or a dip inside both, where the distance is level
 * along either.
 */
export function offerApart(best: Best, legs: Legs): void {
  const { a, b, apart } = legs;
  if (b.end - a.start < apart) return;
  if (b.start - a.end >= apart) {
    offerPieces(best, a, b);
    return;
  }
  offerEnds(best, legs);
  // Within one straight or one arc the distance has no dip inside.
  if (a === b) return;
  if (a.kind === 'straight' && b.kind === 'straight') offerStraightDip(best, legs);
  else offerDips(best, legs, { a0: a.start, a1: a.end, b0: b.start, b1: b.end });
}

/** Offers the closest places exactly `apart` apart with the first on a and the second on b. */
export function offerChord(best: Best, { a, b, apart }: Legs): void {
  const from = Math.max(a.start, b.start - apart);
  const to = Math.min(a.end, b.end - apart);
  if (!(to >= from)) return;
  const gap = new ChordGap(a, b, { from, apart });
  // Within one piece the chord is the same everywhere.
  const length = a === b ? 0 : to - from;
  const found = leastOf(gap, length, { cut: best.cut(from), tolerance: best.tolerance });
  if (found === null) return;
  const offer = (distance: number, at: number) =>
    best.offer({ distance, at, piece: a, across: b, otherAt: at + apart });
  offer(found.first, from);
  offer(found.value, from + found.t);
}

/** From each end of either piece to the places of the other that count. */
function offerEnds(best: Best, { a, b, apart }: Legs): void {
  for (const at of [a.start, a.end]) {
    const end = at === a.start ? a.from : a.to;
    if (at + apart > b.end || best.beaten(pointToPiece(end, b).distance, at)) continue;
    const foot = pointToPiece(end, pieceBetween(b, at + apart, b.end));
    best.offer({ distance: foot.distance, at, piece: a, across: b, otherAt: foot.at });
  }
  for (const at of [b.start, b.end]) {
    const end = at === b.start ? b.from : b.to;
    if (at - apart < a.start || best.beaten(pointToPiece(end, a).distance, a.start)) continue;
    const foot = pointToPiece(end, pieceBetween(a, a.start, at - apart));
    best.offer({ distance: foot.distance, at: foot.at, piece: a, across: b, otherAt: at });
  }
}

/** The distance of two straights has one dip at most: if it does not count, none does. */
function offerStraightDip(best: Best, { a, b, apart }: Legs): void {
  const own = new Best(best.tolerance);
  offerPieces(own, a, b);
  const pair = own.found;
  const foot = pointToPiece(piecePoint(a, pair.at), b);
  if (foot.at - pair.at >= apart) best.offer(pair);
}
