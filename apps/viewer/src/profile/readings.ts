/** What is read at any place of the line: between the places of the profile, in a straight line. */
import { type LineProfile, POINT_MM, type ProfileFall, type ProfilePlace } from 'runback';

export type Nearest = NonNullable<ProfilePlace['nearest']>;

export interface Reading {
  readonly at: number;
  /** Over the drain end, or the lower end, mm. */
  readonly height: number;
  /** Towards `toward`; `null` when no drain is asked for. */
  readonly slope: number | null;
  readonly toward: 'A' | 'Z' | null;
  readonly verdict: ProfileFall['verdict'];
  readonly nearest: Nearest | null;
  /** Index of the bend from end A, or null on a straight. */
  readonly bend: number | null;
  /** How many bends lie wholly before it. */
  readonly before: number;
}

interface Readings {
  readonly profile: LineProfile;
  readonly falls: readonly ProfileFall[];
}

/** Index of the last place at or before `at` that has one after it; `of` says where a place is. */
export function placeBefore<P>(places: readonly P[], at: number, of: (place: P) => number): number {
  let [low, high] = [0, Math.max(0, places.length - 2)];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (of(places[middle]!) <= at) low = middle;
    else high = middle - 1;
  }
  return low;
}

const between = (a: number, b: number, t: number): number => a + (b - a) * t;

export function readingAt({ profile, falls }: Readings, at: number): Reading {
  const { places } = profile;
  const i = placeBefore(places, at, (place) => place.at);
  const j = Math.min(i + 1, places.length - 1);
  const [p, q, f, g] = [places[i]!, places[j]!, falls[i]!, falls[j]!];
  const t = q.at > p.at ? Math.min(Math.max((at - p.at) / (q.at - p.at), 0), 1) : 0;
  const closer = t < 0.5 ? f : g;
  const alike = f.slope !== null && g.slope !== null && f.toward === g.toward;
  return {
    at,
    height: between(f.height, g.height, t),
    slope: alike ? between(f.slope, g.slope, t) : closer.slope,
    toward: closer.toward,
    verdict: closer.verdict,
    nearest: nearestBetween(p.nearest, q.nearest, t),
    bend: bendAt(profile, at),
    before: profile.bends.filter(({ end }) => end <= at).length,
  };
}

function nearestBetween(a: Nearest | null, b: Nearest | null, t: number): Nearest | null {
  if (a === null || b === null || a.to !== b.to || a.kind !== b.kind) return t < 0.5 ? a : b;
  return { ...a, distance: between(a.distance, b.distance, t) };
}

/** Index of the bend at a place, from end A; a joint counts as straight. */
export function bendAt({ bends }: LineProfile, at: number): number | null {
  const index = bends.findIndex(({ start, end }) => at > start && at < end);
  return index < 0 ? null : index;
}

/** What is left of the distance wanted, mm. */
export const marginOf = ({ distance, keepOff }: Nearest): number => distance - keepOff;

/** Nearer than wanted. */
export const isShort = (nearest: Nearest): boolean => marginOf(nearest) < -POINT_MM;
