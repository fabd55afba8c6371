/** The best pair of places found so far, and how low a bound must be to look further. */
import type { Measurable } from './closest-body.ts';
import { DISTANCE_MM } from './numeric.ts';
import type { Piece, Vec3 } from './types.ts';

/**
 * Bounds are closed to this: a part of the 1e-9 mm promised, or 2 ulp of the largest coordinate.
 * @throws RangeError when a coordinate is not a finite number.
 */
export function toleranceAt(largest: number): number {
  if (!(largest < Number.POSITIVE_INFINITY))
    throw new RangeError(`distance: coordinates must be finite, got one of ${largest} mm`);
  return Math.max(DISTANCE_MM / 4, 2 * Number.EPSILON * largest);
}

/** The largest coordinate of some points, as a size. */
export function largestOf(points: readonly Vec3[]): number {
  let most = 0;
  for (const p of points) most = Math.max(most, Math.abs(p[0]), Math.abs(p[1]), Math.abs(p[2]));
  return most;
}

/** A pair of places: `at` along the first line, on its piece, and what lies across. */
export interface Pair {
  readonly distance: number;
  readonly at: number;
  readonly piece: Piece;
  readonly across: Piece | Measurable;
  /** Along the second line, where the place on `across` is not simply the nearest. */
  readonly otherAt?: number;
}

/**
 * Keeps the least distance offered and, of distances equal within an eighth of the tolerance (rounding makes equal
 * ones differ), the one with the smallest `at`.
 */
export class Best {
  readonly tolerance: number;
  floor = Number.POSITIVE_INFINITY;
  pair: Pair | null = null;

  constructor(tolerance: number) {
    this.tolerance = tolerance;
  }

  offer(pair: Pair): void {
    const tie = this.tolerance / 8;
    const held = this.pair;
    this.floor = Math.min(this.floor, pair.distance);
    const limit = this.floor + tie;
    if (!(pair.distance <= limit)) return;
    if (held === null || held.distance > limit || pair.at < held.at) this.pair = pair;
  }

  /**
   * The pair to report.
   * @throws RangeError when nothing could be compared: some measure was not a number.
   */
  get found(): Pair {
    if (this.pair === null)
      throw new RangeError('distance: every length and direction must be a finite number');
    return this.pair;
  }

  /** What a pair with its place at or after `from` must stay below to matter: an equal one matters if it is nearer A. */
  cut(from: number): number {
    return this.pair !== null && from < this.pair.at ? this.floor + 2 * this.tolerance : this.floor;
  }

  /** True when nothing at or after `from` and no less than `bound` away can matter. */
  beaten(bound: number, from: number): boolean {
    return bound >= this.cut(from) - this.tolerance;
  }

  /**
   * True when nothing no less than `bound` away can be less than what is held, give or take two tolerances: for a
   * search that closes in on places already measured to one.
   */
  surpassed(bound: number): boolean {
    return bound >= this.floor - 2 * this.tolerance;
  }
}
