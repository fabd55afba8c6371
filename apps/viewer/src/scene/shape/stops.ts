/** Colours along a line: stops in order of their place; two at one place are a hard edge. */
import type { Rgb } from './mesh.ts';

export interface Stop {
  /** mm from end A. */
  readonly at: number;
  readonly colour: Rgb;
}

export type Stops = readonly Stop[];

const SAME_PLACE_MM = 1e-4;
/** Of full light: below what an eye tells apart. */
const SAME_COLOUR = 0.004;

const same = (a: Rgb, b: Rgb): boolean => a.every((value, i) => Math.abs(value - b[i]!) < SAME_COLOUR);

export const mixed = (a: Rgb, b: Rgb, t: number): Rgb => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];

/** Colour just before and just after a place. */
export function coloursAt(stops: Stops, at: number): { readonly before: Rgb; readonly after: Rgb } {
  const first = firstAtOrAfter(stops, at - SAME_PLACE_MM);
  let last = first;
  while (last < stops.length && stops[last]!.at <= at + SAME_PLACE_MM) last++;
  if (last > first) return { before: stops[first]!.colour, after: stops[last - 1]!.colour };
  const [a, b] = [stops[first - 1], stops[first]];
  const one = a && b ? mixed(a.colour, b.colour, (at - a.at) / (b.at - a.at)) : (a ?? b)!.colour;
  return { before: one, after: one };
}

function firstAtOrAfter(stops: Stops, at: number): number {
  let [low, high] = [0, stops.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (stops[middle]!.at < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Without the stops that lie in a run of one colour: the fewer stops, the fewer rings. */
export const thinned = (stops: Stops): Stops =>
  stops.filter((stop, i) => {
    const [before, after] = [stops[i - 1], stops[i + 1]];
    return !before || !after || !same(before.colour, stop.colour) || !same(stop.colour, after.colour);
  });

export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Bands painted round the tube over the colours that are there. */
export function banded(stops: Stops, bands: readonly Stretch[], colour: Rgb): Stops {
  let painted = [...stops];
  for (const { from, to } of bands) {
    const [a, b] = [coloursAt(painted, from), coloursAt(painted, to)];
    painted = [
      ...painted.filter((stop) => stop.at < from - SAME_PLACE_MM),
      { at: from, colour: a.before },
      { at: from, colour },
      { at: to, colour },
      { at: to, colour: b.after },
      ...painted.filter((stop) => stop.at > to + SAME_PLACE_MM),
    ];
  }
  return painted;
}
