/** Between a line in mm and the values its author would write in the job file. */
import { ROUNDING, type Vec3 } from '@runback/geometry';
import { type Corner, fromMm, type JobUnit, type Line, toMm } from '@runback/job';
import type { Edit } from './types.ts';
import { eachOf } from './units.ts';

/** Values offered in a cure are rounded to these steps, in job units: finer than any rule, coarse enough to read. */
const STEP: Readonly<Record<JobUnit, number>> = { mm: 0.01, in: 0.0005 };

/** A coordinate that only conversion keeps from having this many decimals is written with them. */
const DECIMALS = 9;

const unmirrored = (line: Line, at: Vec3): Vec3 =>
  eachOf(at, (x, axis) => (axis === line.mirror?.axis ? 2 * line.mirror.offset - x : x));

/** A point of a line as its author would write it: in the job's units, and on the line that a mirrored one mirrors. */
export const pointInJob = (line: Line, at: Vec3): Vec3 =>
  eachOf(unmirrored(line, at), (x) => fromMm(x, line.units) + 0);

/** The other way: what a written point means on this line, mm. */
export const pointFromJob = (line: Line, value: Vec3): Vec3 =>
  unmirrored(
    line,
    eachOf(value, (x) => toMm(x, line.units)),
  );

/** A point moved a little to the nearest value a person would write; coordinates in `same` already are left alone. */
export function tidyPoint(line: Line, at: Vec3, same: Vec3): Vec3 {
  const [value, old] = [pointInJob(line, at), pointInJob(line, same)];
  return eachOf(value, (x, i) => (at[i] === same[i] ? asWritten(old[i]!) : roundTo(x, line.units)));
}

/** A value without what converting it back added: 0.046875, not 0.04687500000000001. */
function asWritten(value: number): number {
  const short = Number(value.toFixed(DECIMALS)) + 0;
  return Math.abs(short - value) <= ROUNDING * Math.max(1, Math.abs(value)) ? short : value;
}

/** Rounded to the step of the job's units, written with as few decimals as that takes. */
export function roundTo(value: number, units: JobUnit): number {
  const steps = Math.round(value / STEP[units]);
  return Number((steps * STEP[units]).toFixed(4)) + 0;
}

/** The line with one corner changed. */
export const withCorner = (line: Line, index: number, change: Partial<Corner>): Line => ({
  ...line,
  corners: line.corners.map((corner, i) => (i === index ? { ...corner, ...change } : corner)),
});

/** The edit that writes a point. */
export const pointEdit = (line: Line, index: number, value: Vec3): Edit => ({
  path: `${line.corners[index]!.path}.at`,
  value,
});

/** Path of the line its points are written in: for a mirrored line, the one it mirrors. */
export const sourcePath = (line: Line): string =>
  line.corners[0]?.path.replace(/\.points\[\d+\]$/, '') ?? line.path;
