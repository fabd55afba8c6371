/** From what a person types into a field to what stands in the job, and back. Lengths as written, angles in degrees. */
import { type JobUnit, parseLength } from 'runback';

/** A length as it stands in the job: a number in the job's units, or a text that may have a unit of its own. */
export type WrittenLength = number | string;

/** What was typed, read; or plain words that say what was expected instead. */
export type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly words: string };

export type Sign = 'any' | 'not negative' | 'more than 0';

export interface LengthWanted {
  readonly units: JobUnit;
  /** Default any. */
  readonly sign?: Sign;
  /** An empty field takes the key out of the job. Default false. */
  readonly optional?: boolean;
}

export interface AngleWanted {
  /** Degrees. */
  readonly lowest: number;
  readonly highest: number;
  readonly optional?: boolean;
}

export interface TextWanted {
  /** Default 200 characters. */
  readonly longest?: number;
  /** Default true: an empty field takes the key out of the job. */
  readonly optional?: boolean;
}

const EXAMPLES: Readonly<Record<JobUnit, string>> = {
  mm: '82.5, 82.5 mm or 3 7/32 in',
  in: '3 7/32, 3.22, 4\' 2 1/2" or 82.5 mm',
};
const PLAIN_NUMBER = /^([-+−]?)\s*(\d+\.?\d*|\.\d+)$/u;
const LONGEST_TEXT = 200;

const no = (words: string): { readonly ok: false; readonly words: string } => ({ ok: false, words });
const yes = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });

function plainNumber(text: string): number | null {
  const match = PLAIN_NUMBER.exec(text);
  if (!match) return null;
  const value = Number(match[2]);
  return match[1] === '-' || match[1] === '−' ? -value + 0 : value;
}

/** Reads a length: a plain number stays a number, everything else stays as it was typed. */
export function readLength(typed: string, wanted: LengthWanted): Read<WrittenLength | undefined> {
  const { units, sign = 'any', optional = false } = wanted;
  const text = typed.trim();
  if (text === '') return optional ? yes(undefined) : no(`a length is wanted here, like ${EXAMPLES[units]}`);
  let mm: number;
  try {
    mm = parseLength(text, units);
  } catch (error) {
    const words = error instanceof RangeError ? error.message : '';
    return no(
      words === '' || words.startsWith('not a length')
        ? `not a length: write it like ${EXAMPLES[units]}`
        : words,
    );
  }
  if (sign === 'more than 0' && !(mm > 0)) return no('this length must be more than 0');
  if (sign === 'not negative' && mm < 0) return no('this length cannot be negative: 0 or more');
  return yes(plainNumber(text) ?? text);
}

/** Reads an angle in degrees; the sign for degrees may stand behind it. */
export function readAngle(typed: string, wanted: AngleWanted): Read<number | undefined> {
  const { lowest, highest, optional = false } = wanted;
  const text = typed.replace(/\s*(?:°|deg|degrees)\s*$/u, '').trim();
  const range = `from ${writtenNumber(lowest)} to ${writtenNumber(highest)}`;
  if (text === '') return optional ? yes(undefined) : no(`degrees are wanted here, ${range}`);
  if (text.includes(',')) return no('a comma is not used in angles: write 12.5, with a point');
  const value = plainNumber(text);
  if (value === null) return no(`not an angle: write degrees like 12.5, ${range}`);
  if (value < lowest || value > highest) return no(`expected degrees ${range}`);
  return yes(value);
}

/** Reads a name or a note; spaces around it are no part of it. */
export function readText(typed: string, wanted: TextWanted = {}): Read<string | undefined> {
  const { longest = LONGEST_TEXT, optional = true } = wanted;
  const text = typed.trim();
  if (text === '') return optional ? yes(undefined) : no('this cannot be empty');
  if (text.length > longest) return no(`at most ${longest} characters, this has ${text.length}`);
  return yes(text);
}

/** A number as a person writes it: never with an exponent, and with the minus sign of numbers. */
export function writtenNumber(value: number): string {
  const text = String(value + 0);
  return text.includes('e')
    ? value.toLocaleString('en', { useGrouping: false, maximumFractionDigits: 20 })
    : text;
}

/** What a field shows for a value of the job: texts as they stand there, nothing for one left out. */
export function written(value: WrittenLength | undefined): string {
  if (value === undefined) return '';
  return typeof value === 'number' ? writtenNumber(value) : value;
}

/** A figure that is only read, with the minus sign of numbers in place of the hyphen that is typed. */
export const readable = (figure: string): string => figure.replace(/^-/u, '−');
