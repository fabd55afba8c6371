/** The surroundings as the solids they are. */

import { addScaled, anyNormal, cross, distance, dot, type Solid, sub, unit, type Vec3 } from 'runback';
import {
  BoxGeometry,
  type BufferGeometry,
  CylinderGeometry,
  EdgesGeometry,
  type Group,
  LineLoop,
  LineSegments,
  Matrix4,
  Mesh,
  SphereGeometry,
  Vector3,
} from 'three';
import { toMachine } from '../math/tilt.ts';
import { sidesWithin } from '../shape/rings.ts';
import { plateCorners } from '../shape/shell.ts';
import { sweptTube } from '../shape/sweep.ts';
import { castsShadow, clear, geometryOf, groupIn, MadeFrom, placeAt, strokeGeometry } from './geometry.ts';
import type { Layer, Shown, SolidData, Surrounding } from './kinds.ts';

/** How far a mesh may lie inside its solid, mm. */
const CHORD = 0.1;
const EDGE_ANGLE_DEG = 30;

export interface Solids extends Layer {
  readonly group: Group;
}

export function makeSolids(machine: Group): Solids {
  const group = groupIn(machine);
  const made = new MadeFrom();
  return {
    group,
    update: (now) => {
      const { state, pose, materials, middle, radius } = now;
      const chosen = state.selection?.kind === 'surrounding' ? state.selection.id : null;
      // Only plates look at how large everything is.
      const plates = now.line.line.surroundings.some(({ solid }) => solid.kind === 'half-space');
      const size = plates ? [middle, radius] : [];
      if (!made.changed(now.line.line.surroundings, pose.origin, materials, chosen, size)) return;
      clear(group);
      for (const surrounding of now.line.line.surroundings) draw(group, surrounding, now);
    },
    dispose: () => clear(group),
  };
}

function draw(group: Group, surrounding: Surrounding, now: Shown): void {
  const { materials, state, pose } = now;
  const { id, solid, because } = surrounding;
  const chosen = state.selection?.kind === 'surrounding' && state.selection.id === id;
  const edge = chosen ? materials.edgeSelected : materials.edge(because);
  if (solid.kind === 'half-space') {
    drawPlate(group, surrounding, now);
    return;
  }
  const { geometry, origin, turn } = solidGeometry(solid);
  const mesh = castsShadow(new Mesh(geometry, materials.face(because)));
  mesh.userData = { surrounding: id } satisfies SolidData;
  const edged = solid.kind === 'box' || solid.kind === 'cylinder';
  const edges = edged ? [new LineSegments(new EdgesGeometry(geometry, EDGE_ANGLE_DEG), edge)] : [];
  for (const object of [mesh, ...edges]) {
    if (turn) object.setRotationFromMatrix(turn);
    placeAt(object, origin, pose.origin);
    group.add(object);
  }
}

interface Shaped {
  readonly geometry: BufferGeometry;
  readonly origin: Vec3;
  readonly turn?: Matrix4;
}

function solidGeometry(solid: Exclude<Solid, { kind: 'half-space' }>): Shaped {
  switch (solid.kind) {
    case 'sphere': {
      const sides = sidesWithin(solid.radius, CHORD, 24);
      return {
        geometry: new SphereGeometry(solid.radius, sides, Math.ceil(sides / 2)),
        origin: solid.centre,
      };
    }
    case 'box': {
      const [x, y, z] = solid.half;
      return {
        geometry: new BoxGeometry(2 * x, 2 * y, 2 * z),
        origin: solid.centre,
        turn: turnTo(solid.axes),
      };
    }
    case 'cylinder': {
      const along = unit(sub(solid.to, solid.from));
      const length = distance(solid.from, solid.to);
      const geometry = new CylinderGeometry(
        solid.radius,
        solid.radius,
        length,
        sidesWithin(solid.radius, CHORD, 24),
      );
      const side = anyNormal(along);
      return {
        geometry,
        origin: addScaled(solid.from, along, length / 2),
        turn: turnTo([cross(along, side), along, side]),
      };
    }
    case 'tube': {
      const data = sweptTube(solid.path, { outer: solid.radius, chord: CHORD, ends: { kind: 'round' } });
      return { geometry: geometryOf(data), origin: data.origin };
    }
  }
}

const turnTo = ([x, y, z]: readonly [Vec3, Vec3, Vec3]): Matrix4 =>
  new Matrix4().makeBasis(new Vector3(...x), new Vector3(...y), new Vector3(...z));

/** As much of a half-space as matters here: its plane near everything else. */
function drawPlate(group: Group, { id, solid }: Surrounding, now: Shown): void {
  if (solid.kind !== 'half-space') return;
  const { materials, pose, state } = now;
  const { centre, corners } = plateOf(solid, now, 0);
  const geometry = strokeGeometry(corners, centre);
  geometry.setIndex([0, 1, 2, 0, 2, 3]);
  const mesh = new Mesh(geometry, materials.plate);
  mesh.userData = { surrounding: id, plate: true } satisfies SolidData;
  const chosen = state.selection?.kind === 'surrounding' && state.selection.id === id;
  const rim = new LineLoop(
    strokeGeometry(corners, centre),
    chosen ? materials.edgeSelected : materials.edge('fixed'),
  );
  for (const object of [mesh, rim]) {
    placeAt(object, centre, pose.origin);
    group.add(object);
  }
}

/** Centre and corners of the shown part of a plane, `off` mm to its free side. */
export function plateOf(
  { point, normal }: Solid & { readonly kind: 'half-space' },
  { pose, middle, radius }: Shown,
  off: number,
): { readonly centre: Vec3; readonly corners: readonly Vec3[] } {
  const everything = toMachine(pose, middle);
  const above = dot(sub(everything, point), normal);
  const centre = addScaled(everything, normal, off - above);
  return { centre, corners: plateCorners(centre, normal, radius) };
}
