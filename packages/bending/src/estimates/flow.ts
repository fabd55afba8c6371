/** Pressure lost along a line: straights, bends, rise. Millimetres, litres per minute, mm²/s, kg/m³, MPa. */
import { type Friction, frictionFactor, meanVelocity, reynoldsNumber } from './friction.ts';
import { CAUTION, type Estimate, finite, notNegative, positive } from './say.ts';

/** Standard gravity, m/s². */
export const GRAVITY = 9.80665;

const PA_PER_MPA = 1_000_000;
const MM_PER_M = 1000;

/** K/fT of a 90° bend by centreline radius over bore: Crane TP-410, page A-29. */
const BEND_90: readonly (readonly [number, number])[] = [
  [1, 20],
  [1.5, 14],
  [2, 12],
  [3, 12],
  [4, 14],
  [6, 17],
  [8, 24],
  [10, 30],
  [12, 34],
  [14, 38],
  [16, 42],
  [20, 50],
];

/** Commercial steel pipe, which the table was made for, mm: 0.0018 in (Crane TP-410). */
const STEEL_PIPE = (0.0018 * 127) / 5;

function bendEquivalent(ratio: number): number {
  const i = BEND_90.findIndex(([at]) => at >= ratio);
  const [at, value] = BEND_90[i]!;
  const [before, least] = BEND_90[Math.max(0, i - 1)]!;
  return at === before ? value : least + ((value - least) * (ratio - before)) / (at - before);
}

/**
 * Factor fT of fully turbulent flow in clean commercial steel pipe of this bore: 0.25 / log₁₀(ε/(3.7·d))².
 * @throws RangeError when the bore is not > 1 mm
 * @example
 * import { fullyTurbulentFactor } from '@runback/bending';
 * fullyTurbulentFactor(102.26).toFixed(4); // => '0.0163'
 */
export function fullyTurbulentFactor(bore: number): number {
  finite('fullyTurbulentFactor', { bore });
  if (bore <= 1) throw new RangeError(`fullyTurbulentFactor: bore must be > 1 mm, got ${bore}`);
  return 0.25 / Math.log10(STEEL_PIPE / (3.7 * bore)) ** 2;
}

export interface FlowBend {
  /** Centreline radius, mm. */
  readonly radius: number;
  /** Bend angle, radians. */
  readonly angle: number;
}

/**
 * Loss coefficient K of a bend, its own length in it: Crane TP-410 eq. 2-20, (n − 1)(π/4·fT·r/d + K₉₀/2) + K₉₀ with
 * n = angle/90°, K₉₀ = fT times the table of page A-29 (linear between its rows). Below 90° the same line is used,
 * which does not go to 0 with the angle and errs high; the reference gives whole quarters only.
 * @param factor fT, default that of `fullyTurbulentFactor(bore)`
 * @throws RangeError when the radius is not 1 to 20 bores or the angle not > 0
 * @example
 * import { bendLoss } from '@runback/bending';
 * bendLoss({ radius: 40, angle: Math.PI }, 10, 0.023).toFixed(6); // => '0.555257'
 */
export function bendLoss(bend: FlowBend, bore: number, factor = fullyTurbulentFactor(bore)): number {
  positive('bendLoss', { radius: bend.radius, angle: bend.angle, bore, factor });
  const ratio = bend.radius / bore;
  if (ratio < 1 || ratio > 20)
    throw new RangeError(`bendLoss: radius must be 1 to 20 bores, got ${bend.radius} mm on ${bore} mm`);
  const quarter = factor * bendEquivalent(ratio);
  const quarters = bend.angle / (Math.PI / 2);
  return (quarters - 1) * ((Math.PI / 4) * factor * ratio + quarter / 2) + quarter;
}

export interface FlowLine {
  readonly flowLMin: number;
  readonly bore: number;
  readonly viscosityMm2S: number;
  readonly densityKgM3: number;
  /** Mean roughness of the bore, mm; default 0.0015, drawn tube (Moody's chart, from memory). */
  readonly roughness?: number;
  /** Straights, tangent to tangent, mm. The bends bring their own length. */
  readonly straights: readonly number[];
  readonly bends?: readonly FlowBend[];
  /** End Z above end A, mm, when it flows A to Z; default 0. */
  readonly rise?: number;
}

export interface PressureDrop extends Estimate {
  readonly velocityMPerS: number;
  readonly reynolds: number;
  readonly friction: Friction;
  readonly straightsMPa: number;
  readonly bendsMPa: number;
  /** Weight of the rise; negative where it falls. */
  readonly riseMPa: number;
  readonly totalMPa: number;
  /** Total with the lower factor where the regime is unsure, else the same. */
  readonly leastMPa: number;
}

/**
 * Pressure from end A to end Z at a steady flow, MPa: f·L/d of the straights (Darcy–Weisbach), K of the bends, and
 * the rise. Ends, fittings and a changed bore are not in it.
 * @throws RangeError when flow, bore, viscosity or density is not > 0, a length or the roughness < 0, or a bend is
 * outside 1 to 20 bores
 * @example
 * import { pressureDrop } from '@runback/bending';
 * const oil = { viscosityMm2S: 100, densityKgM3: 870, straights: [800, 400] };
 * pressureDrop({ ...oil, flowLMin: 10, bore: 10 }).totalMPa.toFixed(4); // => '0.0709'
 */
export function pressureDrop(line: FlowLine): PressureDrop {
  const { flowLMin, bore, densityKgM3, roughness = 0.0015, straights, bends = [], rise = 0 } = line;
  positive('pressureDrop', { flowLMin, bore, densityKgM3 });
  notNegative('pressureDrop', { roughness });
  for (const straight of straights) notNegative('pressureDrop', { straight });
  finite('pressureDrop', { rise });
  const velocityMPerS = meanVelocity(line);
  const reynolds = reynoldsNumber(line);
  const friction = frictionFactor(reynolds, roughness / bore);
  const dynamicMPa = (densityKgM3 * velocityMPerS ** 2) / 2 / PA_PER_MPA;
  const length = straights.reduce((sum, one) => sum + one, 0);
  const straightsBy = (factor: number): number => (factor * length * dynamicMPa) / bore;
  const bendsMPa = bends.reduce((sum, bend) => sum + bendLoss(bend, bore), 0) * dynamicMPa;
  const riseMPa = headPressure(rise, densityKgM3);
  const straightsMPa = straightsBy(friction.factor);
  const totalMPa = straightsMPa + bendsMPa + riseMPa;
  const leastMPa = straightsBy(friction.low) + bendsMPa + riseMPa;
  const drops = { straightsMPa, bendsMPa, riseMPa, totalMPa, leastMPa };
  return { velocityMPerS, reynolds, friction, ...drops, caution: CAUTION };
}

/**
 * Pressure of a column of liquid at rest, MPa: ρ·g·h with standard gravity.
 * @param height mm; negative for a fall
 * @throws RangeError when the density is not > 0 or the height not finite
 * @example
 * import { headPressure } from '@runback/bending';
 * headPressure(10000, 1000); // => 0.0980665
 */
export function headPressure(height: number, densityKgM3: number): number {
  positive('headPressure', { densityKgM3 });
  finite('headPressure', { height });
  return (densityKgM3 * GRAVITY * height) / MM_PER_M / PA_PER_MPA;
}
