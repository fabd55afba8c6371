/** Pressure to prove a finished line with before it is used. MPa. */
import { CAUTION, type Estimate, positive } from './say.ts';

const NAVY =
  'NAVEDTRA 14018, Proof Pressure Testing: twice the operating pressure above 50 psi, at least 100 psi up to there, by liquid, oxygen lines by dry nitrogen under water; vents and drains are not tested';
const PRACTICE = 'common practice, no source';
const PSI_MPA = 6894.757293168 / 1_000_000;
const OVER_MPA = 50 * PSI_MPA;
const FLOOR_MPA = 100 * PSI_MPA;

export interface ProofRule {
  /** Multiple of the working pressure; null where such a line is not proved by pressure. */
  readonly multiple: number | null;
  /** Multiple that the same source wants held without bursting, where it has one. */
  readonly burstMultiple: number | null;
  /** Pressure not to stay under where the working pressure is low, MPa. */
  readonly floorMPa: number;
  readonly medium: string | null;
  readonly source: string;
  readonly mediumSource: string;
}

const twice = (medium: string, mediumSource: string): ProofRule => ({
  multiple: 2,
  burstMultiple: null,
  floorMPa: FLOOR_MPA,
  medium,
  source: NAVY,
  mediumSource,
});

const notProved: ProofRule = {
  multiple: null,
  burstMultiple: null,
  floorMPa: 0,
  medium: null,
  source: NAVY,
  mediumSource: NAVY,
};

const aircraft = (source: string, medium: string): ProofRule => ({
  multiple: 1.5,
  burstMultiple: 3,
  floorMPa: 0,
  medium,
  source,
  mediumSource: PRACTICE,
});

/** Rules by what the line is for. Change none of them: a rule of yours or of your inspector goes before all of these. */
export const proofRules = {
  brake: twice('the brake fluid of the system', PRACTICE),
  fuel: twice('oil or another liquid, never air', NAVY),
  cooler: twice('the liquid it will carry', PRACTICE),
  sensing: twice('the liquid it will carry, or water, dried out after', PRACTICE),
  general: twice('water or oil', NAVY),
  oxygen: twice('dry nitrogen, the line under water', NAVY),
  dipstick: notProved,
  'oil-drain': notProved,
  vent: notProved,
  'aircraft-hydraulic': aircraft('14 CFR 25.1435(a)(1), tubes and fittings', 'the hydraulic fluid'),
  'aircraft-pneumatic': aircraft('14 CFR 25.1438', 'liquid first, gas only after it held'),
  'process-piping': {
    multiple: 1.5,
    burstMultiple: null,
    floorMPa: 0,
    medium: 'water',
    source: 'ASME B31.3 para 345.4.2, without its correction for temperature (from memory)',
    mediumSource: 'ASME B31.3 para 345.4.1 (from memory)',
  },
} as const satisfies Readonly<Record<string, ProofRule>>;

export type ProofService = keyof typeof proofRules;

export interface ProofTest extends Estimate {
  /** Pressure to prove with; null where the line is not proved by pressure. */
  readonly pressureMPa: number | null;
  /** Pressure the same source wants held without bursting; null where it names none. */
  readonly burstMPa: number | null;
  readonly medium: string | null;
  readonly source: string;
  readonly mediumSource: string;
}

/**
 * Proof pressure of a line from its working pressure, MPa, with the medium and where both come from.
 * @throws RangeError when the working pressure is not > 0 or the service is not one of `proofRules`
 * @example
 * import { proofTest } from '@runback/bending';
 * [proofTest('general', 10).pressureMPa, proofTest('vent', 10).pressureMPa]; // => [20, null]
 */
export function proofTest(service: ProofService, workingMPa: number): ProofTest {
  positive('proofTest', { workingMPa });
  if (!Object.hasOwn(proofRules, service))
    throw new RangeError(
      `proofTest: service must be one of ${Object.keys(proofRules).join(', ')}, got ${service}`,
    );
  const rule: ProofRule = proofRules[service];
  const { multiple, burstMultiple, medium, source, mediumSource } = rule;
  const low = rule.floorMPa > 0 && workingMPa <= OVER_MPA;
  const pressureMPa = multiple === null ? null : low ? rule.floorMPa : multiple * workingMPa;
  const burstMPa = burstMultiple === null ? null : burstMultiple * workingMPa;
  return { pressureMPa, burstMPa, medium, source, mediumSource, caution: CAUTION };
}
