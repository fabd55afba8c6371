import { assemble, isNoLength, type LooseArc, type LooseStraight } from './assemble.ts';
import {
  type Corner,
  type CornerPoint,
  checkCornerPoints,
  type Layout,
  type Leg,
  layOut,
} from './corners.ts';
import { findMisfits } from './misfit.ts';
import { turnBetween } from './turn.ts';
import type { Centreline, Filleted, Vec3 } from './types.ts';
import { add, addScaled, cross, dot, scale, sub, unit } from './vec.ts';

export interface FilletOptions {
  /** Look for the cure of each misfit; without, it is `null`. Some milliseconds each: a search that only asks "does it fit?" leaves it out. */
  readonly cures: boolean;
}

export const filletDefaults: FilletOptions = { cures: true };

/**
 * Rounds the corners of a row of points, each with its own centreline radius, into straights and arcs.
 *
 * Points run from end A to end Z, mm; the radii of the two ends are not looked at. The pieces always alternate
 * straight, arc, …, straight; a straight may be 0 long. A corner under 1e-6° is no bend and its two straights are
 * one; a straight down to −1e-6 mm counts as 0. Neighbouring corners with no straight and no turn between them
 * and the same radius are one bend, which names all its points.
 *
 * What cannot be rounded comes back as `misfits`: one for each leg shorter than the set-backs
 * (radius·tan(angle/2)) on it, with its corner of the larger set-back, and one for each corner that turns back
 * on itself (180° within 1e-6°). Indices count the points given, 0 = end A.
 *
 * @throws RangeError on fewer than two points, a coordinate that is not finite, neighbouring points closer than
 * 1e-6 mm, or an inner radius that is not > 0.
 * @example
 * import { fillet } from '@runback/geometry';
 * const filleted = fillet([
 *   { at: [0, 0, 0], radius: 0 },
 *   { at: [100, 0, 0], radius: 60 },
 *   { at: [100, 100, 0], radius: 0 },
 * ]);
 * filleted.ok && filleted.centreline.pieces.map((piece) => piece.to); // => [[40,0,0],[100,60,0],[100,100,0]]
 */
export function fillet(corners: readonly CornerPoint[], options: FilletOptions = filletDefaults): Filleted {
  checkCornerPoints(corners);
  const layout = layOut(corners);
  const misfits = findMisfits(corners, layout, options);
  return misfits.length > 0 ? { ok: false, misfits } : { ok: true, centreline: build(corners, layout) };
}

function build(points: readonly CornerPoint[], { legs, corners }: Layout): Centreline {
  const straights = legs.map((leg, i) =>
    straightOn(points, leg, { before: corners[i - 1], after: corners[i] }),
  );
  const arcs: LooseArc[] = [];
  corners.forEach((corner, i) => {
    const [before, after] = [straights[i]!, straights[i + 1]!];
    const centreFrom = addScaled(points[corner.point]!.at, before.direction, -corner.setback);
    const { normal, u, v } = arcShape(before.direction, after.direction);
    const last = arcs.at(-1);
    arcs.push({
      from: before.to,
      to: after.from,
      centre: addScaled(centreFrom, u, -corner.radius),
      normal,
      u,
      v,
      radius: corner.radius,
      angle: corner.angle,
      points: [corner.point],
      turn: last ? turnBetween(last.normal, normal, before.direction) : null,
    });
  });
  return assemble({ straights, arcs });
}

/** What is left of a leg between the arcs at its two ends. Where nothing is left, both arcs share one point. */
function straightOn(
  points: readonly CornerPoint[],
  leg: Leg,
  { before, after }: { readonly before: Corner | undefined; readonly after: Corner | undefined },
): LooseStraight {
  const { direction } = leg;
  const [a, b] = [points[leg.points[0]]!.at, points[leg.points[1]]!.at];
  const length = leg.length - (before?.setback ?? 0) - (after?.setback ?? 0);
  const from = before ? addScaled(a, direction, before.setback) : a;
  const to = after ? addScaled(b, direction, -after.setback) : b;
  if (!isNoLength(length)) return { from, to, direction, length };
  const shared = before ? (after ? scale(add(from, to), 0.5) : b) : a;
  return { from: shared, to: shared, direction, length: 0 };
}

/**
 * Normal and starting axes of the arc from one direction to the next. The cross product is taken with the small
 * one of b − a and a + b, which has the same normal but keeps it square to `a` near 0° and near 180°.
 */
function arcShape(a: Vec3, b: Vec3): { readonly normal: Vec3; readonly u: Vec3; readonly v: Vec3 } {
  const normal = unit(cross(a, dot(a, b) > 0 ? sub(b, a) : add(a, b)));
  return { normal, u: unit(cross(a, normal)), v: a };
}
