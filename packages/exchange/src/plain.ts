/** Numbers and points as a report writes them: mm as they are, radians in degrees, mm³ in ml, never −0. */
import type { Vec3 } from '@runback/geometry';
import { toDegrees } from '@runback/job';

/** The number itself, with −0 as 0. */
export const plain = (value: number): number => value + 0;

/** A point or direction. */
export const triple = (v: Vec3): readonly [number, number, number] => [plain(v[0]), plain(v[1]), plain(v[2])];

/** Radians in degrees, exact at multiples of 90°. */
export const deg = (radians: number): number => plain(toDegrees(radians));

const MM3_PER_ML = 1000;

/** mm³ in ml. */
export const ml = (volume: number): number => plain(volume / MM3_PER_ML);

/** JSON has no infinity: what has no end is `null`. */
export const finite = (value: number): number | null => (Number.isFinite(value) ? plain(value) : null);

/** `null` stays `null`. */
export const orNull = <T, R>(value: T | null, write: (value: T) => R): R | null =>
  value === null ? null : write(value);
