/**
 * A tree of boxes over a path, halved along its length: two far parts of a path are told apart by one look at
 * their boxes, so that long lines are compared in little more than their own length.
 */
import type { Arc, Piece, Vec3 } from './types.ts';

export interface Node {
  readonly low: Vec3;
  readonly high: Vec3;
  /** Along the line, mm. */
  readonly start: number;
  readonly end: number;
  /** Set on a leaf. */
  readonly piece: Piece | null;
  /** The two halves, on all but a leaf. */
  readonly halves: readonly [Node, Node] | null;
}

/**
 * The tree over a path, kept with the array of its pieces so that a line measured against many things is
 * prepared once. An array whose pieces have been exchanged since is prepared anew.
 * @throws RangeError when the path has no pieces.
 */
export function treeOf(path: readonly Piece[], caller: string): Node {
  if (path.length === 0) throw new RangeError(`${caller}: path must have at least one piece, got none`);
  const known = prepared.get(path);
  if (known && known.pieces.length === path.length && known.pieces.every((piece, i) => piece === path[i]))
    return known.root;
  const pieces = [...path];
  const root = build(pieces, 0, pieces.length);
  prepared.set(path, { pieces, root });
  return root;
}

const prepared = new WeakMap<readonly Piece[], { pieces: readonly Piece[]; root: Node }>();

function build(pieces: readonly Piece[], from: number, to: number): Node {
  if (to - from === 1) return leaf(pieces[from]!);
  const middle = (from + to) >> 1;
  const [a, b] = [build(pieces, from, middle), build(pieces, middle, to)];
  const low: Vec3 = [
    Math.min(a.low[0], b.low[0]),
    Math.min(a.low[1], b.low[1]),
    Math.min(a.low[2], b.low[2]),
  ];
  const high: Vec3 = [
    Math.max(a.high[0], b.high[0]),
    Math.max(a.high[1], b.high[1]),
    Math.max(a.high[2], b.high[2]),
  ];
  return { low, high, start: a.start, end: b.end, piece: null, halves: [a, b] };
}

function leaf(piece: Piece): Node {
  const { from, to } = piece;
  const low: [number, number, number] = [0, 0, 0];
  const high: [number, number, number] = [0, 0, 0];
  for (const k of [0, 1, 2] as const) {
    low[k] = Math.min(from[k], to[k]);
    high[k] = Math.max(from[k], to[k]);
    if (piece.kind === 'arc') widen(piece, k, { low, high });
  }
  return { low, high, start: piece.start, end: piece.end, piece, halves: null };
}

/** An arc reaches beyond its ends along an axis where it passes its own extreme there. */
function widen(arc: Arc, k: 0 | 1 | 2, { low, high }: { low: number[]; high: number[] }): void {
  const [u, v] = [arc.u[k], arc.v[k]];
  const reach = arc.radius * Math.sqrt(u * u + v * v);
  const top = Math.atan2(v, u);
  if (within(top, arc.angle)) high[k] = Math.max(high[k]!, arc.centre[k] + reach);
  if (within(top + Math.PI, arc.angle)) low[k] = Math.min(low[k]!, arc.centre[k] - reach);
}

const within = (t: number, angle: number): boolean => (t < 0 ? t + 2 * Math.PI : t) <= angle;

/** Distance between two boxes, 0 when they meet: never above the distance of what is in them. */
export function boxGap(a: Node, b: Node): number {
  let sum = 0;
  for (let k = 0; k < 3; k++) {
    const gap = Math.max(a.low[k]! - b.high[k]!, b.low[k]! - a.high[k]!, 0);
    sum += gap * gap;
  }
  return Math.sqrt(sum);
}

/** Distance of a point to a box, 0 inside. */
export function pointGap({ low, high }: Node, p: Vec3): number {
  let sum = 0;
  for (let k = 0; k < 3; k++) {
    const gap = Math.max(low[k]! - p[k]!, p[k]! - high[k]!, 0);
    sum += gap * gap;
  }
  return Math.sqrt(sum);
}

/** The largest coordinate in a tree, as a size. */
export function largestIn({ low, high }: Node): number {
  return Math.max(...low.map(Math.abs), ...high.map(Math.abs));
}
