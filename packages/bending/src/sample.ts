/** Reading a finished tube lying on a plate, to copy it. */
import { sinCos } from '@runback/geometry';

/** What a person measures on a sample with the bend before laid flat on a plate. Millimetres and radians. */
export interface HeightReading {
  /** Bend angle of the bend whose turn is wanted, in (0, π). */
  readonly angle: number;
  /** Distance along the leg after it, from its corner to where the height was taken. */
  readonly along: number;
  /** Height of the leg's centreline there, above the plane of the bend before; never negative. */
  readonly height: number;
  /** Walking from A to Z and looking down on the plate: which way the bend before curves as it lies. */
  readonly curves: 'left' | 'right';
  /** Seen from above: does this bend go on curving to that same side, or back to the other? */
  readonly goes: 'on' | 'back';
}

/**
 * The turn of a bend from the height of the leg after it above a plate, radians in (−π, π], right-hand about
 * travel A→Z. With the bend before flat, that leg rises by `along·sin(angle)·|sin(turn)|`; which way the sample
 * lies gives the sign, and which way the bend goes on tells |turn| under or over 90°.
 * @throws RangeError when a reading cannot be: a height the leg cannot reach, or no bend to turn.
 * @example
 * import { turnFromHeight } from '@runback/bending';
 * const turn = turnFromHeight({ angle: Math.PI / 2, along: 100, height: 50, curves: 'left', goes: 'on' });
 * Math.round((turn * 180) / Math.PI); // => 30
 */
export function turnFromHeight(reading: HeightReading): number {
  const { angle, along, height } = reading;
  if (!(angle > 0 && angle < Math.PI))
    throw new RangeError('turnFromHeight: angle must be between 0 and 180°');
  if (!(along > 0)) throw new RangeError(`turnFromHeight: along must be > 0 mm, got ${along}`);
  if (!(height >= 0)) throw new RangeError(`turnFromHeight: height must be 0 mm or more, got ${height}`);
  const most = along * sinCos(angle)[0];
  if (height > most)
    throw new RangeError(
      `turnFromHeight: a leg of ${along} mm after this bend rises at most ${most.toFixed(1)} mm, got ${height}`,
    );
  const acute = Math.atan2(height, Math.sqrt(most * most - height * height));
  const size = reading.goes === 'on' ? acute : Math.PI - acute;
  if (size === 0 || size === Math.PI) return size;
  return reading.curves === 'left' ? size : -size;
}
