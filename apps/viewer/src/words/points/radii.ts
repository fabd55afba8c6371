/** The radii a corner can be given without typing: those of the bender's dies for the tube. */
import { type Job, type JobUnit, parseLength, RADIUS_MM } from 'runback';
import type { PickOption } from '../parts/pick.tsx';
import { type WrittenLength, written } from '../parts/read.ts';

export interface DieChoice {
  /** As the die says it. */
  readonly radius: WrittenLength;
  readonly mm: number;
}

/** Dies for a tube of `od` mm, the largest first: that one holds where a corner says nothing. */
export function dieChoices(job: Job, bender: string | undefined, od: number): readonly DieChoice[] {
  const own = <T>(record: Readonly<Record<string, T>> | undefined): T | undefined =>
    record && bender !== undefined && Object.hasOwn(record, bender) ? record[bender] : undefined;
  const [asWritten, values] = [own(job.written.benders)?.dies ?? [], own(job.values.benders)?.dies ?? []];
  const fitting = values.flatMap((die, i) => {
    const radius = asWritten[i]?.radius;
    return radius !== undefined && Math.abs(die.od - od) <= RADIUS_MM ? [{ radius, mm: die.radius }] : [];
  });
  return fitting.toSorted((a, b) => b.mm - a.mm);
}

/** What the list of a corner's radius holds besides the dies, which go by their number. */
export const LEFT_OUT = 'left out';
export const OWN = 'own';
export const OTHER = 'other';

export interface RadiusChoices {
  /** Of the options. */
  readonly chosen: string;
  readonly options: readonly PickOption[];
}

export function radiusChoices(
  dies: readonly DieChoice[],
  value: WrittenLength | undefined,
  units: JobUnit,
): RadiusChoices {
  const mm = value === undefined ? null : parseLength(written(value), units);
  const die = mm === null ? -1 : dies.findIndex((each) => Math.abs(each.mm - mm) <= RADIUS_MM);
  const own = mm !== null && die < 0;
  return {
    chosen: value === undefined ? LEFT_OUT : own ? OWN : String(die),
    options: [
      { value: LEFT_OUT, label: dieWords(dies) },
      ...dies.map(({ radius }, i) => ({ value: String(i), label: `R ${written(radius)}` })),
      ...(own ? [{ value: OWN, label: `R ${written(value)}, no die` }] : []),
      { value: OTHER, label: 'other…' },
    ],
  };
}

/** What holds where a corner says nothing. */
export const dieWords = (dies: readonly DieChoice[]): string =>
  dies[0] ? `die ${written(dies[0].radius)}` : 'radius';
