import { measureAt } from './closest-body.ts';
import { pointToPath } from './distance.ts';
import { bodyOfSolid } from './solid-body.ts';
import type { Solid, Vec3 } from './types.ts';

/**
 * Distance of a point to the surface of a solid, mm; negative inside. Exact for the convex solids. A tube is the
 * union of its pieces' swept spheres: the distance to its path less its radius.
 * @throws RangeError when a tube's path has no pieces or a cylinder no length.
 * @example
 * import { signedDistance } from '@runback/geometry';
 * signedDistance({ kind: 'sphere', centre: [0, 0, 0], radius: 10 }, [0, 0, 25]); // => 15
 */
export function signedDistance(solid: Solid, point: Vec3): number {
  if (solid.kind === 'tube') return pointToPath(point, solid.path).distance - solid.radius;
  return measureAt(bodyOfSolid(solid), point);
}
