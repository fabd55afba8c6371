/** A limit as a person reads it, never on the wrong side of what it says. */
import { formatLength, type JobUnit, toMm } from '@runback/job';

/** What is read of a length: a tenth of a mm, 1/32 in; of a wall or a blade: 1/100 mm, 1/1000 in. */
const STEP = {
  length: { mm: toMm(0.1, 'mm'), in: toMm(1 / 32, 'in') },
  thickness: { mm: toMm(0.01, 'mm'), in: toMm(0.001, 'in') },
} as const;

/** At least so long. */
export const roundUp = (mm: number, units: JobUnit): string =>
  formatLength(Math.ceil(mm / STEP.length[units]) * STEP.length[units], units);

/** At most so thick. */
export const roundDown = (mm: number, units: JobUnit): string =>
  formatLength(Math.floor(mm / STEP.thickness[units]) * STEP.thickness[units], units, {
    decimals: units === 'mm' ? 2 : 3,
    denominator: null,
  });
