/** Rounding for the bench. Halves go away from zero, so that the other hand rounds to the other sign. */
import { ANGLE_RAD, POINT_MM } from '@runback/geometry';
import { type LengthStyle, toDegrees } from '@runback/job';

/** Marks and lengths are rounded to this, mm: half a millimetre, 1/32 in, 1/16 in, or a hundredth of an inch. */
export const LENGTH_STEP: Readonly<Record<LengthStyle, number>> = {
  mm: 0.5,
  in: 25.4 / 32,
  'in-16': 25.4 / 16,
  'in-decimal': 25.4 / 100,
};
/** The dial is rounded to this, degrees. */
export const DIAL_STEP_DEG = 0.5;
/** A turn is rounded to this, degrees; after a shallow bend, where nobody can hold it closer, to the coarse one. */
export const TURN_STEP_DEG = 1;
export const COARSE_TURN_STEP_DEG = 5;

/** `noise` lifts what is a half but for the last digits, so that twins round alike. */
function toStep(value: number, step: number, noise: number): number {
  const steps = Math.floor((Math.abs(value) + noise) / step + 0.5);
  return steps === 0 ? 0 : Math.sign(value) * steps * step;
}

/** A length to the nearest half millimetre, or step of an inch. mm. */
export const roundLength = (mm: number, unit: LengthStyle): number => toStep(mm, LENGTH_STEP[unit], POINT_MM);

/** The next longer step, for a mark that must not come before the end of the last bend. mm. */
export function roundLengthUp(mm: number, unit: LengthStyle): number {
  const step = LENGTH_STEP[unit];
  return Math.ceil((mm - POINT_MM) / step) * step;
}

/** An angle to the nearest half degree. Radians in, degrees out. */
export const roundDialDeg = (radians: number): number =>
  toStep(toDegrees(radians), DIAL_STEP_DEG, toDegrees(ANGLE_RAD));

/** A turn to whole degrees, or to fives after a shallow bend: (−180, 180], a half turn is +180. Radians in, degrees out. */
export function roundTurnDeg(radians: number, coarse: boolean): number {
  const step = coarse ? COARSE_TURN_STEP_DEG : TURN_STEP_DEG;
  const degrees = toStep(toDegrees(radians), step, toDegrees(ANGLE_RAD));
  return degrees === -180 ? 180 : degrees;
}
