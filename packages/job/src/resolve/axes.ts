/** Which way is up, and how the machine tips. */
import {
  type AttitudeSet,
  addScaled,
  cross,
  dot,
  type MachineAxes,
  norm,
  PARALLEL,
  unit,
  type Vec3,
} from '@runback/geometry';
import type { AttitudeValues } from '../schema/job.ts';
import { directionOf } from './solid.ts';

const UP: Vec3 = [0, 0, 1];
const FORWARD: Vec3 = [1, 0, 0];

/** Axes of the machine, forward made square to up; or which of the two cannot be. */
export function axesOf(up: Vec3 = UP, forward: Vec3 = FORWARD): MachineAxes | 'up' | 'forward' | 'parallel' {
  const upward = directionOf(up);
  if (!upward) return 'up';
  const ahead = directionOf(forward);
  if (!ahead) return 'forward';
  if (norm(cross(upward, ahead)) < PARALLEL) return 'parallel';
  const square = unit(addScaled(ahead, upward, -dot(ahead, upward)));
  return { up: upward, forward: square, left: unit(cross(upward, square)) };
}

/** The attitudes a job gives, radians; none given: at rest only. */
export function attitudesOf(values: AttitudeValues | undefined): AttitudeSet {
  if (values?.tilt !== undefined) return { kind: 'cone', tilt: values.tilt };
  if (values?.pitch === undefined && values?.roll === undefined) return { kind: 'rest' };
  return { kind: 'box', pitch: values.pitch ?? [0, 0], roll: values.roll ?? [0, 0] };
}
