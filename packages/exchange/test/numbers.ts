/** The numbers of a report as they are before JSON makes `null` of those it cannot say. */

/** Every number below with its path; what is not defined counts as no number. */
export function numbersOf(value: unknown, path = ''): readonly (readonly [path: string, value: number])[] {
  if (typeof value === 'number') return [[path, value]];
  if (value === undefined) return [[path, Number.NaN]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbersOf(inner, `${path}.${key}`));
}

/** Paths of numbers that are not finite, and of −0. */
export const unsayable = (value: unknown): readonly string[] =>
  numbersOf(value)
    .filter(([, one]) => !Number.isFinite(one) || Object.is(one, -0))
    .map(([path]) => path);
