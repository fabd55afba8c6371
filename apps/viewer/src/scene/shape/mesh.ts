/** Triangles before they go to the graphics card: gathered in doubles, handed on in floats about an origin of their own. */
import { addScaled, sub, type Vec3 } from 'runback';

/** Red, green, blue, 0 to 1, as light adds up (linear). */
export type Rgb = readonly [number, number, number];

export interface MeshData {
  /** What the positions count from. */
  readonly origin: Vec3;
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  readonly colours: Float32Array;
  /** Radius of the tube that a vertex lies on, mm; 0 where it is to be left as it is. */
  readonly radii: Float32Array;
  readonly indices: Uint32Array;
}

export interface Vertex {
  readonly at: Vec3;
  readonly normal: Vec3;
  readonly colour?: Rgb;
  readonly radius?: number;
}

const WHITE: Rgb = [1, 1, 1];

export class MeshBuilder {
  private readonly points: Vec3[] = [];
  private readonly normals: number[] = [];
  private readonly colours: number[] = [];
  private readonly radii: number[] = [];
  private readonly indices: number[] = [];

  /** Index of the vertex. */
  vertex({ at, normal, colour = WHITE, radius = 0 }: Vertex): number {
    this.normals.push(...normal);
    this.colours.push(...colour);
    this.radii.push(radius);
    return this.points.push(at) - 1;
  }

  /** Anticlockwise as seen from outside. */
  triangle(a: number, b: number, c: number): void {
    this.indices.push(a, b, c);
  }

  /** Corners anticlockwise as seen from outside. */
  quad(corners: readonly [number, number, number, number]): void {
    const [a, b, c, d] = corners;
    this.indices.push(a, b, d, b, c, d);
  }

  finish(): MeshData {
    const origin = middleOf(this.points);
    const positions = new Float32Array(this.points.length * 3);
    this.points.forEach((point, i) => {
      positions.set(sub(point, origin), i * 3);
    });
    return {
      origin,
      positions,
      normals: new Float32Array(this.normals),
      colours: new Float32Array(this.colours),
      radii: new Float32Array(this.radii),
      indices: new Uint32Array(this.indices),
    };
  }
}

/** Middle of the box round some points. */
export function middleOf(points: readonly Vec3[]): Vec3 {
  const { low, high } = boxRound(points);
  return addScaled(low, sub(high, low), 0.5);
}

export interface Box {
  readonly low: Vec3;
  readonly high: Vec3;
}

/** The upright box round some points; of none, the origin. */
export function boxRound(points: readonly Vec3[]): Box {
  if (points.length === 0) return { low: [0, 0, 0], high: [0, 0, 0] };
  const low: [number, number, number] = [...points[0]!];
  const high: [number, number, number] = [...points[0]!];
  for (const point of points)
    for (const k of [0, 1, 2] as const) {
      low[k] = Math.min(low[k], point[k]);
      high[k] = Math.max(high[k], point[k]);
    }
  return { low, high };
}
