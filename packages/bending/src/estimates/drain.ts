/** How long a full line takes to run out by its own weight, and what a part-full bore holds. Millimetres, seconds. */
import { GRAVITY } from './flow.ts';
import { frictionFactor, LAMINAR_BELOW } from './friction.ts';
import { CAUTION, type Estimate, notNegative, positive } from './say.ts';

const GRAVITY_MM = GRAVITY * 1000;
const HALVINGS = 200;
/** Room for a least slope worked out from the same fall and length. */
const ROUNDED = 1 + 1 / 1_000_000;

export interface DrainInput {
  readonly bore: number;
  /** Developed length, mm. */
  readonly length: number;
  /** The open upper end above the open lower end, mm. */
  readonly fall: number;
  /** Slope of the shallowest place, radians; it must fall everywhere. Left out, there is no upper bound. */
  readonly leastSlope?: number;
  readonly viscosityMm2S: number;
  /** Mean roughness, mm, default 0.0015. */
  readonly roughness?: number;
}

export interface DrainTime extends Estimate {
  /** No route with this length and fall lets the full bore out sooner, s. */
  readonly leastS: number;
  /** On an even slope, laminar, s; null where that slope would not be laminar. */
  readonly evenS: number | null;
  /** On the shallowest slope all along, with turbulent friction where it may be, and starting from rest, s. */
  readonly mostS: number | null;
  readonly assumptions: readonly string[];
}

const ASSUMPTIONS = [
  'full bore, both ends open, air follows the liquid; nothing above the upper end',
  'friction of steady flow at each moment; bends and ends not counted',
  'until the last full bore is out: a film and drops stay behind',
  'a thin bore may hold its liquid by surface tension and never start',
] as const;

/** Steady velocity of a full bore on a slope, mm/s: f·v²/(2·g·d) = sin(slope), by halving, with the higher factor. */
function slopeVelocity(sine: number, { bore, viscosityMm2S, roughness = 0.0015 }: DrainInput): number {
  const laminar = (GRAVITY_MM * sine * bore * bore) / (32 * viscosityMm2S);
  if ((laminar * bore) / viscosityMm2S < LAMINAR_BELOW) return laminar;
  let low = 0;
  let high = laminar;
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    const { high: factor } = frictionFactor((middle * bore) / viscosityMm2S, roughness / bore);
    if ((factor * middle * middle) / (2 * GRAVITY_MM * bore) < sine) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Time over a length from rest, s, against drag in proportion to velocity that ends at `velocity`: L = v(t − τ(1 − e^(−t/τ)))
 * with τ = v/(g·sin). Real drag rises faster than in proportion, so it is less on the way there and the time is no longer.
 */
function timeFromRest(length: number, velocity: number, sine: number): number {
  const lag = velocity / (GRAVITY_MM * sine);
  let low = length / velocity;
  let high = low + lag;
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (velocity * (middle + lag * Math.expm1(-middle / lag)) < length) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * Time for a full line to run out by gravity, s, between bounds. Hagen–Poiseuille at each moment with the head and the
 * length still filled, t = 32·ν/(g·d²)·∫(L − s)/H(s) ds: 16·ν·L²/(g·d²·H) where all the fall comes last, twice that on
 * an even slope, and the shallowest slope all along at the other end. An estimate; see `assumptions`.
 * @throws RangeError when a size or the viscosity is not > 0, the fall exceeds the length, or the least slope is
 * steeper than the whole
 * @example
 * import { drainTime } from '@runback/bending';
 * const found = drainTime({ bore: 10, length: 1000, fall: 500, viscosityMm2S: 100 });
 * [found.leastS.toFixed(1), found.evenS?.toFixed(1), found.mostS]; // => ['3.3', '6.5', null]
 */
export function drainTime(input: DrainInput): DrainTime {
  const { bore, length, fall, leastSlope, viscosityMm2S } = input;
  positive('drainTime', { bore, length, fall, leastSlope, viscosityMm2S });
  notNegative('drainTime', { roughness: input.roughness });
  if (fall > length) throw new RangeError(`drainTime: fall must be <= length ${length} mm, got ${fall}`);
  const sine = leastSlope === undefined ? null : Math.sin(leastSlope);
  if (sine !== null && (leastSlope! > Math.PI / 2 || sine * length > fall * ROUNDED))
    throw new RangeError(
      `drainTime: leastSlope must not exceed the slope of the whole, got ${leastSlope} rad`,
    );
  const evenS = (32 * viscosityMm2S * length * length) / (GRAVITY_MM * bore * bore * fall);
  const evenReynolds = ((length / evenS) * bore) / viscosityMm2S;
  const velocity = sine === null ? null : slopeVelocity(sine, input);
  return {
    leastS: evenS / 2,
    evenS: evenReynolds < LAMINAR_BELOW ? evenS : null,
    mostS: velocity === null || sine === null ? null : timeFromRest(length, velocity, sine),
    assumptions: ASSUMPTIONS,
    caution: CAUTION,
  };
}

export interface PartFull {
  /** Liquid in the section, mm². */
  readonly area: number;
  /** Wall it wets, mm. */
  readonly wetted: number;
  /** Width of its surface, mm. */
  readonly width: number;
  /** area / wetted, mm; 0 when empty. */
  readonly hydraulicRadius: number;
}

/**
 * What a level bore holds at a depth of liquid, by geometry, exact.
 * @throws RangeError when the bore is not > 0 or the depth not in [0, bore]
 * @example
 * import { partFull } from '@runback/bending';
 * partFull(72, 24).area.toFixed(8); // => '1188.02989891'
 */
export function partFull(bore: number, depth: number): PartFull {
  positive('partFull', { bore });
  notNegative('partFull', { depth });
  if (depth > bore) throw new RangeError(`partFull: depth must be <= bore ${bore} mm, got ${depth}`);
  const width = 2 * Math.sqrt(depth * (bore - depth));
  const half = Math.atan2(width, bore - 2 * depth);
  const area = (bore * bore * half - width * (bore - 2 * depth)) / 4;
  const wetted = bore * half;
  return { area, wetted, width, hydraulicRadius: wetted > 0 ? area / wetted : 0 };
}
