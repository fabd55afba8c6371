/** What a row of corner points means before anything is rounded: legs, directions, angles, set-backs. */
import { ANGLE_RAD, POINT_MM } from './numeric.ts';
import type { Vec3 } from './types.ts';
import { add, angleBetween, distance, norm, sub, unit } from './vec.ts';

/** A point of a line and the centreline radius that rounds it. The radius of an end is not looked at. mm. */
export interface CornerPoint {
  readonly at: Vec3;
  readonly radius: number;
}

/** The line between two points that are not passed straight through. */
export interface Leg {
  /** Indices of its two points. */
  readonly points: readonly [number, number];
  readonly direction: Vec3;
  readonly length: number;
}

export interface Corner {
  readonly point: number;
  readonly radius: number;
  /** Change of direction, radians in (0, π]. */
  readonly angle: number;
  /** tan(angle/2). */
  readonly tanHalf: number;
  /** From the corner back to where the arc starts: radius·tan(angle/2), mm; 0 where the line turns back. */
  readonly setback: number;
  readonly turnsBack: boolean;
}

/** One more leg than corners: leg 0, corner 0, leg 1, …, last leg. */
export interface Layout {
  readonly legs: readonly Leg[];
  readonly corners: readonly Corner[];
}

/** tan of half the angle between two unit vectors. |a − b| / |a + b| keeps its digits near 0° and near 180°. */
export const tanHalfBetween = (a: Vec3, b: Vec3): number => norm(sub(a, b)) / norm(add(a, b));

/** Legs and corners of a row of points; a corner under 1e-6° is no corner and its two legs are one. */
export function layOut(points: readonly CornerPoint[]): Layout {
  const kept = cornerIndices(points);
  const legs: Leg[] = [];
  const corners: Corner[] = [];
  for (let k = 1; k < kept.length; k++) {
    const [i, j] = [kept[k - 1]!, kept[k]!];
    const along = sub(points[j]!.at, points[i]!.at);
    const leg: Leg = { points: [i, j], direction: unit(along), length: norm(along) };
    const before = legs.at(-1);
    if (before) corners.push(cornerAt(i, points[i]!.radius, [before.direction, leg.direction]));
    legs.push(leg);
  }
  return { legs, corners };
}

/** What is left of leg i between its set-backs; negative where it is too short. mm. */
export const slackOf = ({ legs, corners }: Layout, i: number): number =>
  legs[i]!.length - (corners[i - 1]?.setback ?? 0) - (corners[i]?.setback ?? 0);

function cornerAt(point: number, radius: number, [before, after]: readonly [Vec3, Vec3]): Corner {
  const angle = angleBetween(before, after);
  const turnsBack = angle >= Math.PI - ANGLE_RAD;
  const tanHalf = tanHalfBetween(before, after);
  return { point, radius, angle, tanHalf, setback: turnsBack ? 0 : radius * tanHalf, turnsBack };
}

/**
 * Indices of the ends and of the points where the line changes direction. Each point is judged against the last
 * one kept, so that many corners just too small to count cannot add up unseen; what is left is judged again
 * until nothing more falls away.
 */
function cornerIndices(points: readonly CornerPoint[]): readonly number[] {
  let kept: readonly number[] = points.map((_, i) => i);
  for (;;) {
    const next = withoutStraightOnes(points, kept);
    if (next.length === kept.length) return kept;
    kept = next;
  }
}

function withoutStraightOnes(points: readonly CornerPoint[], among: readonly number[]): readonly number[] {
  const kept = [among[0]!];
  for (let k = 1; k < among.length - 1; k++) {
    const [a, b, c] = [kept.at(-1)!, among[k]!, among[k + 1]!].map((i) => points[i]!.at) as [
      Vec3,
      Vec3,
      Vec3,
    ];
    if (angleBetween(sub(b, a), sub(c, b)) > ANGLE_RAD) kept.push(among[k]!);
  }
  return [...kept, among.at(-1)!];
}

/** @throws RangeError on fewer than two points, a coordinate that is no number, coincident neighbours, or an inner radius that is not > 0. */
export function checkCornerPoints(points: readonly CornerPoint[]): void {
  if (points.length < 2) throw new RangeError(`fillet: a line needs at least 2 points, got ${points.length}`);
  points.forEach(({ at, radius }, i) => {
    if (!at.every(Number.isFinite))
      throw new RangeError(`fillet: point ${i} must be finite, got [${at.join(', ')}]`);
    const inner = i > 0 && i < points.length - 1;
    if (inner && !(radius > 0 && radius < Number.POSITIVE_INFINITY))
      throw new RangeError(`fillet: radius of point ${i} must be > 0 mm, got ${radius}`);
    const before = points[i - 1];
    if (before && distance(before.at, at) < POINT_MM)
      throw new RangeError(`fillet: points ${i - 1} and ${i} coincide at [${at.join(', ')}]`);
  });
}
