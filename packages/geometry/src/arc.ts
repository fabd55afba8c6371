import type { Arc, Vec3 } from './types.ts';
import { addScaled, sinCos } from './vec.ts';

/** The circle an arc lies on and where on it the arc starts: what its points and tangents are made from. */
export type ArcFrame = Pick<Arc, 'from' | 'centre' | 'u' | 'v' | 'radius'>;

/**
 * Point of an arc at angle `t` from its start. Measured from the start and not from the centre, so that a short
 * arc of a huge radius keeps every digit.
 */
export function arcPoint(arc: ArcFrame, t: number): Vec3 {
  const [s, c] = sinCos(t);
  // 1 − cos t: by the half angle where it would cancel, else directly, which is exact at multiples of 90°.
  const inward = t < 1 ? 2 * Math.sin(t / 2) ** 2 : 1 - c;
  return addScaled(addScaled(arc.from, arc.v, arc.radius * s), arc.u, -arc.radius * inward);
}

/** Unit vector of travel of an arc at angle `t` from its start: cos t·v − sin t·u. */
export const arcTangent = (arc: ArcFrame, t: number): Vec3 => turned(arc.v, arc.u, -t);

/** Unit vector from the centre to the point at angle `t`: cos t·u + sin t·v. */
export const arcRadial = (arc: ArcFrame, t: number): Vec3 => turned(arc.u, arc.v, t);

function turned(a: Vec3, b: Vec3, t: number): Vec3 {
  const [s, c] = sinCos(t);
  return [c * a[0] + s * b[0], c * a[1] + s * b[1], c * a[2] + s * b[2]];
}
