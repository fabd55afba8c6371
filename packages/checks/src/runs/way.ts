/** The way through one line or several joined end to end: what a stick goes through and liquid runs along. */
import { type LaidRun, layRun, type Run } from '@runback/bending';
import { type BoreSpan, type Centreline, pointAt } from '@runback/geometry';
import type { JobUnit, Line } from '@runback/job';
import { bendAt, where } from '../place.ts';
import type { Finding } from '../types.ts';
import { lineBore } from '../worked/pockets-bore.ts';

/** A line that exists, and where it begins along the way, mm. */
export interface WayPart {
  readonly line: Line;
  readonly centreline: Centreline;
  readonly start: number;
}

export interface Way {
  readonly parts: readonly WayPart[];
  readonly run: Run;
  readonly laid: LaidRun;
  readonly units: JobUnit;
}

/** A finding and the line of the way (its index) that it belongs on; its place is from end A of that line. */
export interface Placed {
  readonly part: number;
  readonly finding: Finding;
}

export type Course = Pick<WayPart, 'line' | 'centreline'>;

/**
 * The way through lines that meet end to end and are open, at least one.
 * @throws RangeError as `layRun` does
 */
export function wayOf(courses: readonly Course[]): Way {
  let length = 0;
  const parts = courses.map(({ line, centreline }) => {
    const start = length;
    length += centreline.length;
    return { line, centreline, start };
  });
  const run = courses.map(({ line, centreline }) => ({
    centreline,
    bore: line.tube.bore,
    openingA: line.endA.opening,
    openingZ: line.endZ.opening,
  }));
  return { parts, run, laid: layRun(run), units: parts[0]!.line.units };
}

/** A place along the whole way as a place on its line; a joint belongs to the line before it. */
export function placeOf(way: Way, at: number): { readonly part: number; readonly at: number } {
  const after = way.parts.findIndex(({ start }, i) => i > 0 && start >= at);
  const part = (after < 0 ? way.parts.length : after) - 1;
  return { part, at: Math.min(Math.max(at - way.parts[part]!.start, 0), way.parts[part]!.centreline.length) };
}

/** What a finding says of a place on a line of the way. */
export function placed(way: Way, part: number, at: number): Pick<Finding, 'at' | 'point' | 'bend'> {
  const { centreline } = way.parts[part]!;
  return { at, point: pointAt(centreline, at), bend: bendAt(centreline, at) };
}

/** ' of "pump-return"' where the way has more lines than one, else nothing. */
export const ofLine = (way: Way, part: number): string =>
  way.parts.length > 1 ? ` of "${way.parts[part]!.line.id}"` : '';

/** 'B2', and of which line. */
export const bendName = (
  way: Way,
  { line, bend }: { readonly line: number; readonly bend: number },
): string => `B${bend + 1}${ofLine(way, line)}`;

/** 'between B1 and end Z', and of which line. */
export const whereOn = (way: Way, part: number, at: number): string =>
  `${where(way.parts[part]!.centreline, at)}${ofLine(way, part)}`;

/** The line at an end of the way. */
export const partAt = (way: Way, end: 'A' | 'Z'): number => (end === 'A' ? 0 : way.parts.length - 1);

/** The other end. */
export const farEnd = (end: 'A' | 'Z'): 'A' | 'Z' => (end === 'A' ? 'Z' : 'A');

/** Bores of the way from A to Z, with the lips on its ends and in its joints as pieces without length. */
export const boreSpans = (way: Way): readonly BoreSpan[] =>
  way.parts.flatMap(({ line, centreline }) => lineBore(line, centreline));
