/** The planar stretches of a line: as many bends on end as lie in one plane, laid flat. Millimetres. */
import type { BenchRow } from '@runback/bending';
import {
  addScaled,
  type Centreline,
  cross,
  distance,
  dot,
  fromRows,
  type Piece,
  POINT_MM,
  piecePoint,
  pieceTangent,
  sub,
  type Vec3,
} from '@runback/geometry';
import type { AidContext } from './aid-context.ts';
import type { Point } from './types.ts';

/** A piece of a stretch as it lies on the paper: y up, seen from the side it is looked at from. */
export type FlatPiece =
  | { readonly kind: 'straight'; readonly from: Point; readonly to: Point; readonly length: number }
  | {
      readonly kind: 'arc';
      readonly from: Point;
      readonly to: Point;
      readonly centre: Point;
      readonly radius: number;
      readonly angle: number;
      /** True when it curves to the left of travel. */
      readonly left: boolean;
      /** Working number. */
      readonly bend: number;
    };

export interface Stretch {
  readonly bends: readonly number[];
  readonly pieces: readonly FlatPiece[];
  /** Cut short at the first or the last straight: how much is not drawn, mm. */
  readonly more: { readonly before: number; readonly after: number };
  /** How far the rest of the tube goes below the paper as the stretch lies there, and above, mm, 0 or more. */
  readonly below: number;
  readonly above: number;
}

/** The first and the last straight are drawn to here: more of them shows nothing a rule does not. mm */
const END_STRAIGHT = 60;

/** Working numbers of the bends of each stretch. A bend turned out of the plane of the last begins a new one. */
export function planarRuns(rows: readonly BenchRow[]): readonly (readonly number[])[] {
  const runs: number[][] = [];
  for (const { bend, turnDeg } of rows) {
    const on = turnDeg === 0 || turnDeg === 180;
    const last = runs.at(-1);
    if (on && last) last.push(bend);
    else runs.push([bend]);
  }
  return runs;
}

/**
 * The line as designed, but with turns that are none or half within rounding made exactly so. Between bends without
 * a straight a small turn stays: without it geometry would make one bend of the two.
 */
function flatDesign({ plan, exact }: AidContext): Centreline {
  const rows = plan.rows.map(({ exact: row, turn, turnDeg }) => {
    const flat = turnDeg === 180 || (turnDeg === 0 && row.straightBefore > POINT_MM);
    return { ...row, turn: flat ? turn : row.turn };
  });
  return fromRows(rows, exact.lastStraight);
}

export function stretchesOf(context: AidContext): readonly Stretch[] {
  const design = flatDesign(context);
  return planarRuns(context.plan.rows).map((bends) => stretchOf(design, bends));
}

function stretchOf({ pieces, bends: all }: Centreline, bends: readonly number[]): Stretch {
  const first = all[bends[0]! - 1]!.piece;
  const last = all[bends.at(-1)! - 1]!.piece;
  const own = pieces.slice(first - 1, last + 2);
  const outside = [...pieces.slice(0, first - 1), ...pieces.slice(last + 2)];
  const arc = pieces[first]!;
  const origin = arc.from;
  const x = pieceTangent(arc, arc.start);
  const normal = all[bends[0]! - 1]!.normal;
  const heights = outside.flatMap((piece) => heightsOf(piece, origin, normal));
  const [low, high] = [Math.min(0, ...heights), Math.max(0, ...heights)];
  // Looked at from the side on which more of the tube stands up: the other one would lift it off the paper.
  const flip = -low > high ? -1 : 1;
  const seen: Vec3 = [normal[0] * flip, normal[1] * flip, normal[2] * flip];
  const y = cross(seen, x);
  const flat = (point: Vec3): Point => [dot(sub(point, origin), x), dot(sub(point, origin), y)];
  const drawn = shortened(own);
  return {
    bends,
    pieces: drawn.pieces.map((piece) =>
      flatPiece(piece, flat, { seen, number: numberOf(all, pieces, piece) }),
    ),
    more: drawn.more,
    below: Math.max(0, flip === 1 ? -low : high),
    above: Math.max(0, flip === 1 ? high : -low),
  };
}

const numberOf = (all: Centreline['bends'], pieces: readonly Piece[], piece: Piece): number =>
  all.findIndex((bend) => pieces[bend.piece] === piece) + 1;

/** Heights over the paper of places a quarter of a piece apart: enough to know which side is up. */
function heightsOf(piece: Piece, origin: Vec3, normal: Vec3): number[] {
  return [0, 0.25, 0.5, 0.75, 1].map((share) =>
    dot(sub(piecePoint(piece, piece.start + share * (piece.end - piece.start)), origin), normal),
  );
}

function shortened(pieces: readonly Piece[]): {
  readonly pieces: readonly Piece[];
  readonly more: Stretch['more'];
} {
  const [before, after] = [pieces[0]!, pieces.at(-1)!].map((piece) =>
    Math.max(0, piece.length - END_STRAIGHT),
  );
  const first = pieces[0]!;
  const last = pieces.at(-1)!;
  if (first.kind !== 'straight' || last.kind !== 'straight') return { pieces, more: { before: 0, after: 0 } };
  const ends = [
    { ...first, from: addScaled(first.from, first.direction, before!) },
    { ...last, to: addScaled(last.to, last.direction, -after!) },
  ] as const;
  return { pieces: [ends[0], ...pieces.slice(1, -1), ends[1]], more: { before: before!, after: after! } };
}

function flatPiece(
  piece: Piece,
  flat: (point: Vec3) => Point,
  { seen, number }: { readonly seen: Vec3; readonly number: number },
): FlatPiece {
  const [from, to] = [flat(piece.from), flat(piece.to)];
  if (piece.kind === 'straight')
    return { kind: 'straight', from, to, length: distance(piece.from, piece.to) };
  const left = dot(piece.normal, seen) > 0;
  return {
    kind: 'arc',
    from,
    to,
    centre: flat(piece.centre),
    radius: piece.radius,
    angle: piece.angle,
    left,
    bend: number,
  };
}
