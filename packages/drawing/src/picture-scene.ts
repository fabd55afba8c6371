/** One bend in the tool, in the axes of whoever stands there: X to the right, Y away, Z up; the bend begins at the origin. */
import { type BenchPlan, stanceOf, type ToolPose, toolPose } from '@runback/bending';
import { addScaled, moved, rotate, scale, sinCos, subPath, type Vec3 } from '@runback/geometry';
import { oblique, type Projection, placesAlong, project } from './picture-project.ts';

export interface Scene {
  readonly projection: Projection;
  /** The looker stands in line with the tube. */
  readonly inLine: boolean;
  /** Unit vectors: along the tube from START to FREE, from the tube to the former, travel × former. */
  readonly travel: Vec3;
  readonly former: Vec3;
  readonly plane: Vec3;
  /** Where the former was before this turn, when it is what moves. */
  readonly formerBefore: Vec3 | null;
  /** The finished tube from START to the origin, turned for this bend. */
  readonly after: readonly Vec3[];
  /** The same before the turn; null where the tube does not turn. */
  readonly before: readonly Vec3[] | null;
  /** The free leg from the origin on when the bend is pulled. */
  readonly ghost: readonly Vec3[];
  readonly od: number;
  readonly radius: number;
  /** The straight in the tool before the bend, as drawn, and whether it is drawn shorter than it is. */
  readonly straight: number;
  readonly broken: boolean;
  /** The movement of the turn, right-handed about travel; `both` where either way will do, null for none. */
  readonly turns: 1 | -1 | 'both' | null;
}

export interface SceneAsk {
  readonly plan: BenchPlan;
  /** 0 for bend 1. */
  readonly index: number;
  readonly od: number;
  /** Draw at most so much of the straight that lies in the tool, mm. It moves what is finished along the tube only. */
  readonly mostStraight?: number;
}

/** Beside the tube: half length, so that the side the leg is on reads at a glance. In line with it: the tube itself goes away. */
const UPRIGHT = oblique(0.5, 38);
/** A flat former is seen from higher up, or it would be a line. */
const FLAT = oblique(0.65, 48);
const IN_LINE = [oblique(0.75, 28), oblique(0.75, 152)] as const;

/** How the bench is looked at from the side: the same in every picture of a plan; null in line with the tube. */
export function besideOf({ bench }: BenchPlan): Projection | null {
  if (stanceOf(bench).view !== 'side') return null;
  return bench?.plane === 'flat' ? FLAT : UPRIGHT;
}

/** In line with the tube: of the two ways it can go away, the one in which the former stands clearer of it. */
function inLineOf(travel: Vec3, former: Vec3): Projection {
  const clear = (projection: Projection): number => {
    const [a, b] = [project(travel, projection).at, project(former, projection).at];
    return Math.abs(a[0] * b[1] - a[1] * b[0]);
  };
  const [right, left] = IN_LINE;
  return clear(left) > 1.5 * clear(right) ? left : right;
}

/** The picture of one bend as the plan has it, from where the operator stands. */
export function sceneOf({ plan, index, od, mostStraight = Number.POSITIVE_INFINITY }: SceneAsk): Scene {
  const row = plan.rows[index]!;
  const pose = toolPose(plan, index);
  const { travel, former, plane, formerBefore, turns } = pose;
  const beside = besideOf(plan);
  const turn = plan.centreline.bends[index]!.turn ?? 0;
  const straight = Math.min(row.straightBefore, mostStraight);
  const finished = placesAlong(
    subPath(moved(plan.centreline, pose.after), 0, plan.centreline.bends[index]!.start),
  );
  // All but its end moves up along the tube when the straight in the tool is drawn shorter.
  const up = row.straightBefore - straight;
  const after = finished.map((place, i) =>
    i === finished.length - 1 ? place : addScaled(place, travel, up),
  );
  const tubeTurns = turn !== 0 && formerBefore === null;
  return {
    projection: beside ?? inLineOf(travel, former),
    inLine: beside === null,
    travel,
    former,
    plane,
    formerBefore,
    after,
    before: tubeTurns ? after.map((place) => rotate(place, travel, turn)) : null,
    ghost: pulled({ travel, former }, row.radius, row.angle),
    od,
    radius: row.radius,
    straight,
    broken: straight < row.straightBefore,
    turns,
  };
}

const GHOST_DEGREES = 6;

/** The free leg wrapped round the former, and a length of straight behind it. */
function pulled(
  { travel, former }: Pick<ToolPose, 'travel' | 'former'>,
  radius: number,
  angle: number,
): readonly Vec3[] {
  const count = Math.max(2, Math.ceil((angle * 180) / Math.PI / GHOST_DEGREES));
  const on = (t: number): Vec3 => {
    const [sine, cosine] = sinCos(t);
    return addScaled(scale(travel, radius * sine), former, radius * (1 - cosine));
  };
  const [sine, cosine] = sinCos(angle);
  const leaves = addScaled(scale(travel, cosine), former, sine);
  const wrapped = Array.from({ length: count + 1 }, (_, i) => on((angle * i) / count));
  return [...wrapped, addScaled(wrapped.at(-1)!, leaves, radius * 1.3)];
}
