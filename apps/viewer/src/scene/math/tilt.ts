/** The machine in the world: the world's up is its y, forward of the level machine its x, so its z is to the right. */
import { addScaled, dot, type MachineAxes, type Mat3, scale, sinCos, sub, type Vec3 } from 'runback';
import type { Tilt } from '../../store/types.ts';

/** Directions of the machine (job coordinates) to directions of the world, by rows. */
export function tiltMatrix({ forward, left, up }: MachineAxes, { pitch, roll }: Tilt): Mat3 {
  const [sp, cp] = sinCos(pitch);
  const [sr, cr] = sinCos(roll);
  // Rows of Ry(pitch)·Rx(roll), each laid along forward, left and up.
  const row = (f: number, l: number, u: number): Vec3 =>
    addScaled(addScaled(scale(forward, f), left, l), up, u);
  return [row(cp, sp * sr, sp * cr), row(-sp, cp * sr, cp * cr), scale(row(0, cr, -sr), -1)];
}

export const turnedBy = (m: Mat3, v: Vec3): Vec3 => [dot(m[0], v), dot(m[1], v), dot(m[2], v)];

/** The other way round: the matrix is a rotation, so its inverse is its columns. */
export const turnedBack = (m: Mat3, v: Vec3): Vec3 =>
  addScaled(addScaled(scale(m[0], v[0]), m[1], v[1]), m[2], v[2]);

/** How the machine lies in the world: `origin` (machine) is the world's zero. */
export interface Pose {
  readonly turn: Mat3;
  readonly origin: Vec3;
}

export const toWorld = ({ turn, origin }: Pose, point: Vec3): Vec3 => turnedBy(turn, sub(point, origin));

export const toMachine = ({ turn, origin }: Pose, point: Vec3): Vec3 =>
  addScaled(origin, turnedBack(turn, point), 1);

/** Up of the world in machine axes. */
export const upOf = ({ turn }: Pose): Vec3 => turn[1];
