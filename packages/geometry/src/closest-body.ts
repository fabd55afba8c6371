/** What a piece is measured against: boxes (a segment is one of no width), cylinders, arcs, spheres, half-spaces. */
import type { Axes, Course } from './closest-course.ts';
import type { Vec3 } from './types.ts';

/** Something with a signed distance, negative inside, that changes by at most 1 per mm moved. In axes of its own. */
export interface Measurable extends Axes {
  /** Direction in which the distance last measured grows, unit, own axes. */
  readonly g: [number, number, number];
  /** Signed distance of a point given in own axes; sets `g`. */
  measure(x: number, y: number, z: number): number;
}

/** One that can be searched along a course. */
export interface Body extends Measurable {
  /** Never above the distance anywhere within w of where the course is; `course.open(w)` has been called. */
  least(course: Course, w: number): number;
}

/** The direction `g` of a body in the job's axes. */
export function outward(body: Measurable): Vec3 {
  const { g, axes } = body;
  const at = (i: 0 | 1 | 2) => axes[0][i] * g[0] + axes[1][i] * g[1] + axes[2][i] * g[2];
  return [at(0), at(1), at(2)];
}

/** Signed distance of a point in the job's axes; sets `g`. */
export function measureAt(body: Measurable, point: Vec3): number {
  const { origin: o, axes } = body;
  const [x, y, z] = [point[0] - o[0], point[1] - o[1], point[2] - o[2]];
  const along = (a: Vec3) => a[0] * x + a[1] * y + a[2] * z;
  return body.measure(along(axes[0]), along(axes[1]), along(axes[2]));
}
