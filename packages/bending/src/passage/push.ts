/** What friction in bends does to a stick pushed or pulled through them. */
import { layRun, type Run } from './run.ts';

/**
 * Capstan factor e^(μ·θ): how many times the force beyond the bends is the force before them. `angle` in radians is the
 * sum of all bends whichever way they turn. Source: Euler–Eytelwein. It leaves out weight and the stick's own stiffness.
 * @throws RangeError when the angle or the friction is negative or not a number
 * @example
 * import { capstan } from '@runback/bending';
 * capstan(Math.PI / 2, 0.5).toFixed(2); // => '2.19'
 */
export function capstan(angle: number, friction: number): number {
  if (!(angle >= 0)) throw new RangeError(`capstan: angle must be >= 0, got ${angle}`);
  if (!(friction >= 0)) throw new RangeError(`capstan: friction must be >= 0, got ${friction}`);
  return Math.exp(friction * angle);
}

/** Friction of an oiled stick in a tube, lowest and highest to expect. A rough figure: measure yours. */
export const STICK_FRICTION = { low: 0.15, high: 0.25 } as const;

export interface PushFactor {
  /** Everything the run turns through, radians. */
  readonly angle: number;
  readonly low: number;
  readonly high: number;
}

/**
 * How many times harder a stick goes than on a straight way, for the lowest and the highest friction.
 * @throws RangeError when low > high, or as `capstan` and `layRun` do
 */
export function pushFactor(
  run: Run,
  friction: { readonly low: number; readonly high: number } = STICK_FRICTION,
): PushFactor {
  if (!(friction.low <= friction.high))
    throw new RangeError(`pushFactor: low must be <= high, got ${friction.low} and ${friction.high}`);
  const { angle } = layRun(run);
  return { angle, low: capstan(angle, friction.low), high: capstan(angle, friction.high) };
}
