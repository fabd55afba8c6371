/** Figures that may be written with a unit of their own: falls, pressures, flows. Each comes out with its text. */
import { z } from 'zod';
import {
  A_SLOPE,
  FLOW,
  LONGEST_TOLD,
  PRESSURE,
  readFlow,
  readPressure,
  readSlope,
  SLOPE_PATTERN,
  type Told,
  type ToldRead,
} from '../quantities.ts';
import { toRadians } from '../units.ts';

const LONGEST_TEXT = LONGEST_TOLD * 50;
const STEEPEST_DEG = 90;

interface AsWritten {
  readonly id: string;
  readonly description: string;
  readonly expected: string;
  readonly pattern: string;
  readonly range: readonly [number, number] | null;
}

/** As written. One object for all of a kind, so that the JSON Schema defines it once. */
const asWritten = ({ id, description, expected, pattern, range }: AsWritten) => {
  const number = range === null ? z.number() : z.number().meta({ minimum: range[0], maximum: range[1] });
  const kinds = [number, z.string().max(LONGEST_TEXT).meta({ pattern })] as const;
  return z.union(kinds, { error: expected }).meta({ id, description });
};

interface Reading {
  readonly expected: string;
  /** What is written as text. */
  readonly read: (text: string) => ToldRead;
  /** What a bare number is. */
  readonly bare: (value: number) => number;
  /** Least and most it can be, and how that is said. */
  readonly range: readonly [least: number, most: number, says: string];
}

const told = (written: ReturnType<typeof asWritten>, { expected, read, bare, range }: Reading) =>
  written.transform((value, context): Told => {
    const got: ToldRead = typeof value === 'string' ? read(value) : { ok: true, value: bare(value) };
    const [least, most, says] = range;
    const fits = got.ok && got.value >= least && got.value <= most;
    if (fits)
      return { value: got.value === 0 ? 0 : got.value, text: typeof value === 'string' ? value : null };
    const message = got.ok ? 'outside what can be' : got.hint;
    const params = { message, expected: got.ok ? says : expected };
    context.issues.push({ code: 'custom', input: value, message, params });
    return z.NEVER;
  });

const slopeAsWritten = asWritten({
  id: 'slope',
  description: 'Degrees, or a fall: "1/4 in/ft", "2 %", "1:48", "1 in 48", "20 mm/m", "6 in per 100 ft".',
  expected: A_SLOPE,
  pattern: SLOPE_PATTERN,
  range: [-STEEPEST_DEG, STEEPEST_DEG],
});

const SLOPE: Reading = {
  expected: A_SLOPE,
  read: readSlope,
  bare: toRadians,
  range: [-Math.PI / 2, Math.PI / 2, `an angle from -${STEEPEST_DEG} to ${STEEPEST_DEG} degrees`],
};

/** A fall, out in radians. */
export const slope = () => told(slopeAsWritten, SLOPE);

const MOST_MPA = 10_000;

const pressureAsWritten = asWritten({
  id: 'pressure',
  description: 'A number of MPa, or text with a unit: "60 psi", "4 bar", "350 kPa", "0.4 MPa".',
  expected: PRESSURE.hint,
  pattern: PRESSURE.pattern,
  range: null,
});

const MORE_THAN_0 = Number.MIN_VALUE;

/** A pressure, out in MPa. */
export const pressure = () =>
  told(pressureAsWritten, {
    expected: PRESSURE.hint,
    read: readPressure,
    bare: (value) => value,
    range: [MORE_THAN_0, MOST_MPA, `a pressure of more than 0, at most ${MOST_MPA} MPa`],
  });

const MOST_LITRES = 1_000_000;

const flowAsWritten = asWritten({
  id: 'flow',
  description: 'A number of litres per minute, or text with a unit: "8 L/min", "2 gal/min" (US).',
  expected: FLOW.hint,
  pattern: FLOW.pattern,
  range: null,
});

/** A flow, out in litres per minute. */
export const flow = () =>
  told(flowAsWritten, {
    expected: FLOW.hint,
    read: readFlow,
    bare: (value) => value,
    range: [MORE_THAN_0, MOST_LITRES, `a flow of more than 0, at most ${MOST_LITRES} litres per minute`],
  });
