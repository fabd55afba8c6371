/** From a pointer to a place of a corner: in the plane of view, along an axis or along a leg, to whole steps. */
import { addScaled, cross, distance, dot, norm, sub, unit, type Vec3 } from 'runback';
import type { AxisLock } from '../types.ts';

export interface Ray {
  readonly from: Vec3;
  /** Unit. */
  readonly direction: Vec3;
}

/** Below this angle between a line and the view (sine) the pointer says nothing about a place along it. */
const END_ON = 0.12;
const FLAT = 0.05;

/** Where a ray meets the plane through `point` square to `normal`; `null` when it grazes it or looks away. */
export function rayOnPlane({ from, direction }: Ray, point: Vec3, normal: Vec3): Vec3 | null {
  const slant = dot(direction, normal);
  if (Math.abs(slant) < FLAT) return null;
  const far = dot(sub(point, from), normal) / slant;
  return far > 0 ? addScaled(from, direction, far) : null;
}

/** Distance along a line (from `point`, unit `along`) of its place nearest to a ray; `null` when it is seen end on. */
export function rayAlongLine({ from, direction }: Ray, point: Vec3, along: Vec3): number | null {
  const across = cross(along, direction);
  const sine = norm(across);
  if (sine < END_ON) return null;
  const between = sub(from, point);
  return dot(cross(between, direction), across) / (sine * sine);
}

/** To whole steps; 0 is free. Never −0. */
export const snapped = (value: number, step: number): number =>
  step > 0 ? Math.round(value / step) * step + 0 : value;

/** Decimals left behind by multiplying a step: 3 × 0.1 is 0.3. */
const TIDY = 1e6;
const tidy = (value: number): number => Math.round(value * TIDY) / TIDY + 0;

export const snappedPoint = (point: Vec3, step: number): Vec3 =>
  step > 0
    ? [tidy(snapped(point[0], step)), tidy(snapped(point[1], step)), tidy(snapped(point[2], step))]
    : point;

export interface CornerGrip {
  /** Points of the line, end A first. */
  readonly points: readonly Vec3[];
  readonly index: number;
  readonly lock: AxisLock;
  readonly snap: number;
  /** Unit, along the view. */
  readonly viewNormal: Vec3;
}

const AXES: Readonly<Record<'x' | 'y' | 'z', Vec3>> = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
const INDEX = { x: 0, y: 1, z: 2 } as const;

/** Where a gripped corner goes for a ray through the pointer, machine axes; where it says nothing, where it was. */
export function draggedTo(ray: Ray, grip: CornerGrip): Vec3 {
  const { points, index, lock, snap } = grip;
  const was = points[index]!;
  if (lock === 'leg') return alongLeg(ray, grip);
  if (lock === null) {
    const at = rayOnPlane(ray, was, grip.viewNormal);
    return at === null ? was : snappedPoint(at, snap);
  }
  const moved = rayAlongLine(ray, was, AXES[lock]);
  if (moved === null) return was;
  // The other two coordinates stay exactly as they were.
  const k = INDEX[lock];
  const value = tidy(snapped(was[k] + moved, snap));
  return [k === 0 ? value : was[0], k === 1 ? value : was[1], k === 2 ? value : was[2]];
}

/** Along the leg that is seen longer of the two beside the corner; its length goes to whole steps. */
function alongLeg(ray: Ray, { points, index, snap, viewNormal }: CornerGrip): Vec3 {
  const was = points[index]!;
  const other = legNeighbour(points, index, viewNormal);
  if (other === null) return was;
  const along = unit(sub(was, other));
  const moved = rayAlongLine(ray, was, along);
  if (moved === null) return was;
  const length = snapped(distance(was, other) + moved, snap);
  return length > Math.max(snap, 0) ? addScaled(other, along, length) : was;
}

/** The neighbour at the other end of the leg a corner is moved along. */
export function legNeighbour(points: readonly Vec3[], index: number, viewNormal: Vec3): Vec3 | null {
  const was = points[index]!;
  let best: Vec3 | null = null;
  let longest = 0;
  for (const other of [points[index - 1], points[index + 1]]) {
    if (other === undefined) continue;
    const leg = sub(was, other);
    const seen = norm(cross(leg, viewNormal));
    if (seen > longest) [best, longest] = [other, seen];
  }
  return best;
}

/** The axis of the job that lies best along a way across the view. */
export function axisAlong(way: Vec3): 'x' | 'y' | 'z' {
  const [x, y, z] = [Math.abs(way[0]), Math.abs(way[1]), Math.abs(way[2])];
  return x >= y && x >= z ? 'x' : y >= z ? 'y' : 'z';
}
