import { NO_DIRECTION } from './numeric.ts';
import type { Vec3 } from './types.ts';

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k];
/** a + k·b */
export const addScaled = (a: Vec3, b: Vec3, k: number): Vec3 => [
  a[0] + b[0] * k,
  a[1] + b[1] * k,
  a[2] + b[2] * k,
];
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const norm = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);
export const distance = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
export const negate = (a: Vec3): Vec3 => [-a[0], -a[1], -a[2]];

/**
 * Unit vector along `a`.
 * @throws RangeError when `a` has no direction (length 0 or not finite).
 */
export function unit(a: Vec3): Vec3 {
  const n = norm(a);
  if (!(n * n > NO_DIRECTION && n < Number.POSITIVE_INFINITY))
    throw new RangeError(`unit: vector must have a direction, got [${a.join(', ')}]`);
  return [a[0] / n, a[1] / n, a[2] / n];
}

/** Angle between two vectors, radians in [0, π]; `atan2(|a×b|, a·b)`, accurate at both ends of the range. */
export const angleBetween = (a: Vec3, b: Vec3): number => Math.atan2(norm(cross(a, b)), dot(a, b));

/** Some unit vector square to `a`: always the same one for the same `a`. */
export function anyNormal(a: Vec3): Vec3 {
  const [x, y, z] = [Math.abs(a[0]), Math.abs(a[1]), Math.abs(a[2])];
  const axis: Vec3 = x <= y && x <= z ? [1, 0, 0] : y <= z ? [0, 1, 0] : [0, 0, 1];
  return unit(cross(a, axis));
}

/** `a` turned by `angle` radians about the unit vector `axis`, right-handed. Multiples of 90° are exact. */
export function rotate(a: Vec3, axis: Vec3, angle: number): Vec3 {
  const [s, c] = sinCos(angle);
  const along = scale(axis, dot(axis, a) * (1 - c));
  return add(add(scale(a, c), scale(cross(axis, a), s)), along);
}

const QUARTER = Math.PI / 2;

/** Sine and cosine of an angle in radians, exact (0, ±1) at multiples of 90° as doubles hold them. */
export function sinCos(angle: number): readonly [number, number] {
  const quarters = Math.round(angle / QUARTER);
  if (angle !== quarters * QUARTER) return [Math.sin(angle), Math.cos(angle)];
  const q = ((quarters % 4) + 4) % 4;
  return [[0, 1, 0, -1][q]!, [1, 0, -1, 0][q]!];
}
