/** How numbers and names are said on the sheet: the one place where a figure becomes text. */
import type { BenchPlan, BenchRow } from '@runback/bending';
import { formatDegrees, formatLength, type LengthStyle, type Line } from '@runback/job';
import { printable } from './measure.ts';

/** A length as the tape reads it, without unit: half millimetres or the steps of an inch, never more. */
export function length(mm: number, unit: LengthStyle): string {
  return formatLength(unit === 'mm' ? Math.round(mm * 2) / 2 : mm, unit, { decimals: 1, bare: true });
}

/** A whole-millimetre length (or 1/32 in), for heights and misses. */
export const height = (mm: number, unit: LengthStyle): string =>
  formatLength(mm, unit, { decimals: 0, bare: true });

/** How far rounding moves an end: small, so finer than the tape and with its unit. */
export const missWords = (mm: number, unit: LengthStyle): string =>
  unit === 'mm'
    ? formatLength(mm, unit, { decimals: 1 })
    : formatLength(mm, unit, { denominator: null, decimals: 2 });

/** Tube and die sizes as they are bought. */
export const size = (mm: number, unit: LengthStyle): string =>
  unit === 'mm'
    ? formatLength(mm, unit, { decimals: 3, bare: true })
    : formatLength(mm, unit, { denominator: null, decimals: 3, bare: true });

const HALF_DEGREE = Math.PI / 360;

/** Half degrees, without the sign for degrees. */
export const degrees = (radians: number): string =>
  formatDegrees(Math.round(radians / HALF_DEGREE) * HALF_DEGREE);

export const tubeWords = ({ tube }: Line, unit: LengthStyle): string =>
  `${size(tube.od, unit)} × ${size(tube.wall, unit)} ${tube.material.name}`;

/** The name of a line; where the typeface lacks letters of it, its id first, so that two such lines can be told apart. */
export const nameWords = ({ name, id }: Pick<Line, 'name' | 'id'>): string =>
  printable(name) ? name : `${id} · ${name}`;

export const handWords = (plan: BenchPlan): string =>
  plan.hand === 'OPPOSITE HAND' ? 'OPPOSITE HAND' : 'HAND AS DRAWN';

/** `R 60`, or all of them when the line has more than one. */
export function dieWords(plan: BenchPlan): string {
  const radii = [...new Set(plan.rows.map((row) => size(row.radius, plan.unit)))];
  if (radii.length === 0) return 'no bends';
  return `R ${radii.join(' / ')}`;
}

/** `spring-back set: dial = 1.028 × bend + 0.4°`, or that nobody has measured it. */
export function springWords(plan: BenchPlan): { readonly text: string; readonly calibrated: boolean } {
  if (plan.rows.length === 0) return { text: '', calibrated: true };
  if (plan.rows.some((row) => !row.calibrated)) return { text: 'NOT CALIBRATED', calibrated: false };
  const sets = new Set(plan.rows.map(setWords));
  return { text: `Spring-back set: ${[...sets].join('; ')}`, calibrated: true };
}

function setWords({ exact }: BenchRow): string {
  const spring = exact.die?.springBack;
  if (!spring) return 'dial = bend';
  const fixed = Number(formatDegrees(spring.fixed, 2));
  const tail = fixed === 0 ? '' : fixed > 0 ? ` + ${fixed}°` : ` − ${-fixed}°`;
  return `dial = ${Number(spring.factor.toFixed(4))} × bend${tail}`;
}

/** All there is to be careful about with these lines, material first, then the service and the ends; each once. */
export function cautionsOf(lines: readonly Line[]): readonly string[] {
  const said = lines.flatMap(({ tube, service, endA, endZ }) => [
    ...tube.material.cautions,
    ...service.cautions,
    ...endA.fitting.cautions,
    ...endZ.fitting.cautions,
  ]);
  return [...new Set(said)];
}
