/** How much room a leg has, as a function of where one point is, with its gradient. */
import { tanHalfBetween } from './corners.ts';
import { NO_DIRECTION } from './numeric.ts';
import type { Vec3 } from './types.ts';
import { add, cross, distance, dot, negate, norm, scale, sub, unit } from './vec.ts';

/** A stretch of corners in which one point moves. The first and the last are not rounded. */
export interface Chain {
  readonly at: readonly Vec3[];
  readonly radii: readonly number[];
  /** Index of the point that moves. */
  readonly moving: number;
}

/** A leg of the chain (from point `leg` to the next) and the slack it must keep, mm. */
export interface Demand {
  readonly leg: number;
  readonly least: number;
}

const placed = (chain: Chain, x: Vec3, i: number): Vec3 => (i === chain.moving ? x : chain.at[i]!);

/** Unit vector from a to b, NaN where they coincide: a place that no comparison then finds fitting. */
function toward(a: Vec3, b: Vec3): Vec3 {
  const along = sub(b, a);
  return scale(along, 1 / norm(along));
}

const isRounded = (chain: Chain, i: number): boolean => i > 0 && i < chain.at.length - 1;

/** Leg length less its set-backs when the moving point is at `x`, mm. NaN or −∞ where the line turns back. */
export function slackAt(chain: Chain, leg: number, x: Vec3): number {
  const length = distance(placed(chain, x, leg), placed(chain, x, leg + 1));
  return length - setbackAt(chain, leg, x) - setbackAt(chain, leg + 1, x);
}

function setbackAt(chain: Chain, i: number, x: Vec3): number {
  if (!isRounded(chain, i)) return 0;
  const { before, after } = directionsAt(chain, i, x);
  return chain.radii[i]! * tanHalfBetween(before, after);
}

/** How the slack of a leg changes with the place of the moving point. */
export function slackGradient(chain: Chain, leg: number, x: Vec3): Vec3 {
  const along = toward(placed(chain, x, leg), placed(chain, x, leg + 1));
  const side = chain.moving === leg + 1 ? 1 : chain.moving === leg ? -1 : 0;
  const setbacks = add(setbackGradient(chain, leg, x), setbackGradient(chain, leg + 1, x));
  return sub(scale(along, side), setbacks);
}

/**
 * Set-back R·tan(a/2) changes by R·(1 + tan²(a/2))/2 per radian of a. Moving the next point by δ changes a by
 * δ·(n × e2)/L2, the one before by δ·(n × e1)/L1, the corner itself by minus both.
 */
function setbackGradient(chain: Chain, i: number, x: Vec3): Vec3 {
  const step = chain.moving - i;
  if (!isRounded(chain, i) || Math.abs(step) > 1) return [0, 0, 0];
  const { before, after, lengths } = directionsAt(chain, i, x);
  const square = cross(before, after);
  if (!(dot(square, square) > NO_DIRECTION)) return [0, 0, 0];
  const normal = unit(square);
  const previous = scale(cross(normal, before), 1 / lengths[0]);
  const next = scale(cross(normal, after), 1 / lengths[1]);
  const angle = step === 1 ? next : step === -1 ? previous : negate(add(previous, next));
  return scale(angle, (chain.radii[i]! * (1 + tanHalfBetween(before, after) ** 2)) / 2);
}

function directionsAt(chain: Chain, i: number, x: Vec3) {
  const [a, b, c] = [placed(chain, x, i - 1), placed(chain, x, i), placed(chain, x, i + 1)];
  return {
    before: toward(a, b),
    after: toward(b, c),
    lengths: [distance(a, b), distance(b, c)] as const,
  };
}
