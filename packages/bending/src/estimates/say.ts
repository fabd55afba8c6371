/** What every estimate carries, and how it refuses what cannot be. */

/** Stands in every result: a number from a formula releases nothing for use. */
export const CAUTION = 'estimate, not approval';

export interface Estimate {
  readonly caution: typeof CAUTION;
}

/** Quantities by the name they were given with; `undefined` is one that was left out. */
type Given = Readonly<Record<string, number | undefined>>;

function each(who: string, given: Given, rule: { says: string; holds: (value: number) => boolean }): void {
  for (const [name, value] of Object.entries(given))
    if (value !== undefined && !(Number.isFinite(value) && rule.holds(value)))
      throw new RangeError(`${who}: ${name} must be ${rule.says}, got ${value}`);
}

export const positive = (who: string, given: Given): void =>
  each(who, given, { says: '> 0', holds: (value) => value > 0 });

export const notNegative = (who: string, given: Given): void =>
  each(who, given, { says: '>= 0', holds: (value) => value >= 0 });

export const finite = (who: string, given: Given): void =>
  each(who, given, { says: 'a finite number', holds: () => true });

/** A share that leaves something: 0 ≤ x < 1. */
export const partOf = (who: string, given: Given): void =>
  each(who, given, { says: '>= 0 and < 1', holds: (value) => value >= 0 && value < 1 });

/** A share that is something and at most all: 0 < x ≤ 1. */
export const shareOf = (who: string, given: Given): void =>
  each(who, given, { says: '> 0 and <= 1', holds: (value) => value > 0 && value <= 1 });

/** A tube has a bore: 0 < wall < OD/2. */
export function tubeSizes(who: string, od: number, wall: number): void {
  positive(who, { od, wall });
  if (2 * wall >= od) throw new RangeError(`${who}: wall must be < od/2 = ${od / 2} mm, got ${wall}`);
}
