/** A surrounding as a solid, or why it cannot exist. Used to judge a job and to resolve it. */
import {
  addScaled,
  angleBetween,
  cross,
  distance,
  dot,
  fillet,
  norm,
  type Piece,
  POINT_MM,
  type Solid,
  scale,
  sub,
  unit,
  type Vec3,
} from '@runback/geometry';
import { formatMm } from '../format.ts';
import type { Segment } from '../path.ts';
import type { SurroundingValues } from '../schema/job.ts';
import { toRadians } from '../units.ts';

/** What is wrong with a surrounding, `at` counted from the surrounding itself. */
export interface SolidFault {
  readonly at: readonly Segment[];
  readonly message: string;
  readonly expected: string;
}

export type SolidRead =
  | { readonly ok: true; readonly solid: Solid }
  | { readonly ok: false; readonly faults: readonly SolidFault[] };

type Shape<N extends SurroundingValues['shape']> = Extract<SurroundingValues, { shape: N }>;

const refused = (at: readonly Segment[], message: string, expected: string): SolidRead => ({
  ok: false,
  faults: [{ at, message, expected }],
});
const made = (solid: Solid): SolidRead => ({ ok: true, solid });

/** The solid of a surrounding in mm; what cannot exist comes back as faults. */
export function solidOf(values: SurroundingValues): SolidRead {
  switch (values.shape) {
    case 'tube':
      return tubeOf(values);
    case 'box':
      return boxOf(values);
    case 'cylinder':
      return cylinderOf(values);
    case 'sphere':
      return made({ kind: 'sphere', centre: values.centre, radius: values.diameter / 2 });
    default:
      return planeOf(values);
  }
}

/** Unit vector along `v` however long it is, or null for [0, 0, 0]. */
export function directionOf(v: Vec3): Vec3 | null {
  const largest = Math.max(...v.map(Math.abs));
  return largest > 0 ? unit([v[0] / largest, v[1] / largest, v[2] / largest]) : null;
}

function cylinderOf({ from, to, diameter }: Shape<'cylinder'>): SolidRead {
  if (distance(from, to) < POINT_MM)
    return refused(['to'], 'a cylinder needs two ends that are apart', 'a point away from "from"');
  return made({ kind: 'cylinder', from, to, radius: diameter / 2 });
}

function planeOf(values: Shape<'plane'>): SolidRead {
  const normal = directionOf(values.normal);
  if (!normal) return refused(['normal'], 'this normal points nowhere', 'a direction towards the free side');
  return made({ kind: 'half-space', point: values.point, normal });
}

function boxOf(values: Shape<'box'>): SolidRead {
  const { min, max, centre, size } = values;
  const corners = min !== undefined || max !== undefined;
  const middle = centre !== undefined || size !== undefined || values.axes !== undefined;
  if (corners && middle)
    return refused(
      [],
      'a box is given twice over',
      'either "min" and "max", or "centre", "size" and perhaps "axes"',
    );
  if (min && max) return straightBox(min, max);
  if (centre && size) return turnedBox(centre, size, values.axes);
  return refused([], 'this box is not complete', 'either "min" and "max", or "centre" and "size"');
}

const PLAIN_AXES: readonly [Vec3, Vec3, Vec3] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

function straightBox(min: Vec3, max: Vec3): SolidRead {
  const size = sub(max, min);
  const flat = ([0, 1, 2] as const).filter((axis) => !(size[axis] >= POINT_MM));
  if (flat.length > 0) {
    const faults = flat.map((axis) => ({
      at: ['max', axis],
      message: `the box has no size along ${'xyz'[axis]}`,
      expected: `more than its "min" there`,
    }));
    return { ok: false, faults };
  }
  return made({ kind: 'box', centre: addScaled(min, size, 0.5), half: scale(size, 0.5), axes: PLAIN_AXES });
}

/** Axes rounded by hand are still square to this. Degrees: a workshop allowance, not a numerical zero. */
const SQUARE_WITHIN_DEG = 0.5;

function turnedBox(centre: Vec3, size: Vec3, given: Shape<'box'>['axes']): SolidRead {
  const axes = given === undefined ? PLAIN_AXES : squared(given);
  if (!axes)
    return refused(
      ['axes'],
      'the axes of this box are not square to each other',
      'directions 90° apart, within 0.5°',
    );
  return made({ kind: 'box', centre, half: scale(size, 0.5), axes });
}

/** Right-handed unit axes along the first two directions given, or null when they are not square. */
function squared(given: NonNullable<Shape<'box'>['axes']>): readonly [Vec3, Vec3, Vec3] | null {
  const units = given.map(directionOf);
  const [x, y, z] = units;
  if (!x || !y || units.includes(null)) return null;
  const pairs: readonly (readonly [Vec3, Vec3])[] = z
    ? [
        [x, y],
        [x, z],
        [y, z],
      ]
    : [[x, y]];
  const most = toRadians(SQUARE_WITHIN_DEG);
  if (pairs.some(([a, b]) => Math.abs(angleBetween(a, b) - toRadians(90)) > most)) return null;
  const second = unit(addScaled(y, x, -dot(x, y)));
  return [x, second, unit(cross(x, second))];
}

function tubeOf({ points, radius, od }: Shape<'tube'>): SolidRead {
  const twice = points.findIndex((at, i) => i > 0 && distance(points[i - 1]!, at) < POINT_MM);
  if (twice > 0)
    return refused(['points', twice], 'this point is where the one before it is', 'a point away from it');
  if (radius === undefined) return made({ kind: 'tube', path: chain(points), radius: od / 2 });
  const ends = new Set([0, points.length - 1]);
  const corners = points.map((at, i) => ({ at, radius: ends.has(i) ? 0 : radius }));
  const rounded = fillet(corners);
  if (rounded.ok) return made({ kind: 'tube', path: rounded.centreline.pieces, radius: od / 2 });
  // A corner whose two legs are both too short comes twice.
  const worst = rounded.misfits.filter(
    (misfit, i, all) => all.findIndex((other) => other.point === misfit.point) === i,
  );
  const faults = worst.map((misfit) => ({
    at: ['points', misfit.point],
    message:
      misfit.reason === 'turns-back'
        ? 'the tube turns straight back here, which no radius can round'
        : 'the radius does not fit this corner',
    expected: `a radius of at most ${formatMm(misfit.largestRadius)} mm here, or legs that are longer`,
  }));
  return { ok: false, faults };
}

/** Straights from point to point, sharp corners between them. */
function chain(points: readonly Vec3[]): readonly Piece[] {
  const pieces: Piece[] = [];
  let start = 0;
  for (const [i, to] of points.entries()) {
    const from = points[i - 1];
    if (!from) continue;
    const leg = sub(to, from);
    const length = norm(leg);
    pieces.push({ kind: 'straight', from, to, direction: unit(leg), length, start, end: start + length });
    start += length;
  }
  return pieces;
}
