import type { LineFlow, LineMass, LinePressure, LineThermal } from '@runback/checks';
import { ml, orNull, plain, triple } from './plain.ts';
import type {
  ReportCodePressure,
  ReportDrainTime,
  ReportDrop,
  ReportFlow,
  ReportMass,
  ReportPressure,
  ReportProofTest,
  ReportStraightPressure,
  ReportThermal,
} from './report-duty-types.ts';

type Of<T, K extends keyof T> = NonNullable<T[K]>;

/** Pressure estimates in MPa, each with its caution. */
export const pressureReport = ({ working, straight, code, proof }: LinePressure): ReportPressure => ({
  working_MPa: orNull(working, plain),
  straight: orNull(straight, straightPressure),
  code: orNull(code, codePressure),
  proof: orNull(proof, proofTest),
});

const straightPressure = (found: Of<LinePressure, 'straight'>): ReportStraightPressure => ({
  barlow_MPa: plain(found.barlowMPa),
  boardman_MPa: plain(found.boardmanMPa),
  lame_MPa: plain(found.lameMPa),
  least_MPa: plain(found.leastMPa),
  allowable_MPa: plain(found.allowableMPa),
  safetyFactor: plain(found.safetyFactor),
  wallLeft_mm: plain(found.wallLeft),
  thin: found.thin,
  caution: found.caution,
});

const codePressure = (found: Of<LinePressure, 'code'>): ReportCodePressure => ({
  straight_MPa: plain(found.straightMPa),
  bendInside_MPa: orNull(found.bendInsideMPa, plain),
  bendOutside_MPa: orNull(found.bendOutsideMPa, plain),
  least_MPa: plain(found.leastMPa),
  allowable_MPa: plain(found.allowableMPa),
  safetyFactor: found.safetyFactor,
  caution: found.caution,
});

const proofTest = (found: Of<LinePressure, 'proof'>): ReportProofTest => ({
  pressure_MPa: orNull(found.pressureMPa, plain),
  burst_MPa: orNull(found.burstMPa, plain),
  medium: found.medium,
  source: found.source,
  mediumSource: found.mediumSource,
  caution: found.caution,
});

/** Pressure drop in MPa and time to drain in seconds. */
export const flowReport = ({ drop, drain }: LineFlow): ReportFlow => ({
  drop: orNull(drop, dropReport),
  drain: orNull(drain, drainTime),
});

const dropReport = (found: Of<LineFlow, 'drop'>): ReportDrop => ({
  velocity_mPerS: plain(found.velocityMPerS),
  reynolds: plain(found.reynolds),
  friction: {
    regime: found.friction.regime,
    factor: plain(found.friction.factor),
    low: plain(found.friction.low),
    high: plain(found.friction.high),
  },
  straights_MPa: plain(found.straightsMPa),
  bends_MPa: plain(found.bendsMPa),
  rise_MPa: plain(found.riseMPa),
  total_MPa: plain(found.totalMPa),
  least_MPa: plain(found.leastMPa),
  caution: found.caution,
});

const drainTime = (found: Of<LineFlow, 'drain'>): ReportDrainTime => ({
  least_s: plain(found.leastS),
  even_s: orNull(found.evenS, plain),
  most_s: orNull(found.mostS, plain),
  assumptions: found.assumptions,
  caution: found.caution,
});

/** Growth in mm between the fitted temperature and the farther end of the range. */
export const thermalReport = ({ deltaK, growth, movement, leg }: LineThermal): ReportThermal => ({
  delta_K: plain(deltaK),
  growth_mm: plain(growth),
  movement_mm: triple(movement),
  leg: orNull(leg, (found) => ({
    length_mm: plain(found.length),
    needed_mm: plain(found.needed),
    takes: found.takes,
    stress_MPa: plain(found.stressMPa),
    allowable_MPa: plain(found.allowableMPa),
    caution: found.caution,
  })),
});

/** Masses in kg, contents in ml too, and the first natural frequency of the longest span. */
export const massReport = (mass: LineMass): ReportMass => ({
  tube_kgPerM: plain(mass.tubeKgPerM),
  contents_kgPerM: plain(mass.contentsKgPerM),
  tube_kg: plain(mass.tubeKg),
  contents_kg: plain(mass.contentsKg),
  total_kg: plain(mass.totalKg),
  contents_ml: ml(mass.contents),
  frequency: orNull(mass.frequency, ({ firstHz, span }) => ({
    first_hz: plain(firstHz),
    span_mm: plain(span),
  })),
  caution: mass.caution,
});
