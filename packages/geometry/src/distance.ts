/**
 * Distances of whole paths: true minima, good to 1e-9 mm or 8 ulp of the largest coordinate.
 *
 * Pairs of pieces have closed forms (closest-point, closest-pieces) or are searched by branch and bound in one
 * variable (closest-search) with bounds of the fourth order (closest-series); `tree` keeps most pairs from being looked at.
 */
import { type Measurable, measureAt, outward } from './closest-body.ts';
import { offerPieces } from './closest-pieces.ts';
import { pointToPiece } from './closest-point.ts';
import { Best, largestOf, toleranceAt } from './distance-best.ts';
import { nearestOf } from './distance-nearest.ts';
import { DISTANCE_MM } from './numeric.ts';
import { piecePoint } from './path.ts';
import { bodyOfSolid } from './solid-body.ts';
import { offerSolid, type SolidLook } from './solid-piece.ts';
import { boxGap, largestIn, type Node, pointGap, treeOf } from './tree.ts';
import type { Nearest, Piece, Solid, Vec3 } from './types.ts';
import { addScaled, anyNormal, distance, sub } from './vec.ts';

/**
 * The closest approach of a path to a solid, mm: the signed distance of the centreline to the surface (negative
 * inside) and where. `other` is the closest point of the surface; `otherAt` is set for a tube: the place along its
 * path. Of equal places the one nearest the start of `path`.
 * @throws RangeError when the path (or a tube's path) has no pieces, a number is not finite, or a cylinder no length.
 * @example
 * import { fromRows, pathToSolid } from '@runback/geometry';
 * const ball = { kind: 'sphere', centre: [40, 50, 0], radius: 20 } as const;
 * pathToSolid(fromRows([], 100).pieces, ball); // => { "distance": 30, "at": 40, "point": [40, 0, 0], "other": [40, 30, 0], "otherAt": null }
 */
export function pathToSolid(path: readonly Piece[], solid: Solid): Nearest {
  if (solid.kind === 'tube') return inflated(pathToPath(path, solid.path), solid.path, solid.radius);
  const tree = treeOf(path, 'pathToSolid');
  const body = bodyOfSolid(solid);
  const best = new Best(toleranceAt(Math.max(largestIn(tree), largestOf([body.origin]))));
  lookAtSolid({ best, solid, body }, tree);
  const { distance: d, at, piece } = best.found;
  const point = piecePoint(piece, at);
  measureAt(body, point);
  return { distance: d, at, point, other: addScaled(point, outward(body), -d), otherAt: null };
}

function lookAtSolid(look: SolidLook, node: Node): void {
  if (node.piece) {
    offerSolid(look, node.piece);
    return;
  }
  const [a, b] = node.halves!;
  const [p, q] = [leastIn(a, look.body), leastIn(b, look.body)];
  const swap = q < p;
  const [first, second] = swap ? [b, a] : [a, b];
  if (!look.best.beaten(Math.min(p, q), first.start)) lookAtSolid(look, first);
  if (!look.best.beaten(Math.max(p, q), second.start)) lookAtSolid(look, second);
}

/** Never above the distance of a solid to a box: it is convex, so its tangent plane at the middle stays below it. */
function leastIn({ low, high }: Node, body: Measurable): number {
  const d = measureAt(body, [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2]);
  const n = outward(body);
  const size = (k: 0 | 1 | 2) => Math.abs(n[k]) * (high[k] - low[k]);
  return d - (size(0) + size(1) + size(2)) / 2;
}

/** Of the distance to a tube's path, the distance to its surface. */
function inflated(near: Nearest, path: readonly Piece[], radius: number): Nearest {
  const out = sub(near.point, near.other);
  const d = distance(near.point, near.other);
  const on = path.find((piece) => near.otherAt! <= piece.end) ?? path[path.length - 1]!;
  const direction: Vec3 = d > DISTANCE_MM ? [out[0] / d, out[1] / d, out[2] / d] : squareTo(on);
  return { ...near, distance: near.distance - radius, other: addScaled(near.other, direction, radius) };
}

/** On the very path of a tube (where the offset is but rounding) every side is as near: some direction square to it. */
function squareTo(piece: Piece): Vec3 {
  return piece.kind === 'arc' ? piece.normal : anyNormal(piece.direction);
}

/**
 * The closest approach of two paths, mm: distance between centrelines, the place along each and the two points.
 * Of equal places the one nearest the start of `a`.
 * @throws RangeError when a path has no pieces or a number is not finite.
 * @example
 * import { fromRows, pathToPath } from '@runback/geometry';
 * const above = fromRows([], 100, { origin: [50, -50, 30], direction: [0, 1, 0], normal: [0, 0, 1] });
 * pathToPath(fromRows([], 100).pieces, above.pieces); // => { "distance": 30, "at": 50, "point": [50, 0, 0], "other": [50, 0, 30], "otherAt": 50 }
 */
export function pathToPath(a: readonly Piece[], b: readonly Piece[]): Nearest {
  const [p, q] = [treeOf(a, 'pathToPath'), treeOf(b, 'pathToPath')];
  const best = new Best(toleranceAt(Math.max(largestIn(p), largestIn(q))));
  lookAtPair(best, p, q);
  return nearestOf(best.found);
}

function lookAtPair(best: Best, a: Node, b: Node): void {
  if (best.beaten(boxGap(a, b), a.start)) return;
  if (a.piece && b.piece) {
    offerPieces(best, a.piece, b.piece);
    return;
  }
  const splitA = b.halves === null || (a.halves !== null && a.end - a.start >= b.end - b.start);
  const pairs = splitA
    ? a.halves!.map((half) => [half, b] as const)
    : b.halves!.map((half) => [a, half] as const);
  const [first, second] = pairs as [readonly [Node, Node], readonly [Node, Node]];
  const swap = boxGap(...second) < boxGap(...first);
  lookAtPair(best, ...(swap ? second : first));
  lookAtPair(best, ...(swap ? first : second));
}

/**
 * The closest approach of two pieces, mm; see `pathToPath`.
 * @example
 * import { fromRows, pieceToPiece } from '@runback/geometry';
 * const [piece] = fromRows([], 100).pieces;
 * pieceToPiece(piece!, piece!).distance; // => 0
 */
export function pieceToPiece(a: Piece, b: Piece): Nearest {
  const best = new Best(toleranceAt(largestOf([a.from, a.to, b.from, b.to])));
  offerPieces(best, a, b);
  return nearestOf(best.found);
}

/**
 * The place of a path nearest to a point, mm: `at` and `point` are on the path, `other` is the point given. Of
 * equal places the one nearest the start of the path.
 * @throws RangeError when the path has no pieces or a number is not finite.
 * @example
 * import { fromRows, pointToPath } from '@runback/geometry';
 * pointToPath([30, 40, 0], fromRows([], 100).pieces).at; // => 30
 */
export function pointToPath(point: Vec3, path: readonly Piece[]): Nearest {
  const tree = treeOf(path, 'pointToPath');
  const best = new Best(toleranceAt(Math.max(largestIn(tree), largestOf([point]))));
  lookAtPoint(best, tree, point);
  const { distance: d, at, piece } = best.found;
  return { distance: d, at, point: piecePoint(piece, at), other: point, otherAt: null };
}

function lookAtPoint(best: Best, node: Node, point: Vec3): void {
  if (best.beaten(pointGap(node, point), node.start)) return;
  if (node.piece) {
    const foot = pointToPiece(point, node.piece);
    best.offer({ distance: foot.distance, at: foot.at, piece: node.piece, across: node.piece });
    return;
  }
  const [a, b] = node.halves!;
  const swap = pointGap(b, point) < pointGap(a, point);
  lookAtPoint(best, swap ? b : a, point);
  lookAtPoint(best, swap ? a : b, point);
}
