/** The place of a piece nearest to a point, in closed form. */
import { arcPoint } from './arc.ts';
import type { Arc, Piece, Straight, Vec3 } from './types.ts';
import { addScaled, distance, dot, sub } from './vec.ts';

/** A distance and where it is along a piece. */
export interface Foot {
  readonly distance: number;
  /** Along the line, mm. */
  readonly at: number;
  readonly point: Vec3;
}

/** The place of a piece nearest to a point; of equal ones the one nearest its start. */
export function pointToPiece(point: Vec3, piece: Piece): Foot {
  return piece.kind === 'straight' ? toStraight(point, piece) : toArc(point, piece);
}

const toStart = (p: Vec3, { from, start }: Piece): Foot => ({
  distance: distance(p, from),
  at: start,
  point: from,
});
const toEnd = (p: Vec3, { to, end }: Piece): Foot => ({ distance: distance(p, to), at: end, point: to });

function toStraight(p: Vec3, piece: Straight): Foot {
  const along = dot(sub(p, piece.from), piece.direction);
  if (!(along > 0)) return toStart(p, piece);
  if (along >= piece.length) return toEnd(p, piece);
  const point = addScaled(piece.from, piece.direction, along);
  return { distance: distance(p, point), at: piece.start + along, point };
}

/** On the axis of the arc every place is as near, and its start is taken. */
function toArc(p: Vec3, piece: Arc): Foot {
  const { centre, u, v, normal, radius } = piece;
  const out = sub(p, centre);
  const [x, y, z] = [dot(out, u), dot(out, v), dot(out, normal)];
  const turn = Math.atan2(y, x);
  const t = turn < 0 ? turn + 2 * Math.PI : turn;
  if (t > 0 && t < piece.angle) {
    const point = arcPoint(piece, t);
    const d = Math.hypot(Math.hypot(x, y) - radius, z);
    return { distance: d, at: Math.min(piece.start + t * radius, piece.end), point };
  }
  const [first, last] = [toStart(p, piece), toEnd(p, piece)];
  return last.distance < first.distance ? last : first;
}
