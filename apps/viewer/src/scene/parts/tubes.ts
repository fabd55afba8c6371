/** The lines themselves: the chosen one painted, the others plain. */

import type { Vec3, WorkedLine } from 'runback';
import { type BufferGeometry, type Group, type Material, Mesh } from 'three';
import { selectedPieces } from '../shape/line-parts.ts';
import { painted, plainStops } from '../shape/paint.ts';
import type { Stops } from '../shape/stops.ts';
import { sweptTube } from '../shape/sweep.ts';
import { castsShadow, clear, geometryOf, groupIn, MadeFrom, placeAt } from './geometry.ts';
import { endColours, paletteOf } from './inks.ts';
import type { Layer, Shown } from './kinds.ts';

/** How far a mesh may lie inside its tube, mm. */
const CHORD = 0.05;
const OTHER_CHORD = 0.2;

const TUBE_ORDER = 2;
const GHOST_ORDER = 3;

export function makeChosenTube(machine: Group): Layer {
  const group = groupIn(machine);
  const made = new MadeFrom();
  return {
    update: (now) => {
      const { state, line, centreline, pose } = now;
      const { colour, profile, falls } = state;
      if (
        !made.changed(centreline, line.line.tube, now.stale, [colour, profile, falls], pose.origin, now.inks)
      )
        return;
      clear(group);
      if (!centreline) return;
      const { od, bore } = line.line.tube;
      const stops = stopsOf(now, centreline.length);
      const ends = { kind: 'bored', bore: bore / 2, ...endColours(now.inks) } as const;
      const data = sweptTube(centreline.pieces, { outer: od / 2, chord: CHORD, ends, stops });
      const part = { geometry: geometryOf(data), origin: data.origin, zero: pose.origin };
      if (now.stale) addMesh(group, part, { material: now.materials.stale, order: GHOST_ORDER });
      else {
        castsShadow(addMesh(group, part, { material: now.materials.chosen, order: TUBE_ORDER }));
        addMesh(group, part, { material: now.materials.ghost, order: GHOST_ORDER });
      }
    },
    dispose: () => clear(group),
  };
}

function stopsOf({ state, line, inks, stale }: Shown, length: number): Stops {
  const palette = paletteOf(inks);
  const { profile, falls, colour } = state;
  if (stale || profile === null || profile.length !== length) return plainStops(length, palette);
  return painted({ colour, profile, falls, od: line.line.tube.od, palette });
}

interface Part {
  readonly geometry: BufferGeometry;
  readonly origin: Vec3;
  /** What the group counts from. */
  readonly zero: Vec3;
}

function addMesh(
  group: Group,
  { geometry, origin, zero }: Part,
  { material, order }: { readonly material: Material; readonly order: number },
): Mesh {
  const mesh = new Mesh(geometry, material);
  mesh.renderOrder = order;
  placeAt(mesh, origin, zero);
  group.add(mesh);
  return mesh;
}

/** A rim round the selected leg or bend. */
export function makeOutline(machine: Group): Layer {
  const group = groupIn(machine);
  const made = new MadeFrom();
  return {
    update: (now) => {
      const { state, line, pose, materials } = now;
      const pieces = now.stale ? [] : selectedPieces(line, state.selection);
      if (!made.changed(pieces, line.line.tube.od, pose.origin, materials)) return;
      clear(group);
      if (pieces.length === 0) return;
      const data = sweptTube(pieces, { outer: line.line.tube.od / 2, chord: CHORD, ends: { kind: 'flat' } });
      const part = { geometry: geometryOf(data), origin: data.origin, zero: pose.origin };
      addMesh(group, part, { material: materials.outline, order: TUBE_ORDER });
    },
    dispose: () => clear(group),
  };
}

export function makeOtherTubes(machine: Group): Layer {
  const group = groupIn(machine);
  const made = new MadeFrom();
  return {
    update: (now) => {
      const others = now.state.job.lines.filter(({ line }) => line.id !== now.line.line.id);
      const what = others.map(({ line, centreline }) => [centreline?.pieces, line.tube.od, line.tube.bore]);
      if (!made.changed(what, now.pose.origin, now.inks)) return;
      clear(group);
      for (const other of others) drawOther(group, other, now);
    },
    dispose: () => clear(group),
  };
}

/** One that cannot exist has no tube to draw. */
function drawOther(group: Group, { line, centreline }: WorkedLine, { inks, materials, pose }: Shown): void {
  if (!centreline) return;
  const { cut, dark } = endColours(inks);
  const data = sweptTube(centreline.pieces, {
    outer: line.tube.od / 2,
    chord: OTHER_CHORD,
    ends: { kind: 'bored', bore: line.tube.bore / 2, cut, dark },
    stops: [
      { at: 0, colour: [1, 1, 1] },
      { at: centreline.length, colour: [1, 1, 1] },
    ],
  });
  const part = { geometry: geometryOf(data), origin: data.origin, zero: pose.origin };
  castsShadow(addMesh(group, part, { material: materials.other, order: 0 }));
}
