/** A piece seen from the axes of what it is measured against. */
import type { Piece, Vec3 } from './types.ts';
import { dot, sub } from './vec.ts';

/** Where something stands: an origin of its own, so that nothing is lost far from the job's origin, and three axes. */
export interface Axes {
  readonly origin: Vec3;
  readonly axes: readonly [Vec3, Vec3, Vec3];
}

type Three = [number, number, number];

/**
 * A piece in those axes: an arc is `c + a·cos t + b·sin t` (t in radians), a straight `c + a·t` (t in mm).
 * `go(t)` moves it; then x is the point, y the derivative and e minus the second derivative.
 * `open(w)` readies `low` and `high` for the cell of half width w ≤ π/2 about it.
 */
export class Course {
  readonly turns: boolean;
  /** Of the parameter: from 0 to this. */
  readonly to: number;
  /** mm per unit of the parameter. */
  readonly speed: number;
  /** Radius of an arc, 0 for a straight. */
  readonly bend: number;
  readonly a: Three;
  readonly b: Three;
  readonly x: Three = [0, 0, 0];
  readonly y: Three;
  readonly e: Three = [0, 0, 0];
  private readonly c: Three;
  private cos = 1;
  private sin = 0;

  constructor(piece: Piece, { origin, axes }: Axes) {
    this.turns = piece.kind === 'arc';
    this.bend = piece.kind === 'arc' ? piece.radius : 0;
    if (piece.kind === 'arc') {
      this.to = piece.angle;
      this.speed = piece.radius;
      this.c = inAxes(sub(piece.centre, origin), axes, 1);
      this.a = inAxes(piece.u, axes, piece.radius);
      this.b = inAxes(piece.v, axes, piece.radius);
      this.y = [0, 0, 0];
    } else {
      this.to = piece.length;
      this.speed = 1;
      this.c = inAxes(sub(piece.from, origin), axes, 1);
      this.a = inAxes(piece.direction, axes, 1);
      this.b = [0, 0, 0];
      this.y = this.a;
    }
  }

  go(t: number): void {
    const { a, c, x } = this;
    if (this.turns) this.turnTo(Math.cos(t), Math.sin(t));
    else for (let k = 0; k < 3; k++) x[k] = c[k]! + a[k]! * t;
  }

  private turnTo(cos: number, sin: number): void {
    const { a, b, c, x, y, e } = this;
    for (let k = 0; k < 3; k++) {
      e[k] = a[k]! * cos + b[k]! * sin;
      y[k] = b[k]! * cos - a[k]! * sin;
      x[k] = c[k]! + e[k]!;
    }
  }

  open(w: number): void {
    this.cos = this.turns ? Math.cos(w) : 1;
    this.sin = this.turns ? Math.sin(w) : w;
  }

  /** Least value, over the open cell, of a coordinate whose value, derivative and minus second derivative here are x, y, e. */
  low(x: number, y: number, e: number): number {
    const { cos, sin } = this;
    const centre = x - e;
    if (y * cos + e * sin < 0 && y * cos - e * sin > 0) return centre - Math.sqrt(e * e + y * y);
    return centre + e * cos - Math.abs(y) * sin;
  }

  /** Greatest value of it. */
  high(x: number, y: number, e: number): number {
    return -this.low(-x, -y, -e);
  }

  /** Least value of |coordinate k| over the open cell. */
  lowAbs(k: 0 | 1 | 2): number {
    const low = this.low(this.x[k], this.y[k], this.e[k]);
    if (low >= 0) return low;
    const high = this.high(this.x[k], this.y[k], this.e[k]);
    return high <= 0 ? -high : 0;
  }
}

function inAxes(v: Vec3, axes: Axes['axes'], k: number): Three {
  return [dot(v, axes[0]) * k, dot(v, axes[1]) * k, dot(v, axes[2]) * k];
}
