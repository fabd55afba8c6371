import { ANGLE_RAD, angleBetween, distance, POINT_MM, sub, type Vec3 } from '@runback/geometry';
import type { Corner } from '@runback/job';

/**
 * True when the corners of a line have room, quickly: `fillet` says the same, but where they have none it goes on to
 * look for cures, which is not wanted of the hundreds of lines that a search tries. Coincident points do not fit.
 */
export function fits(corners: readonly Corner[]): boolean {
  const legs = corners.slice(1).map((corner, i) => distance(corners[i]!.at, corner.at));
  if (legs.some((leg) => leg < POINT_MM)) return false;
  const setbacks = corners.map((_, i) => setback(corners, i));
  return legs.every((leg, i) => leg - setbacks[i]! - setbacks[i + 1]! >= -POINT_MM);
}

/** How much of its two legs a corner takes, mm; Infinity where the line turns back on itself. */
function setback(corners: readonly Corner[], i: number): number {
  const [before, here, after] = [corners[i - 1], corners[i]!, corners[i + 1]];
  if (before === undefined || after === undefined) return 0;
  const legs: readonly [Vec3, Vec3] = [sub(here.at, before.at), sub(after.at, here.at)];
  const angle = angleBetween(...legs);
  return angle >= Math.PI - ANGLE_RAD ? Number.POSITIVE_INFINITY : here.radius * Math.tan(angle / 2);
}
