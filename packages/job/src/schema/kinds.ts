/** Small kinds the job's schema is made of. The `error` of each is the "expected" of its fault. */
import { FARTHEST_MM } from '@runback/geometry';
import { z } from 'zod';
import { formatLength } from '../format.ts';
import { quote } from '../issue.ts';
import type { JobUnit } from '../types.ts';
import { LENGTH_PATTERN, LONGEST_LENGTH_TEXT, readLength, toMm, toRadians } from '../units.ts';

/**
 * What a schema is made for. Lengths come out in mm, angles in radians. A loose one wants no key and no list item,
 * to read what is left of a job when its faulty values are taken out.
 */
export interface Kit {
  readonly unit: JobUnit;
  readonly loose: boolean;
}

export type Sign = 'any' | 'not negative' | 'more than 0';

const A_LENGTH = 'a length like 82.5 or "3 7/32 in"';

/** A length as written. One object for all, so that the JSON Schema defines it once. */
const lengthAsWritten = z
  .union(
    [
      z.number(),
      z
        .string()
        .max(LONGEST_LENGTH_TEXT * 50)
        .meta({ pattern: LENGTH_PATTERN }),
    ],
    { error: A_LENGTH },
  )
  .meta({
    id: 'length',
    description:
      'A number in the job\'s units, or text with a unit of its own: "82.5 mm", "3 7/32 in", "4\' 2 1/2\\"". Bare text is in the job\'s units.',
  });

/** `expected` and what is wrong, for a value that is of the right kind but cannot be. */
export interface Refusal {
  readonly message: string;
  readonly expected: string;
}

const refusal = (message: string, expected: string): Refusal => ({ message, expected });

function refuseLength(mm: number, sign: Sign, unit: JobUnit): Refusal | null {
  const most = formatLength(FARTHEST_MM, unit, { denominator: null });
  if (Math.abs(mm) > FARTHEST_MM) return refusal('too far away to be meant', `at most ${most}`);
  if (sign === 'more than 0' && !(mm > 0))
    return refusal('this length must be more than 0', 'a length of more than 0');
  if (sign === 'not negative' && mm < 0)
    return refusal('this length cannot be negative', 'a length of 0 or more');
  return null;
}

/** A length, out in mm. */
export const length = (kit: Kit, sign: Sign) =>
  lengthAsWritten.transform((written, context) => {
    const read = typeof written === 'string' ? readLength(written, kit.unit) : null;
    const mm = typeof written === 'number' ? toMm(written, kit.unit) : read?.ok ? read.mm : 0;
    const refused = read?.ok === false ? refusal(read.hint, A_LENGTH) : refuseLength(mm, sign, kit.unit);
    if (refused === null) return mm === 0 ? 0 : mm;
    context.issues.push({ code: 'custom', input: written, message: refused.message, params: { ...refused } });
    return z.NEVER;
  });

/** Three coordinates, out in mm. */
export const point = (kit: Kit) => {
  const coordinate = length(kit, 'any');
  return z.tuple([coordinate, coordinate, coordinate], { error: 'three coordinates [x, y, z]' });
};

/** Three lengths more than 0: the size of a box. */
export const sizes = (kit: Kit) => {
  const size = length(kit, 'more than 0');
  return z.tuple([size, size, size], { error: 'three sizes [along x, along y, along z]' });
};

/** A direction: plain numbers, any length but 0 (a later look). */
export const direction = () => {
  const part = z.number({ error: 'a plain number: a direction has no unit' });
  return z.tuple([part, part, part], { error: 'a direction [x, y, z] of plain numbers' });
};

/** An angle in degrees within a range, out in radians. */
export const angle = (lowest: number, highest: number) => {
  const error = `an angle from ${lowest} to ${highest} degrees`;
  return z.number({ error }).min(lowest, error).max(highest, error).transform(toRadians);
};

/** A plain number, more than 0. */
export const positive = (error: string) => z.number({ error }).gt(0, error);

/** A plain number within a range, in `unit`. */
export const between = (least: number, most: number, unit: string) => {
  const error = `a number from ${least} to ${most} ${unit}`.trimEnd();
  return z.number({ error }).min(least, error).max(most, error);
};

const ID = /^[A-Za-z0-9][A-Za-z0-9._-]*$/u;
const LONGEST_ID = 64;
const AN_ID = `an id of letters, digits, "-", "_" and "." beginning with a letter or digit, at most ${LONGEST_ID} long`;

/** An id. Names every object of the language has are refused, so that ids may be keys of plain objects. */
export const id = () =>
  z
    .string({ error: AN_ID })
    .max(LONGEST_ID, AN_ID)
    .regex(ID, AN_ID)
    .refine((value) => !(value in Object.prototype), 'another id: this word is reserved');

const LONGEST_NAME = 200;
const LONGEST_NOTE = 2000;
const CONTROL = /^[^\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F]*$/u;

const text = (longest: number, what: string) => {
  const error = `${what} of at most ${longest} characters, without control characters`;
  return z.string({ error }).max(longest, error).regex(CONTROL, error);
};

export const name = () => text(LONGEST_NAME, 'a text');
export const note = () => text(LONGEST_NOTE, 'a note');

/** One of a few words. */
export const word = <const T extends readonly [string, ...string[]]>(words: T) =>
  z.enum(words, { error: `one of ${words.map(quote).join(', ')}` });

/** An object with just these keys; `always` are wanted even in a loose schema. */
export function object<S extends z.core.$ZodLooseShape>(kit: Kit, shape: S, always: readonly string[] = []) {
  const keys = Object.keys(shape).join(', ');
  const error = (issue: { readonly code?: string | undefined }): string =>
    issue.code === 'unrecognized_keys' ? keys : `an object { … } with ${keys}`;
  const strict = z.strictObject(shape, { error });
  if (!kit.loose) return strict;
  const optional = Object.fromEntries(
    Object.entries(shape).map(([key, kind]) => [
      key,
      always.includes(key) ? kind : z.optional(kind as z.ZodType),
    ]),
  );
  return z.strictObject(optional, { error }) as unknown as typeof strict;
}

/** A list with at least `least` items. `what` says what is in it. */
export function list<T extends z.ZodType>(kit: Kit, item: T, expected: { least: number; what: string }) {
  const error = expected.what;
  const strict = z.array(item, { error }).min(kit.loose ? 0 : expected.least, error);
  return kit.loose ? (z.array(item.optional(), { error }) as unknown as typeof strict) : strict;
}

/** Things by their ids. */
export function byId<T extends z.ZodType>(kit: Kit, item: T, what: string) {
  const error = `an object { … } with ${what}`;
  const strict = z.record(id(), item, { error });
  return kit.loose ? (z.record(id(), item.optional(), { error }) as unknown as typeof strict) : strict;
}
