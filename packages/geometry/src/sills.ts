/** The floor of a bore as a chain of rising and falling stretches, and what a running maximum along it leaves wet. */
import { floorAt } from './bore.ts';
import type { PlacedBore } from './pockets-run.ts';

/** A stretch over which the floor only rises or only falls. `from` may lie after `to`: then it is walked backwards. */
export interface Floor {
  readonly from: number;
  readonly to: number;
  /** Height of the floor at a distance along the run. */
  readonly at: (s: number) => number;
}

/** A stretch of bore that is wet up to a level. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly level: number;
}

/** Steps of an arc between which its floor is taken to turn at most once: 2.8°. */
const ARC_STEP = Math.PI / 64;
/** Halvings that bring an interval down to rounding. */
const HALVINGS = 60;

/** The floor of each piece, cut where it turns. */
export function floorsOf(bores: readonly PlacedBore[]): readonly Floor[] {
  return bores.flatMap(({ bore, from, to }) => {
    const shift = bore.piece.start - from;
    const at = (s: number): number => floorAt(bore, s + shift);
    const cuts = bore.piece.kind === 'straight' ? [from, to] : turns(at, [from, to], bore.piece.angle);
    return cuts.slice(1).map((end, i): Floor => ({ from: cuts[i]!, to: end, at }));
  });
}

/** The ends of an arc and, between them, every step and every place where the floor turns. */
function turns(
  at: (s: number) => number,
  [from, to]: readonly [number, number],
  angle: number,
): readonly number[] {
  const count = Math.max(2, Math.ceil(angle / ARC_STEP));
  const places = Array.from({ length: count + 1 }, (_, i) =>
    i === count ? to : from + ((to - from) * i) / count,
  );
  const cuts = [from];
  for (let i = 1; i < count; i++) {
    const [a, b, c] = [at(places[i - 1]!), at(places[i]!), at(places[i + 1]!)];
    const sign = b > a && b >= c ? 1 : b < a && b <= c ? -1 : 0;
    const place = sign === 0 ? places[i]! : peak((s) => sign * at(s), places[i - 1]!, places[i + 1]!);
    if (place > cuts.at(-1)!) cuts.push(place);
  }
  cuts.push(to);
  return cuts;
}

/** The highest place of a function that rises and then falls, by golden section. */
function peak(f: (s: number) => number, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [from, to];
  let [x, y] = [b - golden * (b - a), a + golden * (b - a)];
  let [fx, fy] = [f(x), f(y)];
  for (let i = 0; i < HALVINGS && b > a; i++) {
    if (fx >= fy) {
      [b, y, fy] = [y, x, fx];
      x = b - golden * (b - a);
      fx = f(x);
    } else {
      [a, x, fx] = [x, y, fy];
      y = a + golden * (b - a);
      fy = f(y);
    }
  }
  return (a + b) / 2;
}

/** What stays wet when only the beginning of the chain is open, in the order of the chain. */
export function wetTowardsA(floors: readonly Floor[]): readonly Stretch[] {
  const wet: Stretch[] = [];
  let sill = Number.NEGATIVE_INFINITY;
  for (const { from, to, at } of floors) {
    const [first, last] = [at(from), at(to)];
    // A lip at the joint, or where the tube begins.
    sill = Math.max(sill, first);
    // A lip has no length to be wet over.
    if (from === to) continue;
    if (last <= sill) {
      if (first < sill || last < sill) wet.push({ from, to, level: sill });
      continue;
    }
    if (first < sill) wet.push({ from, to: crossing(at, [from, to], sill), level: sill });
    sill = last;
  }
  return wet;
}

/** Where a rising floor comes up to a level. */
function crossing(at: (s: number) => number, [from, to]: readonly [number, number], level: number): number {
  let [below, above] = [from, to];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (below + above) / 2;
    if (at(middle) < level) below = middle;
    else above = middle;
  }
  return above;
}
