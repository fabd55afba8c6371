/** Slopes of a line: at one place, and the smallest over all places and a set of attitudes. */
import { type Patch, patchOf, upIn } from './attitude.ts';
import { frameAt, pointAt } from './path.ts';
import { worstFromCrest } from './slope-crest.ts';
import { elevation, lower, type Worst, worstOfPiece } from './slope-piece.ts';
import type { AttitudeSet, Centreline, DrainEnd, MachineAxes, SlopeExtreme, Vec3 } from './types.ts';

/**
 * The slope at distance `s` mm from end A, radians: travelling towards the drain end, atan2(downward part, horizontal
 * part) of the tangent, so positive where liquid runs towards that end. `up` is a unit vector.
 * @throws RangeError when `s` is not on the line.
 * @example
 * import { fromRows, slopeAt } from '@runback/geometry';
 * const plumb = fromRows([], 100, { origin: [0, 0, 0], direction: [0, 0, 1], normal: [1, 0, 0] });
 * slopeAt(plumb, 50, { up: [0, 0, 1], drain: 'A' }) / Math.PI; // => 0.5
 */
export function slopeAt(c: Centreline, s: number, options: { up: Vec3; drain: 'A' | 'Z' }): number {
  const rise = elevation(frameAt(c, s).tangent, options.up);
  return options.drain === 'A' ? rise : 0 - rise;
}

/**
 * The smallest slope of a line over all its places, inside the arcs too, and over every attitude of a set: the true
 * minimum, in radians, with the place (of equal ones the one nearest A) and up in body axes (job coordinates) there.
 *
 * Drain A or Z: closed form, see slope-piece.ts. Drain both: there is one crest, chosen anew in each attitude, and
 * each side is judged towards its own end; the arc that holds the crest is left out, see slope-crest.ts. At rest and
 * where the line drains in every attitude that is closed form too, else a search certified to 1e-9 rad.
 * A cone gives rest − tilt, but never below −90°.
 * @throws RangeError when pitch leaves ±90°, roll ±180°, a range is upside down, or the tilt leaves [0, 180°].
 * @example
 * import { fromRows, smallestSlope } from '@runback/geometry';
 * const axes = { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] } as const;
 * const plumb = fromRows([], 100, { origin: [0, 0, 0], direction: [0, 0, 1], normal: [1, 0, 0] });
 * const attitudes = { kind: 'cone', tilt: Math.PI / 4 } as const;
 * smallestSlope(plumb, { drain: 'A', axes, attitudes }).slope / Math.PI; // => 0.25
 */
export function smallestSlope(
  c: Centreline,
  options: { drain: DrainEnd; axes: MachineAxes; attitudes: AttitudeSet },
): SlopeExtreme {
  const patch = patchOf(options.axes, options.attitudes);
  const { slope, at, pitch, roll } = worstOfLine(c, options.drain, patch);
  const up = upIn(patch.axes, pitch, roll);
  return { slope: slope + 0, at, point: pointAt(c, at), up, attitude: patch.named ? { pitch, roll } : null };
}

function worstOfLine(c: Centreline, drain: DrainEnd, patch: Patch): Worst {
  if (drain === 'both') return worstFromCrest(c.pieces, patch);
  return c.pieces.map((piece) => worstOfPiece(piece, drain, patch)).reduce(lower);
}
