/** The fall that is wanted, as a thin triangle to the scale of the profile, at the place that falls least. */
import { ANGLE_RAD, angleBetween, type ProfilePlace, SLOPE_RAD } from 'runback';
import { curveY } from './curve.ts';
import { small, xOf } from './frame.ts';
import { textWidth, tidy } from './measure.ts';
import { bendAt } from './readings.ts';
import { degrees } from './say.ts';
import { spansOf } from './straights.ts';
import type { Box, Frame, LimitTriangle, ProfileInput, Spot } from './types.ts';

/** Longest and shortest level side, pixels. */
const LONGEST = 150;
const SHORTEST = 44;

export interface Limit {
  readonly triangle: LimitTriangle;
  readonly words: string;
  /** Where the words may stand, the best first: the middle of their line. */
  readonly seats: readonly Spot[];
  readonly box: Box;
}

/** Up as the job has it: the limit at rest holds. */
export const isAtRest = ({ up, worked }: Pick<ProfileInput, 'up' | 'worked'>): boolean =>
  angleBetween(up, worked.line.axes.up) <= ANGLE_RAD;

/** The fall wanted in the present tilt, radians, or null when none is. */
export function wantedFall(input: Pick<ProfileInput, 'up' | 'worked'>): number | null {
  const { drain } = input.worked.line;
  if (drain === null) return null;
  return isAtRest(input) ? drain.minSlope.value : drain.minSlopeTilted.value;
}

export function limitOf(frame: Frame, input: ProfileInput, spots: readonly Spot[]): Limit | null {
  const wanted = wantedFall(input);
  const worst = worstPlace(input);
  if (wanted === null || worst === null || input.colour !== 'slope') return null;
  const { from, to } = sideOf(frame, input, worst);
  const y = curveY(spots, from);
  const rise = Math.sin(wanted) * Math.abs(to - from) * frame.exaggeration;
  const slope = `M${tidy(from)} ${tidy(y)}L${tidy(to)} ${tidy(y - rise)}`;
  const level = `M${tidy(from)} ${tidy(y)}H${tidy(to)}V${tidy(y - rise)}`;
  const words = `${degrees(wanted)} wanted`;
  const middle = (from + to) / 2;
  const beside = (textWidth(words, small(frame.size)) / 2 + 6) * Math.sign(to - from);
  const [under, over] = [y + frame.size.text * 0.8, y - rise - frame.size.text * 0.8];
  return {
    triangle: { slope, level },
    words,
    seats: [
      { x: middle, y: under },
      { x: to, y: under },
      { x: middle, y: over },
      { x: to + beside, y: y - rise },
      { x: from - beside, y },
      { x: to, y: over },
    ],
    box: { x: Math.min(from, to), y: y - rise, width: Math.abs(to - from), height: rise },
  };
}

interface Side {
  /** Pixels of the corner and of the far end of the level side. */
  readonly from: number;
  readonly to: number;
}

/** Along the straight of the worst place, from its end nearer the drain. */
function sideOf(frame: Frame, input: ProfileInput, { at, toward }: Worst): Side {
  const span = spansOf(input).find(({ start, end }) => at >= start && at <= end);
  const [x1, x2] = [xOf(frame, span?.start ?? at), xOf(frame, span?.end ?? at)];
  const grow = Math.max(0, SHORTEST - (x2 - x1)) / 2;
  const [low, high] = [Math.max(frame.left, x1 - grow), Math.min(frame.right, x2 + grow)];
  const length = Math.min(LONGEST, high - low);
  return toward === 'A' ? { from: low, to: low + length } : { from: high, to: high - length };
}

interface Worst extends Pick<ProfilePlace, 'at'> {
  readonly toward: 'A' | 'Z';
}

/** The place that falls least; of equal ones the one nearest A. A bend that passes may be level at its crest. */
function worstPlace({ profile, falls }: ProfileInput): Worst | null {
  let worst: Worst | null = null;
  let least = Infinity;
  for (const [i, { slope, toward, verdict }] of falls.entries()) {
    const { at } = profile.places[i]!;
    if (slope === null || toward === null || slope > least - SLOPE_RAD) continue;
    if (verdict === 'pass' && bendAt(profile, at) !== null) continue;
    least = slope;
    worst = { at, toward };
  }
  return worst;
}
