/** A flat blade in a bent tube: what bends and turns ask of it. Millimetres, radians, MPa. */
import { pieceTangent, turnBetween } from '@runback/geometry';
import { layRun, type Run, type RunBend, runWidths } from './run.ts';

export interface Blade {
  readonly thickness: number;
  readonly width: number;
  readonly youngsMPa: number;
  readonly yieldMPa: number;
}

/**
 * Strain at the face of a strip bent to a radius at its mid-plane: t/(2R). Source: plane sections stay plane.
 * @throws RangeError when a size is not > 0 mm
 * @example
 * import { bendingStrain } from '@runback/bending';
 * bendingStrain(0.5, 50); // => 0.005
 */
export function bendingStrain(thickness: number, radius: number): number {
  for (const [name, value] of Object.entries({ thickness, radius }))
    if (!(value > 0)) throw new RangeError(`bendingStrain: ${name} must be > 0 mm, got ${value}`);
  return thickness / (2 * radius);
}

/**
 * The smallest mid-plane radius a blade springs back from, mm: t·E/(2·σy). Under it the blade takes a set.
 * @throws RangeError when a value of the blade is not > 0
 * @example
 * import { radiusWithoutSet } from '@runback/bending';
 * radiusWithoutSet({ thickness: 0.5, width: 5, youngsMPa: 205_000, yieldMPa: 1000 }); // => 51.25
 */
export function radiusWithoutSet(blade: Blade): number {
  checkBlade(blade);
  return (blade.thickness * blade.youngsMPa) / (2 * blade.yieldMPa);
}

/** Poisson's ratio of steel; aluminium and brass are near 1/3, which moves the allowed twist by 3 %. */
const POISSON = 0.3;

/**
 * The twist per length a blade springs back from, rad/mm: an estimate. The smaller of what its face allows in shear,
 * σy/√3 = G·t·φ' with G = E/2.6 (thin rectangle in torsion), and what its edges allow as they are stretched into
 * helices, φ'²·w²/12 = σy/E. Doubt: the bend beside it strains the blade too, and the ends of the twist are not free.
 * @throws RangeError when a value of the blade is not > 0
 * @example
 * import { twistAllowed } from '@runback/bending';
 * const blade = { thickness: 0.5, width: 5, youngsMPa: 205_000, yieldMPa: 1000 };
 * (Math.PI / 2 / twistAllowed(blade)).toFixed(0); // => '107'
 */
export function twistAllowed(blade: Blade): number {
  checkBlade(blade);
  const strain = blade.yieldMPa / blade.youngsMPa;
  const shear = (2 * (1 + POISSON) * strain) / (Math.sqrt(3) * blade.thickness);
  return Math.min(shear, Math.sqrt(12 * strain) / blade.width);
}

function checkBlade(blade: Blade): void {
  const { thickness, width, youngsMPa, yieldMPa } = blade;
  for (const [name, value] of Object.entries({ thickness, width, youngsMPa, yieldMPa }))
    if (!(value > 0 && value < Number.POSITIVE_INFINITY))
      throw new RangeError(`blade: ${name} must be > 0, got ${value}`);
  if (thickness > width)
    throw new RangeError(`blade: thickness must be <= width, got ${thickness} and ${width} mm`);
}

export interface BladeBend {
  readonly line: number;
  readonly bend: number;
  readonly at: number;
  /** Tightest mid-plane radius: pulled against the inner wall, mm. */
  readonly radius: number;
  readonly strain: number;
  readonly takesSet: boolean;
}

export interface BladeTwist {
  /** From which bend of the run to the next, counted from 0 along the whole run. */
  readonly from: number;
  /** How far the blade must twist, radians in (−π/2, π/2]; right-handed about travel. Half a turn is none. */
  readonly twist: number;
  readonly straight: number;
  /** Straight the twist asks for, mm. */
  readonly needs: number;
  /** False: the blade takes a set there, or rides edge-on round one of the two bends. */
  readonly enough: boolean;
}

export interface BladePassage {
  /** Narrowest bore or lip less the diagonal of the blade, mm: negative where it does not go in. */
  readonly play: number;
  readonly bends: readonly BladeBend[];
  readonly twists: readonly BladeTwist[];
}

/**
 * What a run does to a flat blade that bends only the thin way. The blade lies flat in each bend, so from one plane of
 * bend to the next it must twist by the turn, less any half turn, over the straight between.
 * @throws RangeError when a value of the blade is not > 0, or as `layRun` does
 */
export function bladePassage(run: Run, blade: Blade): BladePassage {
  checkBlade(blade);
  const { bends } = layRun(run);
  const narrowest = Math.min(...runWidths(run).map(({ diameter }) => diameter));
  return {
    play: narrowest - Math.hypot(blade.width, blade.thickness),
    bends: bends.map((bend) => bladeBend(bend, blade)),
    twists: bends.slice(1).map((bend, i) => bladeTwist([bends[i]!, bend], blade, i)),
  };
}

function bladeBend({ line, bend, at, arc, bore }: RunBend, blade: Blade): BladeBend {
  const open = Math.sqrt(Math.max(0, bore ** 2 - blade.width ** 2));
  const radius = arc.radius - Math.max(0, open - blade.thickness) / 2;
  const strain = bendingStrain(blade.thickness, radius);
  return { line, bend, at, radius, strain, takesSet: strain > blade.yieldMPa / blade.youngsMPa };
}

function bladeTwist([a, b]: readonly [RunBend, RunBend], blade: Blade, from: number): BladeTwist {
  const turn = turnBetween(a.arc.normal, b.arc.normal, pieceTangent(b.arc, b.arc.start));
  const twist = flatTwist(turn);
  const needs = Math.abs(twist) / twistAllowed(blade);
  return { from, twist, straight: b.before, needs, enough: b.before >= needs };
}

/** A flat blade looks the same after half a turn: the turn brought into (−π/2, π/2]. */
function flatTwist(turn: number): number {
  if (turn > Math.PI / 2) return turn - Math.PI;
  return turn <= -Math.PI / 2 ? turn + Math.PI : turn;
}
