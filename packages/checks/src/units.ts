import type { Vec3 } from '@runback/geometry';
import { toDegrees, toRadians } from '@runback/job';

/** Degrees are shortened to this many decimals when that gives the very same radians. */
const DECIMALS = 9;

/**
 * Degrees of an angle in radians. A figure that a job gave in degrees comes back as it was written: 12, not
 * 12.000000000000002.
 */
export function degrees(radians: number): number {
  const plain = toDegrees(radians);
  const short = Number(plain.toFixed(DECIMALS)) + 0;
  return toRadians(short) === radians ? short : plain;
}

/** Does something to each coordinate. */
export const eachOf = (v: Vec3, change: (x: number, axis: number) => number): Vec3 => [
  change(v[0], 0),
  change(v[1], 1),
  change(v[2], 2),
];
