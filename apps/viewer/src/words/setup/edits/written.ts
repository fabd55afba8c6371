/** The job as it is written: its own units, degrees, and lengths as texts where a person wrote them so. */
import { formatPath, type Job, type JobUnit, parseLength } from 'runback';
import type { WrittenLength } from '../../parts/read.ts';

export type Written = Job['written'];
export type WrittenLine = Written['lines'][number];
export type WrittenMirror = Extract<WrittenLine, { mirrorOf: string }>;
export type WrittenMeasured = Exclude<WrittenLine, WrittenMirror>;
export type WrittenEnd = NonNullable<WrittenMeasured['endA']>;
export type WrittenBender = NonNullable<Written['benders']>[string];
export type WrittenDie = WrittenBender['dies'][number];
export type WrittenSurrounding = NonNullable<Written['surroundings']>[number];
export type WrittenPoint = [WrittenLength, WrittenLength, WrittenLength];

/** A path into the job. */
export const path = (...segments: readonly (string | number)[]): string => formatPath(segments);

export const isMirror = (line: WrittenLine): line is WrittenMirror => 'mirrorOf' in line;

/** Name of a line for people. */
export const nameOf = ({ name, id }: { readonly name?: string | undefined; readonly id: string }): string =>
  name === undefined || name === '' ? id : name;

/** An entry of its own; what every object inherits is none. */
export const entry = <T>(record: Readonly<Record<string, T>> | undefined, id: string): T | undefined =>
  record !== undefined && Object.hasOwn(record, id) ? record[id] : undefined;

/** A length as written, in mm. */
export const mmOf = (value: WrittenLength, units: JobUnit): number =>
  typeof value === 'number' ? value * mmPer(units) : parseLength(value, units);

const mmPer = (units: JobUnit): number => parseLength('1', units);

/** Finer than any bench; a number with so many decimals is still one a person can read. */
const DECIMALS = 6;
/** What tells a length from its rounding, mm. */
const SAME_MM = 1e-9;

/** A length in mm as it is written into a job: a plain number where that is exact, else with the unit it is exact in. */
export function writtenOf(mm: number, units: JobUnit): WrittenLength {
  const tidy = tidied(mm / mmPer(units));
  if (Math.abs(tidy * mmPer(units) - mm) < SAME_MM) return tidy;
  const other = units === 'in' ? 'mm' : 'in';
  const foreign = tidied(mm / mmPer(other));
  return Math.abs(foreign * mmPer(other) - mm) < SAME_MM ? `${foreign} ${other}` : mm / mmPer(units);
}

/** Never −0. */
const tidied = (value: number): number => Number(value.toFixed(DECIMALS)) + 0;

/** A length near one in mm that a tape has: a whole mm, or an eighth of an inch. */
export function roundOf(mm: number, units: JobUnit): number {
  const eighths = 8;
  return units === 'in' ? Math.round((mm / mmPer('in')) * eighths) / eighths + 0 : Math.round(mm) + 0;
}
