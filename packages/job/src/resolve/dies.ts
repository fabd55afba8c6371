/** Which die of a bender makes a corner. */
import { RADIUS_MM } from '@runback/geometry';

interface Sized {
  readonly od: number;
  readonly radius: number;
}

const same = (a: number, b: number): boolean => Math.abs(a - b) <= RADIUS_MM;

/** Dies for a tube of this OD, the largest radius first. */
export const diesFor = <D extends Sized>(dies: readonly D[], od: number): readonly D[] =>
  dies.filter((die) => same(die.od, od)).toSorted((a, b) => b.radius - a.radius);

/** The die for a corner: with the radius asked for, or the largest when none is; null when there is none. */
export function dieFor<D extends Sized>(
  dies: readonly D[],
  od: number,
  radius: number | undefined,
): D | null {
  const fitting = diesFor(dies, od);
  return (radius === undefined ? fitting[0] : fitting.find((die) => same(die.radius, radius))) ?? null;
}
