/** Between plain data and three's objects. */

import { sub, type Vec3 } from 'runback';
import {
  BufferAttribute,
  BufferGeometry,
  Group,
  InstancedMesh,
  Line,
  Mesh,
  type Object3D,
  Sprite,
} from 'three';
import { sameData } from '../math/same.ts';
import type { MeshData } from '../shape/mesh.ts';

/** Objects on this layer throw the soft shadow. */
export const SHADOW_LAYER = 1;

export function geometryOf(data: MeshData): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(data.positions, 3));
  geometry.setAttribute('normal', new BufferAttribute(data.normals, 3));
  geometry.setAttribute('color', new BufferAttribute(data.colours, 3));
  geometry.setAttribute('tubeRadius', new BufferAttribute(data.radii, 1));
  geometry.setIndex(new BufferAttribute(data.indices, 1));
  return geometry;
}

/** Points of lines, about an origin of their own. */
export function strokeGeometry(points: readonly Vec3[], origin: Vec3): BufferGeometry {
  const positions = new Float32Array(points.length * 3);
  points.forEach((point, i) => {
    positions.set(sub(point, origin), i * 3);
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(positions, 3));
  return geometry;
}

/** Puts an object whose geometry counts from `origin` (machine) where it belongs in a group that counts from `zero`. */
export function placeAt(object: Object3D, origin: Vec3, zero: Vec3): void {
  object.position.set(...sub(origin, zero));
}

export function castsShadow<T extends Object3D>(object: T): T {
  object.layers.enable(SHADOW_LAYER);
  return object;
}

/** Takes everything out of a group and gives its buffers back. Materials are shared and stay. */
export function clear(group: Group): void {
  for (const child of [...group.children]) {
    child.traverse((object) => {
      if (object instanceof Mesh || object instanceof Line) object.geometry.dispose();
      if (object instanceof InstancedMesh) object.dispose();
      if (object instanceof Sprite) object.material.dispose();
    });
    group.remove(child);
  }
}

export function groupIn(parent: Object3D): Group {
  const group = new Group();
  parent.add(group);
  return group;
}

/** Remembers what something was made from, to make it anew only when that says something else. */
export class MadeFrom {
  private last: readonly unknown[] | null = null;

  /** True when any part differs from the last time, by identity or else by what it says. */
  changed(...parts: readonly unknown[]): boolean {
    const { last } = this;
    const same =
      last !== null && last.length === parts.length && parts.every((part, i) => sameData(part, last[i]));
    this.last = parts;
    return !same;
  }
}
