/** Friction of a full bore. Millimetres, litres per minute, mm²/s (centistokes); factors are Darcy's, four times Fanning's. */
import { ROUNDING } from '@runback/geometry';
import { CAUTION, type Estimate, notNegative, positive } from './say.ts';

/** Flow is laminar below, and turbulent above, these Reynolds numbers; between them nobody can say (Crane TP-410, critical zone). */
export const LAMINAR_BELOW = 2000;
export const TURBULENT_FROM = 4000;

const MM3_PER_L = 1_000_000;
const NEWTON_MOST = 60;

/** Newton starts below the root of a concave rising function, so it climbs to it: the first step down is rounding. */
function colebrookRoot(reynolds: number, relativeRoughness: number): number {
  const rough = relativeRoughness / 3.7;
  const slip = 2.51 / reynolds;
  let x = 1;
  for (let i = 0; i < NEWTON_MOST; i += 1) {
    const inside = rough + slip * x;
    const miss = x + 2 * Math.log10(inside);
    const step = -miss / (1 + (2 / Math.LN10) * (slip / inside));
    x += step;
    if (Math.abs(step) <= ROUNDING * x) break;
  }
  return x;
}

/**
 * Mean velocity, m/s, of a flow in a full bore.
 * @throws RangeError when the flow is < 0 or the bore not > 0
 * @example
 * import { meanVelocity } from '@runback/bending';
 * meanVelocity({ flowLMin: 60, bore: 20 }).toFixed(2); // => '3.18'
 */
export function meanVelocity({
  flowLMin,
  bore,
}: {
  readonly flowLMin: number;
  readonly bore: number;
}): number {
  notNegative('meanVelocity', { flowLMin });
  positive('meanVelocity', { bore });
  return (flowLMin * MM3_PER_L) / 60 / ((Math.PI * bore * bore) / 4) / 1000;
}

/**
 * Reynolds number of a flow in a full bore, v·d/ν.
 * @throws RangeError when the flow is < 0, or bore or viscosity not > 0
 * @example
 * import { reynoldsNumber } from '@runback/bending';
 * Math.round(reynoldsNumber({ flowLMin: 200, bore: 50, viscosityMm2S: 0.8 })); // => 106103
 */
export function reynoldsNumber(input: {
  readonly flowLMin: number;
  readonly bore: number;
  readonly viscosityMm2S: number;
}): number {
  positive('reynoldsNumber', { viscosityMm2S: input.viscosityMm2S });
  return (meanVelocity(input) * 1000 * input.bore) / input.viscosityMm2S;
}

/**
 * Darcy factor by Colebrook's formula 1/√f = −2·log₁₀(ε/3.7 + 2.51/(Re·√f)), solved to rounding (ASCE 1939; Crane
 * TP-410). ε is roughness over bore; 0 for a smooth tube.
 * @throws RangeError when Re is under 2000, where the formula has no meaning, or ε is not in [0, 0.1]
 * @example
 * import { colebrook } from '@runback/bending';
 * colebrook(100000, 1 / 10000).toFixed(12); // => '0.018513866077'
 */
export function colebrook(reynolds: number, relativeRoughness: number): number {
  positive('colebrook', { reynolds });
  notNegative('colebrook', { relativeRoughness });
  if (reynolds < LAMINAR_BELOW)
    throw new RangeError(`colebrook: reynolds must be >= ${LAMINAR_BELOW}, got ${reynolds}`);
  if (relativeRoughness > 0.1)
    throw new RangeError(`colebrook: relativeRoughness must be <= 0.1, got ${relativeRoughness}`);
  const root = colebrookRoot(reynolds, relativeRoughness);
  return 1 / (root * root);
}

export interface Friction extends Estimate {
  /** `unsure` from Re 2000 to 4000: the flow may be either, or change between them. */
  readonly regime: 'laminar' | 'unsure' | 'turbulent';
  /** Darcy factor to reckon with; where unsure, the higher. */
  readonly factor: number;
  /** Both ends of what it may be; the same number where the regime is sure. */
  readonly low: number;
  readonly high: number;
}

/**
 * Darcy friction factor: 64/Re below 2000, Colebrook from 4000, both between them.
 * @throws RangeError when Re is not > 0 or ε is not in [0, 0.1]
 * @example
 * import { frictionFactor } from '@runback/bending';
 * frictionFactor(640, 0).factor; // => 0.1
 * frictionFactor(3000, 0).regime; // => 'unsure'
 */
export function frictionFactor(reynolds: number, relativeRoughness: number): Friction {
  positive('frictionFactor', { reynolds });
  const laminar = 64 / reynolds;
  const rough = colebrook(Math.max(reynolds, LAMINAR_BELOW), relativeRoughness);
  if (reynolds < LAMINAR_BELOW)
    return { regime: 'laminar', factor: laminar, low: laminar, high: laminar, caution: CAUTION };
  if (reynolds >= TURBULENT_FROM)
    return { regime: 'turbulent', factor: rough, low: rough, high: rough, caution: CAUTION };
  return {
    regime: 'unsure',
    factor: rough,
    low: Math.min(laminar, rough),
    high: Math.max(laminar, rough),
    caution: CAUTION,
  };
}
