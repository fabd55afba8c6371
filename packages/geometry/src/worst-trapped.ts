/**
 * The most that stays in a run in any attitude, found by branch and bound over cells of pitch × roll: cells that may
 * hold more than has been found (worst-trapped-bound.ts) are cut in two, the most promising first.
 */
import { type Patch, patchOf, upIn } from './attitude.ts';
import { type Trapped, trapped } from './pockets.ts';
import { type BoreSpan, placedBores } from './pockets-run.ts';
import type { AttitudeSet, DrainEnd, MachineAxes, Vec3 } from './types.ts';
import { mostTrapped } from './worst-trapped-bound.ts';
import {
  type CellRange,
  directionsOf,
  halvedCell,
  oneDirection,
  sensed,
  startingCells,
  widthsOf,
} from './worst-trapped-cells.ts';
import { fallsOut } from './worst-trapped-falls.ts';
import { walkOf } from './worst-trapped-walk.ts';

export interface WorstAsk {
  readonly outlets: DrainEnd;
  readonly axes: MachineAxes;
  readonly attitudes: AttitudeSet;
  readonly of: 'liquid' | 'air';
  /** Cells of attitudes to look at, at most. Default 150. */
  readonly tries?: number;
}

export interface WorstTrapped {
  /** What stays in the worst attitude found. */
  readonly trapped: Trapped;
  /** Up there, in the axes of the pieces. */
  readonly up: Vec3;
  /** `null` for a cone. */
  readonly attitude: { readonly pitch: number; readonly roll: number } | null;
  /** mm³. In no attitude of the set does more stay, up to the quadrature's own bound. */
  readonly atMost: number;
  /** Cells of attitudes looked at; 0 where the fall of the run proves that nothing stays. */
  readonly tries: number;
}

interface Attitude {
  readonly pitch: number;
  readonly roll: number;
  /** As `mostTrapped` has it for this one direction: a little more than stays. */
  readonly volume: number;
}

interface Cell extends CellRange {
  readonly most: number;
}

interface Search {
  readonly patch: Patch;
  readonly stays: (pitch: number, roll: number) => Attitude;
  readonly most: (cell: CellRange) => number;
}

const TRIES = 150;
/** Sure enough: the search stops when no attitude can hold more than what was found and this, mm³, */
const SURE_MM3 = 1;
/** or this part of it. */
const SURE_PART = 0.005;
/** Halvings of the step with which the best attitude found is bettered. */
const POLISH = 8;

/**
 * The most liquid (or air) that stays in a run over a set of attitudes: the worst attitude found, what stays in it, and
 * what is certainly not exceeded. Stops when the two agree to 1 mm³ or 0.5 %, or when its tries are used up: the
 * difference says how sure it is. At rest, and where the run falls out in every attitude, both are the same.
 * @throws RangeError as `trapped` does; when pitch leaves ±90°, roll ±180°, a range is upside down, or the tilt leaves
 * [0, 180°]; when tries is not a whole number > 0.
 * @example
 * import { fromRows, worstTrapped } from '@runback/geometry';
 * const axes = { forward: [1, 0, 0], left: [0, 1, 0], up: [0, 0, 1] } as const;
 * const plumb = fromRows([], 100, { origin: [0, 0, 0], direction: [0, 0, 1], normal: [1, 0, 0] });
 * const ask = { outlets: 'A', axes, attitudes: { kind: 'cone', tilt: 0.3 }, of: 'liquid' } as const;
 * worstTrapped([{ pieces: plumb.pieces, bore: 10 }], ask).atMost; // => 0
 */
export function worstTrapped(run: readonly BoreSpan[], ask: WorstAsk): WorstTrapped {
  const { outlets, axes, attitudes, of, tries = TRIES } = ask;
  if (!(Number.isInteger(tries) && tries > 0))
    throw new RangeError(`worstTrapped: tries must be a whole number > 0, got ${tries}`);
  const patch = patchOf(axes, attitudes);
  const sense = of === 'air' ? -1 : 1;
  const walk = walkOf(placedBores(run, axes.up, 'worstTrapped'));
  const at = ({ pitch, roll }: Pick<Attitude, 'pitch' | 'roll'>) => {
    const up = upIn(patch.axes, pitch, roll);
    const attitude = patch.named ? { pitch, roll } : null;
    return { trapped: trapped(run, { up: sensed(up, sense), outlets }), up, attitude };
  };
  const nearest = { pitch: held(0, patch.p0, patch.p1), roll: held(0, patch.r0, patch.r1) };
  if (fallsOut(run, walk, { patch, outlets, of })) {
    const { trapped: dry, ...where } = at(nearest);
    const nothing = { pockets: [], volume: 0, bound: 0, capacity: dry.capacity };
    return { trapped: nothing, ...where, atMost: 0, tries: 0 };
  }
  if (patch.single) {
    const only = at(nearest);
    return { ...only, atMost: only.trapped.volume + only.trapped.bound, tries: 1 };
  }
  const found = searched(
    {
      patch,
      stays: (pitch, roll) => {
        const up = sensed(upIn(patch.axes, pitch, roll), sense);
        return { pitch, roll, volume: mostTrapped(walk, oneDirection(up), outlets) };
      },
      most: (cell) => mostTrapped(walk, directionsOf(cell, patch, sense), outlets),
    },
    tries,
  );
  const worst = at(found.best);
  return {
    ...worst,
    atMost: Math.max(found.atMost, worst.trapped.volume + worst.trapped.bound),
    tries: found.tries,
  };
}

const held = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

function searched(
  search: Search,
  most: number,
): { readonly best: Attitude; readonly atMost: number; readonly tries: number } {
  const { patch, stays } = search;
  const middle = middleOf(patch, patch);
  let best = stays(middle.pitch, middle.roll);
  let tries = 0;
  let open: Cell[] = [];
  const offer = (range: CellRange, no: number): void => {
    tries += 1;
    const { pitch, roll } = middleOf(range, patch);
    const tried = stays(pitch, roll);
    if (tried.volume > best.volume) best = tried;
    open.push({ ...range, most: Math.min(no, search.most(range)) });
  };
  const enough = (): number => best.volume + Math.max(SURE_MM3, SURE_PART * best.volume) / 2;
  for (const range of startingCells(patch)) offer(range, Number.POSITIVE_INFINITY);
  for (;;) {
    open = open.toSorted((a, b) => a.most - b.most);
    const cell = open.at(-1)!;
    if (cell.most <= enough()) return { best, atMost: cell.most, tries };
    if (tries + 2 > most) return { best: polished(search, best), atMost: cell.most, tries };
    open.pop();
    const [pitch, roll] = widthsOf(cell);
    for (const half of halvedCell(cell, roll > pitch ? 'roll' : 'pitch')) offer(half, cell.most);
  }
}

/** The middle of a cell, moved onto the rim of the patch where the cell touches it: the worst is often there. */
function middleOf({ p0, p1, r0, r1 }: CellRange, patch: Patch): Pick<Attitude, 'pitch' | 'roll'> {
  const whole = p0 === patch.p0 && p1 === patch.p1 && r0 === patch.r0 && r1 === patch.r1;
  const pitch = whole ? (p0 + p1) / 2 : p0 === patch.p0 ? p0 : p1 === patch.p1 ? p1 : (p0 + p1) / 2;
  const roll = whole ? (r0 + r1) / 2 : r0 === patch.r0 ? r0 : r1 === patch.r1 ? r1 : (r0 + r1) / 2;
  return { pitch, roll };
}

/** Bettered by steps of a quarter of the patch and ever smaller ones. */
function polished({ patch, stays }: Search, from: Attitude): Attitude {
  const { p0, p1, r0, r1 } = patch;
  let best = from;
  for (let k = 2; k < 2 + POLISH; k++) {
    const [p, r] = [(p1 - p0) / 2 ** k, (r1 - r0) / 2 ** k];
    const centre = best;
    for (const [i, j] of AROUND) {
      const tried = stays(held(centre.pitch + i * p, p0, p1), held(centre.roll + j * r, r0, r1));
      if (tried.volume > best.volume) best = tried;
    }
  }
  return best;
}

const AROUND = [-1, 0, 1]
  .flatMap((i) => [-1, 0, 1].map((j) => [i, j] as const))
  .filter(([i, j]) => i !== 0 || j !== 0);
