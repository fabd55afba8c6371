/** When a slope is enough, and what the slope check is called. */
import { SLOPE_RAD } from '@runback/geometry';
import type { Drain } from '@runback/job';

export const SLOPE = 'slope';

/** A service may take a failure in an attitude for a note, and still insist on the slope at rest, under this name. */
export const SLOPE_TILTED = 'slope-tilted';

/** At the limit itself a line at rest passes. Radians. */
export const enoughAtRest = (slope: number, { minSlope }: Drain): boolean =>
  slope >= minSlope.value - SLOPE_RAD;

/** In an attitude a line must fall more than the limit: exactly level is not enough. Radians. */
export const enoughTilted = (slope: number, { minSlopeTilted }: Drain): boolean =>
  slope > minSlopeTilted.value + SLOPE_RAD;
