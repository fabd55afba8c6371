/** The line of the profile and the area under it, cut where the colour changes. */
import type { ProfileFall, ProfilePlace } from 'runback';
import type { ColourMode } from '../store/types.ts';
import { xOf, yOf } from './frame.ts';
import { tidy } from './measure.ts';
import { isShort, placeBefore } from './readings.ts';
import type { Frame, ProfileInput, Spot, Stretch, Tone } from './types.ts';

export function spotsOf(frame: Frame, { profile, falls }: ProfileInput): readonly Spot[] {
  return profile.places.map(({ at }, i) => ({ x: xOf(frame, at), y: yOf(frame, falls[i]!.height) }));
}

/** Where the line of the profile is at a pixel across. */
export function curveY(spots: readonly Spot[], x: number): number {
  const i = placeBefore(spots, x, ({ x: across }) => across);
  const [a, b] = [spots[i]!, spots[i + 1] ?? spots[i]!];
  const t = b.x > a.x ? Math.min(Math.max((x - a.x) / (b.x - a.x), 0), 1) : 0;
  return a.y + (b.y - a.y) * t;
}

/** Highest and lowest pixel of the line between two pixels across. */
export function curveSpan(spots: readonly Spot[], from: number, to: number): readonly [number, number] {
  const inside = spots.filter(({ x }) => x > from && x < to).map(({ y }) => y);
  const all = [...inside, curveY(spots, from), curveY(spots, to)];
  return [Math.min(...all), Math.max(...all)];
}

function toneOf(mode: ColourMode, { nearest }: ProfilePlace, { verdict }: ProfileFall): Tone {
  if (mode === 'slope') return verdict ?? 'plain';
  if (mode === 'plain' || nearest === null) return 'plain';
  return isShort(nearest) ? 'fail' : 'pass';
}

/** Each place colours the line as far as half way to its neighbours. */
export function stretchesOf(frame: Frame, input: ProfileInput, spots: readonly Spot[]): readonly Stretch[] {
  const tones = input.profile.places.map((place, i) => toneOf(input.colour, place, input.falls[i]!));
  const stretches: Stretch[] = [];
  let first = 0;
  for (let i = 1; i <= tones.length; i++) {
    if (i < tones.length && tones[i] === tones[first]) continue;
    const run = [...halfWay(spots, first), ...spots.slice(first, i), ...halfWay(spots, i)];
    stretches.push(stretch(tones[first]!, run, frame.rows.plot.bottom));
    first = i;
  }
  return stretches;
}

function halfWay(spots: readonly Spot[], i: number): readonly Spot[] {
  const [a, b] = [spots[i - 1], spots[i]];
  return a && b ? [{ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }] : [];
}

function stretch(tone: Tone, run: readonly Spot[], bottom: number): Stretch {
  const line = pathOf(run);
  return { tone, line, area: `${line}V${tidy(bottom)}H${tidy(run[0]!.x)}Z` };
}

/** A path through spots. */
export const pathOf = (spots: readonly Spot[]): string =>
  spots.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${tidy(x)} ${tidy(y)}`).join('');
