/** What the liquid and the stick do in a line or a run: worked figures. Millimetres, mm³, MPa and radians. */
import type {
  BladePassage,
  CodePressure,
  DrainTime,
  GrowthLeg,
  JointStep,
  Lead,
  PressureDrop,
  PressureEstimates,
  ProofTest,
  PullOut,
  PushFactor,
  StickLength,
  TipPassage,
  TubeMass,
} from '@runback/bending';
import type { DrainEnd, Pocket, SlopeExtreme, Vec3 } from '@runback/geometry';

/** A figure in words, as every reader prints it: "stays in it at rest", "3.4 ml", what it rests on. */
export interface Fact {
  readonly group: FactGroup;
  readonly label: string;
  /** With its unit, in the job's units. */
  readonly text: string;
  /** The model, its source, and what it leaves out, in one sentence. */
  readonly basis: string;
  /** Where the figure could hurt somebody: what it is not. */
  readonly caution: string | null;
}

export type FactGroup = 'pockets' | 'passage' | 'stick' | 'pressure' | 'flow' | 'thermal' | 'mass';

/**
 * A pocket with the place on the centreline at `lowest`. Air stays where liquid would with the world upside down, and is
 * told so: its `lowest` is where its roof is highest, its `depth` is measured down from there, and its `level` is the
 * height of its surface along down (minus the height along up).
 */
export interface PocketPlace extends Pocket {
  readonly point: Vec3;
}

/** What stays in one attitude, mm³. */
export interface Kept {
  readonly volume: number;
  /** What the quadrature may be off by at most, mm³. */
  readonly bound: number;
  readonly pockets: readonly PocketPlace[];
}

/** The most that stays in any attitude, as far as a search tells. */
export interface WorstKept extends Kept {
  /** Certainly no more than this, mm³. */
  readonly atMost: number;
  /** Up in the machine's axes where it was found. */
  readonly up: Vec3;
  /** `null` when the attitudes are a cone. */
  readonly attitude: SlopeExtreme['attitude'];
  /** Attitudes looked at; 0 when the fall of the line proves that nothing stays. */
  readonly tries: number;
}

/** What clings to the wall after the rest has run out, and what a small bore holds by surface tension. */
export interface Cling {
  /** √(σ/(ρg)), mm. */
  readonly capillaryLength: number;
  /** True when the narrowest bore is so small that a long bubble does not rise in it even when it is plumb. */
  readonly holds: boolean;
}

export interface Pockets {
  readonly outlets: DrainEnd;
  /** All the bore holds, mm³. */
  readonly capacity: number;
  /** Liquid that stays at rest. */
  readonly liquid: Kept;
  /** The most over all attitudes; `null` when it was not looked for: nothing drains, or a work-up without cures. */
  readonly worst: WorstKept | null;
  /** Air that stays when it is filled; `null` when it is not bled. Its worst is looked for when it is bled in every attitude. */
  readonly air: (Kept & { readonly outlets: DrainEnd; readonly worst: WorstKept | null }) | null;
  /** `null` without the liquid's surface tension and density. */
  readonly cling: Cling | null;
}

/** A step in the way of a stick, and the cone that cures it. */
export interface StepInWay extends JointStep {
  readonly lead: Lead;
}

export interface Passage {
  readonly enters: 'A' | 'Z';
  /** Longest stiff tip through each bend. */
  readonly tips: readonly TipPassage[];
  /** The stiffest part of the stick: its tip or a link. `null` when none of it is stiff. */
  readonly stiff: number | null;
  readonly blade: BladePassage | null;
  readonly steps: readonly StepInWay[];
  readonly push: PushFactor;
}

/** A mark on the stick, from its end. */
export interface StickMark {
  readonly name: string;
  readonly litres: number;
  readonly at: number;
  /** May be off by this much along the stick, either way. */
  readonly doubt: number;
  /** How far the reading moves for one degree of tilt the worst way, along the stick; `null` without a pan. */
  readonly perDegree: number | null;
  readonly from: 'fills' | 'pan';
}

export interface StickSheet {
  readonly way: StickLength;
  /** From the face its cap seats on to its end: shortest way, along the middle of the bore, longest way. */
  readonly seatToTip: { readonly shortest: number; readonly middle: number; readonly longest: number };
  readonly marks: readonly StickMark[];
  readonly pullOut: PullOut;
  /** Where its end stands when it is seated. */
  readonly tip: Vec3;
}

export interface LinePressure {
  /** What the job says it works at, MPa. */
  readonly working: number | null;
  readonly straight: PressureEstimates | null;
  readonly code: CodePressure | null;
  readonly proof: ProofTest | null;
}

export interface LineFlow {
  readonly drop: PressureDrop | null;
  readonly drain: DrainTime | null;
}

export interface LineThermal {
  /** K, from fitted to the farther end of the range. */
  readonly deltaK: number;
  /** Of the developed length, mm. */
  readonly growth: number;
  /** Of end Z against end A when A is held, mm. */
  readonly movement: Vec3;
  /** Whether the bends take it, both ends held; `null` when an end is free or nothing says what the tube may stand. */
  readonly leg: (GrowthLeg & { readonly length: number }) | null;
}

export interface LineMass extends TubeMass {
  /** mm³ */
  readonly contents: number;
  /** Of the longest span between clips; `null` without clips. */
  readonly frequency: { readonly firstHz: number; readonly span: number } | null;
}
