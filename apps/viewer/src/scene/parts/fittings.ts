/** Nuts, sleeves, flares and collars at the ends of the chosen line. */

import { type Centreline, frameAt, type Line, negate, type Vec3 } from 'runback';
import {
  type BufferGeometry,
  CylinderGeometry,
  type Group,
  type Material,
  Mesh,
  Quaternion,
  Vector3,
} from 'three';
import { castsShadow, clear, groupIn, MadeFrom, placeAt } from './geometry.ts';
import type { Layer, Shown } from './kinds.ts';

type LineEnd = Line['endA'];

const SIDES = 40;
const FLARE_OD = 0.42;
const COLLAR_OD = 0.5;
/** Where the job gives no size across the flats, a round one is drawn, this many OD wide. */
const UNKNOWN_NUT_OD = 1.55;

export function makeFittings(machine: Group): Layer {
  const group = groupIn(machine);
  const made = new MadeFrom();
  return {
    update: (now) => {
      const { line, centreline, pose, materials } = now;
      const { endA, endZ, tube } = line.line;
      const ends = centreline && [centreline.pieces[0], centreline.pieces.at(-1)];
      if (!made.changed(ends, endA, endZ, tube, now.stale, pose.origin, materials)) return;
      clear(group);
      if (!centreline || now.stale) return;
      for (const end of ['A', 'Z'] as const)
        for (const part of partsOf(line.line, end)) put(group, { part, end, centreline }, now);
    },
    dispose: () => clear(group),
  };
}

/** A turned part on the tube: from `from` to `to` mm behind the end. */
interface Part {
  readonly from: number;
  readonly to: number;
  /** Radius at the side of the end, and at the other. */
  readonly radii: readonly [number, number];
  readonly kind: 'round' | 'hex';
}

/** From the end inwards: what is formed on it, the sleeve, the nut. */
function partsOf(line: Line, name: 'A' | 'Z'): readonly Part[] {
  const end: LineEnd = name === 'A' ? line.endA : line.endZ;
  const { od } = line.tube;
  const parts: Part[] = [];
  let at = 0;
  const formed = formedPart(end, od);
  if (formed) {
    parts.push(formed);
    at = formed.to;
  }
  if (end.sleeve) {
    parts.push({ from: at, to: at + end.sleeve.length, radii: [od * 0.62, od * 0.68], kind: 'round' });
    at += end.sleeve.length;
  }
  if (end.nut) {
    const { acrossFlats, length } = end.nut;
    const radius = acrossFlats === null ? (UNKNOWN_NUT_OD * od) / 2 : acrossFlats / Math.sqrt(3);
    const kind = acrossFlats === null ? 'round' : 'hex';
    parts.push({ from: at, to: at + length, radii: [radius, radius], kind });
  }
  return parts;
}

/** A flare opens towards the end; any other fitting without a nut is a collar; a plain end is bare. */
function formedPart({ fitting, nut, sleeve }: LineEnd, od: number): Part | null {
  if (fitting.traps) {
    const wide =
      typeof fitting.flare === 'object' && fitting.flare !== null ? fitting.flare.diameter.value : 1.35 * od;
    return { from: 0, to: FLARE_OD * od, radii: [wide / 2, od / 2 + 0.05], kind: 'round' };
  }
  if (fitting.id === 'plain' || nut || sleeve) return null;
  return { from: 0, to: COLLAR_OD * od, radii: [0.62 * od, 0.62 * od], kind: 'round' };
}

interface Put {
  readonly part: Part;
  readonly end: 'A' | 'Z';
  readonly centreline: Centreline;
}

function put(group: Group, { part, end, centreline }: Put, { pose, materials }: Shown): void {
  const { length } = centreline;
  const middle = Math.min((part.from + part.to) / 2, length / 2);
  const { point, tangent } = frameAt(centreline, end === 'A' ? middle : length - middle);
  const out: Vec3 = end === 'A' ? negate(tangent) : tangent;
  const material: Material = part.kind === 'hex' ? materials.nut : materials.fitting;
  const mesh = castsShadow(new Mesh(turned(part), material));
  mesh.quaternion.copy(new Quaternion().setFromUnitVectors(new Vector3(0, 1, 0), new Vector3(...out)));
  placeAt(mesh, point, pose.origin);
  group.add(mesh);
}

/** About the y axis, which leads to the end. */
function turned({ radii, from, to, kind }: Part): BufferGeometry {
  return new CylinderGeometry(radii[0], radii[1], to - from, kind === 'hex' ? 6 : SIDES);
}
