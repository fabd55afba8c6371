/** Pressure a tube may hold by three formulas side by side, and the stress in a thick wall. Millimetres and MPa. */
import { CAUTION, type Estimate, notNegative, partOf, positive, tubeSizes } from './say.ts';

export interface PressureInput {
  readonly od: number;
  /** Nominal wall. */
  readonly wall: number;
  /** The stress that counts: tensile strength for a burst estimate, yield, or the allowable stress of a code. */
  readonly stressMPa: number;
  /** What `stressMPa` is divided by, at least 1; 1 for the allowable stress of a code, which has its factor inside. */
  readonly safetyFactor: number;
  /** How far the mill may stay under the nominal wall, as a fraction: 0.125 for 12.5 %. Default 0. */
  readonly wallToleranceFraction?: number;
}

export interface PressureEstimates extends Estimate {
  /** 2·S·t / D on the outside diameter: the lowest of the three. */
  readonly barlowMPa: number;
  /** 2·S·t / (D − 0.8·t). Above Lamé, and not to be used, where the wall is over D/6. */
  readonly boardmanMPa: number;
  /** S·(D² − d²) / (D² + d²): the hoop stress at the bore just reaches S. */
  readonly lameMPa: number;
  /** The least of the three. */
  readonly leastMPa: number;
  /** S: `stressMPa / safetyFactor`. */
  readonly allowableMPa: number;
  readonly safetyFactor: number;
  /** t: the wall that the tolerance leaves, mm. */
  readonly wallLeft: number;
  /** Whether t < D/6, where thin-wall formulas are meant to be used. */
  readonly thin: boolean;
}

/**
 * Inside pressure of a straight round tube at the allowable stress, MPa, by Barlow (on the outside diameter),
 * Boardman and Lamé. Formulas as printed in Fluid Power Journal, "Sizing Tubes"; Boardman's is also the one of the
 * Copper Tube Handbook, Table 3. Weld, thread, dent, bend, heat and fatigue are not in it.
 * @throws RangeError when a size or stress is not > 0, the wall leaves no bore, the factor is under 1 or the
 * tolerance is not in [0, 1)
 * @example
 * import { pressureEstimates } from '@runback/bending';
 * const found = pressureEstimates({ od: 6, wall: 1, stressMPa: 300, safetyFactor: 4 });
 * [found.barlowMPa, found.allowableMPa, found.caution]; // => [25, 75, 'estimate, not approval']
 */
export function pressureEstimates(input: PressureInput): PressureEstimates {
  const { od, wall, stressMPa, safetyFactor, wallToleranceFraction = 0 } = input;
  const who = 'pressureEstimates';
  tubeSizes(who, od, wall);
  positive(who, { stressMPa, safetyFactor });
  partOf(who, { wallToleranceFraction });
  if (safetyFactor < 1) throw new RangeError(`${who}: safetyFactor must be >= 1, got ${safetyFactor}`);
  const t = wall * (1 - wallToleranceFraction);
  const allowableMPa = stressMPa / safetyFactor;
  const barlowMPa = (2 * allowableMPa * t) / od;
  const boardmanMPa = (2 * allowableMPa * t) / (od - 0.8 * t);
  const lameMPa = (2 * allowableMPa * t * (od - t)) / (od * od - 2 * od * t + 2 * t * t);
  return {
    barlowMPa,
    boardmanMPa,
    lameMPa,
    leastMPa: Math.min(barlowMPa, boardmanMPa, lameMPa),
    allowableMPa,
    safetyFactor,
    wallLeft: t,
    thin: 6 * t < od,
    caution: CAUTION,
  };
}

export interface WallStress extends Estimate {
  readonly hoopBoreMPa: number;
  readonly hoopOutsideMPa: number;
  /** Along the tube, its ends closed. */
  readonly axialMPa: number;
}

/**
 * Elastic stress in a thick wall under pressure from both sides, MPa, tension positive (Lamé; any text on strength
 * of materials). The radial stress is minus the pressure at either face.
 * @throws RangeError when a size is not > 0, a pressure is < 0 or the wall leaves no bore
 * @example
 * import { thickWallStress } from '@runback/bending';
 * thickWallStress({ od: 100, wall: 20, insideMPa: 20, outsideMPa: 5 }).axialMPa; // => 3.4375
 */
export function thickWallStress(input: {
  readonly od: number;
  readonly wall: number;
  readonly insideMPa: number;
  readonly outsideMPa?: number;
}): WallStress {
  const { od, wall, insideMPa, outsideMPa = 0 } = input;
  tubeSizes('thickWallStress', od, wall);
  notNegative('thickWallStress', { insideMPa, outsideMPa });
  const inner = (od / 2 - wall) ** 2;
  const outer = (od / 2) ** 2;
  const axialMPa = (insideMPa * inner - outsideMPa * outer) / (outer - inner);
  const spread = (insideMPa - outsideMPa) / (outer - inner);
  return {
    hoopBoreMPa: axialMPa + spread * outer,
    hoopOutsideMPa: axialMPa + spread * inner,
    axialMPa,
    caution: CAUTION,
  };
}
