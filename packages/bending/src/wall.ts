/** What a bend does to the wall. Estimates by geometry, and the factors a piping code designs bends with. */

export interface BentTube {
  readonly od: number;
  readonly wall: number;
  /** Centreline radius. */
  readonly radius: number;
}

/**
 * Wall left on the outside of a bend, mm: `wall·R / (R + OD/2)`, as if the metal there only stretched with its
 * length. An estimate: pushing the tube thickens it, a tight mandrel thins it further.
 * @throws RangeError when a size is not > 0 mm
 * @example
 * import { wallOutside } from '@runback/bending';
 * wallOutside({ od: 12, wall: 1, radius: 36 }).toFixed(3); // => '0.857'
 */
export function wallOutside({ od, wall, radius }: BentTube): number {
  for (const [name, value] of Object.entries({ od, wall, radius }))
    if (!(value > 0)) throw new RangeError(`wallOutside: ${name} must be > 0 mm, got ${value}`);
  return (wall * radius) / (radius + od / 2);
}

/**
 * Factors I of ASME B31.3 para 304.2.1 for a bend of radius R on a tube of diameter D, equations (3d) and (3e):
 * the wall a bend needs is P·D / (2(S·E·W/I + P·Y)). `inside` is null where R ≤ D/2 leaves no inside to speak of.
 * @throws RangeError when a size is not > 0 mm
 * @example
 * import { bendFactors } from '@runback/bending';
 * bendFactors(100, 300).inside.toFixed(3); // => '1.100'
 */
export function bendFactors(
  od: number,
  radius: number,
): { readonly inside: number | null; readonly outside: number } {
  if (!(od > 0 && radius > 0))
    throw new RangeError(`bendFactors: sizes must be > 0 mm, got ${od} and ${radius}`);
  const x = (4 * radius) / od;
  return { inside: x > 2 ? (x - 1) / (x - 2) : null, outside: (x + 1) / (x + 2) };
}
