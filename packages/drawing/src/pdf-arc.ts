/** Circular arcs as cubic curves: PDF has no arcs. */
import type { Point } from './types.ts';

/** First control point, second control point, end. */
export type Cubic = readonly [number, number, number, number, number, number];

/** An arc from a point it does not hold, as the `A` step of a path has it. */
export interface Arc {
  readonly radius: number;
  /** The longer way round. */
  readonly large: boolean;
  /** Clockwise as seen on the page, y down. */
  readonly clockwise: boolean;
  readonly to: Point;
}

/** A drawn arc is no farther than this from the true circle, before its numbers are rounded. mm */
const OFF_CIRCLE = 0.00005;

/**
 * The arc as cubic curves, each within 5e-5 mm of the circle, the last one ending exactly on `to`.
 * As in SVG, a radius too short for the chord grows to half of it. An arc that goes nowhere is no curve.
 */
export function cubics(from: Point, arc: Arc): readonly Cubic[] {
  const [dx, dy] = [(from[0] - arc.to[0]) / 2, (from[1] - arc.to[1]) / 2];
  const half = Math.hypot(dx, dy);
  if (half === 0) return [];
  const radius = Math.max(Math.abs(arc.radius), half);
  const height = Math.sqrt(Math.max(0, (radius - half) * (radius + half)));
  const side = (arc.large === arc.clockwise ? -height : height) / half;
  const centre: Point = [(from[0] + arc.to[0]) / 2 + side * dy, (from[1] + arc.to[1]) / 2 - side * dx];
  const short = 2 * Math.atan2(half, height);
  const swept = (arc.large ? 2 * Math.PI - short : short) * (arc.clockwise ? 1 : -1);
  return pieces(
    { centre, radius, start: Math.atan2(from[1] - centre[1], from[0] - centre[0]), swept },
    arc.to,
  );
}

interface Sweep {
  readonly centre: Point;
  readonly radius: number;
  readonly start: number;
  readonly swept: number;
}

function pieces({ centre: [cx, cy], radius, start, swept }: Sweep, to: Point): Cubic[] {
  const count = pieceCount(radius, Math.abs(swept));
  const step = swept / count;
  const reach = (4 / 3) * Math.tan(step / 4) * radius;
  return Array.from({ length: count }, (_, i): Cubic => {
    const [c0, s0] = [Math.cos(start + i * step), Math.sin(start + i * step)];
    const [c1, s1] = [Math.cos(start + (i + 1) * step), Math.sin(start + (i + 1) * step)];
    const end: Point = i + 1 === count ? to : [cx + radius * c1, cy + radius * s1];
    return [
      cx + radius * c0 - reach * s0,
      cy + radius * s0 + reach * c0,
      cx + radius * c1 + reach * s1,
      cy + radius * s1 - reach * c1,
      ...end,
    ];
  });
}

/** Fewest equal pieces, each about a quarter turn or less, that stay on the circle: the error is 2/27 r sin⁶(t/4)/cos²(t/4). */
function pieceCount(radius: number, swept: number): number {
  const off = (count: number): number => {
    const quarter = swept / count / 4;
    return ((2 / 27) * radius * Math.sin(quarter) ** 6) / Math.cos(quarter) ** 2;
  };
  let count = Math.max(1, Math.round((2 * swept) / Math.PI));
  while (off(count) > OFF_CIRCLE) count += 1;
  return count;
}
