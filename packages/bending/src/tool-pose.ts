/**
 * One bend of a plan in the tool, in the axes of whoever stands there: X to the right, Y away, Z up; the bend begins
 * at the origin. Millimetres and radians.
 */
import {
  addScaled,
  cross,
  type Frame,
  frameAt,
  type Mat3,
  moved,
  type Piece,
  pieceTangent,
  type RigidMotion,
  rotate,
  scale,
  sub,
  type Vec3,
} from '@runback/geometry';
import { stanceOf } from './stance.ts';
import type { BenchPlan, TurnWords } from './types.ts';

/** How tube and tool lie round the turn for one bend. Directions are unit vectors. */
export interface ToolPose {
  /** Along the tube from START to FREE. */
  readonly travel: Vec3;
  /** From the tube to the former when the bend is pulled. */
  readonly former: Vec3;
  /** travel × former: square to the tool plane. */
  readonly plane: Vec3;
  /** Where the former was before it was carried round; null where the tube turns or nothing does. */
  readonly formerBefore: Vec3 | null;
  /** Takes the plan's centreline to where the tube lies, pushed up to this bend and not yet turned. */
  readonly before: RigidMotion;
  /** The same when it is turned, ready to pull. */
  readonly after: RigidMotion;
  /** From the middle of the tube to its pencil line, before the turn and after it. */
  readonly pencil: { readonly before: Vec3; readonly after: Vec3 };
  /** What the words ask to turn, right-handed about travel; `both` where either way will do, null for nothing. */
  readonly turns: 1 | -1 | 'both' | null;
  /** How far to turn it that way, 0 to under 210°. */
  readonly goes: number;
  /** The bend as it lies round the former when pulled with START held still. */
  readonly pulled: Piece;
  /** The way the free leg goes from there. */
  readonly leaves: Vec3;
}

/**
 * How the tube of a bench plan lies in the tool for one bend, before the turn, after it, and when it is pulled: the
 * words of the plan, done. The axes are those of `stanceOf`; a bender carried round goes round a tube that lies
 * still with its pencil line on top.
 * @param index 0 for bend 1
 * @throws RangeError when the plan has no such bend
 */
export function toolPose(plan: BenchPlan, index: number): ToolPose {
  const row = plan.rows[index];
  const bend = plan.centreline.bends[index];
  if (!row || !bend) throw new RangeError(`toolPose: index must name a bend, got ${index}`);
  const { travel, former: still, plane: level } = stanceOf(plan.bench);
  const carried = row.words.moves === 'bender';
  const roll = carried ? -row.pencil.after : 0;
  const [former, plane] = [rotate(still, travel, roll), rotate(level, travel, roll)];
  const frame = { ...frameAt(plan.centreline, bend.start), normal: bend.normal };
  const turn = bend.turn ?? 0;
  const after = into({ travel, former, plane }, frame);
  const pulled = moved({ ...plan.centreline, pieces: [plan.centreline.pieces[bend.piece]!] }, after)
    .pieces[0]!;
  return {
    travel,
    former,
    plane,
    formerBefore: carried && turn !== 0 ? rotate(former, travel, -turn) : null,
    before: carried || turn === 0 ? after : turnedBy(after, travel, turn),
    after,
    pencil: {
      before: rotate(former, travel, carried ? row.pencil.after : row.pencil.before),
      after: rotate(former, travel, row.pencil.after),
    },
    turns: movement(row.words, travel),
    goes: (row.words.goDeg * Math.PI) / 180,
    pulled,
    leaves: pieceTangent(pulled, pulled.end),
  };
}

interface Tool {
  readonly travel: Vec3;
  readonly former: Vec3;
  readonly plane: Vec3;
}

/** Lays travel, the side a bend leaves to and its normal into those of the tool, its beginning at the origin. */
function into({ travel, former, plane }: Tool, { point, tangent, normal }: Frame): RigidMotion {
  const towards = cross(normal, tangent);
  const row = (i: 0 | 1 | 2): Vec3 =>
    addScaled(addScaled(scale(tangent, travel[i]), towards, former[i]), normal, plane[i]);
  const rotation: Mat3 = [row(0), row(1), row(2)];
  return { rotation, shift: sub([0, 0, 0], turnedVector(rotation, point)) };
}

/** The motion, and then a turn about a line through the origin. */
function turnedBy({ rotation, shift }: RigidMotion, axis: Vec3, angle: number): RigidMotion {
  const column = (j: 0 | 1 | 2): Vec3 =>
    rotate([rotation[0][j], rotation[1][j], rotation[2][j]], axis, angle);
  const [x, y, z] = [column(0), column(1), column(2)];
  return {
    rotation: [
      [x[0], y[0], z[0]],
      [x[1], y[1], z[1]],
      [x[2], y[2], z[2]],
    ],
    shift: rotate(shift, axis, angle),
  };
}

const turnedVector = (rotation: Mat3, v: Vec3): Vec3 => {
  const along = (a: Vec3): number => a[0] * v[0] + a[1] * v[1] + a[2] * v[2];
  return [along(rotation[0]), along(rotation[1]), along(rotation[2])];
};

/** Which way the words turn it, as a rotation about travel: clockwise seen from START is right-handed. */
function movement({ direction, goDeg, view }: TurnWords, travel: Vec3): ToolPose['turns'] {
  if (direction === null) return goDeg === 0 ? null : 'both';
  if (direction === 'clockwise' || direction === 'anticlockwise')
    return (direction === 'clockwise') === (view !== 'behind-free') ? 1 : -1;
  // Up goes over to away about −X, to toward about +X.
  return (direction === 'toward') === travel[0] > 0 ? 1 : -1;
}
