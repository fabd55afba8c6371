/** The report as TypeScript sees it; `reportSchema()` says the same to everyone else. */
import type { Finding, Verdict } from '@runback/checks';
import type { DrainEnd } from '@runback/geometry';
import type { JobUnit } from '@runback/job';
import type { ReportFlow, ReportMass, ReportPressure, ReportThermal } from './report-duty-types.ts';
import type { ReportWorked } from './report-fluid-types.ts';

export type Triple = readonly [number, number, number];

export interface ReportStraight {
  readonly kind: 'straight';
  readonly from_mm: Triple;
  readonly to_mm: Triple;
  readonly start_mm: number;
  readonly end_mm: number;
}

export interface ReportArc {
  readonly kind: 'arc';
  readonly from_mm: Triple;
  readonly to_mm: Triple;
  readonly centre_mm: Triple;
  readonly normal: Triple;
  readonly angle_deg: number;
  readonly radius_mm: number;
  readonly start_mm: number;
  readonly end_mm: number;
}

export interface ReportBend {
  readonly bend: number;
  readonly points: readonly number[];
  readonly straightBefore_mm: number;
  readonly turn_deg: number | null;
  readonly clock_deg: number;
  readonly angle_deg: number;
  readonly radius_mm: number;
  readonly start_mm: number;
  readonly end_mm: number;
  readonly mark_mm: number;
  readonly markFinished_mm: number;
  readonly dial_deg: number;
}

export interface ReportSlope {
  readonly toward: DrainEnd;
  readonly rest_deg: number;
  readonly rest_at_mm: number;
  readonly worst_deg: number;
  readonly worst_at_mm: number;
  /** `null` when the attitudes are a cone: any direction. */
  readonly worst_attitude: { readonly pitch_deg: number; readonly roll_deg: number } | null;
  readonly worst_up: Triple;
  /** Whether the fall is proven over the whole line in every attitude, in one sentence. */
  readonly proof: { readonly holds: boolean; readonly text: string };
}

export interface ReportClearance {
  readonly kind: 'surrounding' | 'line' | 'self';
  readonly to: string;
  readonly distance_mm: number;
  readonly keepOff_mm: number;
  readonly at_mm: number;
}

export interface ReportFinding {
  readonly check: string;
  readonly verdict: Verdict;
  readonly message: string;
  /** In `unit`, as `limit` is. */
  readonly found: number | null;
  readonly limit: number | null;
  readonly unit: Finding['unit'];
  readonly at_mm: number | null;
  readonly point_mm: Triple | null;
  readonly bend: number | null;
  readonly to: string | null;
  readonly path: string | null;
  readonly cure: Finding['cure'];
  readonly basis: string;
}

/** A line whose geometry cannot exist has these three and nothing else. */
export interface ReportImpossibleLine {
  readonly id: string;
  readonly verdict: Verdict;
  readonly findings: readonly ReportFinding[];
}

export interface ReportLine extends ReportImpossibleLine, ReportWorked {
  readonly od_mm: number;
  readonly bore_mm: number;
  readonly developedLength_mm: number;
  readonly cutLength_mm: number;
  readonly pieces: readonly (ReportStraight | ReportArc)[];
  readonly bends: readonly ReportBend[];
  readonly lastStraight_mm: number;
  readonly slope: ReportSlope | null;
  readonly clearance: readonly ReportClearance[];
  readonly pressure: ReportPressure | null;
  readonly flow: ReportFlow | null;
  readonly thermal: ReportThermal | null;
  readonly mass: ReportMass | null;
}

/** Lines joined end to end, worked together. */
export interface ReportRun extends ReportWorked {
  readonly id: string;
  readonly name: string;
  /** Ids of its lines, from its end A. */
  readonly lines: readonly string[];
  readonly drain: DrainEnd | null;
  readonly verdict: Verdict;
  /** Places are distances from end A of the line named in `to`. */
  readonly findings: readonly ReportFinding[];
}

export interface Report {
  readonly format: 'runback-report';
  readonly version: 1;
  readonly runback: string;
  readonly title: string;
  readonly jobUnits: JobUnit;
  readonly verdict: Verdict;
  readonly lines: readonly (ReportLine | ReportImpossibleLine)[];
  readonly runs: readonly ReportRun[];
}
