import type { Body } from './closest-body.ts';
import type { Course } from './closest-course.ts';
import { Series } from './closest-series.ts';
import { NO_DIRECTION } from './numeric.ts';
import type { Straight, Vec3 } from './types.ts';
import { addScaled, anyNormal, cross } from './vec.ts';

/** A box about its centre. Half sizes may be 0: a plate, a segment, a point. */
export class BoxBody implements Body {
  readonly origin: Vec3;
  readonly axes: readonly [Vec3, Vec3, Vec3];
  readonly g: [number, number, number] = [0, 0, 0];
  private readonly half: Vec3;
  private readonly series = new Series();

  constructor(box: { centre: Vec3; half: Vec3; axes: readonly [Vec3, Vec3, Vec3] }) {
    this.origin = box.centre;
    this.axes = box.axes;
    this.half = box.half;
  }

  measure(x: number, y: number, z: number): number {
    const { half, g } = this;
    const [i, j, k] = [Math.abs(x) - half[0], Math.abs(y) - half[1], Math.abs(z) - half[2]];
    const [p, q, r] = [Math.max(i, 0), Math.max(j, 0), Math.max(k, 0)];
    const square = p * p + q * q + r * r;
    if (!(square > NO_DIRECTION)) return this.inside(x, y, z);
    const d = Math.sqrt(square);
    g[0] = (x < 0 ? -p : p) / d;
    g[1] = (y < 0 ? -q : q) / d;
    g[2] = (z < 0 ? -r : r) / d;
    return d;
  }

  /** Minus the distance to the nearest face. */
  private inside(x: number, y: number, z: number): number {
    const { half, g } = this;
    const [i, j, k] = [Math.abs(x) - half[0], Math.abs(y) - half[1], Math.abs(z) - half[2]];
    const d = Math.max(i, j, k);
    g[0] = g[1] = g[2] = 0;
    if (i === d) g[0] = x < 0 ? -1 : 1;
    else if (j === d) g[1] = y < 0 ? -1 : 1;
    else g[2] = z < 0 ? -1 : 1;
    return d;
  }

  /**
   * Axes along which the whole cell lies beyond the box count as they are; the others count as 0, which is
   * never too much. When there is none, the greatest of the three least excesses (a box is the cut of three slabs).
   */
  least(course: Course, w: number): number {
    const series = this.series.reset();
    let outside = false;
    let most = Number.NEGATIVE_INFINITY;
    for (const k of AXES) {
      const half = this.half[k];
      const excess = course.lowAbs(k) - half;
      if (excess > 0 || half === 0) {
        outside = true;
        series.add(course, k, course.x[k] < 0 ? -half : half);
      }
      if (excess > most) most = excess;
    }
    if (!outside) return most;
    return Math.max(most, Math.sqrt(Math.max(0, series.least(w))));
  }
}

const AXES = [0, 1, 2] as const;

/** A straight as a box of no width. */
export function segmentBody(piece: Straight): BoxBody {
  const z = piece.direction;
  const x = anyNormal(z);
  const centre = addScaled(piece.from, z, piece.length / 2);
  return new BoxBody({ centre, half: [0, 0, piece.length / 2], axes: [x, cross(z, x), z] });
}
