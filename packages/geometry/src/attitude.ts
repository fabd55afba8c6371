/**
 * Attitudes of the machine as a patch of the unit sphere: the directions that "up" can take in body axes.
 *
 * Up at (pitch, roll) is (−sin p, cos p·sin r, cos p·cos r) in (forward, left, up): with −forward as the pole, pitch
 * is a latitude and roll a longitude. A pitch × roll box is a patch between two parallels and two meridians. A cone
 * of tilt t about up is such a patch too, round the pole of turned axes: latitudes 90° − t to 90°, all longitudes.
 * So one shape serves every set of attitudes.
 */
import type { AttitudeSet, MachineAxes, Vec3 } from './types.ts';
import { dot, negate, sinCos } from './vec.ts';

const QUARTER = Math.PI / 2;

/** A patch of directions of up: pitch from `p0` to `p1`, roll from `r0` to `r1`, about `axes`. Radians. */
export interface Patch {
  readonly axes: MachineAxes;
  readonly p0: number;
  readonly p1: number;
  readonly r0: number;
  readonly r1: number;
  /** True when it is one direction only. */
  readonly single: boolean;
  /** False for a cone: there pitch and roll are about turned axes and mean nothing to the reader. */
  readonly named: boolean;
}

/**
 * Up in the body axes of a machine at some pitch and roll (radians; positive pitch = nose down, positive roll =
 * right side down), as a unit vector in job coordinates: (−sin p, cos p·sin r, cos p·cos r) along (forward, left,
 * up). Exact at multiples of 90°.
 * @example
 * import { upIn } from '@runback/geometry';
 * const axes = { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] } as const;
 * upIn(axes, Math.PI / 2, 0); // => [-1, 0, 0]
 */
export function upIn(axes: MachineAxes, pitch: number, roll: number): Vec3 {
  const [f, l, u] = upParts(pitch, roll);
  const { forward, left, up } = axes;
  const along = (i: 0 | 1 | 2) => f * forward[i] + l * left[i] + u * up[i] + 0;
  return [along(0), along(1), along(2)];
}

/**
 * The pitch and roll (radians, signs as in `upIn`) at which up has a direction in body axes: the inverse of `upIn`. Pitch
 * in [−π/2, π/2], roll in (−π, π].
 * @example
 * import { pitchAndRoll, upIn } from '@runback/geometry';
 * const axes = { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] } as const;
 * pitchAndRoll(axes, upIn(axes, 0.2, -0.1)).roll.toFixed(3); // => '-0.100'
 */
export function pitchAndRoll(
  { forward, left, up }: MachineAxes,
  direction: Vec3,
): { readonly pitch: number; readonly roll: number } {
  const [f, l, u] = [dot(direction, forward), dot(direction, left), dot(direction, up)];
  return { pitch: Math.atan2(-f, Math.hypot(l, u)), roll: Math.atan2(l, u) };
}

/** Up at a pitch and roll, in (forward, left, up). */
export function upParts(pitch: number, roll: number): Vec3 {
  const [sp, cp] = sinCos(pitch);
  const [sr, cr] = sinCos(roll);
  return [-sp, cp * sr, cp * cr];
}

/**
 * The patch of a set of attitudes.
 * @throws RangeError when pitch leaves ±90°, roll ±180°, a range is upside down, or the tilt leaves [0, 180°].
 */
export function patchOf(axes: MachineAxes, attitudes: AttitudeSet): Patch {
  if (attitudes.kind === 'rest') return patchAt(axes, 0, 0);
  if (attitudes.kind === 'box') {
    const [p0, p1] = checked('pitch', attitudes.pitch, QUARTER);
    const [r0, r1] = checked('roll', attitudes.roll, Math.PI);
    return { axes, p0, p1, r0, r1, single: p0 === p1 && r0 === r1, named: true };
  }
  const { tilt } = attitudes;
  if (!(tilt >= 0 && tilt <= Math.PI))
    throw new RangeError(`smallestSlope: tilt must be from 0 to π rad, got ${tilt}`);
  const turned = { forward: negate(axes.up), left: axes.left, up: axes.forward };
  const round = { r0: tilt === 0 ? 0 : -Math.PI, r1: tilt === 0 ? 0 : Math.PI };
  return { axes: turned, p0: QUARTER - tilt, p1: QUARTER, ...round, single: tilt === 0, named: false };
}

/** The patch of one attitude. */
export function patchAt(axes: MachineAxes, pitch: number, roll: number): Patch {
  return { axes, p0: pitch, p1: pitch, r0: roll, r1: roll, single: true, named: true };
}

function checked(name: string, range: readonly [number, number], most: number): readonly [number, number] {
  const [low, high] = range;
  if (!(low >= -most && high <= most && low <= high))
    throw new RangeError(`smallestSlope: ${name} must be a range within ±${most} rad, got [${low}, ${high}]`);
  return range;
}
