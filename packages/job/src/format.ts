/** Lengths and angles for people to read. None of these ever prints −0. */
import type { JobUnit, LengthStyle } from './types.ts';
import { MM_PER_INCH, toDegrees } from './units.ts';

/** Fixed decimals with the trailing zeros cut off: 82.50 → "82.5", −0.001 → "0". */
function trimmed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`format: value must be finite, got ${value}`);
  const text = value.toFixed(decimals);
  const short = text.includes('.') ? text.replace(/\.?0+$/u, '') : text;
  return short === '-0' ? '0' : short;
}

/**
 * Millimetres with up to `decimals` decimals, without a unit.
 * @throws RangeError when not finite.
 */
export const formatMm = (mm: number, decimals = 1): string => trimmed(mm, decimals);

/**
 * Decimal inches of a length in mm, without a unit.
 * @throws RangeError when not finite.
 */
export const formatInch = (mm: number, decimals = 3): string => trimmed(mm / MM_PER_INCH, decimals);

/**
 * Inches of a length in mm, to the nearest 1/`denominator`, reduced, without a unit.
 * @throws RangeError when not finite.
 * @example
 * ```ts
 * import { formatInchFraction } from '@runback/job';
 * formatInchFraction(-81.75625, 32); // => "-3 7/32"
 * ```
 */
export function formatInchFraction(mm: number, denominator: InchDenominator = 32): string {
  if (!Number.isFinite(mm)) throw new RangeError(`formatInchFraction: length must be finite, got ${mm}`);
  const steps = Math.round((Math.abs(mm) / MM_PER_INCH) * denominator);
  if (steps === 0) return '0';
  const whole = Math.floor(steps / denominator);
  let top = steps - whole * denominator;
  let below: number = denominator;
  while (top > 0 && top % 2 === 0 && below % 2 === 0) {
    top /= 2;
    below /= 2;
  }
  const parts = [whole > 0 ? String(whole) : '', top > 0 ? `${top}/${below}` : ''].filter(
    (part) => part !== '',
  );
  return `${mm < 0 ? '-' : ''}${parts.join(' ')}`;
}

export type InchDenominator = 2 | 4 | 8 | 16 | 32 | 64;

export interface LengthFormat {
  /** Decimals of a mm; also of an inch when `denominator` is null. */
  readonly decimals?: number;
  /** Inches as fractions down to this (default 32); `null`: decimal inches. */
  readonly denominator?: InchDenominator | null;
  /** Without the unit behind it. */
  readonly bare?: boolean;
}

/**
 * A length in mm as the job's reader says it: "82.5 mm" or "3 1/4 in".
 * @throws RangeError when not finite.
 * @example
 * ```ts
 * import { formatLength } from '@runback/job';
 * formatLength(82.55, 'in'); // => "3 1/4 in"
 * ```
 */
export function formatLength(mm: number, style: LengthStyle, format: LengthFormat = {}): string {
  const { decimals, denominator, bare = false } = format;
  const text = style === 'mm' ? formatMm(mm, decimals) : inches(mm, style, { decimals, denominator });
  return bare ? text : `${text} ${plainUnit(style)}`;
}

/** The unit behind a style. */
export const plainUnit = (style: LengthStyle): JobUnit => (style === 'mm' ? 'mm' : 'in');

/** Hundredths of an inch, about as fine as the other styles. */
const DECIMALS = 2;

interface InchFormat {
  readonly decimals: number | undefined;
  readonly denominator: InchDenominator | null | undefined;
}

/** What the format says of the denominator goes before the style. */
function inches(mm: number, style: LengthStyle, { decimals, denominator }: InchFormat): string {
  if (denominator === null) return formatInch(mm, decimals);
  if (denominator === undefined && style === 'in-decimal') return formatInch(mm, DECIMALS);
  return formatInchFraction(mm, denominator ?? (style === 'in-16' ? 16 : 32));
}

/**
 * Degrees of an angle in radians with up to `decimals` decimals, without the sign for degrees.
 * @throws RangeError when not finite.
 */
export const formatDegrees = (radians: number, decimals = 1): string => trimmed(toDegrees(radians), decimals);
