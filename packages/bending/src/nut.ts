/** What a nut does on a bent tube. Millimetres. */
import type { Nut } from '@runback/job';

/**
 * About the smallest bend radius a nut slides round: L²/(8·slack), the sagitta of its length against the slack
 * in its bore. `null` when the bore is not given; Infinity when the bore leaves no slack, so that it passes none.
 *
 * @param nut length and bore, mm
 * @param od outside diameter of the tube, mm
 * @returns centreline radius, mm
 * @throws RangeError when od is not > 0
 * @example
 * import { nutPassesRadius } from '@runback/bending';
 * const nut = { length: 18, bore: 12.25, acrossFlats: 22 };
 * nutPassesRadius(nut, 12); // => 162
 */
export function nutPassesRadius(nut: Nut, od: number): number | null {
  if (!(od > 0)) throw new RangeError(`nutPassesRadius: od must be > 0 mm, got ${od}`);
  if (nut.bore === null) return null;
  const slack = nut.bore - od;
  return slack > 0 ? nut.length ** 2 / (8 * slack) : Number.POSITIVE_INFINITY;
}
