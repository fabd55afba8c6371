/**
 * Lower bounds that close fast. A squared distance D along a curve is written as its Taylor series about the
 * middle of a cell, to the third order, with a bound on the fourth derivative; the least value of that cubic
 * less the remainder is never above D. The error falls with the fourth power of the cell, so that even a
 * distance that stays the same along a whole arc (coaxial arcs, an arc round an edge) needs few cells.
 */
import type { Course } from './closest-course.ts';

/** Taylor series of a sum of squares of coordinates along a course, about the place the course is at. */
export class Series {
  d0 = 0;
  d1 = 0;
  d2 = 0;
  d3 = 0;
  /** Square of the speed in these coordinates. */
  pace = 0;
  private pp = 0;
  private qq = 0;
  private ca = 0;
  private cb = 0;

  reset(): this {
    this.d0 = this.d1 = this.d2 = this.d3 = this.pace = 0;
    this.pp = this.qq = this.ca = this.cb = 0;
    return this;
  }

  /** Adds (x − centre)² of axis k. */
  add(course: Course, k: 0 | 1 | 2, centre: number): void {
    const X = course.x[k] - centre;
    const Y = course.y[k];
    const E = course.e[k];
    this.d0 += X * X;
    this.pace += Y * Y;
    this.d1 += 2 * X * Y;
    this.d2 += 2 * (Y * Y - X * E);
    if (!course.turns) return;
    this.d3 -= 2 * Y * (3 * E + X);
    const a = course.a[k];
    const b = course.b[k];
    const c = X - E;
    this.pp += a * a - b * b;
    this.qq += 2 * a * b;
    this.ca += c * a;
    this.cb += c * b;
  }

  /** A bound on the fourth derivative everywhere: D'''' = 2Σ(4E² − 4Y² + cE), two sinusoids. */
  fourth(): number {
    return (
      8 * Math.sqrt(this.pp * this.pp + this.qq * this.qq) +
      2 * Math.sqrt(this.ca * this.ca + this.cb * this.cb)
    );
  }

  /** Never above the sum of squares anywhere within w of the middle. */
  least(w: number): number {
    return leastCubic(this, w) - (this.fourth() * w ** 4) / 24;
  }
}

/** A value and its first three derivatives. */
export interface Cubic {
  readonly d0: number;
  readonly d1: number;
  readonly d2: number;
  readonly d3: number;
}

/** Least value of d0 + d1·t + d2·t²/2 + d3·t³/6 for |t| ≤ w. */
export function leastCubic({ d0, d1, d2, d3 }: Cubic, w: number): number {
  const even = d0 + (d2 * w * w) / 2;
  const odd = d1 * w + (d3 * w ** 3) / 6;
  const ends = even - Math.abs(odd);
  const square = d2 * d2 - 2 * d1 * d3;
  if (square < 0) return ends;
  const below = d2 + Math.sqrt(square);
  const t = (-2 * d1) / below;
  if (!(below > 0 && Math.abs(t) <= w)) return ends;
  return Math.min(ends, d0 + t * (d1 + t * (d2 / 2 + (t * d3) / 6)));
}

/** A bound on the fourth derivative of √B within w, from b² = B differentiated four times; `low` ≤ b there. */
export function fourthOfRoot(B: Series, low: number, w: number): number {
  const B4 = B.fourth();
  const B3 = Math.abs(B.d3) + B4 * w;
  const B2 = Math.abs(B.d2) + w * (Math.abs(B.d3) + (B4 * w) / 2);
  const B1 = Math.abs(B.d1) + w * (Math.abs(B.d2) + w * (Math.abs(B.d3) / 2 + (B4 * w) / 6));
  const twice = 2 * low;
  const s1 = B1 / twice;
  const s2 = (B2 + 2 * s1 * s1) / twice;
  const s3 = (B3 + 6 * s1 * s2) / twice;
  return (B4 + 8 * s1 * s3 + 6 * s2 * s2) / twice;
}
