/** One bend in the tool, in the axes of whoever stands there: X to the right, Y away, Z up; the bend begins at the origin. */
import { type BenchPlan, stanceOf } from '@runback/bending';
import {
  addScaled,
  cross,
  dot,
  frameAt,
  rotate,
  scale,
  sinCos,
  sub,
  subPath,
  type Vec3,
} from '@runback/geometry';
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
  const stance = stanceOf(plan.bench);
  const { travel } = stance;
  const beside = besideOf(plan);
  const carried = row.words.moves === 'bender';
  // The bender goes round a tube that lies still, its pencil line on top.
  const roll = carried ? -row.pencil.after : 0;
  const [former, plane] = [rotate(stance.former, travel, roll), rotate(stance.plane, travel, roll)];
  const turn = plan.centreline.bends[index]!.turn ?? 0;
  const straight = Math.min(row.straightBefore, mostStraight);
  const after = inTool(plan, index, { travel, former, plane, shorter: row.straightBefore - straight });
  const moved = index > 0 && turn !== 0;
  return {
    projection: beside ?? inLineOf(travel, former),
    inLine: beside === null,
    travel,
    former,
    plane,
    formerBefore: carried && moved ? rotate(former, travel, -turn) : null,
    after,
    before: !carried && moved ? after.map((place) => rotate(place, travel, turn)) : null,
    ghost: pulled({ travel, former }, row.radius, row.angle),
    od,
    radius: row.radius,
    straight,
    broken: straight < row.straightBefore,
    turns: movement(row.words, travel),
  };
}

interface Tool {
  readonly travel: Vec3;
  readonly former: Vec3;
  readonly plane: Vec3;
}

/** What is finished of the tube when this bend is about to be pulled: travel, former and plane of the bend lie in the tool's. */
function inTool(plan: BenchPlan, index: number, tool: Tool & { readonly shorter: number }): readonly Vec3[] {
  const { centreline } = plan;
  const bend = centreline.bends[index]!;
  const { point, tangent } = frameAt(centreline, bend.start);
  const towards = cross(bend.normal, tangent);
  const places = placesAlong(subPath(centreline, 0, bend.start));
  return places.map((place, i) => {
    const v = sub(place, point);
    const pushed = i === places.length - 1 ? 0 : tool.shorter;
    const level = scale(tool.travel, dot(v, tangent) + pushed);
    return addScaled(addScaled(level, tool.former, dot(v, towards)), tool.plane, dot(v, bend.normal));
  });
}

const GHOST_DEGREES = 6;

/** The free leg wrapped round the former, and a length of straight behind it. */
function pulled(
  { travel, former }: Pick<Tool, 'travel' | 'former'>,
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

/** Which way the words turn it, as a rotation about travel: clockwise seen from START is right-handed. */
function movement(
  { direction, goDeg, view }: BenchPlan['rows'][number]['words'],
  travel: Vec3,
): Scene['turns'] {
  if (direction === null) return goDeg === 0 ? null : 'both';
  if (direction === 'clockwise' || direction === 'anticlockwise')
    return (direction === 'clockwise') === (view !== 'behind-free') ? 1 : -1;
  // Up goes over to away about −X, to toward about +X.
  return (direction === 'toward') === travel[0] > 0 ? 1 : -1;
}
