/** Section, mass and first natural frequency of a round tube. Millimetres; masses in kg. */
import { CAUTION, type Estimate, notNegative, positive, tubeSizes } from './say.ts';

const MM_PER_M = 1000;
const MM2_PER_M2 = 1_000_000;

export interface TubeSection {
  /** Metal, mm². */
  readonly area: number;
  /** Bore, mm². */
  readonly boreArea: number;
  /** Second moment of area about a diameter, mm⁴. */
  readonly inertia: number;
  /** Section modulus, mm³. */
  readonly modulus: number;
  /** Polar second moment, mm⁴. */
  readonly polar: number;
  /** Radius of gyration, mm. */
  readonly gyration: number;
}

/**
 * Section of a round tube by geometry, exact, in mm and its powers.
 * @throws RangeError when a size is not > 0 or the wall leaves no bore
 * @example
 * import { tubeSection } from '@runback/bending';
 * tubeSection(40, 5).polar.toFixed(2); // => '171805.85'
 */
export function tubeSection(od: number, wall: number): TubeSection {
  tubeSizes('tubeSection', od, wall);
  const bore = od - 2 * wall;
  const area = Math.PI * wall * (od - wall);
  const inertia = (area * (od * od + bore * bore)) / 16;
  return {
    area,
    boreArea: (Math.PI * bore * bore) / 4,
    inertia,
    modulus: (2 * inertia) / od,
    polar: 2 * inertia,
    gyration: Math.sqrt(od * od + bore * bore) / 4,
  };
}

export interface TubeMassInput {
  readonly od: number;
  readonly wall: number;
  readonly densityKgM3: number;
  /** Density of what fills the bore, kg/m³; default 0, empty. */
  readonly contentsKgM3?: number;
  /** Developed length, mm; default 1 m. */
  readonly length?: number;
}

export interface TubeMass extends Estimate {
  readonly tubeKgPerM: number;
  readonly contentsKgPerM: number;
  readonly tubeKg: number;
  readonly contentsKg: number;
  readonly totalKg: number;
}

/**
 * Mass per metre and of a length, tube and contents apart, kg. For steel this is EN 10220's (D − T)·T·0.0246615.
 * Nominal sizes: the mill's tolerance on the wall comes straight through.
 * @throws RangeError when a size or density is not > 0, the contents or the length < 0, or the wall leaves no bore
 * @example
 * import { tubeMass } from '@runback/bending';
 * tubeMass({ od: 60.3, wall: 3.6, densityKgM3: 7850 }).tubeKgPerM.toFixed(2); // => '5.03'
 */
export function tubeMass(input: TubeMassInput): TubeMass {
  const { od, wall, densityKgM3, contentsKgM3 = 0, length = MM_PER_M } = input;
  positive('tubeMass', { densityKgM3 });
  notNegative('tubeMass', { contentsKgM3, length });
  const { area, boreArea } = tubeSection(od, wall);
  const tubeKgPerM = (area * densityKgM3) / MM2_PER_M2;
  const contentsKgPerM = (boreArea * contentsKgM3) / MM2_PER_M2;
  const metres = length / MM_PER_M;
  return {
    tubeKgPerM,
    contentsKgPerM,
    tubeKg: tubeKgPerM * metres,
    contentsKg: contentsKgPerM * metres,
    totalKg: (tubeKgPerM + contentsKgPerM) * metres,
    caution: CAUTION,
  };
}

export interface ClipFrequencyInput extends Omit<TubeMassInput, 'length'> {
  readonly youngsMPa: number;
  /** Between neighbouring clips along the tube, mm. */
  readonly span: number;
}

/**
 * First natural frequency of a straight span between two clips that hold place but not direction, Hz:
 * π/(2L²)·√(E·I/m), an Euler–Bernoulli beam pinned at both ends with its contents as added mass (any text on
 * vibration). Clips that also hold direction raise it up to 2.27 times; soft ones, and a bend in the span, lower it.
 * @throws RangeError when a size, density, modulus or span is not > 0, or the wall leaves no bore
 * @example
 * import { clipFrequency } from '@runback/bending';
 * const tube = { od: 12, wall: 1, densityKgM3: 7850, youngsMPa: 207000 };
 * Math.round(clipFrequency({ ...tube, span: 600 }).firstHz); // => 87
 */
export function clipFrequency(input: ClipFrequencyInput): Estimate & { readonly firstHz: number } {
  const { od, wall, youngsMPa, span } = input;
  positive('clipFrequency', { youngsMPa, span });
  const { tubeKgPerM, contentsKgPerM } = tubeMass({ ...input, length: 0 });
  // N·mm² to N·m²: the same million as mm² to m².
  const stiffness = (youngsMPa * tubeSection(od, wall).inertia) / MM2_PER_M2;
  const metres = span / MM_PER_M;
  const firstHz = (Math.PI / (2 * metres * metres)) * Math.sqrt(stiffness / (tubeKgPerM + contentsKgPerM));
  return { firstHz, caution: CAUTION };
}
