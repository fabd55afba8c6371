/** Wall and pressure by the formulas of a piping code, straight and bent. Millimetres and MPa. Not a design to that code. */
import { bendFactors, wallOutside } from '../wall.ts';
import { CAUTION, type Estimate, notNegative, partOf, positive, shareOf, tubeSizes } from './say.ts';

/** Y of ASME B31.3 Table 304.1.1 for ductile steels below 482 °C, and other ductile metals, where t < D/6. */
const Y_DUCTILE = 0.4;

interface CodeStress {
  /** S: the allowable stress the code prints for the material at its temperature; its factor is inside. */
  readonly allowableMPa: number;
  /** E, quality factor, default 1 (seamless). */
  readonly quality?: number;
  /** W, weld strength reduction, default 1. */
  readonly weld?: number;
  /** c: corrosion, threads, grooves; mm, default 0. */
  readonly allowance?: number;
  /** Mill tolerance under the nominal wall, a fraction, default 0. */
  readonly wallToleranceFraction?: number;
}

export interface CodeWallInput extends CodeStress {
  readonly pressureMPa: number;
  /** Outside diameter as it is, not the nominal size. */
  readonly od: number;
  /** Centreline radius of the tightest bend; left out for a straight tube. */
  readonly radius?: number;
}

export interface CodeWall extends Estimate {
  /** t of equation (3a), without allowance or tolerance, mm. */
  readonly straight: number;
  /** t of equation (3c) on the inside and the outside of the bend; null without a bend. */
  readonly bendInside: number | null;
  readonly bendOutside: number | null;
  /** Wall to order before it is bent: (the largest of them + allowance) / (1 − tolerance). The outside is stretched first. */
  readonly order: number;
  /** Whether every t < D/6, the limit of these formulas with Y = 0.4. */
  readonly thin: boolean;
  /** 1: the code's allowable stress has its factor inside. */
  readonly safetyFactor: 1;
  readonly allowableMPa: number;
}

function checkStress(who: string, given: CodeStress): void {
  positive(who, { allowableMPa: given.allowableMPa });
  shareOf(who, { quality: given.quality, weld: given.weld });
  notNegative(who, { allowance: given.allowance });
  partOf(who, { wallToleranceFraction: given.wallToleranceFraction });
}

const effective = ({ allowableMPa, quality = 1, weld = 1 }: CodeStress): number =>
  allowableMPa * quality * weld;

function factorsOf(who: string, od: number, radius: number): { inside: number; outside: number } {
  const { inside, outside } = bendFactors(od, radius);
  if (inside === null) throw new RangeError(`${who}: radius must be > od/2 = ${od / 2} mm, got ${radius}`);
  return { inside, outside };
}

/**
 * Wall for a pressure, mm: ASME B31.3 para 304.1.2 (3a) t = P·D / (2(S·E·W + P·Y)), and para 304.2.1 (3c) with
 * S·E·W/I inside and outside a bend.
 * @throws RangeError when a size, pressure or stress is not > 0, a factor is not in (0, 1], the tolerance not in
 * [0, 1), or the bend is not over half the diameter
 * @example
 * import { codeWall } from '@runback/bending';
 * codeWall({ pressureMPa: 3, od: 219.1, allowableMPa: 137.9 }).straight.toFixed(2); // => '2.36'
 */
export function codeWall(input: CodeWallInput): CodeWall {
  const { pressureMPa, od, radius, allowance = 0, wallToleranceFraction = 0 } = input;
  positive('codeWall', { pressureMPa, od, radius });
  checkStress('codeWall', input);
  const by = (factor: number): number =>
    (pressureMPa * od) / (2 * (effective(input) / factor + pressureMPa * Y_DUCTILE));
  const bend = radius === undefined ? null : factorsOf('codeWall', od, radius);
  const straight = by(1);
  const bendInside = bend && by(bend.inside);
  const bendOutside = bend && by(bend.outside);
  const stretched = radius === undefined ? 1 : wallOutside({ od, wall: 1, radius });
  const order =
    Math.max(
      straight + allowance,
      (bendInside ?? 0) + allowance,
      ((bendOutside ?? 0) + allowance) / stretched,
    ) /
    (1 - wallToleranceFraction);
  const thin = 6 * Math.max(straight, bendInside ?? 0, bendOutside ?? 0) < od;
  const stress = { safetyFactor: 1, allowableMPa: input.allowableMPa } as const;
  return { straight, bendInside, bendOutside, order, thin, ...stress, caution: CAUTION };
}

/**
 * The same wall from the inside diameter, mm: equation (3b), t = P(d + 2c) / (2(S·E·W − P(1 − Y))).
 * @throws RangeError when a size, pressure or stress is not > 0, a factor is out of range, or no wall is enough
 * because the pressure is at least S·E·W/(1 − Y)
 * @example
 * import { codeWallFromBore } from '@runback/bending';
 * codeWallFromBore({ pressureMPa: 10, bore: 98, allowableMPa: 104, allowance: 1 }).straight.toFixed(3); // => '5.102'
 */
export function codeWallFromBore(
  input: CodeStress & { readonly pressureMPa: number; readonly bore: number },
): Estimate & {
  readonly straight: number;
  readonly thin: boolean;
  readonly safetyFactor: 1;
  readonly allowableMPa: number;
} {
  const { pressureMPa, bore, allowance = 0 } = input;
  positive('codeWallFromBore', { pressureMPa, bore });
  checkStress('codeWallFromBore', input);
  const left = effective(input) - pressureMPa * (1 - Y_DUCTILE);
  if (left <= 0)
    throw new RangeError(
      `codeWallFromBore: pressureMPa must be < ${effective(input) / (1 - Y_DUCTILE)}, got ${pressureMPa}`,
    );
  const straight = (pressureMPa * (bore + 2 * allowance)) / (2 * left);
  const thin = 6 * straight < bore + 2 * (straight + allowance);
  return { straight, thin, safetyFactor: 1, allowableMPa: input.allowableMPa, caution: CAUTION };
}

export interface CodePressureInput extends CodeStress {
  readonly od: number;
  /** Nominal wall before bending. */
  readonly wall: number;
  /** Centreline radius of the tightest bend; left out for a straight tube. */
  readonly radius?: number;
  /** Wall measured outside the bend, mm; left out, the wall stretched by geometry. */
  readonly wallOutsideBend?: number;
}

export interface CodePressure extends Estimate {
  readonly straightMPa: number;
  readonly bendInsideMPa: number | null;
  readonly bendOutsideMPa: number | null;
  /** The least of straight and bend. */
  readonly leastMPa: number;
  /** 1: the code's allowable stress has its factor inside. */
  readonly safetyFactor: 1;
  readonly allowableMPa: number;
}

function pressureAt(t: number, input: CodePressureInput, factor: number): number {
  const { od } = input;
  // At and above D/6 the code has Y = (d + 2c)/(D + d + 2c), and the formula is then Lamé's.
  const y = 6 * t < od ? Y_DUCTILE : (od - 2 * t) / (2 * od - 2 * t);
  return (2 * t * (effective(input) / factor)) / (od - 2 * t * y);
}

/**
 * Pressure by the same formulas, MPa: straight, inside and outside the bend, and the least. The thickening inside a
 * bend is not counted; outside it the wall is `wallOutside` unless a measured one is given.
 * @throws RangeError as `codeWall`, and when tolerance and allowance leave no wall
 * @example
 * import { codePressure } from '@runback/bending';
 * const found = codePressure({ od: 12, wall: 1, allowableMPa: 137.9, radius: 36 });
 * [found.straightMPa, found.leastMPa].map((p) => p.toFixed(2)); // => ['24.63', '22.39']
 */
export function codePressure(input: CodePressureInput): CodePressure {
  const { od, wall, radius, allowance = 0, wallToleranceFraction = 0 } = input;
  tubeSizes('codePressure', od, wall);
  positive('codePressure', { radius, wallOutsideBend: input.wallOutsideBend });
  checkStress('codePressure', input);
  const left = (whole: number, tolerance: number): number => {
    const t = whole * (1 - tolerance) - allowance;
    if (t <= 0) throw new RangeError(`codePressure: allowance ${allowance} mm leaves no wall of ${whole} mm`);
    return t;
  };
  const thickness = left(wall, wallToleranceFraction);
  const straightMPa = pressureAt(thickness, input, 1);
  const common = {
    straightMPa,
    safetyFactor: 1,
    allowableMPa: input.allowableMPa,
    caution: CAUTION,
  } as const;
  if (radius === undefined)
    return { ...common, bendInsideMPa: null, bendOutsideMPa: null, leastMPa: straightMPa };
  const { inside, outside } = factorsOf('codePressure', od, radius);
  const stretched =
    input.wallOutsideBend === undefined
      ? left(wallOutside({ od, wall, radius }), wallToleranceFraction)
      : left(input.wallOutsideBend, 0);
  const bendInsideMPa = pressureAt(thickness, input, inside);
  const bendOutsideMPa = pressureAt(stretched, input, outside);
  return {
    ...common,
    bendInsideMPa,
    bendOutsideMPa,
    leastMPa: Math.min(straightMPa, bendInsideMPa, bendOutsideMPa),
  };
}
