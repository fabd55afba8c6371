import { type Centreline, POINT_MM, pointAt } from '@runback/geometry';
import type { Place } from './types.ts';

/** The place at a distance from A. */
export const placeAt = (centreline: Centreline, at: number): Place => ({
  at,
  point: pointAt(centreline, at),
});

/** Number (1, 2, … from A) of the bend that a place lies in, or null on a straight. A joint counts as straight. */
export function bendAt(centreline: Centreline, at: number): number | null {
  const index = centreline.bends.findIndex((b) => at > b.start + POINT_MM && at < b.end - POINT_MM);
  return index < 0 ? null : index + 1;
}

/** Where a place is, in words: "in bend B2", "between B1 and B2", "between end A and B1". */
export function where(centreline: Centreline, at: number): string {
  const bend = bendAt(centreline, at);
  if (bend !== null) return `in bend B${bend}`;
  const before = centreline.bends.filter((b) => b.end <= at + POINT_MM).length;
  return between(centreline, before);
}

/** Names the straight that has `before` bends on its A side. */
export function between(centreline: Centreline, before: number): string {
  const bends = centreline.bends.length;
  if (bends === 0) return 'between end A and end Z';
  const from = before === 0 ? 'end A' : `B${before}`;
  const to = before === bends ? 'end Z' : `B${before + 1}`;
  return `between ${from} and ${to}`;
}

/** Distance from A to the middle of the straight that has `before` bends on its A side. */
export function middleOfStraight(centreline: Centreline, before: number): number {
  const from = before === 0 ? 0 : centreline.bends[before - 1]!.end;
  const to = before === centreline.bends.length ? centreline.length : centreline.bends[before]!.start;
  return (from + to) / 2;
}
