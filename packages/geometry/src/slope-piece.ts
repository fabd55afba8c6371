/**
 * The smallest slope of one piece over a patch of attitudes, in closed form.
 *
 * Let c be the direction of travel towards the drain end. The slope is the elevation of −c above the plane square to
 * up U, which is (the angle between c and U) − 90°. So the smallest slope is the smallest angle between the curve of c
 * (a point for a straight, part of a great circle for an arc) and the patch of U (attitude.ts), less 90°.
 *
 * For one c: c·U = −cx·sin p + cos p·h(r) with h = cy·sin r + cz·cos r. As cos p ≥ 0, the best r is best for every p:
 * the free one if it is inside, else an end; then p likewise. That is `nearest` below.
 *
 * For an arc the list of places in `arcPlaces` is complete, because at the smallest angle one of these holds:
 *  1. c is at an end of the arc.                            → both ends.
 *  2. The angle is 0: c lies in the patch. Either an end does (1), or the arc enters the patch over its rim.
 *                                                           → crossings with the two parallels and two meridians.
 *  3. c is inside the arc and the angle is not 0. Then U lies on the rim: from the inside of the patch it could still
 *     step towards c. And c is the point of the great circle nearest to U, at the angle asin|n·U| (n its pole).
 *     a. U is a corner.                                     → the place nearest each corner.
 *     b. U is inside a parallel: n·U is there a constant plus a sinusoid of r, and |n·U|, not 0, is smallest where
 *        that turns, with U in the plane of n and the pole F. So is then c, the point of the circle nearest to U.
 *                                                           → the places that lean most forward and most aft.
 *     c. U is inside a meridian, a great circle: n·U is a pure sinusoid of p, whose size has no smallest value but
 *        0, which is 2.
 * At each listed place `nearest` gives the true smallest slope there, so every candidate is attained, a superfluous
 * one does no harm, and the smallest of them is the answer. The same list also holds, for a whole stretch of equal
 * places, the one nearest A: such a stretch starts at an end, at a crossing, or at a place nearest a corner.
 */
import type { Patch } from './attitude.ts';
import { upParts } from './attitude.ts';
import { SLOPE_TIE_RAD } from './numeric.ts';
import type { Arc, MachineAxes, Piece, Vec3 } from './types.ts';
import { dot, sinCos } from './vec.ts';

/** A smallest slope: radians, distance along the line, and the attitude about the patch's axes. */
export interface Worst {
  readonly slope: number;
  readonly at: number;
  readonly pitch: number;
  readonly roll: number;
}

/** The lower of two slopes; of equal ones the one nearer A. */
export function lower(a: Worst, b: Worst): Worst {
  if (Math.abs(a.slope - b.slope) <= SLOPE_TIE_RAD) return b.at < a.at ? b : a;
  return b.slope < a.slope ? b : a;
}

/** Elevation of a unit vector above the level of `up`, radians in [−π/2, π/2]: accurate near level and near plumb. */
export const elevation = (w: Vec3, up: Vec3): number => {
  const x = w[1] * up[2] - w[2] * up[1];
  const y = w[2] * up[0] - w[0] * up[2];
  const z = w[0] * up[1] - w[1] * up[0];
  return Math.atan2(dot(w, up), Math.sqrt(x * x + y * y + z * z));
};

/** A vector in (forward, left, up), times `k`. */
export const inAxes = (axes: MachineAxes, v: Vec3, k: number): Vec3 => [
  k * dot(v, axes.forward),
  k * dot(v, axes.left),
  k * dot(v, axes.up),
];

/** The smallest slope of a piece towards a drain end over a patch. */
export function worstOfPiece(piece: Piece, drain: 'A' | 'Z', patch: Patch): Worst {
  // The tangent points from A to Z; along an arc it is cos·v − sin·u, so c = cos·a + sin·b.
  const sign = drain === 'Z' ? 1 : -1;
  if (piece.kind === 'straight')
    return nearest(inAxes(patch.axes, piece.direction, sign), patch, piece.start);
  const a = inAxes(patch.axes, piece.v, sign);
  const b = inAxes(patch.axes, piece.u, -sign);
  let worst = nearest(a, patch, piece.start);
  for (const angle of arcPlaces(a, b, patch)) {
    const turned = angle < 0 ? angle + 2 * Math.PI : angle;
    if (turned > 0 && turned < piece.angle) worst = lower(worst, onArc(turned, piece));
  }
  return lower(worst, onArc(piece.angle, piece));

  function onArc(angle: number, arc: Arc): Worst {
    const [s, c] = sinCos(angle);
    const at = angle === arc.angle ? arc.end : Math.min(arc.start + angle * arc.radius, arc.end);
    return nearest([c * a[0] + s * b[0], c * a[1] + s * b[1], c * a[2] + s * b[2]], patch, at);
  }
}

/** The attitude of the patch whose up is nearest to `c`, and the slope it gives. */
function nearest(c: Vec3, patch: Patch, at: number): Worst {
  const { p0, p1, r0, r1 } = patch;
  let roll = r0;
  let pitch = p0;
  if (!patch.single) {
    roll = best(Math.atan2(c[1], c[2]), [r0, r1], (r) => c[1] * Math.sin(r) + c[2] * Math.cos(r));
    const h = c[1] * Math.sin(roll) + c[2] * Math.cos(roll);
    pitch = best(Math.atan2(-c[0], h), [p0, p1], (p) => h * Math.cos(p) - c[0] * Math.sin(p));
  }
  return { slope: -elevation(c, upParts(pitch, roll)), at, pitch, roll };
}

/** Where a sinusoid that is largest at `free` is largest between two bounds. */
function best(free: number, [low, high]: readonly [number, number], value: (x: number) => number): number {
  if (low === high || (free >= low && free <= high)) return low === high ? low : free;
  return value(high) > value(low) ? high : low;
}

/** Arc angles in (−π, π] at which c = cos·a + sin·b can be nearest to the patch (see the top of this file). */
function arcPlaces(a: Vec3, b: Vec3, patch: Patch): readonly number[] {
  const places: number[] = [];
  const nearTo = (u: Vec3) => places.push(Math.atan2(dot(b, u), dot(a, u)));
  nearTo(upParts(patch.p0, patch.r0));
  if (patch.single) return places;
  nearTo(upParts(patch.p0, patch.r1));
  nearTo(upParts(patch.p1, patch.r0));
  nearTo(upParts(patch.p1, patch.r1));
  const most = Math.atan2(b[0], a[0]);
  places.push(most, wrapped(most + Math.PI));
  for (const p of [patch.p0, patch.p1]) places.push(...crossings(a[0], b[0], -Math.sin(p)));
  for (const r of [patch.r0, patch.r1]) {
    const [s, c] = sinCos(r);
    places.push(...crossings(a[1] * c - a[2] * s, b[1] * c - b[2] * s, 0));
  }
  return places;
}

/** The solutions of a·cos x + b·sin x = k, in [−π, π]. */
function crossings(a: number, b: number, k: number): readonly number[] {
  const square = a * a + b * b - k * k;
  if (square < 0 || (a === 0 && b === 0)) return [];
  const [middle, aside] = [Math.atan2(b, a), Math.atan2(Math.sqrt(square), k)];
  return [wrapped(middle - aside), wrapped(middle + aside)];
}

function wrapped(angle: number): number {
  if (angle > Math.PI) return angle - 2 * Math.PI;
  return angle < -Math.PI ? angle + 2 * Math.PI : angle;
}
