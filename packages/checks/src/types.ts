/** Findings and worked lines: everything a person sees is read from these. Millimetres and radians, but see Finding. */
import type { BendPlan } from '@runback/bending';
import type { Centreline, DrainEnd, SlopeExtreme, Vec3 } from '@runback/geometry';
import type { JobUnit, Line, Run, Surrounding } from '@runback/job';
import type {
  Fact,
  LineFlow,
  LineMass,
  LinePressure,
  LineThermal,
  Passage,
  Pockets,
  StickSheet,
} from './fluid-types.ts';
import type { WorkMemory } from './memory.ts';

export type Verdict = 'pass' | 'note' | 'fail';

/** A change to the job file, in the job's own units and degrees, that cures a finding. */
export interface Edit {
  readonly path: string;
  readonly value: unknown;
}

export interface Cure {
  readonly text: string;
  readonly edits: readonly Edit[];
}

/** One verdict of one check. */
export interface Finding {
  readonly check: string;
  readonly verdict: Verdict;
  /** One plain sentence for a fabricator. Lengths in it are in mm or inches as the job's units are. */
  readonly message: string;
  /** In `unit`; null when there is nothing to measure. */
  readonly found: number | null;
  readonly limit: number | null;
  readonly unit: 'mm' | 'deg' | 'count' | 'ratio' | 'percent' | 'ml' | 'MPa' | '';
  /** Distance from point 0 along the finished centreline, mm. */
  readonly at: number | null;
  readonly point: Vec3 | null;
  /** 1, 2, … from end A. */
  readonly bend: number | null;
  /** Id of the surrounding or line concerned. */
  readonly to: string | null;
  /** Path in the job file of what set the limit or is at fault. */
  readonly path: string | null;
  readonly cure: Cure | null;
  /** Where the limit or the rule comes from. */
  readonly basis: string;
}

export interface Place {
  readonly at: number;
  readonly point: Vec3;
}

/** What can be signed for about the fall of a line: proven over the whole line and every attitude, or where it breaks. */
export interface SlopeProof {
  readonly holds: boolean;
  /** One sentence for a fabricator, in the job's units. */
  readonly text: string;
}

export interface LineSlope {
  readonly proof: SlopeProof;
  readonly toward: DrainEnd;
  readonly rest: SlopeExtreme;
  readonly worst: SlopeExtreme;
  /** Local low and high points at rest, ends left out. */
  readonly lows: readonly Place[];
  readonly highs: readonly Place[];
}

export interface ClearanceRow {
  readonly kind: 'surrounding' | 'line' | 'self';
  readonly to: string;
  /** Tube surface to the thing (to tube surface for lines), negative when they overlap. */
  readonly distance: number;
  readonly keepOff: number;
  readonly at: number;
  readonly point: Vec3;
  /** Closest point on the other thing. */
  readonly other: Vec3;
}

/** What the liquid and the stick do; each `null` when there is nothing to work it from. */
export interface Worked {
  readonly pockets: Pockets | null;
  readonly passage: Passage | null;
  readonly stick: StickSheet | null;
  /** The same and more in words. */
  readonly facts: readonly Fact[];
}

export interface WorkedLine extends Worked {
  readonly line: Line;
  readonly verdict: Verdict;
  /** `null` when the line's geometry cannot exist; then the plan, slope and clearance are empty too. */
  readonly centreline: Centreline | null;
  /** Read from A. */
  readonly plan: BendPlan | null;
  readonly slope: LineSlope | null;
  readonly clearance: readonly ClearanceRow[];
  readonly pressure: LinePressure | null;
  readonly flow: LineFlow | null;
  readonly thermal: LineThermal | null;
  readonly mass: LineMass | null;
  /** Those of the runs it is part of, too. */
  readonly findings: readonly Finding[];
}

/** Lines joined end to end, worked together. */
export interface WorkedRun extends Worked {
  readonly run: Run;
  readonly verdict: Verdict;
  /** Places are distances from end A of the line named in `to`, so that they can be shown on that line. */
  readonly findings: readonly Finding[];
}

export interface WorkedJob {
  readonly title: string;
  readonly revision: string | null;
  readonly units: JobUnit;
  readonly checksum: string;
  readonly verdict: Verdict;
  readonly lines: readonly WorkedLine[];
  readonly runs: readonly WorkedRun[];
  readonly surroundings: readonly Surrounding[];
}

export interface WorkOptions {
  /** Look for the cure of each failure (default). Without, every `cure` but those of corners that do not fit is null. */
  readonly cures?: boolean;
  /** What was worked before: hand the same one in again after each edit of a job (`workJob`). */
  readonly memory?: WorkMemory;
}
