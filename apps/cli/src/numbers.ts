/** Numbers in the job's own units, for reading. No bare signs, no −0. */
import { formatLength, formatMm, type JobUnit } from 'runback';

const DEGREES = 180 / Math.PI;

/** A length as the terminal prints it: tenths of a millimetre, or 1/32 inch fractions. */
export const length = (mm: number, units: JobUnit): string =>
  units === 'mm' ? (Math.round(mm * 10) / 10 || 0).toFixed(1) : formatLength(mm, 'in');

/** A size as tube is sold: hundredths of a millimetre, or an inch fraction or decimal. */
export const size = (mm: number, units: JobUnit): string =>
  units === 'mm' ? formatMm(mm, 2) : formatLength(mm, 'in', { denominator: null, decimals: 3 });

export const degrees = (radians: number): string => (Math.round(radians * DEGREES * 10) / 10 || 0).toFixed(1);

/** A turn as seen looking from A towards Z. */
export function turn(radians: number | null): string {
  if (radians === null) return 'sets 12 h';
  const size = degrees(Math.abs(radians));
  if (size === '0.0') return 'none';
  if (size === '180.0') return 'half turn';
  return `${size} ${radians > 0 ? 'clockwise' : 'anticlockwise'}`;
}
