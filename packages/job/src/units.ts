/** Lengths and angles as people write them, in and out. Inside, everything is millimetres and radians. */
import Fraction from 'fraction.js';
import type { JobUnit } from './types.ts';

/** Millimetres in an inch, exactly. */
export const MM_PER_INCH = 25.4;

const QUARTER_DEG = 90;
const QUARTER_RAD = Math.PI / 2;

const PER_UNIT: Readonly<Record<string, Fraction>> = {
  mm: new Fraction(1),
  cm: new Fraction(10),
  m: new Fraction(1000),
  in: new Fraction(127, 5),
  '"': new Fraction(127, 5),
  '″': new Fraction(127, 5),
  ft: new Fraction(1524, 5),
  "'": new Fraction(1524, 5),
  '′': new Fraction(1524, 5),
};

/** A number as people write it: `82.5`, `7/32`, `3 7/32`. */
export const AMOUNT = String.raw`\d+\s+\d+\/\d+|\d+\/\d+|\d+(?:\.\d*)?|\.\d+`;
const FEET = `(?:ft|'|′)`;
const INCHES = `(?:in|"|″)`;
export const LENGTH_UNIT = `(?:mm|cm|m|in|ft|"|″|'|′)`;

/** Millimetres in one of `LENGTH_UNIT`, exactly. */
export const lengthUnit = (unit: string): Fraction => PER_UNIT[unit]!;

/** What a length written as text looks like; also the pattern in the JSON Schema. */
export const LENGTH_PATTERN = String.raw`^\s*([-+−]?)\s*(?:(${AMOUNT})\s*${FEET}\s*(${AMOUNT})\s*${INCHES}|(${AMOUNT})\s*(${LENGTH_UNIT})?)\s*$`;

const LENGTH = new RegExp(LENGTH_PATTERN, 'u');
/** Longer than this is no length. */
export const LONGEST_LENGTH_TEXT = 40;

const EXAMPLES = '82.5, "82.5 mm", "3 7/32 in" or "4\' 2 1/2\\""';

/** What was read, or the words that say why it is no length. */
export type LengthRead =
  | { readonly ok: true; readonly mm: number }
  | { readonly ok: false; readonly hint: string };

/** Reads a length written as text; bare numbers are in `unit`. Never throws. */
export function readLength(text: string, unit: JobUnit): LengthRead {
  if (text.includes(','))
    return {
      ok: false,
      hint: 'a comma is not used in lengths: write 82.5 or 1250, with a point or with nothing',
    };
  const match = text.length > LONGEST_LENGTH_TEXT ? null : LENGTH.exec(text);
  if (!match) return { ok: false, hint: `not a length: write it like ${EXAMPLES}` };
  const [, sign, feet, inches, amount, own] = match;
  const parts =
    feet === undefined
      ? [[amount, own ?? unit]]
      : [
          [feet, 'ft'],
          [inches, 'in'],
        ];
  let sum = new Fraction(0);
  for (const [digits = '', name = ''] of parts) {
    const value = amountOf(digits);
    if (value === null) return { ok: false, hint: 'a fraction cannot have 0 below its line' };
    sum = sum.add(value.mul(PER_UNIT[name]!));
  }
  const mm = sum.valueOf();
  return { ok: true, mm: mm === 0 || sign === '' || sign === '+' ? mm : -mm };
}

/** "3 7/32", "7/32", "3", "3." or ".5"; `null` when it divides by 0. */
export function amountOf(digits: string): Fraction | null {
  let sum = new Fraction(0);
  for (const word of digits.trim().split(/\s+/u)) {
    const [top = '0', below] = word.split('/');
    if (below === undefined)
      sum = sum.add(new Fraction(/^\d/u.test(top) ? top.replace(/\.$/u, '') : `0${top}`));
    else if (/^0+$/u.test(below)) return null;
    else sum = sum.add(new Fraction(BigInt(top), BigInt(below)));
  }
  return sum;
}

/**
 * A length written as text, in millimetres: `82.5`, `82.5 mm`, `3 7/32 in`, `4' 2 1/2"`, also cm, m and ft.
 * A bare number is in `unit`; fractions are exact until the last step; `-3 7/32` is −(3 + 7/32).
 * @throws RangeError with words for the person who typed it.
 * @example
 * ```ts
 * import { parseLength } from '@runback/job';
 * parseLength('-3 7/32', 'in'); // => -81.75625
 * ```
 */
export function parseLength(text: string, unit: JobUnit): number {
  const read = readLength(text, unit);
  if (!read.ok) throw new RangeError(read.hint);
  return read.mm;
}

/** A number in the job's units as millimetres. */
export const toMm = (value: number, unit: JobUnit): number => (unit === 'in' ? value * MM_PER_INCH : value);

/** Millimetres as a number in the job's units. */
export const fromMm = (mm: number, unit: JobUnit): number => (unit === 'in' ? mm / MM_PER_INCH : mm);

/** Degrees to radians; multiples of 90° come out as the same multiples of π/2 that `sinCos` takes for exact. */
export function toRadians(degrees: number): number {
  const quarters = degrees / QUARTER_DEG;
  return Number.isInteger(quarters) ? quarters * QUARTER_RAD : (degrees * Math.PI) / 180;
}

/** Radians to degrees, exact at multiples of 90°. */
export function toDegrees(radians: number): number {
  const quarters = radians / QUARTER_RAD;
  return Number.isInteger(quarters) ? quarters * QUARTER_DEG : (radians * 180) / Math.PI;
}
