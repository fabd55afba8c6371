/** Where the marks on a stick go, from measured fills or from the room the liquid stands in. */
import { levelShift, mouthOf } from '@runback/bending';
import { addScaled, dot, PARALLEL, scale, type Vec3 } from '@runback/geometry';
import { type Stick, toRadians } from '@runback/job';
import type { StickMark } from '../fluid-types.ts';
import { endStraight } from '../straights-of.ts';
import { farEnd, partAt, type Way } from './way.ts';

/** What a mark is read to on a wet stick, either way, mm: half a graduation of a rule. */
export const READING_MM = 0.5;

const MM3_PER_LITRE = 1e6;

export interface Marks {
  readonly marks: readonly StickMark[];
  /** Levels that could not be worked, and why. */
  readonly refused: readonly { readonly name: string; readonly why: string }[];
}

/**
 * The marks wanted on a stick. Between two fills by even steps; beyond them never, but from the pan where there is one.
 * `spread`: how far the end of the stick may stand deeper or higher than along the middle of the bore, mm.
 */
export function marksOf(way: Way, stick: Stick, spread: number): Marks {
  const stand = standOf(way, stick);
  const worked = stick.levels.map((level) => {
    const found = fromFills(stick, level.litres) ?? fromPan(stick, stand, { litres: level.litres, spread });
    return { level, found };
  });
  return {
    marks: worked.flatMap(({ level, found }) =>
      typeof found === 'string' ? [] : [{ ...level, ...found, perDegree: perDegree(stick, stand, found.at) }],
    ),
    refused: worked.flatMap(({ level, found }) =>
      typeof found === 'string' ? [{ name: level.name, why: found }] : [],
    ),
  };
}

/** How the end of a stick stands in its liquid. */
interface Stand {
  readonly tip: Vec3;
  /** From the tip back up the stick, unit. */
  readonly back: Vec3;
  readonly up: Vec3;
  /** How far the stick is straight from its end, mm. */
  readonly straight: number;
  /** How far its end may lie off the middle of the bore, mm. */
  readonly off: number;
}

function standOf(way: Way, stick: Stick): Stand {
  const far = farEnd(stick.enters);
  const { point, outward } = mouthOf(way.run, far);
  const { line, centreline } = way.parts[partAt(way, far)]!;
  return {
    tip: addScaled(point, outward, stick.beyond),
    back: scale(outward, -1),
    up: line.axes.up,
    straight: stick.beyond + endStraight(centreline, far),
    off: Math.max(0, line.tube.bore - stick.thickness) / 2,
  };
}

/** Where the end of a stick stands when it is seated. */
export const tipOf = (way: Way, stick: Stick): Vec3 => standOf(way, stick).tip;

type Found = Pick<StickMark, 'at' | 'doubt' | 'from'>;

/** `null` when the level is not between two of them. Off a fill by as much as it is from the nearer of its two. */
function fromFills({ fills }: Stick, litres: number): Found | null {
  const above = fills.findIndex((fill) => fill.litres >= litres);
  const [high, low] = [fills[above], fills[above - 1]];
  if (high === undefined) return null;
  if (high.litres === litres) return { at: high.at, doubt: READING_MM, from: 'fills' };
  if (low === undefined) return null;
  const part = (litres - low.litres) / (high.litres - low.litres);
  const at = low.at + part * (high.at - low.at);
  return { at, doubt: READING_MM + Math.min(at - low.at, high.at - at), from: 'fills' };
}

function fromPan(
  { pan, fills }: Stick,
  stand: Stand,
  { litres, spread }: { readonly litres: number; readonly spread: number },
): Found | string {
  if (pan === null)
    return fills.length > 0 ? 'it is beyond the fills that were measured' : 'there are no fills and no pan';
  const rise = dot(stand.back, stand.up);
  if (rise <= PARALLEL) return 'the stick does not rise from its end';
  const level = dot(pan.middle, stand.up) + (litres * MM3_PER_LITRE) / (pan.size[0] * pan.size[1]);
  const at = (level - dot(stand.tip, stand.up)) / rise;
  if (at < 0) return 'the liquid does not reach the end of the stick';
  if (at > stand.straight) return 'the liquid stands higher than the last straight of the tube';
  const lean = Math.sqrt(Math.max(0, 1 - rise * rise)) / rise;
  return { at, doubt: spread + stand.off * lean + READING_MM, from: 'pan' };
}

/** What one degree of tilt the worst way moves the reading by; `null` without a pan, or on a level stick. */
function perDegree({ pan }: Stick, { tip, back, up }: Stand, at: number): number | null {
  if (pan === null || Math.abs(dot(back, up)) <= PARALLEL) return null;
  const place = addScaled(tip, back, at);
  const { along } = levelShift({ tip: place, middle: pan.middle, up, stick: back, tilt: toRadians(1) });
  return along;
}
