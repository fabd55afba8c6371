/** How close a line comes to itself. */
import { offerApart, offerChord } from './approach-pair.ts';
import { Best, toleranceAt } from './distance-best.ts';
import { nearestOf } from './distance-nearest.ts';
import { DISTANCE_MM, ROUNDING } from './numeric.ts';
import { boxGap, largestIn, type Node, treeOf } from './tree.ts';
import type { Nearest, Piece } from './types.ts';

/**
 * The smallest distance, mm, between two places of a path at least `apart` mm apart along it (exactly so far apart
 * counts), and where: `at` is the place nearer the start. `null` for a path shorter than `apart`. Places nearer
 * each other along the line are neighbours and touch by nature; because the limit is on the line itself, nothing
 * jumps as a hairpin closes. Of equal places the one nearest the start.
 * @throws RangeError when the path has no pieces or `apart` is not > 0 mm.
 * @example
 * import { fromRows, selfApproach } from '@runback/geometry';
 * const u = fromRows([{ straightBefore: 100, turn: null, angle: Math.PI, radius: 40 }], 100);
 * selfApproach(u.pieces, 35)!.distance.toFixed(6); // => "33.894101"
 */
export function selfApproach(path: readonly Piece[], apart: number): Nearest | null {
  if (!(apart > 0 && apart < Number.POSITIVE_INFINITY))
    throw new RangeError(`selfApproach: apart must be > 0 mm, got ${apart}`);
  const tree = treeOf(path, 'selfApproach');
  const length = tree.end - tree.start;
  if (length < apart - DISTANCE_MM) return null;
  // A line just as long as asked has one such pair, its ends: rounding must not take it away.
  const limit = Math.min(apart, length - ROUNDING * Math.max(Math.abs(tree.start), Math.abs(tree.end)));
  const best = new Best(toleranceAt(largestIn(tree)));
  const look = { best, apart: limit };
  lookAlong(look, path);
  lookApart(look, tree, tree);
  return nearestOf(best.found);
}

interface Look {
  readonly best: Best;
  readonly apart: number;
}

/** Chords between places exactly `apart` apart, from the start on: two fingers on the line, that far from each other. */
function lookAlong({ best, apart }: Look, path: readonly Piece[]): void {
  let j = 0;
  for (const piece of path) {
    while (j + 1 < path.length && path[j]!.end < piece.start + apart) j++;
    for (let k = j; k < path.length && path[k]!.start <= piece.end + apart; k++)
      offerChord(best, { a: piece, b: path[k]!, apart });
  }
}

/** Places further apart: `a` is `b` or lies before it. */
function lookApart(look: Look, a: Node, b: Node): void {
  const { best, apart } = look;
  if (b.end - a.start < apart) return;
  if (a === b) {
    lookWithin(look, a);
    return;
  }
  if (best.beaten(boxGap(a, b), a.start)) return;
  if (a.piece && b.piece) {
    offerApart(best, { a: a.piece, b: b.piece, apart });
    return;
  }
  const splitA = b.halves === null || (a.halves !== null && a.end - a.start >= b.end - b.start);
  if (splitA) for (const half of a.halves!) lookApart(look, half, b);
  else for (const half of b.halves!) lookApart(look, a, half);
}

function lookWithin(look: Look, node: Node): void {
  if (node.piece) {
    offerApart(look.best, { a: node.piece, b: node.piece, apart: look.apart });
    return;
  }
  const [first, second] = node.halves!;
  lookApart(look, first, first);
  lookApart(look, second, second);
  lookApart(look, first, second);
}
