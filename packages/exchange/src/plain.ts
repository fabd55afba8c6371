/** Numbers and points as a report writes them: mm as they are, radians in degrees, never −0. */
import type { Vec3 } from '@runback/geometry';
import { toDegrees } from '@runback/job';

/** The number itself, with −0 as 0. */
export const plain = (value: number): number => value + 0;

/** A point or direction. */
export const triple = (v: Vec3): readonly [number, number, number] => [plain(v[0]), plain(v[1]), plain(v[2])];

/** Radians in degrees, exact at multiples of 90°. */
export const deg = (radians: number): number => plain(toDegrees(radians));

/** `null` stays `null`. */
export const orNull = <T, R>(value: T | null, write: (value: T) => R): R | null =>
  value === null ? null : write(value);
