/** What stays in a bore after it has run out, and what air stays when it is filled. */
import { GRAVITY } from '@runback/bending';
import {
  type AttitudeSet,
  type BoreSpan,
  type Centreline,
  type DrainEnd,
  lowsAndHighs,
  type MachineAxes,
  negate,
  type Poured,
  pointAt,
  pour,
  smallestSlope,
  type Trapped,
  trapped,
  type Vec3,
  type WorstAsk,
  worstTrapped,
} from '@runback/geometry';
import type { Bleed, Fluid, Line } from '@runback/job';
import type { Cling, Kept, Pockets, WorstKept } from '../fluid-types.ts';
import { onlyLevel } from '../only-level.ts';
import type { LineSlope, WorkedLine } from '../types.ts';
import { isNone } from './facts-say.ts';
import { isOpen, lineBore, lipAtOutlet } from './pockets-bore.ts';

/** A bore, of one line or of several joined, with what is asked of it. */
export interface Bored {
  readonly spans: readonly BoreSpan[];
  /** Where liquid can leave. */
  readonly outlets: DrainEnd;
  /** Whether the job asks it to drain: only then the worst attitude for liquid answers a question. */
  readonly drains: boolean;
  readonly bleed: Pick<Bleed, 'to' | 'tilted'> | null;
  readonly fluid: Fluid | null;
  readonly axes: MachineAxes;
  readonly attitudes: AttitudeSet;
  /** The place on the centreline at a distance along the spans. */
  readonly pointAt: (at: number) => Vec3;
}

export interface PocketOptions {
  /** Whether the worst attitude is searched for, where the job asks for it: of what drains, and of air bled in every attitude. */
  readonly search: boolean;
  /** What is known to leave nothing at rest without a look: the line falls out. */
  readonly dry?: { readonly liquid: boolean; readonly air: boolean };
}

/** What stays in a bore at rest and, when searched for, at worst. Volumes in mm³. */
export function pocketsAlong(bored: Bored, { search, dry }: PocketOptions): Pockets {
  const { outlets, drains, bleed, axes } = bored;
  const liquid = dry?.liquid ? NOTHING : keptIn(bored, axes.up);
  return {
    outlets,
    capacity: capacityOf(bored.spans),
    liquid,
    worst: search && drains ? worstKept(bored, { outlets, of: 'liquid' }, liquid) : null,
    air: bleed && airOf(bored, bleed, { search, dry: dry?.air ?? false }),
    cling: clingOf(bored),
  };
}

const NOTHING: Kept = { volume: 0, bound: 0, pockets: [] };

function airOf(
  bored: Bored,
  bleed: NonNullable<Bored['bleed']>,
  { search, dry }: { search: boolean; dry: boolean },
): Pockets['air'] {
  const air = dry ? NOTHING : airIn(bored, bleed, bored.axes.up);
  const worst = search && bleed.tilted ? worstKept(bored, { outlets: bleed.to, of: 'air' }, air) : null;
  return { ...air, outlets: bleed.to, worst };
}

const keptIn = (bored: Bored, up: Vec3): Kept =>
  kept(bored, trapped(bored.spans, { up, outlets: bored.outlets }));

/** Air stays where liquid would with the world upside down: its levels are heights along down. */
const airIn = (bored: Bored, bleed: NonNullable<Bored['bleed']>, up: Vec3): Kept =>
  kept(bored, trapped(bored.spans, { up: negate(up), outlets: bleed.to }));

const kept = ({ pointAt }: Pick<Bored, 'pointAt'>, { volume, bound, pockets }: Trapped): Kept => ({
  volume,
  bound,
  pockets: pockets.map((pocket) => ({ ...pocket, point: pointAt(pocket.lowest) })),
});

function worstKept(bored: Bored, ask: Pick<WorstAsk, 'outlets' | 'of'>, atRest: Kept): WorstKept {
  const { axes, attitudes } = bored;
  if (onlyLevel(attitudes)) {
    const atMost = atRest.volume + atRest.bound;
    return { ...atRest, atMost, up: axes.up, attitude: { pitch: 0, roll: 0 }, tries: atMost > 0 ? 1 : 0 };
  }
  const whole = { ...ask, axes, attitudes };
  // Where none stays at rest a first look mostly tells that none worth a word stays in any attitude.
  const glance = isNone(atRest.volume) ? worstTrapped(bored.spans, { ...whole, tries: 1 }) : null;
  const found = glance && isNone(glance.atMost) ? glance : worstTrapped(bored.spans, whole);
  const { atMost, up, attitude, tries } = found;
  return { ...kept(bored, found.trapped), atMost, up, attitude, tries };
}

const capacityOf = (spans: readonly BoreSpan[]): number =>
  spans.reduce((sum, { pieces, bore }) => sum + lengthOf(pieces) * (Math.PI / 4) * bore ** 2, 0);

const lengthOf = (pieces: BoreSpan['pieces']): number => pieces.reduce((sum, { length }) => sum + length, 0);

/** mN/m over kg/m³ and m/s² is thousandths of m². */
const PER_THOUSAND = 1000;

/** ρ·g·r²/σ below which a long bubble in a plumb tube does not rise: F. P. Bretherton, J. Fluid Mech. 10 (1961). */
export const HANGS = 0.842;
/** The same as a bore in capillary lengths. */
export const HANGING_LENGTHS = 2 * Math.sqrt(HANGS);

function clingOf(bored: Bored): Cling | null {
  const { fluid } = bored;
  if (!fluid?.surfaceTension || !fluid.density) return null;
  const square = fluid.surfaceTension.value / PER_THOUSAND / (fluid.density.value * GRAVITY);
  const capillaryLength = Math.sqrt(square) * PER_THOUSAND;
  return { capillaryLength, holds: narrowestOf(bored) < HANGING_LENGTHS * capillaryLength };
}

/** Smallest bore, lips included, mm. */
export const narrowestOf = ({ spans }: Pick<Bored, 'spans'>): number =>
  Math.min(...spans.map(({ bore }) => bore));

/** The bore of a line with what its job asks of it; `null` where a bend is tighter than half the bore. */
export function lineBored(line: Line, centreline: Centreline): Bored | null {
  if (!isOpen({ line, centreline })) return null;
  const { drain, bleed, fluid, axes, attitudes } = line;
  return {
    spans: lineBore(line, centreline),
    outlets: drain?.to ?? 'both',
    drains: drain !== null,
    ...{ bleed, fluid, axes, attitudes },
    pointAt: (at) => pointAt(centreline, Math.min(at, centreline.length)),
  };
}

/** Pockets of one line. Where its fall alone says that nothing stays, nothing is measured. */
export function pocketsOf(
  line: Line,
  centreline: Centreline,
  { search, slope }: { readonly search: boolean; readonly slope: LineSlope | null },
): Pockets | null {
  const bored = lineBored(line, centreline);
  if (bored === null) return null;
  const extremes = slope ?? lowsAndHighs(centreline, line.axes.up);
  const liquid =
    !lipAtOutlet(line, bored.outlets) &&
    (bored.outlets === 'both' ? extremes.lows.length === 0 : slope !== null && slope.rest.slope > 0);
  const air =
    bored.bleed !== null &&
    !lipAtOutlet(line, bored.bleed.to) &&
    (bored.bleed.to === 'both' ? extremes.highs.length === 0 : fallsFrom(line, centreline, bored.bleed.to));
  return pocketsAlong(bored, { search, dry: { liquid, air } });
}

/** Whether every place of a line at rest lies below the one before it, from this end: then air leaves there. */
function fallsFrom({ axes }: Line, centreline: Centreline, end: 'A' | 'Z'): boolean {
  const drain = end === 'A' ? 'Z' : 'A';
  return smallestSlope(centreline, { drain, axes, attitudes: { kind: 'rest' } }).slope > 0;
}

const boredOf = ({ line, centreline }: WorkedLine): Bored | null => centreline && lineBored(line, centreline);

/**
 * What stays in a line with `up` as up (a unit vector, body axes): an attitude of the moment. Volumes in mm³; levels
 * are heights along `up`, of air along down. `null` for a line that cannot exist, or whose bends are tighter than its bore.
 */
export function pocketsIn(
  worked: WorkedLine,
  up: Vec3,
): { readonly liquid: Kept; readonly air: Kept | null } | null {
  const bored = boredOf(worked);
  return bored && { liquid: keptIn(bored, up), air: bored.bleed && airIn(bored, bored.bleed, up) };
}

/**
 * Where a drop let go on the floor of a line's bore at `at` (mm from end A) runs to with `up` as up, both ends open.
 * `null` as for `pocketsIn`.
 * @throws RangeError when `at` is not on the line.
 */
export function pourIn(worked: WorkedLine, ask: { readonly up: Vec3; readonly at: number }): Poured | null {
  const bored = boredOf(worked);
  return bored && pour(bored.spans, ask);
}
