/**
 * The attitude of a patch in which a line with a crest (slope-crest.ts) is worst, where that worst is not above 0.
 *
 * f = max over k of F_k, F_k = min over fixed tangents w (with their signs) of the slope of w. In sines sin F_k is a
 * minimum of functions w·U linear in up U: concave in space and proportional to |U|. Branch and bound over cells of
 * pitch × roll:
 * - Upper bound: f at the middle of a cell, moved onto the rim of the patch where the cell touches it.
 * - Lower bound: f ≥ any mixture Σ λ_k·sin F_k (λ ≥ 0, Σ λ = 1), and a mixture is concave too, so over the cone
 *   spanned by four corners V that hold the cell it is at least the smallest corner value m, when a point of the cell
 *   is Σ μ_v·V_v with Σ μ ≥ 1; for m < 0 the other side counts: Σ μ ≤ 1 / min V·middle. The best single F_k and the
 *   best mixture of each two are taken. One F_k alone would leave a gap as large as the cell where two of them cross
 *   (a straight that goes from falling to A over to falling to Z crosses as |x|), and 1e-9 rad would then need
 *   millions of cells; with mixtures the gap goes with the square of the cell.
 * - A meridian is a great circle; a parallel bulges away from the chord of its corners on the equator's side, so
 *   there the corners are moved towards the equator by atan(tan p·cos(half the roll of the cell)).
 * - An arc over 180° counts as crest in a cell only when it may be one at all four corners: start not falling and end
 *   not rising are linear in U as well, so it then may all over the cell.
 * Not used: the bound "an elevation changes by at most the angle of up". It is right, and its gap is as large as the cell.
 */
import { type Patch, upParts } from './attitude.ts';
import { SLOPE_RAD } from './numeric.ts';
import { bestMixture } from './slope-mixture.ts';
import { type Crests, crestSines, highest, prepareCrests } from './slope-sines.ts';
import type { Piece, Vec3 } from './types.ts';
import { add, dot, norm } from './vec.ts';

export interface Attitude {
  readonly pitch: number;
  readonly roll: number;
}

/** Part of a patch. */
export type Range = Pick<Patch, 'p0' | 'p1' | 'r0' | 'r1'>;

interface Cell extends Range {
  /** Nothing in the cell is lower than this slope. */
  readonly bound: number;
  /** Slope at its middle. */
  readonly middle: number;
}

/** Far more than any line met (hundreds): it only keeps a freak from running for ever. */
const MOST_CELLS = 20_000;
/** Widest cell to start with: a cone over wider ones is of no use, beyond 90° of roll it is none at all. */
const WIDEST = Math.PI / 4;

/**
 * The worst attitude of the patch, to SLOPE_RAD (within 1e-7 rad of plumb a sine holds a slope no better than that).
 * `seed` is an attitude and its slope to start from.
 */
export function searchAttitudes(
  pieces: readonly Piece[],
  patch: Patch,
  seed: Attitude & { readonly slope: number },
): Attitude {
  const crests = prepareCrests(pieces, patch.axes);
  const open: Cell[] = [];
  let best = seed;
  const offer = (range: Range): void => {
    const [middle, onRim] = middlesOf(range, patch).map((a) => ({ ...a, slope: slopeAtPoint(crests, a) }));
    for (const tried of [middle!, onRim!]) if (tried.slope < best.slope) best = tried;
    const bound = lowerBound(crests, range);
    if (bound < best.slope - SLOPE_RAD) open.push({ ...range, bound, middle: middle!.slope });
  };
  for (const part of startingCells(patch)) offer(part);
  for (let n = 0; n < MOST_CELLS && open.length > 0; n++) {
    const cell = takeNext(open);
    if (cell.bound >= best.slope - SLOPE_RAD) continue;
    for (const half of halves(cell)) offer(half);
  }
  return best;
}

/** Takes out the cell with the lowest bound; of practically equal ones that with the lowest middle. */
function takeNext(open: Cell[]): Cell {
  let next = 0;
  for (let i = 1; i < open.length; i++) {
    const [a, b] = [open[i]!, open[next]!];
    const ahead = b.bound - a.bound;
    if (ahead > SLOPE_RAD / 2 || (ahead > -SLOPE_RAD / 2 && a.middle < b.middle)) next = i;
  }
  const cell = open[next]!;
  open[next] = open[open.length - 1]!;
  open.pop();
  return cell;
}

/** The middle of a range, and the same moved onto the rim of the patch where the range touches it. */
function middlesOf({ p0, p1, r0, r1 }: Range, patch: Patch): readonly [Attitude, Attitude] {
  const middle = { pitch: (p0 + p1) / 2, roll: (r0 + r1) / 2 };
  const pitch = p0 === patch.p0 ? p0 : p1 === patch.p1 ? p1 : middle.pitch;
  const roll = r0 === patch.r0 ? r0 : r1 === patch.r1 ? r1 : middle.roll;
  return [middle, { pitch, roll }];
}

const slopeAtPoint = (crests: Crests, a: Attitude): number =>
  slopeOf(highest(crestSines(crests, upParts(a.pitch, a.roll))));

/** A slope that no up of the range goes below, whichever crest is best there. */
export function lowerBound(crests: Crests, range: Range): number {
  const corners = coneCorners(range);
  const mixed = bestMixture(corners.map((corner) => crestSines(crests, corner)));
  if (mixed >= 0) return slopeOf(mixed);
  const sum = corners.reduce(add);
  const inward = Math.min(...corners.map((corner) => dot(corner, sum))) / norm(sum);
  return slopeOf(mixed / inward);
}

/** Four unit vectors whose cone holds every up of the range. */
function coneCorners({ p0, p1, r0, r1 }: Range): readonly Vec3[] {
  const chord = Math.cos((r1 - r0) / 2);
  const low = p0 > 0 ? Math.atan(Math.tan(p0) * chord) : p0;
  const high = p1 < 0 ? Math.atan(Math.tan(p1) * chord) : p1;
  return [upParts(low, r0), upParts(low, r1), upParts(high, r0), upParts(high, r1)];
}

/** Slope of a sine held to [−1, 1]. */
function slopeOf(sine: number): number {
  const s = Math.max(-1, Math.min(1, sine));
  return Math.atan2(s, Math.sqrt((1 - s) * (1 + s)));
}

function startingCells(patch: Patch): readonly Range[] {
  const columns = spans(patch.r0, patch.r1);
  return spans(patch.p0, patch.p1).flatMap(([p0, p1]) => columns.map(([r0, r1]) => ({ p0, p1, r0, r1 })));
}

/** An interval in equal parts no wider than WIDEST, its two ends exactly kept. */
function spans(low: number, high: number): readonly (readonly [number, number])[] {
  const n = Math.max(1, Math.ceil((high - low) / WIDEST));
  const cut = (i: number) => (i === n ? high : low + ((high - low) * i) / n);
  return Array.from({ length: n }, (_, i) => [cut(i), cut(i + 1)] as const);
}

/** A range cut in two across its longer side as it lies on the sphere. */
function halves(range: Range): readonly [Range, Range] {
  const { p0, p1, r0, r1 } = range;
  const [p, r] = [(p0 + p1) / 2, (r0 + r1) / 2];
  const widest = p0 <= 0 && p1 >= 0 ? 1 : Math.max(Math.cos(p0), Math.cos(p1));
  if ((r1 - r0) * widest > p1 - p0)
    return [
      { p0, p1, r0, r1: r },
      { p0, p1, r0: r, r1 },
    ];
  return [
    { p0, p1: p, r0, r1 },
    { p0: p, p1, r0, r1 },
  ];
}
