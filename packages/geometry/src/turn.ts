import { ANGLE_RAD } from './numeric.ts';
import type { Vec3 } from './types.ts';
import { cross, dot } from './vec.ts';

const WHOLE = 2 * Math.PI;

/**
 * The turn from one plane of bend to the next: radians in (−π, π], right-handed about `travel`, so positive is
 * clockwise as seen looking from A towards Z. Within 1e-6° of a half turn it is exactly π, within 1e-6° of none
 * exactly 0 (never −0).
 *
 * @param previousNormal unit d_in × d_out of the bend before
 * @param normal unit d_in × d_out of this bend
 * @param travel unit vector along the straight between them, A→Z
 * @example
 * import { turnBetween } from '@runback/geometry';
 * turnBetween([0, 0, 1], [0, -1, 0], [1, 0, 0]) / Math.PI; // => 0.5
 */
export function turnBetween(previousNormal: Vec3, normal: Vec3, travel: Vec3): number {
  return cleanTurn(Math.atan2(dot(cross(previousNormal, normal), travel), dot(previousNormal, normal)));
}

/** Any angle brought into (−π, π], with the half turn and the zero made exact. */
export function cleanTurn(angle: number): number {
  const turn = angle - WHOLE * Math.round(angle / WHOLE);
  if (Math.abs(turn) >= Math.PI - ANGLE_RAD) return Math.PI;
  return Math.abs(turn) <= ANGLE_RAD ? 0 : turn;
}

/** The hour of the next bend: `clock` advanced by `turn`, in [0, 2π), 0 where it is within 1e-6° of a whole round. */
export function advanceClock(clock: number, turn: number): number {
  const sum = clock + turn;
  const hour = sum - WHOLE * Math.floor(sum / WHOLE);
  return hour <= ANGLE_RAD || hour >= WHOLE - ANGLE_RAD ? 0 : hour;
}
