import { symmetricEigen } from './fit-eigen.ts';
import { PARALLEL, ROUNDING } from './numeric.ts';
import type { Mat3, Vec3 } from './types.ts';
import { add, distance, dot, norm, scale, sub } from './vec.ts';

/** A motion that carries p to rotation·p + shift (rows of the matrix times p), and how far off it leaves the points. */
export interface RigidFit {
  readonly rotation: Mat3;
  readonly shift: Vec3;
  /** Root of the mean squared distance left, mm. */
  readonly rms: number;
}

/**
 * The rigid motion that carries the points `from` best onto the points `to` (pair by pair, least squares, mm).
 *
 * Always a proper rotation (determinant +1): for mirrored data the best one that is no mirror. Where several fit
 * equally well (one point, two points, points in a line, mirrored symmetric data) it is the one that turns least;
 * points within about 1e-7 of their spread from a line count as in line.
 * Method: the best rotation is the quaternion that is the top eigenvector of a symmetric 4×4 matrix of the products
 * of the centred points (B. K. P. Horn, Closed-form solution of absolute orientation using unit quaternions, J. Opt.
 * Soc. Am. A 4, 1987); turning least is the part of (1, 0, 0, 0) within the space of top eigenvectors.
 * @throws RangeError when there are no points, counts differ, or a coordinate is not finite.
 * @example
 * import { rigidFit } from '@runback/geometry';
 * rigidFit([[0, 0, 0], [10, 0, 0]], [[1, 2, 3], [11, 2, 3]]).shift; // => [1, 2, 3]
 */
export function rigidFit(from: readonly Vec3[], to: readonly Vec3[]): RigidFit {
  if (from.length === 0 || from.length !== to.length)
    throw new RangeError(
      `rigidFit: needs as many points as targets, at least 1, got ${from.length} and ${to.length}`,
    );
  if (![...from, ...to].flat().every(Number.isFinite))
    throw new RangeError('rigidFit: every coordinate must be finite');
  const [middleFrom, middleTo] = [middle(from), middle(to)];
  const a = from.map((p) => sub(p, middleFrom));
  const b = to.map((p) => sub(p, middleTo));
  const rotation = matrixOf(bestQuaternion(a, b));
  const turned = (p: Vec3): Vec3 => [dot(rotation[0], p), dot(rotation[1], p), dot(rotation[2], p)];
  const squares = a.reduce((sum, p, i) => sum + distance(turned(p), b[i]!) ** 2, 0);
  return { rotation, shift: sub(middleTo, turned(middleFrom)), rms: Math.sqrt(squares / from.length) };
}

/** Mean of points, taken from the first of them so that far coordinates lose nothing. */
function middle(points: readonly Vec3[]): Vec3 {
  const first = points[0]!;
  const sum = points.reduce<Vec3>((total, p) => add(total, sub(p, first)), [0, 0, 0]);
  return add(first, scale(sum, 1 / points.length));
}

function bestQuaternion(a: readonly Vec3[], b: readonly Vec3[]): readonly number[] {
  const pairs = symmetricEigen(hornMatrix(a, b));
  const size = a.reduce((sum, p, i) => sum + norm(p) * norm(b[i]!), 0);
  const top = pairs.filter((pair) => pairs[0]!.value - pair.value <= ROUNDING * size);
  const least = [0, 1, 2, 3].map((i) => top.reduce((sum, { vector }) => sum + vector[0]! * vector[i]!, 0));
  const length = Math.hypot(...least);
  // All best rotations are half turns: none turns less than another.
  if (length <= PARALLEL) return pairs[0]!.vector;
  return least.map((x) => x / length);
}

function hornMatrix(a: readonly Vec3[], b: readonly Vec3[]): readonly (readonly number[])[] {
  const s = (i: 0 | 1 | 2, j: 0 | 1 | 2) => a.reduce((sum, p, k) => sum + p[i] * b[k]![j], 0);
  const [xx, xy, xz, yx, yy, yz] = [s(0, 0), s(0, 1), s(0, 2), s(1, 0), s(1, 1), s(1, 2)];
  const [zx, zy, zz] = [s(2, 0), s(2, 1), s(2, 2)];
  return [
    [xx + yy + zz, yz - zy, zx - xz, xy - yx],
    [yz - zy, xx - yy - zz, xy + yx, zx + xz],
    [zx - xz, xy + yx, yy - xx - zz, yz + zy],
    [xy - yx, zx + xz, yz + zy, zz - xx - yy],
  ];
}

/** Rotation matrix (rows) of a unit quaternion, real part first. */
function matrixOf(quaternion: readonly number[]): Mat3 {
  const [w, x, y, z] = quaternion as [number, number, number, number];
  return [
    [w * w + x * x - y * y - z * z, 2 * (x * y - w * z), 2 * (x * z + w * y)],
    [2 * (x * y + w * z), w * w - x * x + y * y - z * z, 2 * (y * z - w * x)],
    [2 * (x * z - w * y), 2 * (y * z + w * x), w * w - x * x - y * y + z * z],
  ];
}
