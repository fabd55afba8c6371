/** The estimates of a line as the report has them: strength, flow, heat, weight. None of them is an approval. */
import type { Triple } from './report-types.ts';

interface Estimated {
  readonly caution: string;
}

export interface ReportStraightPressure extends Estimated {
  readonly barlow_MPa: number;
  readonly boardman_MPa: number;
  readonly lame_MPa: number;
  readonly least_MPa: number;
  readonly allowable_MPa: number;
  readonly safetyFactor: number;
  readonly wallLeft_mm: number;
  readonly thin: boolean;
}

export interface ReportCodePressure extends Estimated {
  readonly straight_MPa: number;
  readonly bendInside_MPa: number | null;
  readonly bendOutside_MPa: number | null;
  readonly least_MPa: number;
  readonly allowable_MPa: number;
  readonly safetyFactor: number;
}

export interface ReportProofTest extends Estimated {
  readonly pressure_MPa: number | null;
  readonly burst_MPa: number | null;
  readonly medium: string | null;
  readonly source: string;
  readonly mediumSource: string;
}

export interface ReportPressure {
  readonly working_MPa: number | null;
  readonly straight: ReportStraightPressure | null;
  readonly code: ReportCodePressure | null;
  readonly proof: ReportProofTest | null;
}

export interface ReportDrop extends Estimated {
  readonly velocity_mPerS: number;
  readonly reynolds: number;
  readonly friction: {
    readonly regime: 'laminar' | 'unsure' | 'turbulent';
    readonly factor: number;
    readonly low: number;
    readonly high: number;
  };
  readonly straights_MPa: number;
  readonly bends_MPa: number;
  readonly rise_MPa: number;
  readonly total_MPa: number;
  readonly least_MPa: number;
}

export interface ReportDrainTime extends Estimated {
  readonly least_s: number;
  readonly even_s: number | null;
  readonly most_s: number | null;
  readonly assumptions: readonly string[];
}

export interface ReportFlow {
  readonly drop: ReportDrop | null;
  readonly drain: ReportDrainTime | null;
}

export interface ReportLeg extends Estimated {
  readonly length_mm: number;
  readonly needed_mm: number;
  readonly takes: boolean;
  readonly stress_MPa: number;
  readonly allowable_MPa: number;
}

export interface ReportThermal {
  readonly delta_K: number;
  readonly growth_mm: number;
  readonly movement_mm: Triple;
  readonly leg: ReportLeg | null;
}

export interface ReportMass extends Estimated {
  readonly tube_kgPerM: number;
  readonly contents_kgPerM: number;
  readonly tube_kg: number;
  readonly contents_kg: number;
  readonly total_kg: number;
  readonly contents_ml: number;
  readonly frequency: { readonly first_hz: number; readonly span_mm: number } | null;
}
