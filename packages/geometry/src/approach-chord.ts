/** The chord between the two places a fixed distance apart along a line, as a function to be minimised. */
import { type Axes, Course } from './closest-course.ts';
import type { Gap } from './closest-search.ts';
import { leastCubic } from './closest-series.ts';
import type { Piece } from './types.ts';

/**
 * |Q(s + apart) − P(s)| while P stays on one piece and Q on another; the parameter is s less `from`. The bound is
 * the Taylor series of its square: along an arc each derivative of a place is as long as the one before over the radius.
 */
export class ChordGap implements Gap {
  readonly speed = 2;
  readonly widest = Number.POSITIVE_INFINITY;
  slope = 0;
  private readonly first: Finger;
  private readonly second: Finger;
  /** The square of the chord where it was last asked. */
  private readonly square = { d0: 0, d1: 0, d2: 0, d3: 0 };

  constructor(first: Piece, second: Piece, { from, apart }: { from: number; apart: number }) {
    const axes: Axes = { origin: first.from, axes: WORLD };
    this.first = new Finger(first, axes, from);
    this.second = new Finger(second, axes, from + apart);
  }

  value(t: number): number {
    const { first, second, square } = this;
    first.go(t);
    second.go(t);
    square.d0 = square.d1 = square.d2 = square.d3 = 0;
    for (const k of AXES) {
      const e = second.course.x[k] - first.course.x[k];
      const e1 = second.along(k) - first.along(k);
      const e2 = second.bending(k) - first.bending(k);
      const e3 = second.third(k) - first.third(k);
      square.d0 += e * e;
      square.d1 += 2 * e * e1;
      square.d2 += 2 * (e1 * e1 + e * e2);
      square.d3 += 2 * (3 * e1 * e2 + e * e3);
    }
    const d = Math.sqrt(square.d0);
    this.slope = d > 0 ? square.d1 / (2 * d) : 0;
    return d;
  }

  least(w: number): number {
    const [k, m] = [this.first.curvature, this.second.curvature];
    const d = Math.sqrt(this.square.d0) + 2 * w;
    const fourth = 6 * (k + m) ** 2 + 16 * (k * k + m * m) + 2 * d * (k ** 3 + m ** 3);
    const least = leastCubic(this.square, w) - (fourth * w ** 4) / 24;
    return Math.sqrt(Math.max(0, least));
  }
}

/** A place that moves along a piece by distance, with its first three derivatives. */
class Finger {
  readonly course: Course;
  readonly curvature: number;
  private readonly offset: number;
  /** Course parameter per mm. */
  private readonly rate: number;

  constructor(piece: Piece, axes: Axes, at: number) {
    this.course = new Course(piece, axes);
    this.curvature = piece.kind === 'arc' ? 1 / piece.radius : 0;
    this.rate = 1 / this.course.speed;
    this.offset = at - piece.start;
  }

  go(t: number): void {
    this.course.go((this.offset + t) * this.rate);
  }

  along(k: 0 | 1 | 2): number {
    return this.course.y[k] * this.rate;
  }

  bending(k: 0 | 1 | 2): number {
    return -this.course.e[k] * this.rate * this.rate;
  }

  third(k: 0 | 1 | 2): number {
    return -this.course.y[k] * this.rate * this.curvature * this.curvature;
  }
}

const AXES = [0, 1, 2] as const;
const WORLD: Axes['axes'] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];
