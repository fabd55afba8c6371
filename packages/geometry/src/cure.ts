import { type CornerPoint, type Layout, layOut, slackOf } from './corners.ts';
import { leastMoves } from './least-move.ts';
import { ANGLE_RAD, POINT_MM } from './numeric.ts';
import type { Chain, Demand } from './slack.ts';
import type { Misfit, Vec3 } from './types.ts';
import { add, anyNormal, cross, distance, norm, scale, unit } from './vec.ts';

/** Corners to either side of the moving one that a move can reach: it turns the legs two away, whose ends are three away. */
const REACH = 3;

type Cure = NonNullable<Misfit['cure']>;

/**
 * The smallest move of one end of the given legs that makes them long enough and no other leg too short, the other
 * points held; `null` where none was found. Every move returned has been laid out again and found to fit.
 * Corners are moved before the ends of the line: those sit in ports, which are where they are.
 */
export function findCure(
  points: readonly CornerPoint[],
  layout: Layout,
  legs: readonly number[],
): Cure | null {
  const all = [...new Set(legs.flatMap((leg) => [leg, leg + 1]))];
  const isEnd = (k: number): boolean => k === 0 || k === layout.legs.length;
  const corners = all.filter((k) => !isEnd(k));
  return (
    smallest(points, layout, { legs, of: corners }) ??
    smallest(points, layout, { legs, of: all.filter(isEnd) })
  );
}

function smallest(
  points: readonly CornerPoint[],
  layout: Layout,
  { legs, of }: { readonly legs: readonly number[]; readonly of: readonly number[] },
): Cure | null {
  let best: Cure | null = null;
  for (const k of of) {
    const cure = cureBy(points, layout, { k, legs });
    if (cure && (!best || cure.distance < best.distance - POINT_MM)) best = cure;
  }
  return best;
}

/** Index, among the points given, of the k-th point that is no straight one. */
const pointOf = ({ legs }: Layout, k: number): number => (k === 0 ? 0 : legs[k - 1]!.points[1]);

/** The smallest move of the k-th corner (or end) that cures the legs. */
function cureBy(
  points: readonly CornerPoint[],
  layout: Layout,
  { k, legs }: { readonly k: number; readonly legs: readonly number[] },
): Cure | null {
  const first = Math.max(0, k - REACH);
  const last = Math.min(layout.legs.length, k + REACH);
  const indices = Array.from({ length: last - first + 1 }, (_, i) => pointOf(layout, first + i));
  const chain: Chain = {
    at: indices.map((i) => points[i]!.at),
    radii: indices.map((i) => points[i]!.radius),
    moving: k - first,
  };
  const found = leastMoves(chain, demandsAround(layout, { k, legs, first }), {
    directions: directionsAt(layout, k, legs),
    scale: scaleOf(layout, legs),
  });
  const point = pointOf(layout, k);
  const to = found.find((place) => holds(points, layout, { k, legs, place }));
  return to ? { point, to, distance: distance(points[point]!.at, to) } : null;
}

/** How large a move to try first, mm: what is missing where the line turns back is about a radius; never more than a leg. */
function scaleOf({ legs: all, corners }: Layout, legs: readonly number[]): number {
  const missing = legs.map((leg) => {
    const radii = [corners[leg - 1], corners[leg]].map((corner) => (corner?.turnsBack ? corner.radius : 0));
    return Math.max(-slackOf({ legs: all, corners }, leg), ...radii);
  });
  return Math.min(Math.max(...missing), ...legs.map((leg) => all[leg]!.length));
}

/** Legs a move of corner k can change: the ones to cure must fit, those that fit must go on fitting. */
function demandsAround(
  layout: Layout,
  { k, legs, first }: { readonly k: number; readonly legs: readonly number[]; readonly first: number },
): readonly Demand[] {
  const demands: Demand[] = [];
  for (let leg = Math.max(0, k - 2); leg <= Math.min(layout.legs.length - 1, k + 1); leg++) {
    const cured = legs.includes(leg);
    const slack = slackOf(layout, leg);
    if (cured || fitsNow(layout, leg))
      demands.push({ leg: leg - first, least: cured ? 0 : Math.min(0, slack) });
  }
  return demands;
}

/** Long enough, and neither of its corners turns back. */
const fitsNow = (layout: Layout, leg: number): boolean =>
  slackOf(layout, leg) >= -POINT_MM && !layout.corners[leg - 1]?.turnsBack && !layout.corners[leg]?.turnsBack;

/** Directions to look in: the 26 of a cube set along the leg and in the plane of bend at the corner. */
function directionsAt(layout: Layout, k: number, [leg = k]: readonly number[]): readonly Vec3[] {
  const { direction } = layout.legs[leg]!;
  const others = [k - 1, k, leg - 1, leg + 1].flatMap((i) => layout.legs[i] ?? []);
  const bent = others.find((other) => norm(cross(direction, other.direction)) > ANGLE_RAD);
  const normal = bent ? unit(cross(direction, bent.direction)) : anyNormal(direction);
  const across = cross(normal, direction);
  return CUBE.map(([a, b, c]) => unit(add(add(scale(direction, a), scale(across, b)), scale(normal, c))));
}

const STEPS = [0, 1, -1];
const CUBE = STEPS.flatMap((a) => STEPS.flatMap((b) => STEPS.map((c) => [a, b, c] as const))).slice(1);

/** Lays the stretch around corner k out again with the point moved, straight points and all, and looks whether it fits. */
function holds(
  points: readonly CornerPoint[],
  layout: Layout,
  { k, legs, place }: { readonly k: number; readonly legs: readonly number[]; readonly place: Vec3 },
): boolean {
  const first = Math.max(0, k - REACH);
  const last = Math.min(layout.legs.length, k + REACH);
  const [from, to, moving] = [first, last, k].map((i) => pointOf(layout, i)) as [number, number, number];
  const moved = points
    .slice(from, to + 1)
    .map((point, i) => (from + i === moving ? { ...point, at: place } : point));
  if (moved.some(({ at }, i) => i > 0 && distance(moved[i - 1]!.at, at) < POINT_MM)) return false;
  const again = layOut(moved);
  // The outermost legs also carry a set-back that this stretch does not see; a move of corner k cannot reach them.
  const [a, b] = [pointOf(layout, Math.max(0, k - 2)), pointOf(layout, Math.min(layout.legs.length, k + 2))];
  return again.legs.every((leg, i) => {
    const [p, q] = [leg.points[0] + from, leg.points[1] + from];
    return p < a || q > b || fitsNow(again, i) || stillShort(layout, { p, q, k, legs });
  });
}

/** Whether the leg from point p to q was too short before and is none of those to cure. */
function stillShort(
  layout: Layout,
  {
    p,
    q,
    k,
    legs,
  }: { readonly p: number; readonly q: number; readonly k: number; readonly legs: readonly number[] },
): boolean {
  for (let leg = Math.max(0, k - 2); leg <= Math.min(layout.legs.length - 1, k + 1); leg++) {
    const [a, b] = layout.legs[leg]!.points;
    if (p < b && q > a && !fitsNow(layout, leg)) return !legs.includes(leg);
  }
  return false;
}
