/** A string drawn taut through a bore: discs across the run, one point in each. Millimetres. */
import {
  type Arc,
  addScaled,
  distance,
  dot,
  norm,
  type Piece,
  POINT_MM,
  piecePoint,
  pieceTangent,
  scale,
  sub,
  type Vec3,
} from '@runback/geometry';

export interface RoomPiece {
  readonly piece: Piece;
  /** How far the middle of the string may leave the centreline. */
  readonly room: number;
}

interface Disc {
  readonly middle: Vec3;
  readonly tangent: Vec3;
  readonly room: number;
}

/** At most this much of an arc from disc to disc, radians: the string's length is then bracketed to some 1e-4 of the arcs. */
const STEP = Math.PI / 60;
const SWEEPS = 4000;
/** Over-relaxation of a chain of this many points moves news along it in about as many sweeps. */
const relaxation = (count: number): number => 2 / (1 + Math.sin(Math.PI / Math.max(count, 3)));

/**
 * The length of the shortest way through all the pieces, its ends free across the two mouths: never under `low`, never
 * over `high`, mm. `high` is the length of a way that stays inside; `low` comes from the pulls along the string found,
 * which bound every way through the same discs from below.
 */
export function tautLength(pieces: readonly RoomPiece[]): { readonly low: number; readonly high: number } {
  const discs = discsOf(pieces);
  const points = discs.map((d) => d.middle);
  const omega = relaxation(points.length);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    // The last sweeps take no more than a whole step, so that the string settles.
    const step = sweep < SWEEPS - points.length ? omega : 1;
    if (pull(points, discs, step) < POINT_MM / points.length) break;
  }
  return { low: fromPulls(points, discs), high: insideLength(points, pieces) };
}

/** Discs at both ends of every piece and inside the arcs; a straight needs none between, its bore being convex. */
function discsOf(pieces: readonly RoomPiece[]): readonly Disc[] {
  const discs: Disc[] = [];
  pieces.forEach(({ piece, room }, i) => {
    const next = pieces[i + 1];
    if (i === 0) discs.push(discAt(piece, piece.start, room));
    const count = stepsOf(piece);
    for (let k = 1; k < count; k++) discs.push(discAt(piece, piece.start + (piece.length * k) / count, room));
    discs.push(discAt(piece, piece.end, Math.min(room, next?.room ?? room)));
  });
  return discs;
}

const stepsOf = (piece: Piece): number => (piece.kind === 'arc' ? Math.ceil(piece.angle / STEP) : 1);

const discAt = (piece: Piece, s: number, room: number): Disc => ({
  middle: piecePoint(piece, s),
  tangent: pieceTangent(piece, s),
  room,
});

/** One sweep: each point goes to where its two neighbours pull it, held to its disc. Returns the largest move. */
function pull(points: Vec3[], discs: readonly Disc[], step: number): number {
  let largest = 0;
  for (let i = 0; i < points.length; i++) {
    const here = points[i]!;
    const to = held(addScaled(here, sub(wanted(points, i), here), step), discs[i]!);
    largest = Math.max(largest, distance(to, here));
    points[i] = to;
  }
  return largest;
}

/** Mean of the neighbours, each weighed by one over its distance: there the two unit pulls cancel. */
function wanted(points: readonly Vec3[], i: number): Vec3 {
  const [before, after, here] = [points[i - 1], points[i + 1], points[i]!];
  if (!before || !after) return before ?? after ?? here;
  const [a, b] = [distance(before, here), distance(after, here)].map((l) => 1 / Math.max(l, POINT_MM));
  return scale(addScaled(scale(before, a!), after, b!), 1 / (a! + b!));
}

function held(p: Vec3, { middle, tangent, room }: Disc): Vec3 {
  const off = across(sub(p, middle), tangent);
  const far = norm(off);
  return addScaled(middle, off, far > room ? room / far : 1);
}

const across = (v: Vec3, tangent: Vec3): Vec3 => addScaled(v, tangent, -dot(v, tangent));

/** Σ|Δ| ≥ Σ y·Δ for any pulls |y| ≤ 1; summed by points, each term is least at a known place of its disc. */
function fromPulls(points: readonly Vec3[], discs: readonly Disc[]): number {
  const pulls = points.slice(1).map((p, i) => {
    const d = sub(p, points[i]!);
    return scale(d, 1 / Math.max(norm(d), POINT_MM));
  });
  const none: Vec3 = [0, 0, 0];
  return discs.reduce((sum, { middle, tangent, room }, i) => {
    const g = sub(pulls[i - 1] ?? none, pulls[i] ?? none);
    return sum + dot(g, middle) - room * norm(across(g, tangent));
  }, 0);
}

/** Length of the way whose offset goes evenly from disc to disc: inside an arc its bore is convex in those terms. */
function insideLength(points: readonly Vec3[], pieces: readonly RoomPiece[]): number {
  let [length, at] = [0, 0];
  for (const { piece } of pieces) {
    const count = stepsOf(piece);
    for (let k = 0; k < count; k++, at++) {
      const [a, b] = [points[at]!, points[at + 1]!];
      length += piece.kind === 'straight' ? distance(a, b) : stepLength(piece, a, b);
    }
  }
  return length;
}

function stepLength(arc: Arc, a: Vec3, b: Vec3): number {
  const angle = arc.angle / stepsOf(arc);
  const outward = (p: Vec3): readonly [number, number] => {
    const v = sub(p, arc.centre);
    const height = dot(v, arc.normal);
    return [norm(addScaled(v, arc.normal, -height)), height];
  };
  const [[r0, z0], [r1, z1]] = [outward(a), outward(b)];
  const slide = Math.hypot(r1 - r0, z1 - z0) / angle;
  const speed = (r: number): number => Math.hypot(r, slide);
  // Simpson: over three degrees its remainder is far below rounding to a micrometre.
  return (angle / 6) * (speed(r0) + 4 * speed((r0 + r1) / 2) + speed(r1));
}
