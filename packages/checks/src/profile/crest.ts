/** Which end each place of a line is to run to, and where no fall is asked of it. */
import { dot, POINT_MM, type Vec3 } from '@runback/geometry';
import type { Drain } from '@runback/job';
import type { LineProfile, ProfilePlace } from './types.ts';

/** The end that liquid at a place is to run to; not judged inside the bend that holds the crest. */
export interface Side {
  readonly toward: 'A' | 'Z';
  readonly judged: boolean;
}

/**
 * Drained to one end, every place runs to that. Drained to both, the highest place is the crest, and each side of it
 * runs to its own end. A bend turns through level at its crest whatever the line is like: inside it nothing is judged.
 */
export function sidesOf(profile: LineProfile, { to }: Drain, up: Vec3): (place: ProfilePlace) => Side {
  if (to !== 'both') return () => ({ toward: to, judged: true });
  const crest = highest(profile.places, up);
  const bend = crestBend(profile, crest, up);
  return ({ at }) => {
    if (bend === null) return { toward: at <= crest.at && crest.at > 0 ? 'A' : 'Z', judged: true };
    const judged = at <= bend.start + POINT_MM || at >= bend.end - POINT_MM;
    const turn = judged ? bend.start + POINT_MM : crest.at;
    return { toward: at <= turn ? 'A' : 'Z', judged };
  };
}

function highest(places: readonly ProfilePlace[], up: Vec3): ProfilePlace {
  return places.reduce((best, next) => (dot(next.point, up) > dot(best.point, up) ? next : best));
}

/** The bend that rises to the crest and falls from it; null where the crest is an end or a level straight. */
function crestBend({ bends, places }: LineProfile, crest: ProfilePlace, up: Vec3) {
  const riseAt = (at: number): number =>
    dot(places.find((place) => Math.abs(place.at - at) <= POINT_MM)!.tangent, up);
  const holds = bends.filter(({ start, end }) => crest.at >= start - POINT_MM && crest.at <= end + POINT_MM);
  return holds.find(({ start, end }) => riseAt(start) >= 0 && riseAt(end) <= 0) ?? null;
}
