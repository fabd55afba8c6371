/** What is under a pointer, as a person sees it: what is hidden is not picked. */

import type { Vec3, WorkedLine } from 'runback';
import { type Object3D, Raycaster, Vector3 } from 'three';
import type { Ray } from '../math/drag.ts';
import { type NearPlace, nearestPlace } from '../math/nearest.ts';
import { toWorld } from '../math/tilt.ts';
import type { EyeNow, Shown, SolidData } from '../parts/kinds.ts';
import { samplesOf } from './samples.ts';

export type Hit =
  | { readonly kind: 'corner'; readonly index: number }
  /** The chosen line, mm from end A. */
  | { readonly kind: 'tube'; readonly at: number }
  | { readonly kind: 'line'; readonly id: string }
  | { readonly kind: 'surrounding'; readonly id: string };

export interface PickAsk {
  readonly now: Shown;
  readonly eye: EyeNow;
  readonly ray: Ray;
  readonly x: number;
  readonly y: number;
  /** How far beside a thing the pointer may be, px. */
  readonly reach: number;
}

/** A handle is drawn over everything, and picked so. Of two as near on the screen, the nearer one. */
export function pickCorner({ now, eye, x, y, reach }: PickAsk, points: readonly Vec3[]): number | null {
  const seen = points.map((point, index) => {
    const world = toWorld(now.pose, point);
    const [px, py] = eye.project(world);
    return { index, away: Math.hypot(px - x, py - y), depth: eye.depth(world) };
  });
  const near = seen.filter(({ away }) => away <= reach);
  const closest = Math.min(...near.map(({ away }) => away));
  const alike = near.filter(({ away }) => away <= closest + SAME_PX).sort((a, b) => a.depth - b.depth);
  return alike[0]?.index ?? null;
}

const SAME_PX = 2;

/** The nearest place of the chosen line on the screen, however far. */
export const nearestOnChosen = ({ now, eye, x, y }: PickAsk): NearPlace | null =>
  now.centreline && !now.stale ? nearestOn(now.centreline, { now, eye, x, y }) : null;

function nearestOn(
  centreline: NonNullable<WorkedLine['centreline']>,
  { now, eye, x, y }: Pick<PickAsk, 'now' | 'eye' | 'x' | 'y'>,
): NearPlace | null {
  const places = samplesOf(centreline).map(({ at, point }) => {
    const world = toWorld(now.pose, point);
    const [px, py] = eye.project(world);
    return { x: px, y: py, depth: eye.depth(world), at };
  });
  return nearestPlace(
    places.filter(({ depth }) => depth > 0),
    x,
    y,
  );
}

interface Candidate {
  readonly hit: Hit;
  /** Pixels outside of it; 0: on it. */
  readonly outside: number;
  readonly depth: number;
}

/** The line or surrounding under the pointer. */
export function pickThing(ask: PickAsk, solids: Object3D): Hit | null {
  const wall = firstSolid(ask, solids);
  const lines = ask.now.state.job.lines.flatMap((worked) => lineCandidate(ask, worked));
  const seen = lines.filter(({ depth }) => wall === null || depth <= wall.depth);
  seen.sort((a, b) => a.outside - b.outside || a.depth - b.depth);
  return seen[0]?.hit ?? wall?.hit ?? null;
}

function lineCandidate(ask: PickAsk, { line, centreline }: WorkedLine): readonly Candidate[] {
  const chosen = line.id === ask.now.line.line.id;
  if (!centreline) return [];
  const near = nearestOn(centreline, ask);
  if (!near) return [];
  const radius = line.tube.od / 2;
  const outside = Math.max(0, near.away - radius / ask.eye.mmAtDepth(near.depth));
  if (outside > ask.reach) return [];
  const hit: Hit = chosen ? { kind: 'tube', at: near.at } : { kind: 'line', id: line.id };
  return [{ hit, outside, depth: near.depth - line.tube.od }];
}

/** The plate that stands for a half-space hides nothing: it is picked where nothing else is. */
function firstSolid({ ray, eye }: PickAsk, solids: Object3D): Candidate | null {
  const caster = new Raycaster(new Vector3(...ray.from), new Vector3(...ray.direction));
  let plate: Candidate | null = null;
  for (const { object, point } of caster.intersectObject(solids, true)) {
    const { surrounding: id, plate: thin } = object.userData as SolidData;
    if (id === undefined) continue;
    const hit = { kind: 'surrounding', id } as const;
    if (!thin) return { hit, outside: 0, depth: eye.depth(point.toArray()) };
    plate ??= { hit, outside: 0, depth: Number.POSITIVE_INFINITY };
  }
  return plate;
}
