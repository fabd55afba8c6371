/** Round numbers along an axis, in the units that are read. */
import { formatLength, type LengthStyle } from 'runback';

const INCH = 25.4;
const MM_STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000];
/** Inches go by eighths up to one, by feet beyond six. */
const FRACTION_STEPS = [1 / 8, 1 / 4, 1 / 2, 1, 2, 3, 6, 12, 24, 36, 60, 120, 240];
const DECIMAL_STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200];

/** Steps to choose from, mm. */
const STEPS: Readonly<Record<LengthStyle, readonly number[]>> = {
  mm: MM_STEPS,
  in: FRACTION_STEPS.map((inches) => inches * INCH),
  'in-16': FRACTION_STEPS.map((inches) => inches * INCH),
  'in-decimal': DECIMAL_STEPS.map((inches) => inches * INCH),
};

/** The smallest round step of at least `least` mm. */
export function roundStep(least: number, style: LengthStyle): number {
  const steps = STEPS[style];
  return steps.find((step) => step >= least) ?? steps.at(-1)! * Math.ceil(least / steps.at(-1)!);
}

/** Multiples of a step from `low` to `high`, mm. */
export function multiples(low: number, high: number, step: number): readonly number[] {
  const first = Math.ceil(low / step);
  const count = Math.floor(high / step) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => (first + i) * step);
}

/** A round number of a unit as an axis says it, without the unit. */
export const bare = (mm: number, style: LengthStyle): string => formatLength(mm, style, { bare: true });

export const unitOf = (style: LengthStyle): 'mm' | 'in' => (style === 'mm' ? 'mm' : 'in');
