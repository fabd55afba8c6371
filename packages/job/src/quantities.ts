/** Falls, pressures and flows as people write them, read exactly: one division at the end. */
import Fraction from 'fraction.js';
import { AMOUNT, amountOf, LENGTH_UNIT, lengthUnit } from './units.ts';

/** A quantity as read, and its text where it was written as one. */
export interface Told {
  readonly value: number;
  readonly text: string | null;
}

/** What was read, or the words that say why it is none. */
export type ToldRead =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly hint: string };

/** Longer than this is no quantity. */
export const LONGEST_TOLD = 40;

const NUMBER = String.raw`\d+(?:\.\d*)?|\.\d+`;

/** What a fall written as text looks like: "2 %", "1:48", "1 in 48", "20 mm/m", "1/4 in/ft", "6 in per 100 ft". */
export const SLOPE_PATTERN = String.raw`^\s*([-+−]?)\s*(?:(${AMOUNT})\s*%|(${AMOUNT})\s*(?::|\sin\s)\s*(${NUMBER})|(${AMOUNT})\s*(${LENGTH_UNIT})\s*(?:\/|per\s)\s*(${NUMBER})?\s*(${LENGTH_UNIT}))\s*$`;

const SLOPE = new RegExp(SLOPE_PATTERN, 'u');

export const A_SLOPE = 'degrees, or a fall like "1/4 in/ft", "2 %", "1:48" or "20 mm/m"';

const refused = (hint: string): ToldRead => ({ ok: false, hint });

const COMMA = 'a comma is not used in figures: write 2.5 or 1250, with a point or with nothing';

/** `null` when there is 0 below the line. */
function ratio(top: Fraction | null, below: Fraction | null): Fraction | null {
  return top === null || below === null || below.equals(0) ? null : top.div(below);
}

/** Rise over run of a fall that matches. */
function fractionOf(match: RegExpExecArray): Fraction | null {
  const [, , percent, rise, run = '', up = '', upUnit = '', along = '1', alongUnit = ''] = match;
  if (percent !== undefined) return ratio(amountOf(percent), new Fraction(100));
  if (rise !== undefined) return ratio(amountOf(rise), amountOf(run));
  const mm = (digits: string, unit: string): Fraction | null =>
    amountOf(digits)?.mul(lengthUnit(unit)) ?? null;
  return ratio(mm(up, upUnit), mm(along, alongUnit));
}

/**
 * Reads a fall written as text: radians, the arc tangent of the very fraction written. Never throws.
 * @example
 * ```ts
 * import { readSlope } from '@runback/job';
 * readSlope('1/4 in/ft'); // => { ok: true, value: Math.atan(1 / 48) }
 * ```
 */
export function readSlope(text: string): ToldRead {
  if (text.includes(',')) return refused(COMMA);
  const match = text.length > LONGEST_TOLD ? null : SLOPE.exec(text);
  if (!match) return refused(`not a fall: write ${A_SLOPE}`);
  const fraction = fractionOf(match);
  if (fraction === null) return refused('a fall cannot have 0 below its line');
  const angle = Math.atan(fraction.valueOf());
  const [, sign] = match;
  return { ok: true, value: angle === 0 || sign === '' || sign === '+' ? angle : -angle };
}

interface Units {
  /** One of each in the unit the figure comes out in. */
  readonly worth: Readonly<Record<string, Fraction>>;
  readonly pattern: string;
  readonly hint: string;
}

const units = (worth: Readonly<Record<string, Fraction>>, hint: string): Units => ({
  worth,
  pattern: String.raw`^\s*(${AMOUNT})\s*(${Object.keys(worth).join('|')})\s*$`,
  hint,
});

/** A pound-force on a square inch, exactly: 4.4482216152605 N on 645.16 mm². */
const PSI = new Fraction('4.4482216152605').div('645.16');
/** US gallon in litres, exactly. */
const GALLON = new Fraction('3.785411784');

/** In MPa. */
export const PRESSURE = units(
  { MPa: new Fraction(1), kPa: new Fraction(1, 1000), bar: new Fraction(1, 10), psi: PSI },
  'MPa, or a pressure with its unit like "60 psi", "4 bar" or "350 kPa"',
);

/** In litres per minute; the gallon is the US one. */
export const FLOW = units(
  {
    'L/min': new Fraction(1),
    'l/min': new Fraction(1),
    'L/h': new Fraction(1, 60),
    'l/h': new Fraction(1, 60),
    'L/s': new Fraction(60),
    'l/s': new Fraction(60),
    'gal/min': GALLON,
    'gal/h': GALLON.div(60),
    gpm: GALLON,
  },
  'litres per minute, or a flow with its unit like "8 L/min" or "2 gal/min" (US)',
);

function readUnits(text: string, { worth, pattern, hint }: Units): ToldRead {
  if (text.includes(',')) return refused(COMMA);
  const match = text.length > LONGEST_TOLD ? null : new RegExp(pattern, 'u').exec(text);
  const [, digits, unit] = match ?? [];
  if (digits === undefined || unit === undefined) return refused(`not understood: write ${hint}`);
  const amount = amountOf(digits);
  if (amount === null) return refused('a fraction cannot have 0 below its line');
  return { ok: true, value: amount.mul(worth[unit]!).valueOf() };
}

/** Reads a pressure written with its unit: MPa. Never throws. */
export const readPressure = (text: string): ToldRead => readUnits(text, PRESSURE);

/** Reads a flow written with its unit: litres per minute. Never throws. */
export const readFlow = (text: string): ToldRead => readUnits(text, FLOW);
