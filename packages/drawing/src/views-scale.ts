/** Scales of drawings: ISO 5455:1979, 1, 2 and 5 times powers of ten, enlarged or reduced. */

const STEPS = [5, 2, 1] as const;
/** No view is enlarged beyond 10 : 1. */
const LARGEST_DECADE = 1;
/** 1 : 10⁷ holds any job a person can write. */
const SMALLEST_DECADE = -8;

/** Paper mm for a mm of the thing, largest first: 10, 5, 2, 1, 1/2, 1/5, … */
const SERIES: readonly number[] = [
  10 ** LARGEST_DECADE,
  ...Array.from({ length: LARGEST_DECADE - SMALLEST_DECADE }, (_, i) => LARGEST_DECADE - 1 - i).flatMap(
    (decade) => STEPS.map((step) => (decade >= 0 ? step * 10 ** decade : step / 10 ** -decade)),
  ),
];

/** The largest scale of the series at which it fits. */
export function standardScale(fits: (scale: number) => boolean): number {
  return SERIES.find(fits) ?? SERIES.at(-1)!;
}

/** `1:5`, `2:1` */
export const scaleWords = (scale: number): string =>
  scale >= 1 ? `${Math.round(scale)}:1` : `1:${Math.round(1 / scale)}`;
