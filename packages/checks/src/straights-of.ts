/** What straights a line has and what each must have. */
import type { Centreline } from '@runback/geometry';
import type { Die, Figure, Line, LineEnd } from '@runback/job';

/** A straight and the least it may be, mm. */
export interface Judged {
  /** Bends on its A side. */
  readonly before: number;
  readonly found: number;
  readonly limit: Figure | null;
}

/** Straights between bends, each with the larger of what the dies on its two sides want. */
export function straightsBetween(line: Line, centreline: Centreline): Judged[] {
  return centreline.bends.slice(1).map((bend, i) => ({
    before: i + 1,
    found: bend.straightBefore,
    limit: larger(dieOf(line, centreline, i)?.minStraight, dieOf(line, centreline, i + 1)?.minStraight),
  }));
}

/** The die a bend is made on: that of the corner it rounds. */
export function dieOf(line: Line, centreline: Centreline, bend: number): Die | null {
  const point = centreline.bends[bend]?.points[0];
  return point === undefined ? null : (line.corners[point]?.die ?? null);
}

/** First and last straight of a centreline with bends, mm. */
export function endStraight(centreline: Centreline, end: 'A' | 'Z'): number {
  const { bends, length } = centreline;
  if (bends.length === 0) return length;
  return end === 'A' ? bends[0]!.start : length - bends.at(-1)!.end;
}

/** True when the end is flared, beaded or otherwise formed on the tube itself. */
export const isFormed = ({ fitting }: LineEnd): boolean =>
  fitting.traps || fitting.uses.value > 0 || fitting.bar.value > 0;

/** What the tool finds beyond the finished end while bending: spare and flare use, unless the end is formed first. */
export const beyondEnd = (end: LineEnd): number =>
  isFormed(end) && end.flareWhen === 'before' ? 0 : end.spare.value + end.fitting.uses.value;

/** Straight that the nut, the sleeve and the forming bar need behind a formed end, mm. */
export const behindForm = (end: LineEnd): number =>
  end.fitting.bar.value + (end.nut?.length ?? 0) + (end.sleeve?.length ?? 0);

function larger(a: Figure | null | undefined, b: Figure | null | undefined): Figure | null {
  if (!a || !b) return a ?? b ?? null;
  return a.value >= b.value ? a : b;
}
