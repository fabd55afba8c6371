/**
 * Where liquid stays in a run of tube, and how much.
 *
 * At rest a place in the bore stays wet when it lies below the sill it would have to be lifted over: on the way to an
 * outlet every cross-section must be passed, each at its lowest place or higher, and the way along those lowest places
 * is open. So the sill towards end A is the highest floor of the bore between the place and A (a running maximum), and
 * likewise towards Z; with both ends open the lower of the two counts. Exact for a round bore smaller than the radius
 * of its bends. Gas goes where it likes; no surface tension, no film on the wall.
 *
 * Air that stays when the run is filled is the same with up and down changed about.
 */
import { type BorePiece, floorAt, straightWetted, wettedAt } from './bore.ts';
import { LEVEL_MM, VOLUME_MM3 } from './numeric.ts';
import { type BoreSpan, type PlacedBore, placedBores } from './pockets-run.ts';
import { type Integral, integrate } from './quadrature.ts';
import { floorsOf, type Stretch, wetTowardsA } from './sills.ts';
import type { Vec3 } from './types.ts';

export type { BoreSpan };

export interface TrapOptions {
  /** Up, a unit vector in the axes of the pieces. For air that stays when filling: the opposite. */
  readonly up: Vec3;
  /** The ends that are open. */
  readonly outlets: 'A' | 'Z' | 'both';
}

/** A stretch of bore that stays wet. Distances along the whole run from its end A, mm. */
export interface Pocket {
  readonly from: number;
  readonly to: number;
  /** Where its floor is lowest. */
  readonly lowest: number;
  /** Height of its surface along up, mm. */
  readonly level: number;
  /** Depth of liquid over the lowest floor, mm. */
  readonly depth: number;
  /** mm³ (1000 to the ml). */
  readonly volume: number;
}

export interface Trapped {
  readonly pockets: readonly Pocket[];
  /** mm³ */
  readonly volume: number;
  /** What the quadrature may be off by at most, mm³. */
  readonly bound: number;
  /** All the bore holds, mm³: what drains is the rest. */
  readonly capacity: number;
}

/**
 * Liquid that stays in a run of tubes joined end to end, centre on centre, after draining towards the open ends.
 * A step to a smaller bore is a lip that holds liquid back, and so is an orifice: a span that is one straight piece of
 * length 0 with the smaller bore, at a mouth or in a joint. Millimetres, mm³.
 * @throws RangeError when the run is empty, or a bore is not > 0 or as large as twice the radius of a bend.
 * @example
 * import { fromRows, trapped } from '@runback/geometry';
 * const level = fromRows([], 100, { origin: [0, 0, 0], direction: [1, 0, 0], normal: [0, 0, 1] });
 * trapped([{ pieces: level.pieces, bore: 10 }], { up: [0, 0, 1], outlets: 'A' }).volume; // => 0
 */
export function trapped(run: readonly BoreSpan[], { up, outlets }: TrapOptions): Trapped {
  const bores = placedBores(run, up, 'trapped');
  const wet = wetStretches(bores, outlets);
  const measured = wet.map((stretch) => measure(bores, stretch));
  const pockets = joined(measured);
  return {
    pockets,
    volume: pockets.reduce((sum, { volume }) => sum + volume, 0),
    bound: measured.reduce((sum, { bound }) => sum + bound, 0),
    capacity: bores.reduce((sum, { bore, to, from }) => sum + Math.PI * bore.r ** 2 * (to - from), 0),
  };
}

/** Where the bore is wet and up to what level, from A to Z. */
function wetStretches(bores: readonly PlacedBore[], outlets: TrapOptions['outlets']): readonly Stretch[] {
  const floors = floorsOf(bores);
  const towardsA = outlets === 'Z' ? [] : wetTowardsA(floors);
  if (outlets === 'A') return towardsA;
  const end = bores.at(-1)?.to ?? 0;
  const back = wetTowardsA(floors.toReversed().map(({ from, to, at }) => ({ from: to, to: from, at })));
  const towardsZ = back.map(({ from, to, level }) => ({ from: to, to: from, level })).toReversed();
  return outlets === 'Z' ? towardsZ : both(towardsA, towardsZ, end);
}

/** Wet only where both ways out are uphill, up to the lower of the two sills. */
function both(a: readonly Stretch[], z: readonly Stretch[], end: number): readonly Stretch[] {
  const cuts = [0, end, ...[...a, ...z].flatMap(({ from, to }) => [from, to])].toSorted((x, y) => x - y);
  const over = (list: readonly Stretch[], at: number): Stretch | undefined =>
    list.find(({ from, to }) => from < at && at < to);
  return cuts.slice(1).flatMap((to, i) => {
    const from = cuts[i]!;
    const [one, two] = [over(a, (from + to) / 2), over(z, (from + to) / 2)];
    return one && two && to > from ? [{ from, to, level: Math.min(one.level, two.level) }] : [];
  });
}

interface Measured extends Pocket {
  readonly bound: number;
}

function measure(bores: readonly PlacedBore[], { from, to, level }: Stretch): Measured {
  let [volume, bound] = [0, 0];
  let [lowest, low] = [from, Number.POSITIVE_INFINITY];
  for (const placed of bores) {
    const [a, b] = [Math.max(from, placed.from), Math.min(to, placed.to)];
    if (a >= b) continue;
    const shift = placed.bore.piece.start - placed.from;
    const part = wetted(placed.bore, level, [a + shift, b + shift]);
    volume += part.value;
    bound += part.bound;
    for (const s of [a, b]) {
      const floor = floorAt(placed.bore, s + shift);
      if (floor < low) [lowest, low] = [s, floor];
    }
  }
  return { from, to, level, lowest, depth: level - low, volume, bound };
}

/** Of a straight exactly; along an arc by quadrature. */
function wetted(bore: BorePiece, level: number, span: readonly [number, number]): Integral {
  if (bore.piece.kind === 'straight') return { value: straightWetted(bore, level, span), bound: 0 };
  return integrate((s) => wettedAt(bore, level, s), span, VOLUME_MM3);
}

/** Stretches that touch and share a level are one pocket. */
function joined(parts: readonly Measured[]): readonly Pocket[] {
  const pockets: Pocket[] = [];
  for (const { bound: _, ...part } of parts) {
    const last = pockets.at(-1);
    if (last && last.to >= part.from && Math.abs(last.level - part.level) <= LEVEL_MM) {
      const deeper = part.depth > last.depth ? part : last;
      pockets[pockets.length - 1] = {
        ...deeper,
        from: last.from,
        to: part.to,
        volume: last.volume + part.volume,
      };
    } else if (part.volume > 0) pockets.push(part);
  }
  return pockets;
}
