/**
 * No more than this stays in a run, whichever direction of a cell is up.
 *
 * Let F_u(s) be the height of the floor of section s, and x(s) the place of that floor when the middle of the cell is
 * up. A place in section s is wet only if on its way to an outlet some section s' has F_u(s') above it, so the liquid
 * there stands no deeper than F_u(s') − F_u(s) ≤ u·x(s') − F_u(s). For a fixed s' that is convex in u (−F_u is a
 * length plus a plane), so over the cone of a cell it is largest at a corner: the depth at s is at most the largest,
 * over the corners v, of a running maximum of v·x(s') less F_v(s). No lever is guessed at; what is lost is that each
 * place is given the corner that is worst for it.
 *
 * Sections s' that need not be looked at: along a stretch that rises from the outlet in every direction of the cell
 * (t·v > 0 at every corner v) the floor rises too, since dF/ds = t·u·(1 + (r/R)·(i·u)/√(1 − (t·u)²)) and the bracket
 * is > 0 for r < R. So such a stretch counts only where it ends, and a line that rises all the way holds nothing.
 *
 * Between the sections of an arc the floor keeps within (R + r)·θ²/8 of what its ends say. Depth over the slant of the
 * section is then taken along a chord that lies above it, and the area of the segment is integrated in closed form.
 */
import { meanSegment } from './bore.ts';
import { PARALLEL, ROUNDING } from './numeric.ts';
import type { DrainEnd } from './types.ts';
import { dot } from './vec.ts';
import type { Directions } from './worst-trapped-cells.ts';
import { goesOn, type Section, type Step, type Walk } from './worst-trapped-walk.ts';

/** mm³ */
export function mostTrapped(walk: Walk, directions: Directions, outlets: DrainEnd): number {
  const look = lookAt(walk, directions);
  const most = new Float64Array(walk.steps.length).fill(Number.POSITIVE_INFINITY);
  if (outlets !== 'Z') holdDown(most, { walk, look, end: 'A' });
  if (outlets !== 'A') holdDown(most, { walk, look, end: 'Z' });
  return most.reduce((sum, volume) => sum + volume, 0);
}

/** Heights of all sections under each corner, side by side: [section · corners + corner]. */
interface Look {
  readonly corners: number;
  readonly stretch: number;
  /** Of the floor under that corner. */
  readonly floor: Float64Array;
  /** Of the place that is the floor under the middle. */
  readonly place: Float64Array;
  /** For each section: +1 where it rises towards Z in every direction, −1 where it falls, 0 else. */
  readonly rises: Int8Array;
  /** For each section: √(1 − (t·u)²), at least. */
  readonly least: Float64Array;
  /** For each section: inward·(the way up in it), at most. */
  readonly inside: Float64Array;
}

function lookAt({ sections }: Walk, { corners, middle, stretch, spread }: Directions): Look {
  const [n, k] = [sections.length, corners.length];
  const look = {
    corners: k,
    stretch,
    floor: new Float64Array(n * k),
    place: new Float64Array(n * k),
    rises: new Int8Array(n),
    least: new Float64Array(n),
    inside: new Float64Array(n),
  };
  const slants = corners.map((corner) => dot(corner, middle));
  for (const { index, centre, tangent, inward, r } of sections) {
    const tm = dot(tangent, middle);
    const across = Math.sqrt(Math.max(0, 1 - tm * tm));
    let [low, high] = [1, -1];
    for (let c = 0; c < k; c++) {
      const corner = corners[c]!;
      const [height, slope] = [dot(corner, centre), dot(corner, tangent)];
      look.floor[index * k + c] = height - r * Math.sqrt(Math.max(0, 1 - slope * slope));
      look.place[index * k + c] =
        across > PARALLEL ? height - (r * (slants[c]! - tm * slope)) / across : height;
      if (slope < low) low = slope;
      if (slope > high) high = slope;
    }
    look.rises[index] = low > PARALLEL ? 1 : high < -PARALLEL ? -1 : 0;
    const steepest = Math.min(1, stretch * Math.max(Math.abs(low), Math.abs(high)));
    const least = Math.sqrt(1 - steepest * steepest);
    look.least[index] = Math.max(ROUNDING, least);
    if (inward)
      look.inside[index] =
        across > PARALLEL ? Math.min(1, dot(inward, middle) / across + (2 * spread) / (across + least)) : 1;
  }
  return look;
}

interface OneWay {
  readonly walk: Walk;
  readonly look: Look;
  readonly end: 'A' | 'Z';
}

/** Brings what each step holds down to what it holds at most when one end alone is open, mm³. */
function holdDown(most: Float64Array, { walk: { steps }, look, end }: OneWay): void {
  const { corners, floor, place, rises, stretch } = look;
  const sills = new Float64Array(corners).fill(Number.NEGATIVE_INFINITY);
  const raise = ({ index }: Section): void => {
    for (let c = 0; c < corners; c++)
      if (place[index * corners + c]! > sills[c]!) sills[c] = place[index * corners + c]!;
  };
  const depth = ({ index }: Section): number => {
    let over = Number.NEGATIVE_INFINITY;
    for (let c = 0; c < corners; c++) over = Math.max(over, sills[c]! - floor[index * corners + c]!);
    return over > 0 ? over * stretch : over;
  };
  const sense = end === 'A' ? 1 : -1;
  let [rose, bulge] = [true, 0];
  let before: Section | null = null;
  for (let n = 0; n < steps.length; n++) {
    const k = end === 'A' ? n : steps.length - 1 - n;
    const step = steps[k]!;
    const [near, far] = end === 'A' ? [step.a, step.z] : [step.z, step.a];
    const rise = rises[near.index] === sense && rises[far.index] === sense;
    const joint = end === 'A' ? step.first : step.last;
    if (joint && before !== null && !goesOn(before, near)) raise(before);
    // A straight is highest at one of its ends.
    if (!(rise && rose) && (joint || step.turned > 0)) raise(near);
    if (!rise && step.bulge > bulge) bulge = step.bulge;
    if (step.length === 0) {
      raise(near);
      most[k] = 0;
    } else if (most[k]! > 0) {
      const lift = bulge + step.bulge;
      const wet = held(step, look, { near, far, from: depth(near) + lift, to: depth(far) + lift });
      most[k] = Math.min(most[k]!, wet);
    }
    rose = rise || step.length === 0;
    before = far;
  }
}

/** Depths of liquid, straight up, over the floors of two sections, mm. */
interface Depths {
  readonly near: Section;
  readonly far: Section;
  readonly from: number;
  readonly to: number;
}

/** Volume of a step with these depths of liquid, straight up, at its two sections, mm³. */
function held(step: Step, { least, inside }: Look, { near, far, from, to }: Depths): number {
  if (!(from > 0 || to > 0)) return 0;
  const { r } = near;
  const { length, turned, radius } = step;
  if (turned === 0) {
    const slant = 1 / least[near.index]!;
    return length * meanSegment(r, [from * slant - r, to * slant - r], 0);
  }
  const inmost = Math.max(inside[near.index]!, inside[far.index]!);
  const outer = (inmost > 0 ? Math.min(1, inmost / Math.cos(turned)) : inmost) / radius;
  const level = Math.min(least[near.index]!, least[far.index]!) - turned;
  // Within some steps of plumb a section is taken as full as soon as it is wet at all.
  const plumb = level < 3 * turned;
  const [one, two] = plumb ? [1 / ROUNDING, 1 / ROUNDING] : [1 / least[near.index]!, 1 / least[far.index]!];
  // A chord that lies above depth × slant: both are chords, and the slant bulges by no more than 1/level³.
  const curve = plumb ? 0 : (Math.max(from, to) * turned * turned) / (8 * level * level * level);
  const chord = Math.max(0, (from - to) * (two - one)) / 4 + curve;
  return length * meanSegment(r, [from * one + chord - r, to * two + chord - r], outer);
}
