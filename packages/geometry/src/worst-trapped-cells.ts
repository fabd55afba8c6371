/** Cells of attitudes: parts of a patch (attitude.ts), their middles, and a cone of directions round each. */
import { type Patch, upIn } from './attitude.ts';
import type { Vec3 } from './types.ts';
import { add, dot, norm, sub, unit } from './vec.ts';

/** Radians. */
export type CellRange = Pick<Patch, 'p0' | 'p1' | 'r0' | 'r1'>;

/** Directions of up: every one of a cell lies in the cone spanned by the corners. Unit vectors. */
export interface Directions {
  readonly corners: readonly Vec3[];
  readonly middle: Vec3;
  /** A direction of the cell is a sum of parts of the corners that add up to 1, times no more than this. */
  readonly stretch: number;
  /** No direction of the cell is farther from the middle than this, tip to tip. */
  readonly spread: number;
}

/** Widest cell to start with: a cone over wider ones is of no use, beyond 90° of roll it is none at all. */
const WIDEST = Math.PI / 4;

/** A patch cut into cells no wider than 45°. */
export function startingCells(patch: Patch): readonly CellRange[] {
  const columns = equalParts(patch.r0, patch.r1);
  return equalParts(patch.p0, patch.p1).flatMap(([p0, p1]) =>
    columns.map(([r0, r1]) => ({ p0, p1, r0, r1 })),
  );
}

function equalParts(low: number, high: number): readonly (readonly [number, number])[] {
  const n = Math.max(1, Math.ceil((high - low) / WIDEST));
  const cut = (i: number): number => (i === n ? high : low + ((high - low) * i) / n);
  return Array.from({ length: n }, (_, i) => [cut(i), cut(i + 1)] as const);
}

/** A cell cut in two, across the pitch or across the roll. */
export function halvedCell({ p0, p1, r0, r1 }: CellRange, across: 'pitch' | 'roll'): readonly CellRange[] {
  const [p, r] = [(p0 + p1) / 2, (r0 + r1) / 2];
  return across === 'roll'
    ? [
        { p0, p1, r0, r1: r },
        { p0, p1, r0: r, r1 },
      ]
    : [
        { p0, p1: p, r0, r1 },
        { p0: p, p1, r0, r1 },
      ];
}

/** One direction alone. */
export const oneDirection = (up: Vec3): Directions => ({
  corners: [up],
  middle: up,
  stretch: 1,
  spread: 0,
});

/**
 * The directions of a cell, for air upside down. A meridian is a great circle; a parallel bulges away from the chord
 * of its corners on the side of the equator, so there the corners are moved towards it.
 */
export function directionsOf({ p0, p1, r0, r1 }: CellRange, patch: Patch, sense: 1 | -1): Directions {
  const chord = Math.cos((r1 - r0) / 2);
  const low = p0 > 0 ? Math.atan(Math.tan(p0) * chord) : p0;
  const high = p1 < 0 ? Math.atan(Math.tan(p1) * chord) : p1;
  const corners = [low, high].flatMap((p) => [r0, r1].map((r) => sensed(upIn(patch.axes, p, r), sense)));
  const middle = unit(corners.reduce(add));
  return {
    corners,
    middle,
    stretch: 1 / Math.min(...corners.map((corner) => dot(corner, middle))),
    spread: Math.max(...corners.map((corner) => norm(sub(corner, middle)))),
  };
}

export const sensed = (up: Vec3, sense: 1 | -1): Vec3 => [sense * up[0], sense * up[1], sense * up[2]];

/** How wide a cell lies on the sphere, in pitch and in roll. */
export function widthsOf({ p0, p1, r0, r1 }: CellRange): readonly [number, number] {
  const widest = p0 <= 0 && p1 >= 0 ? 1 : Math.max(Math.cos(p0), Math.cos(p1));
  return [p1 - p0, (r1 - r0) * widest];
}
