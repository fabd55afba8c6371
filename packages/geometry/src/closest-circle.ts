import type { Course } from './closest-course.ts';
import { fourthOfRoot, leastCubic, Series } from './closest-series.ts';
import { ROUNDING } from './numeric.ts';

/**
 * Bounds on the distance of a course to a circle about the z axis: D = (ρ − R)² + z², which is R² + (ρ² + z²) − 2Rρ,
 * so that only ρ needs care. Away from the axis it has its own Taylor series; about the axis, where it has a kink,
 * a chord of the root stands in.
 */
export class CircleSeries {
  private readonly radius: number;
  private readonly flat = new Series();
  private readonly all = new Series();
  private z = 0;
  private bend = 0;

  constructor(radius: number) {
    this.radius = radius;
  }

  /** Takes the course as it stands, for a circle at this height, or (height > 0) the nearer of two at ± height. */
  load(course: Course, height: number): void {
    const { flat, all } = this;
    const side = height > 0 && course.x[2] < 0 ? -1 : 1;
    flat.reset();
    flat.add(course, 0, 0);
    flat.add(course, 1, 0);
    all.reset();
    all.add(course, 0, 0);
    all.add(course, 1, 0);
    all.add(course, 2, side * height);
    this.z = course.x[2] - side * height;
    this.bend = course.bend;
  }

  /** Never above the distance to the axis within w. */
  leastFlat(w: number): number {
    return Math.sqrt(Math.max(0, this.flat.least(w)));
  }

  /** Never above the distance to the circle within w. */
  least(w: number): number {
    const { flat } = this;
    const b = Math.sqrt(flat.d0);
    const swing = w * (Math.sqrt(flat.pace) + (this.bend * w) / 2);
    const low = b - swing;
    let square = low > 0 ? this.away(b, low, w) : 0;
    if (low <= b / 2) square = Math.max(square, this.about(b, b + swing, w));
    return Math.sqrt(Math.max(0, square));
  }

  /** With the Taylor series of ρ, which is b in the middle and at least `low` throughout. */
  private away(b: number, low: number, w: number): number {
    const { all, flat, radius: R, z } = this;
    const twice = 2 * b;
    const b1 = flat.d1 / twice;
    const b2 = (flat.d2 - 2 * b1 * b1) / twice;
    const b3 = (flat.d3 - 6 * b1 * b2) / twice;
    const d0 = (b - R) * (b - R) + z * z;
    const cubic = { d0, d1: all.d1 - 2 * R * b1, d2: all.d2 - 2 * R * b2, d3: all.d3 - 2 * R * b3 };
    return leastCubic(cubic, w) - ((all.fourth() + 2 * R * fourthOfRoot(flat, low, w)) * w ** 4) / 24;
  }

  /** With ρ ≤ (ρ²/h + h)/2, true for any h; here the most that ρ can be. */
  private about(b: number, high: number, w: number): number {
    const { all, flat, radius: R, z } = this;
    const h = Math.max(high, R * ROUNDING);
    const k = R / h;
    const d0 = (b - R) * (b - R) + z * z - k * (h - b) * (h - b);
    const cubic = { d0, d1: all.d1 - k * flat.d1, d2: all.d2 - k * flat.d2, d3: all.d3 - k * flat.d3 };
    return leastCubic(cubic, w) - ((all.fourth() + k * flat.fourth()) * w ** 4) / 24;
  }
}
