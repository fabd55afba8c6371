/** Solids as bodies, and the two simplest of them. */
import type { Body, Measurable } from './closest-body.ts';
import { NO_DIRECTION } from './numeric.ts';
import { BoxBody } from './solid-box.ts';
import { CylinderBody } from './solid-cylinder.ts';
import type { Solid, Vec3 } from './types.ts';
import { anyNormal, cross } from './vec.ts';

/** Every solid but the tube, which is a path with a radius. */
export type PlainSolid = Exclude<Solid, { kind: 'tube' }>;

const WORLD: readonly [Vec3, Vec3, Vec3] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** A sphere. */
function sphereBody(centre: Vec3, radius: number): Measurable {
  const g: [number, number, number] = [1, 0, 0];
  const measure = (x: number, y: number, z: number): number => {
    const square = x * x + y * y + z * z;
    const d = Math.sqrt(square);
    [g[0], g[1], g[2]] = square > NO_DIRECTION ? [x / d, y / d, z / d] : [1, 0, 0];
    return d - radius;
  };
  return { origin: centre, axes: WORLD, g, measure };
}

/** A half-space: its axes have the normal for z. */
function halfSpaceBody(point: Vec3, normal: Vec3): Measurable {
  const x = anyNormal(normal);
  return { origin: point, axes: [x, cross(normal, x), normal], g: [0, 0, 1], measure: (_x, _y, z) => z };
}

/** A solid as something to measure against. Boxes and cylinders can be searched too: they are a `Body`. */
export function bodyOfSolid(solid: PlainSolid): Measurable | Body {
  switch (solid.kind) {
    case 'sphere':
      return sphereBody(solid.centre, solid.radius);
    case 'half-space':
      return halfSpaceBody(solid.point, solid.normal);
    case 'box':
      return new BoxBody(solid);
    case 'cylinder':
      return new CylinderBody(solid);
  }
}
