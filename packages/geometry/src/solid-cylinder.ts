import type { Body } from './closest-body.ts';
import { CircleSeries } from './closest-circle.ts';
import type { Course } from './closest-course.ts';
import { NO_DIRECTION } from './numeric.ts';
import type { Vec3 } from './types.ts';
import { add, anyNormal, cross, distance, scale, sub, unit } from './vec.ts';

/** A finite cylinder with flat ends, about the middle of its axis. */
export class CylinderBody implements Body {
  readonly origin: Vec3;
  readonly axes: readonly [Vec3, Vec3, Vec3];
  readonly g: [number, number, number] = [0, 0, 0];
  private readonly radius: number;
  private readonly half: number;
  private readonly rim: CircleSeries;

  constructor({ from, to, radius }: { from: Vec3; to: Vec3; radius: number }) {
    const z = unit(sub(to, from));
    const x = anyNormal(z);
    this.axes = [x, cross(z, x), z];
    this.origin = add(from, scale(sub(to, from), 0.5));
    this.radius = radius;
    this.rim = new CircleSeries(radius);
    this.half = distance(from, to) / 2;
  }

  measure(x: number, y: number, z: number): number {
    const square = x * x + y * y;
    const rho = Math.sqrt(square);
    const q = rho - this.radius;
    const h = Math.abs(z) - this.half;
    const [p, r] = q > 0 || h > 0 ? [Math.max(q, 0), Math.max(h, 0)] : q >= h ? [1, 0] : [0, 1];
    const d = Math.hypot(p, r);
    const out = p / d;
    const aside = square > NO_DIRECTION;
    this.g[0] = aside ? (out * x) / rho : out;
    this.g[1] = aside ? (out * y) / rho : 0;
    this.g[2] = (z < 0 ? -r : r) / d;
    return q > 0 || h > 0 ? d : Math.max(q, h);
  }

  /** Side and ends apart (each never too much), and where the whole cell faces a rim, the distance to that circle. */
  least(course: Course, w: number): number {
    const { rim } = this;
    rim.load(course, this.half);
    const q = rim.leastFlat(w) - this.radius;
    const h = course.lowAbs(2) - this.half;
    if (q <= 0 && h <= 0) return Math.max(q, h);
    const apart = Math.sqrt(Math.max(q, 0) ** 2 + Math.max(h, 0) ** 2);
    return q > 0 && h > 0 ? Math.max(apart, rim.least(w)) : apart;
  }
}
