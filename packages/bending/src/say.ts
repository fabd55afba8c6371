/** How lengths, angles and ends are said in the words for the bench. */
import { formatLength, type LengthStyle, toDegrees } from '@runback/job';
import type { EndName, Side } from './types.ts';

const TENTHS = 10;

export const otherEnd = (end: EndName): EndName => (end === 'A' ? 'Z' : 'A');

/** `END A` */
export const endWords = (end: EndName): string => `END ${end}`;

/** A check dimension, unsigned: whole millimetres (26), or an inch fraction (1 1/32). */
export const sayHeight = (mm: number, unit: LengthStyle): string =>
  formatLength(Math.abs(mm), unit, { decimals: 0, bare: true });

/** A length already rounded for the bench: 311.5, or an inch fraction (12 1/4). */
export const sayLength = (mm: number, unit: LengthStyle): string =>
  formatLength(mm, unit, { decimals: 1, bare: true });

/** An angle in radians, said in degrees with at most one decimal: 59, 33.8. */
export const sayDeg = (radians: number): string => degText(toDegrees(radians));

/** Degrees with at most one decimal, never "-0". */
export const degText = (degrees: number): string => String(Math.round(degrees * TENTHS) / TENTHS + 0);

const FROM_TOOL_PLANE: Readonly<Record<Side, string>> = {
  above: 'above the tool plane',
  below: 'below the tool plane',
  toward: 'off the tool plane, toward you',
  away: 'off the tool plane, away from you',
  left: 'left of the tool plane',
  right: 'right of the tool plane',
};

/** `26 off the tool plane, toward you`, `in the tool plane` where there is nothing to measure. */
export function offToolPlane(over: number, side: Side | null, unit: LengthStyle): string {
  return side === null ? 'in the tool plane' : `${sayHeight(over, unit)} ${FROM_TOOL_PLANE[side]}`;
}

/** True when a check dimension is said as 0. */
export const isLevel = (over: number, unit: LengthStyle): boolean => sayHeight(over, unit) === '0';
