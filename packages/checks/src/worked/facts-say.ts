/** How the figures of the estimates are said, in the job's units. */
import { formatMm, type JobUnit, toDegrees } from '@runback/job';

/** ml in a mm³ figure. */
const MM3_PER_ML = 1000;
/** Less than this is none to a person with a rag. */
export const LEAST_ML = 0.1;

export const inMl = (mm3: number): number => mm3 / MM3_PER_ML;

/** Under 0.1 ml. */
export const isNone = (mm3: number): boolean => inMl(mm3) < LEAST_ML;

/** "3.4 ml"; "none" under 0.1 ml. */
export const sayMl = (mm3: number): string => (isNone(mm3) ? 'none' : `${inMl(mm3).toFixed(1)} ml`);

/** Rounded up: what is certainly not exceeded. */
export const sayMlAtMost = (mm3: number): string => `${(Math.ceil(inMl(mm3) * 10) / 10).toFixed(1)} ml`;

/** So many significant digits: estimates have no more. */
const DIGITS = 3;
const MOST_DIGITS = 7;

/** 20 600 of 20634.2 at three digits, with commas between thousands: "20,600". */
export function digits(value: number, count = DIGITS): string {
  const places = Math.max(0, count - 1 - Math.floor(Math.log10(Math.abs(value) || 1)));
  const [whole = '', part] = formatMm(Number(value.toPrecision(count)), Math.min(places, 9)).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/gu, ',');
  return part === undefined ? grouped : `${grouped}.${part}`;
}

const PSI_PER_MPA = 1_000_000 / 6894.757293168;
const BAR_PER_MPA = 10;
const KPA_PER_MPA = 1000;
/** Under this kPa and mbar are read more easily, MPa. */
const SMALL_MPA = 0.01;
/** A pressure under this is none worth a figure, MPa. */
const LEAST_MPA = 0.0001;

/** "20.6 MPa (206 bar)", "2.48 kPa (24.8 mbar)" or "2,990 psi". Under a thousandth of a bar it says so. */
export function sayPressure(mpa: number, units: JobUnit, count = DIGITS): string {
  const [size, under] =
    Math.abs(mpa) < LEAST_MPA ? [Math.sign(mpa) * LEAST_MPA, mpa === 0 ? '' : 'under '] : [mpa, ''];
  if (units === 'in') return `${under}${digits(size * PSI_PER_MPA, count)} psi`;
  return size !== 0 && Math.abs(size) < SMALL_MPA
    ? `${under}${digits(size * KPA_PER_MPA, count)} kPa (${digits(size * KPA_PER_MPA * BAR_PER_MPA, count)} mbar)`
    : `${under}${digits(size, count)} MPa (${digits(size * BAR_PER_MPA, count)} bar)`;
}

/** Two pressures that a rule tells apart, so written that the reader can too. */
export function sayBothPressures(found: number, limit: number, units: JobUnit): readonly [string, string] {
  for (let count = DIGITS; count < MOST_DIGITS; count++) {
    const both = [sayPressure(found, units, count), sayPressure(limit, units, count)] as const;
    if (both[0] !== both[1] || found === limit) return both;
  }
  return [sayPressure(found, units, MOST_DIGITS), sayPressure(limit, units, MOST_DIGITS)];
}

const LB_PER_KG = 1 / 0.45359237;
const LITRES_PER_GALLON = 3.785411784;
const FEET_PER_M = 1 / 0.3048;

export const sayMass = (kg: number, units: JobUnit): string =>
  units === 'in' ? `${digits(kg * LB_PER_KG)} lb` : `${digits(kg)} kg`;

export const sayMassPerLength = (kgPerM: number, units: JobUnit): string =>
  units === 'in' ? `${digits((kgPerM * LB_PER_KG) / FEET_PER_M)} lb/ft` : `${digits(kgPerM)} kg/m`;

export const sayFlow = (litresPerMin: number, units: JobUnit): string =>
  units === 'in' ? `${digits(litresPerMin / LITRES_PER_GALLON)} gal/min` : `${digits(litresPerMin)} L/min`;

export const sayVelocity = (mPerS: number, units: JobUnit): string =>
  units === 'in' ? `${digits(mPerS * FEET_PER_M)} ft/s` : `${digits(mPerS)} m/s`;

const FAHRENHEIT = 9 / 5;
const FREEZING_F = 32;

export const sayTemperature = (celsius: number, units: JobUnit): string =>
  units === 'in' ? `${formatMm(celsius * FAHRENHEIT + FREEZING_F, 0)} °F` : `${formatMm(celsius, 0)} °C`;

/** A difference of temperature, without its sign. */
export const sayDifference = (kelvin: number, units: JobUnit): string =>
  units === 'in' ? `${formatMm(Math.abs(kelvin) * FAHRENHEIT, 0)} °F` : `${formatMm(Math.abs(kelvin), 0)} °C`;

export const saySeconds = (seconds: number): string => `${digits(seconds, 2)} s`;

/** Two digits, rounded down, and up: a bound stays one. */
export const saySecondsAtLeast = (seconds: number): string => saySeconds(toTwoDigits(seconds, Math.floor));
export const saySecondsAtMost = (seconds: number): string => saySeconds(toTwoDigits(seconds, Math.ceil));

function toTwoDigits(value: number, round: (value: number) => number): number {
  const place = Math.floor(Math.log10(value)) - 1;
  // Powers of ten below one are not exact: divide by the whole one instead.
  return place < 0 ? round(value * 10 ** -place) / 10 ** -place : round(value / 10 ** place) * 10 ** place;
}

/** Decimals of a degree: what is rounded down to them is still read as the same angle. */
const HUNDREDTHS = 2;
const MOST_DECIMALS = 9;

/** An angle that is certainly not less: rounded down to a hundredth of a degree, finer where that would be nothing. */
export function sayAngleAtLeast(radians: number, least = HUNDREDTHS): string {
  const degrees = toDegrees(radians);
  if (degrees === 0) return '0°';
  const decimals = Math.min(MOST_DECIMALS, Math.max(least, Math.ceil(-Math.log10(Math.abs(degrees)))));
  const step = 10 ** decimals;
  // What only rounding keeps from the hundredth it is, is that hundredth.
  const down = Math.floor(degrees * step + 1 / step / step) / step;
  return `${formatMm(down, decimals)}°`;
}

/** A fall >= 0 and what is wanted, both rounded down as in the proof, so written that the reader can tell them apart too. */
export function sayBothFalls(found: number, wanted: number): readonly [string, string] {
  for (let decimals = HUNDREDTHS; decimals < MOST_DECIMALS; decimals++) {
    const both = [sayAngleAtLeast(found, decimals), sayAngleAtLeast(wanted, decimals)] as const;
    if (both[0] !== both[1] || found === wanted) return both;
  }
  return [sayAngleAtLeast(found, MOST_DECIMALS), sayAngleAtLeast(wanted, MOST_DECIMALS)];
}
