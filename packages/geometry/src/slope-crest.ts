/**
 * Slope of a line that drains to both ends from one crest.
 *
 * In one attitude a crest is chosen: an arc, which is left out because it turns through level at its crest, or one
 * of the two ends. Pieces before it are judged towards A, pieces after it towards Z, and the best choice counts:
 *   f(U) = max over k of F_k(U),   F_k = min over the other pieces.
 *
 * Every arc has a straight on both sides (perhaps of length 0, with the tangent of the joint), so F_k > 0 says the
 * line still rises where arc k starts and already falls where it ends. The rise of a tangent along an arc is a
 * sinusoid of mean 0, its zeros lie 180° apart, and an arc is less than a whole turn: so it then passes level exactly
 * once, and the arc holds a crest and no dip. Two choices cannot both be > 0: a straight between them would fall both
 * ways. So where f > 0 all over a patch it is one and the same F_k, by continuity, and its minimum is the closed form
 * of slope-piece.ts. Otherwise min f ≤ 0 (the line has failed, and the question is by how much): slope-search.ts.
 *
 * Where F_k ≤ 0 the rule that a crest arc must pass level once, rising to falling, is asked of arcs of more than 180°
 * only (start not falling, end not rising; the rest follows as above). For a smaller arc it changes nothing: left out
 * wrongly it gives no more than a crest at one of its ends would (its rise has no lowest *and* highest point inside,
 * so one of "all of it towards A", "all of it towards Z" is decided at an end, which the next straight shares), and a
 * crest at a place that still rises is improved by moving it on, to an arc that turns over or to an end.
 */
import { type Patch, patchAt } from './attitude.ts';
import { SLOPE_RAD, SLOPE_TIE_RAD } from './numeric.ts';
import { lower, type Worst, worstOfPiece } from './slope-piece.ts';
import { type Attitude, searchAttitudes } from './slope-search.ts';
import type { Piece } from './types.ts';

/** The smallest slope over a patch of a line that falls to both ends from its best crest. */
export function worstFromCrest(pieces: readonly Piece[], patch: Patch): Worst {
  const choices = crestChoices(pieces, patch);
  const sure = choices.reduce((a, b) => (clearlyLower(a, b) ? b : a));
  if (patch.single || sure.slope > 0) return sure;
  const inAttitude = (a: Attitude): Worst =>
    crestChoices(pieces, patchAt(patch.axes, a.pitch, a.roll)).reduce((x, y) => (clearlyLower(x, y) ? y : x));
  // `sure` bounds f from below; where one choice alone decides, f in that choice's worst attitude meets it.
  const seed = choices.map(inAttitude).reduce((a, b) => (clearlyLower(b, a) ? b : a));
  if (seed.slope - sure.slope <= SLOPE_RAD) return { ...seed, slope: Math.min(seed.slope, 0) };
  const found = inAttitude(searchAttitudes(pieces, patch, seed));
  const worst = clearlyLower(found, seed) ? found : seed;
  // `sure` ≤ 0 proves that the minimum is; a search that stops just above it must not say that the line drains.
  return { ...worst, slope: Math.min(worst.slope, 0) };
}

const clearlyLower = (a: Worst, b: Worst): boolean => a.slope < b.slope - SLOPE_TIE_RAD;

/** The smallest slope for each choice of crest: end A, each arc that may hold one, end Z. */
function crestChoices(pieces: readonly Piece[], patch: Patch): readonly Worst[] {
  const toA = pieces.map((piece) => worstOfPiece(piece, 'A', patch));
  const toZ = pieces.map((piece) => worstOfPiece(piece, 'Z', patch));
  const before = running(toA);
  const after = running(toZ.slice().reverse()).reverse();
  const choices = [after[0]!];
  for (let i = 1; i + 1 < pieces.length; i++) {
    const piece = pieces[i]!;
    if (piece.kind !== 'arc') continue;
    const turnsOver = piece.angle <= Math.PI || (toA[i - 1]!.slope >= 0 && toZ[i + 1]!.slope >= 0);
    if (turnsOver) choices.push(lower(before[i - 1]!, after[i + 1]!));
  }
  choices.push(before[before.length - 1]!);
  return choices;
}

/** Each the lowest of itself and those before it. */
function running(list: readonly Worst[]): Worst[] {
  let lowest = list[0]!;
  return list.map((worst) => {
    lowest = lower(lowest, worst);
    return lowest;
  });
}
