/** A pour test: where a drop on the floor of a bore runs to. */
import { ANGLE_RAD, POINT_MM } from './numeric.ts';
import { pieceTangent } from './path.ts';
import { type BoreSpan, type PlacedBore, placedBores } from './pockets-run.ts';
import { type Floor, floorsOf } from './sills.ts';
import type { Vec3 } from './types.ts';
import { dot } from './vec.ts';

/** Where a drop let go at `from` runs to. Distances along the whole run from its end A, mm. */
export interface Poured {
  readonly from: number;
  /** Where it comes to rest, or the end it falls out of. */
  readonly stops: number;
  /** The end it falls out of; `null`: it stays. */
  readonly out: 'A' | 'Z' | null;
}

/**
 * Where a drop let go on the floor of a bore at distance `at` (mm from end A) runs to, with both ends open. `up` is a
 * unit vector. It creeps downhill along the lowest places of the bore and stops where they rise, at a step up, or
 * where the floor is level: no inertia, no surface tension. On a floor that is level where it is let go it stays, and
 * so it does balanced on a crest.
 * @throws RangeError as `trapped` does, and when `at` is not on the run.
 * @example
 * import { fromRows, pour } from '@runback/geometry';
 * const plumb = fromRows([], 100, { origin: [0, 0, 0], direction: [0, 0, 1], normal: [1, 0, 0] });
 * pour([{ pieces: plumb.pieces, bore: 10 }], { up: [0, 0, 1], at: 60 }); // => { "from": 60, "stops": 0, "out": "A" }
 */
export function pour(
  run: readonly BoreSpan[],
  { up, at }: { readonly up: Vec3; readonly at: number },
): Poured {
  const bores = placedBores(run, up, 'pour');
  const end = bores.at(-1)!.to;
  if (!(at >= 0 && at <= end)) throw new RangeError(`pour: distance must be from 0 to ${end} mm, got ${at}`);
  const way = wayDown(bores, at);
  if (way === null) return { from: at, stops: at, out: null };
  const floors = floorsOf(bores);
  const ahead =
    way === 'Z' ? floors : floors.toReversed().map(({ from, to, at: f }) => ({ from: to, to: from, at: f }));
  const stops = creep(ahead, { at, sense: way === 'Z' ? 1 : -1 });
  return stops === null
    ? { from: at, stops: way === 'Z' ? end : 0, out: way }
    : { from: at, stops, out: null };
}

/** Which way the floor falls at a place; `null` where it is level, or lowest. */
function wayDown(bores: readonly PlacedBore[], at: number): 'A' | 'Z' | null {
  const tubes = bores.filter(({ from, to }) => from < to && from <= at && at <= to);
  const rises = tubes.map(({ bore, from }) =>
    dot(pieceTangent(bore.piece, bore.piece.start + at - from), bore.up),
  );
  const [towardsA, towardsZ] = [rises[0]!, -rises.at(-1)!];
  if (Math.max(towardsA, towardsZ) <= ANGLE_RAD) return null;
  return towardsZ > towardsA ? 'Z' : 'A';
}

/** Where a drop stops on its way along floors in its order; `null` when it gets through. */
function creep(
  floors: readonly Floor[],
  { at, sense }: { readonly at: number; readonly sense: 1 | -1 },
): number | null {
  const ahead = floors.filter(({ from, to }) => sense * (to - at) > 0 || (from === to && to === at));
  let height = Math.min(...floors.flatMap((one) => (holds(one, at) ? [one.at(at)] : [])));
  for (const { from, to, at: floor } of ahead) {
    const near = sense * (from - at) > 0 ? from : at;
    const [first, last] = [floor(near), floor(to)];
    // Two tubes meet to within a point: less than that is no step.
    if (first > height + POINT_MM) return near;
    if (from === to) continue;
    if (first - last <= ANGLE_RAD * Math.abs(to - near)) return near;
    height = last;
  }
  return null;
}

const holds = ({ from, to }: Floor, at: number): boolean =>
  from !== to && Math.min(from, to) <= at && at <= Math.max(from, to);
