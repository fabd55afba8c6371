import { ANGLE_RAD, angleBetween, dot, elevation, type Vec3 } from '@runback/geometry';
import type { Drain, Line } from '@runback/job';
import { enoughAtRest, enoughTilted, SLOPE, SLOPE_TILTED } from '../slope-limits.ts';
import { takenAsNote } from '../soften.ts';
import type { Verdict } from '../types.ts';
import { sidesOf } from './crest.ts';
import type { LineProfile, ProfileFall } from './types.ts';

/**
 * Height and fall at each place of a profile with `up` (a unit vector, body axes) as up. Heights are mm over the
 * drain end, or over the lower end where none or both drain; slopes are radians towards the drain end, positive where
 * liquid runs there. Each place is judged as the slope check judges the line: with up as at rest against the limit at
 * rest, with any other up against the limit in an attitude. A line drained to both ends is not judged inside the bend
 * that holds its crest.
 */
export function profileFalls(profile: LineProfile, line: Line, up: Vec3): readonly ProfileFall[] {
  const { places } = profile;
  const { drain } = line;
  const [a, z] = [dot(places[0]!.point, up), dot(places.at(-1)!.point, up)];
  const zero = drain?.to === 'A' ? a : drain?.to === 'Z' ? z : Math.min(a, z);
  const heightOf = (point: Vec3): number => dot(point, up) - zero;
  if (drain === null)
    return places.map(({ point }) => ({ height: heightOf(point), slope: null, toward: null, verdict: null }));
  const sideOf = sidesOf(profile, drain, up);
  const judge = judgeFor(line, drain, up);
  return places.map((place) => {
    const { toward, judged } = sideOf(place);
    const rise = elevation(place.tangent, up);
    const slope = toward === 'A' ? rise : 0 - rise;
    return { height: heightOf(place.point), slope, toward, verdict: judged ? judge(slope) : 'pass' };
  });
}

/** The verdict on a slope, softened as the line's service softens the check. */
function judgeFor({ axes, service }: Line, drain: Drain, up: Vec3): (slope: number) => Verdict {
  const atRest = angleBetween(up, axes.up) <= ANGLE_RAD;
  const enough = atRest ? enoughAtRest : enoughTilted;
  const worst = takenAsNote(service, SLOPE, ...(atRest ? [] : [SLOPE_TILTED])) ? 'note' : 'fail';
  return (slope) => (enough(slope, drain) ? 'pass' : worst);
}
