/** Sizes of the turn wheel, and which way round it is read. */
import type { Stop } from './aid-stops.ts';
import type { Point } from './types.ts';

export const WHEEL_RADIUS = 60;
/** Rings from the rim inward: ticks, figures; inside them the stops' numbers. mm */
export const TICKS = 3.6;
export const RING = 9;
export const WHEEL_ZONE = 'wheel';

export interface Disc {
  readonly centre: Point;
  readonly hole: number;
  /** +1: clockwise seen from START is clockwise on the page; −1 on the face that looks to FREE. */
  readonly sense: 1 | -1;
  readonly stops: readonly Stop[];
}

/** Degrees clockwise on the page of degrees clockwise seen from START. */
export const pageAngle = ({ sense }: Disc, degrees: number): number => sense * degrees;
