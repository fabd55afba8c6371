/** Small arrows on the chosen line that point the way liquid runs there. */

import { addScaled, cross, dot, norm, scale, sub, type Vec3 } from 'runback';
import {
  BufferGeometry,
  type Color,
  DynamicDrawUsage,
  Float32BufferAttribute,
  type Group,
  InstancedMesh,
  Matrix4,
  Vector3,
} from 'three';
import { toWorld, turnedBy } from '../math/tilt.ts';
import { groupIn } from './geometry.ts';
import type { EyeNow, Layer, Shown } from './kinds.ts';

const MOST = 60;
const SIZE_PX = 6.5;
/** Or as large as this part of the tube's width. */
const SIZE_OD = 0.3;
/** Arrows stand at least so many OD apart, and at most so many on a line. */
const APART_OD = 7;
const WANTED = 22;
/** Below this liquid is not said to run either way, radians. */
const LEVEL = 0.0003;

/** A place and the way liquid runs there, machine axes. */
interface Run {
  readonly point: Vec3;
  readonly way: Vec3;
}

export function makeFlow(world: Group): Layer {
  const group = groupIn(world);
  let mesh: InstancedMesh | null = null;
  let runs: readonly Run[] = [];
  let od = 0;
  let ink: Color | null = null;
  const dispose = (): void => {
    if (!mesh) return;
    group.remove(mesh);
    mesh.geometry.dispose();
    mesh.dispose();
    mesh = null;
  };
  return {
    update: (now) => {
      if (ink !== now.inks.ink) {
        dispose();
        ink = now.inks.ink;
        mesh = new InstancedMesh(chevron(now.inks.bg, now.inks.ink), now.materials.flow, MOST);
        mesh.instanceMatrix.setUsage(DynamicDrawUsage);
        mesh.frustumCulled = false;
        mesh.renderOrder = 5;
        group.add(mesh);
      }
      runs = runsOf(now);
      od = now.line.line.tube.od;
    },
    place: (eye) => {
      if (mesh) placeRuns(mesh, runs, { eye, od });
    },
    dispose,
  };
}

/** At even steps along the line; none where it is level, and none but in the colours of slope. */
function runsOf({ state, stale, line }: Shown): readonly Run[] {
  const { profile, falls, colour } = state;
  if (colour !== 'slope' || profile === null || falls === null || stale) return [];
  const step = Math.max(APART_OD * line.line.tube.od, profile.length / WANTED);
  const count = Math.min(MOST, Math.floor(profile.length / step));
  let i = 0;
  return Array.from({ length: count }, (_, k) => ((k + 0.5) * profile.length) / count).flatMap((at) => {
    while (i + 1 < profile.places.length && profile.places[i + 1]!.at <= at) i++;
    const [place, fall] = [profile.places[i]!, falls[i]];
    if (!fall?.toward || fall.slope === null || Math.abs(fall.slope) < LEVEL) return [];
    const towardZ = (fall.toward === 'Z') === fall.slope > 0;
    return [{ point: place.point, way: towardZ ? place.tangent : scale(place.tangent, -1) }];
  });
}

interface Placing {
  readonly eye: EyeNow;
  readonly od: number;
}

const matrix = new Matrix4();

function placeRuns(mesh: InstancedMesh, runs: readonly Run[], { eye, od }: Placing): void {
  let count = 0;
  for (const { point, way } of runs) {
    const world = toWorld(eye.pose, point);
    const toEye = eye.toEye(world);
    const along = turnedBy(eye.pose.turn, way);
    const flat = sub(along, scale(toEye, dot(along, toEye)));
    const seen = norm(flat);
    // Seen end on an arrow says nothing.
    if (seen < END_ON) continue;
    const mm = eye.mmPerPx(world);
    const x = scale(flat, Math.max(SIZE_PX * mm, SIZE_OD * od) / seen);
    const y = cross(toEye, x);
    const at = addScaled(world, toEye, Math.max(od / 2, 2 * mm) * NEARER);
    matrix.makeBasis(new Vector3(...x), new Vector3(...y), new Vector3(...toEye)).setPosition(...at);
    mesh.setMatrixAt(count++, matrix);
  }
  mesh.count = count;
  mesh.instanceMatrix.needsUpdate = true;
}

const END_ON = 0.25;
/** In front of the tube's surface. */
const NEARER = 1.6;

type Corner = readonly [number, number];

/** A bent stroke with its point at +x, `grown` beyond the plain one on all sides. */
const stroke = (grown: number): readonly Corner[] => [
  [0.6 + 1.4 * grown, 0],
  [-0.35, 0.95 + 1.4 * grown],
  [-0.75 - grown, 0.6 + grown * 0.7],
  [-0.15 - 1.4 * grown, 0],
  [-0.75 - grown, -0.6 - grown * 0.7],
  [-0.35, -0.95 - 1.4 * grown],
];

const RIM = 0.2;
const FACES = [0, 1, 3, 1, 2, 3, 0, 3, 5, 3, 4, 5];

/** In ink on a rim of the ground's colour. */
function chevron(rim: Color, ink: Color): BufferGeometry {
  const parts = [
    { corners: stroke(RIM), colour: rim },
    { corners: stroke(0), colour: ink },
  ];
  const positions = parts.flatMap(({ corners }) => corners.flatMap(([x, y]) => [x, y, 0]));
  const colours = parts.flatMap(({ corners, colour }) => corners.flatMap(() => colour.toArray()));
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(positions, 3));
  geometry.setAttribute('color', new Float32BufferAttribute(colours, 3));
  geometry.setIndex([...FACES, ...FACES.map((i) => i + parts[0]!.corners.length)]);
  return geometry;
}
