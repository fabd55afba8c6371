import { type Centreline, POINT_MM } from '@runback/geometry';

/** Proposed places are rounded to these, in job units. */
export const CLIP_STEP = { mm: 1, in: 1 / 16 } as const;

/** A stretch of straight tube where a clip can sit, mm from A. */
interface Seat {
  readonly from: number;
  readonly to: number;
}

/** Straight stretches from A to Z, ends included; straights of length 0 hold no clip. */
function seats(centreline: Centreline): Seat[] {
  const { bends, length } = centreline;
  const starts = [0, ...bends.map((b) => b.end)];
  const ends = [...bends.map((b) => b.start), length];
  return starts.map((from, i) => ({ from, to: ends[i]! })).filter(({ from, to }) => to - from > POINT_MM);
}

/** The nearest place to `at` that is not on a bend. */
function nearestSeat(centreline: Centreline, at: number): number {
  const places = seats(centreline).map(({ from, to }) => Math.min(Math.max(at, from), to));
  return [...places].sort((a, b) => Math.abs(a - at) - Math.abs(b - at))[0] ?? at;
}

/** The nearest place to `at` that is not on a bend, rounded to `step` where that stays on the straight. */
export const nearestPlace = (centreline: Centreline, at: number, step: number): number =>
  rounded(centreline, nearestSeat(centreline, at), step);

/** Clips a line of this length wants so that no gap, its ends counted as held, is wider than `spacing`. */
export const clipsWanted = (length: number, spacing: number): number =>
  Math.max(0, Math.ceil((length - POINT_MM) / spacing) - 1);

/** More clips than this are a mistake in the spacing, not a line. */
const MOST_CLIPS = 1000;

/**
 * Places for clips on straights, as even as the bends let them be, no gap wider than `spacing`; null when a bend
 * is longer than that. `step` is what the places are rounded to.
 */
export function clipPlaces(centreline: Centreline, spacing: number, step: number): readonly number[] | null {
  const least = clipsWanted(centreline.length, spacing);
  if (least > MOST_CLIPS) return null;
  for (let count = least; count <= least + centreline.bends.length; count++) {
    const places = evenly(centreline, count, step);
    if (widestGap(centreline.length, places) <= spacing + POINT_MM) return places;
  }
  return farthest(centreline, spacing);
}

/** `count` places at even distances, each moved to the nearest straight. */
const evenly = (centreline: Centreline, count: number, step: number): number[] =>
  Array.from({ length: count }, (_, i) =>
    nearestPlace(centreline, (centreline.length * (i + 1)) / (count + 1), step),
  );

/** Rounded to the step where that stays on the straight. */
function rounded(centreline: Centreline, at: number, step: number): number {
  const seat = seats(centreline).find(({ from, to }) => at >= from - POINT_MM && at <= to + POINT_MM);
  const near = [Math.round(at / step), Math.floor(at / step), Math.ceil(at / step)].map((n) => n * step);
  return near.find((place) => seat && place >= seat.from && place <= seat.to) ?? at;
}

/** From A on, each as far as it may be from the last. */
function farthest(centreline: Centreline, spacing: number): readonly number[] | null {
  const places: number[] = [];
  let last = 0;
  while (centreline.length - last > spacing + POINT_MM) {
    const reach = last + spacing;
    const seat = seats(centreline).findLast(({ from }) => from <= reach);
    const next = seat ? Math.min(seat.to, reach) : last;
    if (next <= last + POINT_MM || places.length >= MOST_CLIPS) return null;
    places.push(next);
    last = next;
  }
  return places;
}

/** The widest gap between neighbours, the two ends of the line counted as held. */
export function widestGap(length: number, places: readonly number[]): number {
  return Math.max(...gaps(length, places).map(({ from, to }) => to - from));
}

/** The gaps from end A over the clips to end Z. */
export function gaps(length: number, places: readonly number[]): Seat[] {
  const held = [0, ...[...places].sort((a, b) => a - b), length];
  return held.slice(1).map((to, i) => ({ from: held[i]!, to }));
}
