/** Spring-back: what to set on the dial so that a bend comes out as wanted. Radians. */
import type { Die } from '@runback/job';

/**
 * What to set on the dial for a bend: factor·bend + fixed of the die; the bend itself when the die is unknown or
 * not calibrated.
 *
 * @param angle bend wanted, radians, > 0
 * @returns radians
 * @throws RangeError when the angle is not > 0
 * @example
 * import { dialFor } from '@runback/bending';
 * dialFor(Math.PI / 2, null) / Math.PI; // => 0.5
 */
export function dialFor(angle: number, die: Die | null): number {
  if (!(angle > 0)) throw new RangeError(`dialFor: angle must be > 0, got ${angle}`);
  const spring = die?.springBack;
  return spring ? spring.factor * angle + spring.fixed : angle;
}

/**
 * The bend a dial setting gives: the inverse of `dialFor`. Not positive when the tube springs back all of it.
 *
 * @param dial radians
 * @returns radians
 * @throws RangeError when the die's factor is not > 0
 * @example
 * import { angleFor } from '@runback/bending';
 * angleFor(1.5, null); // => 1.5
 */
export function angleFor(dial: number, die: Die | null): number {
  const spring = die?.springBack;
  if (!spring) return dial;
  if (!(spring.factor > 0)) throw new RangeError(`angleFor: factor must be > 0, got ${spring.factor}`);
  return (dial - spring.fixed) / spring.factor;
}
