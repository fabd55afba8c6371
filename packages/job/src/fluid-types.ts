/** What runs in a line and what it has to stand there. Millimetres and radians, other units in the comments. */
import type { DrainEnd } from '@runback/geometry';
import type { Figure } from './types.ts';

/** A liquid, at one temperature. */
export interface Fluid {
  readonly id: string;
  readonly name: string;
  /** kg/m³ */
  readonly density: Figure | null;
  /** Kinematic, mm²/s. */
  readonly viscosity: Figure | null;
  /** mN/m */
  readonly surfaceTension: Figure | null;
}

/** What the line has to do; `null` where the job does not say. */
export interface Duty {
  /** Working pressure, MPa. */
  readonly pressure: Figure | null;
  /** litres per minute, towards end `toward` */
  readonly flow: Figure | null;
  readonly toward: 'A' | 'Z';
  /** °C */
  readonly temperature: {
    /** When it was fitted. */
    readonly fitted: Figure;
    readonly lowest: Figure | null;
    readonly highest: Figure | null;
  } | null;
  /** Tensile strength over allowable stress, for the estimates that start from the tensile strength. */
  readonly safetyFactor: Figure;
  /** Part of the wall that the mill may leave out. */
  readonly wallTolerance: Figure;
}

/** How air leaves a line that is filled. */
export interface Bleed {
  /** The ends at which air can leave. */
  readonly to: DrainEnd;
  /** Judged in every attitude, not only at rest. */
  readonly tilted: boolean;
  readonly path: string | null;
}
