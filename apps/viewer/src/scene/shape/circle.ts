/** Circles of vertices square to a path, and the bands between them. */
import { add, addScaled, cross, scale, type Vec3 } from 'runback';
import type { MeshBuilder, Rgb } from './mesh.ts';
import type { Ring } from './rings.ts';

/** Unit vectors round a ring, right-handed about its tangent. */
export function spokes({ tangent, side }: Pick<Ring, 'tangent' | 'side'>, sides: number): readonly Vec3[] {
  const up = cross(tangent, side);
  return Array.from({ length: sides }, (_, j) => {
    const angle = (2 * Math.PI * j) / sides;
    return add(scale(side, Math.cos(angle)), scale(up, Math.sin(angle)));
  });
}

export interface CircleAsk {
  readonly radius: number;
  readonly out: readonly Vec3[];
  /** Normal of the surface at a spoke; left out: the spoke. */
  readonly normal?: (spoke: Vec3) => Vec3;
  readonly colour?: Rgb;
  /** What the vertices say of the tube's radius, see MeshData. */
  readonly tube?: number;
}

/** Vertices at `radius` along each spoke. */
export function circle(builder: MeshBuilder, middle: Vec3, ask: CircleAsk): readonly number[] {
  const { radius, out, normal = (spoke: Vec3) => spoke, colour = [1, 1, 1], tube = 0 } = ask;
  return out.map((spoke) =>
    builder.vertex({ at: addScaled(middle, spoke, radius), normal: normal(spoke), colour, radius: tube }),
  );
}

/** The band between two circles, seen from outside when the second is farther along the tangent (or further in). */
export function strip(builder: MeshBuilder, from: readonly number[], to: readonly number[]): void {
  from.forEach((a, j) => {
    const next = (j + 1) % from.length;
    builder.quad([a, from[next]!, to[next]!, to[j]!]);
  });
}

/** The fan between a circle and one vertex beyond it. */
export function fan(builder: MeshBuilder, rim: readonly number[], hub: number): void {
  rim.forEach((a, j) => {
    builder.triangle(a, rim[(j + 1) % rim.length]!, hub);
  });
}
