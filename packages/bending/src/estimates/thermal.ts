/** What heat does to a line: growth, movement of its ends, and what happens when they are held. Millimetres, N, MPa, K. */
import type { Vec3 } from '@runback/geometry';
import { tubeSection } from './mass.ts';
import { CAUTION, type Estimate, finite, notNegative, positive } from './say.ts';

export interface Heat {
  /** Mean linear expansion over the range, 1/K. */
  readonly expansionPerK: number;
  /** Rise of temperature, K; negative when it cools. */
  readonly deltaK: number;
}

/**
 * Free growth of a length, mm: α·ΔT·L. Shrinking is negative.
 * @throws RangeError when the length or the expansion is < 0 or a value is not finite
 * @example
 * import { freeGrowth } from '@runback/bending';
 * freeGrowth(1200, { expansionPerK: 17.2 / 1_000_000, deltaK: 100 }).toFixed(3); // => '2.064'
 */
export function freeGrowth(length: number, { expansionPerK, deltaK }: Heat): number {
  notNegative('freeGrowth', { length, expansionPerK });
  finite('freeGrowth', { deltaK });
  return expansionPerK * deltaK * length;
}

/**
 * Where end Z goes against end A when the whole line is warmed evenly and free, mm: α·ΔT times the vector from A
 * to Z, whatever the route, because an even rise scales the shape and keeps its angles.
 * @throws RangeError when a coordinate is not finite or the expansion is < 0
 * @example
 * import { endMovement } from '@runback/bending';
 * const heat = { expansionPerK: 1 / 65536, deltaK: 64 };
 * endMovement([0, 0, 0], [1024, 0, 512], heat).vector; // => [1, 0, 0.5]
 */
export function endMovement(
  a: Vec3,
  z: Vec3,
  heat: Heat,
): Estimate & { readonly vector: Vec3; readonly distance: number } {
  for (const [end, [x, y, height]] of [
    ['A', a],
    ['Z', z],
  ] as const)
    finite(`endMovement: end ${end}`, { x, y, z: height });
  const scale = freeGrowth(1, heat);
  const vector: Vec3 = [scale * (z[0] - a[0]), scale * (z[1] - a[1]), scale * (z[2] - a[2])];
  return { vector, distance: Math.hypot(...vector), caution: CAUTION };
}

/**
 * Stress and force in a straight held fast at both ends, compression positive when it warms: σ = E·α·ΔT and
 * F = σ·A, independent of length. An upper bound: ports give, thin tubes buckle and yielding caps it.
 * @throws RangeError when a size or modulus is not > 0, the expansion is < 0 or the wall leaves no bore
 * @example
 * import { heldForce } from '@runback/bending';
 * const steel = { youngsMPa: 200000, expansionPerK: 12 / 1_000_000, deltaK: 50 };
 * heldForce({ od: 12, wall: 1, ...steel }).stressMPa.toFixed(1); // => '120.0'
 */
export function heldForce(
  input: Heat & { readonly od: number; readonly wall: number; readonly youngsMPa: number },
): Estimate & { readonly stressMPa: number; readonly forceN: number } {
  positive('heldForce', { youngsMPa: input.youngsMPa });
  const stressMPa = input.youngsMPa * freeGrowth(1, input);
  return { stressMPa, forceN: stressMPa * tubeSection(input.od, input.wall).area, caution: CAUTION };
}

export interface GrowthLegInput {
  readonly od: number;
  readonly youngsMPa: number;
  /** Bending stress allowed for the movement. */
  readonly allowableMPa: number;
  /** Movement across the leg, mm: what the straight at right angles to it grows. Its sign does not matter. */
  readonly movement: number;
  /** The leg there is, mm. */
  readonly leg: number;
}

export interface GrowthLeg extends Estimate {
  /** Leg that takes the movement at the allowed stress, mm. */
  readonly needed: number;
  readonly takes: boolean;
  /** Bending stress at both ends of the leg there is, MPa. */
  readonly stressMPa: number;
  readonly allowableMPa: number;
}

/**
 * Whether a leg round a corner takes the growth of the straight before it, as a cantilever guided at its far end:
 * L = √(3·E·D·Δ/S). From the beam formulas δ = F·L³/(12·E·I), M = F·L/2; the guided-cantilever method of pipe
 * stress handbooks (from memory). One leg takes all of it, corners stay square, bends count as stiff.
 * @throws RangeError when a size, modulus, stress or leg is not > 0 or the movement is not finite
 * @example
 * import { growthLeg } from '@runback/bending';
 * growthLeg({ od: 12, youngsMPa: 200000, allowableMPa: 100, movement: 2, leg: 400 }).needed.toFixed(1); // => '379.5'
 */
export function growthLeg(input: GrowthLegInput): GrowthLeg {
  const { od, youngsMPa, allowableMPa, movement, leg } = input;
  positive('growthLeg', { od, youngsMPa, allowableMPa, leg });
  finite('growthLeg', { movement });
  const load = 3 * youngsMPa * od * Math.abs(movement);
  const needed = Math.sqrt(load / allowableMPa);
  return { needed, takes: leg >= needed, stressMPa: load / (leg * leg), allowableMPa, caution: CAUTION };
}
