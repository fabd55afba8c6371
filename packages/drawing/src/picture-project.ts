/** From space onto the paper: millimetres of the thing, x to the right and y down the page, and how far behind the paper. */

import type { MachineAxes } from '@runback/geometry';
import {
  type Arc,
  cross,
  dot,
  negate,
  type Piece,
  piecePoint,
  scale,
  unit,
  type Vec3,
} from '@runback/geometry';
import type { Point } from './types.ts';

/** A parallel projection: what one millimetre along x, y and z of the thing gives on the paper. */
export interface Projection {
  /** Paper x of a place is its dot product with this. */
  readonly right: Vec3;
  /** Paper y, upwards. */
  readonly up: Vec3;
  /** Unit vector along the line of sight, into the paper: what lies further along it is hidden by what lies nearer. */
  readonly into: Vec3;
}

/** A place on the paper with its depth behind it. */
export interface Spot {
  readonly at: Point;
  readonly depth: number;
}

export function project(place: Vec3, { right, up, into }: Projection): Spot {
  return { at: [dot(place, right), -dot(place, up)], depth: dot(place, into) };
}

/**
 * Oblique: what stands upright across the view is drawn in its true shape and size, what goes away from the looker is
 * drawn `share` as long, `degrees` above level to the right. Axes of the looker: X right, Y away, Z up. At half length
 * this is the cabinet axonometry of ISO 5456-3:1996, clause 6.2 (from memory).
 */
export function oblique(share: number, degrees: number): Projection {
  const angle = (degrees * Math.PI) / 180;
  const [across, upward] = [share * Math.cos(angle), share * Math.sin(angle)];
  return { right: [1, across, 0], up: [0, upward, 1], into: unit([-across, 1, -upward]) };
}

/** Straight onto the paper, looking along `look` with `up` up (unit vectors, square to each other). */
export function orthographic(look: Vec3, up: Vec3): Projection {
  return { right: cross(look, up), up, into: look };
}

/**
 * The isometric axonometry of ISO 5456-3:1996, clause 5.1 (from memory): the three axes at 120° to each other, two of
 * them 30° to level, all at equal scale. Seen from above, from the left front corner of the machine: forward goes
 * down to the left, left goes down to the right.
 */
export function isometric({ forward, left, up }: MachineAxes): Projection {
  const mix = (f: number, l: number, u: number): Vec3 =>
    [0, 1, 2].map((i) => forward[i]! * f + left[i]! * l + up[i]! * u) as unknown as Vec3;
  const level = Math.cos(Math.PI / 6);
  return { right: mix(-level, level, 0), up: mix(-0.5, -0.5, 1), into: negate(unit(mix(1, 1, 1))) };
}

/** Chords of at most this stand for an arc, degrees. */
const CHORD_DEGREES = 6;

/** Places along pieces of a centreline, near enough to each other that chords pass for the arcs. */
export function placesAlong(pieces: readonly Piece[]): readonly Vec3[] {
  const first = pieces[0];
  if (!first) return [];
  return [first.from, ...pieces.flatMap((piece) => (piece.kind === 'arc' ? arcPlaces(piece) : [piece.to]))];
}

function arcPlaces(arc: Arc): readonly Vec3[] {
  const chords = Math.max(1, Math.ceil((arc.angle * 180) / Math.PI / CHORD_DEGREES));
  return Array.from({ length: chords }, (_, i) =>
    piecePoint(arc, i === chords - 1 ? arc.end : arc.start + (arc.length * (i + 1)) / chords),
  );
}

/** How a drawing is laid on the page: so many mm of paper to a mm of the thing, its origin at `at`. */
export interface Laying {
  readonly scale: number;
  readonly at: Point;
}

export const laid = (spots: readonly Spot[], { scale: by, at }: Laying): readonly Spot[] =>
  spots.map((spot) => ({
    at: [at[0] + spot.at[0] * by, at[1] + spot.at[1] * by],
    depth: spot.depth * by,
  }));

/** The rectangle of paper the spots cover; at least one spot. */
export function extent(spots: readonly Spot[]): { readonly low: Point; readonly high: Point } {
  const xs = spots.map((spot) => spot.at[0]);
  const ys = spots.map((spot) => spot.at[1]);
  return { low: [least(xs), least(ys)], high: [most(xs), most(ys)] };
}

const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b));
const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b));

/** All along a vector of space on the paper, per millimetre: for small pictures of the axes. */
export const along = (v: Vec3, projection: Projection): Point => project(scale(v, 1), projection).at;
