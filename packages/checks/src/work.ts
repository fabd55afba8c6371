/** What every check is given: one line, worked once, and a way to look for cures. */
import type { BendPlan } from '@runback/bending';
import type { Centreline, Vec3 } from '@runback/geometry';
import type { Line } from '@runback/job';
import type { Pockets } from './fluid-types.ts';
import type { ClearanceRow, Cure, Finding, LineSlope } from './types.ts';
import type { Estimates } from './worked/estimates.ts';

/** A way to try: push one point along a unit direction, not farther than `farthest` mm. */
export interface Move {
  readonly point: number;
  readonly direction: Vec3;
  readonly farthest: number;
}

/** True when the moved line no longer has the fault. Called only with lines whose corners fit. */
export type Cured = (line: Line, centreline: Centreline) => boolean;

/** Searches the moves for the shortest that cures and adds no other failure; null when there is none. */
export type Seek = (moves: readonly Move[], cured: Cured) => Cure | null;

/** Tries a change that is not a move: returns the cure when the changed line is cured and has no new failure. */
export type Attempt = (changed: Line, cure: Cure, cured: Cured) => Cure | null;

/** How cures are looked for; absent while a cure is itself being judged. */
export interface CureTools {
  readonly seek: Seek;
  readonly attempt: Attempt;
}

/** A line whose geometry exists, with everything more than one check wants to know. */
export interface Work {
  readonly line: Line;
  readonly centreline: Centreline;
  /** Read from A. */
  readonly plan: BendPlan;
  readonly slope: LineSlope | null;
  /** Rows to surroundings, in the job's order; those wholly within the free part of an end are left out. */
  readonly surroundings: readonly ClearanceRow[];
  /** The line against itself: asked for late, because it costs more than all other checks together. */
  readonly self: () => ClearanceRow | null;
  /** What stays in it: asked for late, and not at all of the many lines that a search for a cure tries. */
  readonly pockets: () => Pockets | null;
  readonly estimates: () => Estimates;
  readonly tools: CureTools | null;
}

/** One check of one line. */
export type Check = (work: Work) => readonly Finding[];
