/** What the report says of the liquid and the stick; `reportSchema()` says the same to everyone else. */
import type { Fact, StickMark } from '@runback/checks';
import type { DrainEnd } from '@runback/geometry';
import type { Triple } from './report-types.ts';

export type ReportAttitude = { readonly pitch_deg: number; readonly roll_deg: number };

/** Of the line or the run: distances from its end A. */
export interface ReportPocket {
  readonly from_mm: number;
  readonly to_mm: number;
  readonly lowest_mm: number;
  readonly level_mm: number;
  readonly depth_mm: number;
  readonly volume_ml: number;
  readonly point_mm: Triple;
}

export interface ReportKept {
  readonly volume_ml: number;
  /** What the quadrature may be off by at most. */
  readonly bound_ml: number;
  readonly pockets: readonly ReportPocket[];
}

export interface ReportWorstKept extends ReportKept {
  readonly atMost_ml: number;
  readonly up: Triple;
  readonly attitude: ReportAttitude | null;
  readonly tries: number;
}

export interface ReportAir extends ReportKept {
  readonly outlets: DrainEnd;
  readonly worst: ReportWorstKept | null;
}

export interface ReportPockets {
  readonly outlets: DrainEnd;
  readonly capacity_ml: number;
  readonly liquid: ReportKept;
  readonly worst: ReportWorstKept | null;
  readonly air: ReportAir | null;
  readonly cling: { readonly capillaryLength_mm: number; readonly holds: boolean } | null;
}

/** A bend by its line and its number there, as `bends` of that line counts. */
interface AtBend {
  readonly line: string;
  readonly bend: number;
  readonly at_mm: number;
}

export interface ReportTip extends AtBend {
  readonly longest_mm: number;
  readonly alone: boolean;
}

export interface ReportBladeBend extends AtBend {
  readonly radius_mm: number;
  readonly strain: number;
  readonly takesSet: boolean;
}

export interface ReportTwist {
  readonly fromBend: number;
  readonly twist_deg: number;
  readonly straight_mm: number;
  readonly needs_mm: number;
  readonly enough: boolean;
}

export interface ReportBlade {
  readonly play_mm: number;
  readonly bends: readonly ReportBladeBend[];
  readonly twists: readonly ReportTwist[];
}

export interface ReportStep {
  readonly line: string;
  readonly at_mm: number;
  readonly step_mm: number;
  readonly catches: 'going in' | 'coming out';
  /** `push` is null where the cone jams. */
  readonly lead: { readonly length_mm: number; readonly push: number | null };
}

export interface ReportPassage {
  readonly enters: 'A' | 'Z';
  readonly stiff_mm: number | null;
  readonly tips: readonly ReportTip[];
  readonly blade: ReportBlade | null;
  readonly steps: readonly ReportStep[];
  readonly push: { readonly angle_deg: number; readonly low: number; readonly high: number };
}

export interface ReportMark {
  readonly name: string;
  readonly litres: number;
  readonly at_mm: number;
  readonly doubt_mm: number;
  readonly perDegree_mm: number | null;
  readonly from: StickMark['from'];
}

export interface ReportStick {
  readonly way: {
    readonly centreline_mm: number;
    readonly shortestLow_mm: number;
    readonly shortestHigh_mm: number;
    readonly longest_mm: number;
    readonly uncertainty_mm: number;
  };
  readonly seatToTip: {
    readonly shortest_mm: number;
    readonly middle_mm: number;
    readonly longest_mm: number;
  };
  readonly marks: readonly ReportMark[];
  readonly pullOut: {
    readonly from_mm: Triple;
    readonly to_mm: Triple;
    readonly direction: Triple;
    readonly length_mm: number;
  };
  readonly tip_mm: Triple;
}

/** What a line and a run both have. */
export interface ReportWorked {
  readonly pockets: ReportPockets | null;
  readonly passage: ReportPassage | null;
  readonly stick: ReportStick | null;
  readonly facts: readonly Fact[];
}
