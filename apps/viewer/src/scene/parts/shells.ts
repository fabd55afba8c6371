/** What the tube keeps off, as faint shells: near what is looked at, everywhere or nowhere. */

import type { Line } from 'runback';
import { type Group, LineLoop, Mesh } from 'three';
import { shellOf } from '../shape/shell.ts';
import { clear, geometryOf, groupIn, MadeFrom, placeAt, strokeGeometry } from './geometry.ts';
import type { Layer, Shown, Surrounding } from './kinds.ts';
import { plateOf } from './solids.ts';

export function makeShells(machine: Group): Layer {
  const group = groupIn(machine);
  const made = new MadeFrom();
  return {
    update: (now) => {
      const { line } = now.line;
      const shown = shownIds(now);
      const wanted = line.surroundings.filter(({ id }) => shown.has(id));
      const offs = wanted.map((surrounding) => offOf(line, surrounding));
      if (!made.changed(wanted, offs, now.pose.origin, now.materials)) return;
      clear(group);
      wanted.forEach((surrounding, i) => {
        if (offs[i]! > 0) draw(group, { surrounding, off: offs[i]! }, now);
      });
    },
    dispose: () => clear(group),
  };
}

/** The line's own figure for a surrounding, else the surrounding's. */
const offOf = (line: Line, { id, keepOff }: Surrounding): number => (line.clearance.to[id] ?? keepOff).value;

/** Which surroundings show what they are kept off by. */
export function shownIds({ state, line }: Pick<Shown, 'state' | 'line'>): ReadonlySet<string> {
  if (state.looks.keepOff === 'none') return new Set();
  if (state.looks.keepOff === 'all') return new Set(line.line.surroundings.map(({ id }) => id));
  return new Set([selectedIn({ state, line }), nearestToBead(state)].filter((id) => id !== null));
}

function selectedIn({ state: { selection }, line }: Pick<Shown, 'state' | 'line'>): string | null {
  if (selection?.kind === 'surrounding') return selection.id;
  return selection?.kind === 'finding' ? (line.findings[selection.index]?.to ?? null) : null;
}

function nearestToBead({ bead, profile }: Shown['state']): string | null {
  if (bead === null || profile === null) return null;
  let best = profile.places[0];
  for (const place of profile.places)
    if (best === undefined || Math.abs(place.at - bead) < Math.abs(best.at - bead)) best = place;
  return best?.nearest?.kind === 'surrounding' ? best.nearest.to : null;
}

function draw(
  group: Group,
  { surrounding: { solid }, off }: { readonly surrounding: Surrounding; readonly off: number },
  now: Shown,
): void {
  const { materials, pose } = now;
  if (solid.kind === 'half-space') {
    const { centre, corners } = plateOf(solid, now, off);
    const plane = strokeGeometry(corners, centre);
    plane.setIndex([0, 1, 2, 0, 2, 3]);
    for (const object of [
      new Mesh(plane, materials.shellPlate),
      new LineLoop(strokeGeometry(corners, centre), materials.edge('hot')),
    ]) {
      placeAt(object, centre, pose.origin);
      group.add(object);
    }
    return;
  }
  const data = shellOf(solid, off);
  const mesh = new Mesh(geometryOf(data), materials.shell);
  mesh.renderOrder = 4;
  placeAt(mesh, data.origin, pose.origin);
  group.add(mesh);
}
