import type { Body } from './closest-body.ts';
import { CircleSeries } from './closest-circle.ts';
import type { Course } from './closest-course.ts';
import { NO_DIRECTION } from './numeric.ts';
import type { Arc, Vec3 } from './types.ts';
import { sinCos } from './vec.ts';

/**
 * An arc, in the axes u, v, normal about its centre. Cells that face no place within the arc are set aside
 * (`least` is infinite): there one of its two ends is nearest, and whoever searches asks those ends apart.
 */
export class ArcBody implements Body {
  readonly origin: Vec3;
  readonly axes: readonly [Vec3, Vec3, Vec3];
  readonly g: [number, number, number] = [0, 0, 0];
  private readonly radius: number;
  private readonly wide: boolean;
  private readonly sin: number;
  private readonly cos: number;
  private readonly circle: CircleSeries;

  constructor(arc: Arc) {
    this.origin = arc.centre;
    this.axes = [arc.u, arc.v, arc.normal];
    this.radius = arc.radius;
    this.circle = new CircleSeries(arc.radius);
    this.wide = arc.angle > Math.PI;
    [this.sin, this.cos] = sinCos(arc.angle);
  }

  measure(x: number, y: number, z: number): number {
    const { radius: R, sin, cos } = this;
    const after = y >= 0;
    const before = x * sin - y * cos >= 0;
    if (this.wide ? after || before : after && before) {
      const square = x * x + y * y;
      const k = square > NO_DIRECTION ? R / Math.sqrt(square) : 0;
      return k > 0 ? this.from(x - x * k, y - y * k, z) : this.from(-R, 0, z);
    }
    const start = (x - R) ** 2 + y * y;
    const end = (x - R * cos) ** 2 + (y - R * sin) ** 2;
    return start <= end ? this.from(x - R, y, z) : this.from(x - R * cos, y - R * sin, z);
  }

  /** The distance given the offset from the nearest place. */
  private from(x: number, y: number, z: number): number {
    const d = Math.sqrt(x * x + y * y + z * z);
    const k = d > 0 ? 1 / d : 0;
    this.g[0] = x * k;
    this.g[1] = y * k;
    this.g[2] = z * k;
    return d;
  }

  least(course: Course, w: number): number {
    if (this.misses(course)) return Number.POSITIVE_INFINITY;
    this.circle.load(course, 0);
    return this.circle.least(w);
  }

  /** True when no place of the open cell projects into the arc. */
  private misses(course: Course): boolean {
    const { x, y, e } = course;
    const { sin, cos } = this;
    const early = course.high(x[1], y[1], e[1]) < 0;
    const late = course.high(x[0] * sin - x[1] * cos, y[0] * sin - y[1] * cos, e[0] * sin - e[1] * cos) < 0;
    return this.wide ? early && late : early || late;
  }
}
