/** Where the operator's eye is, and how far back it must go to see everything. Pure. */
import { addScaled, cross, dot, scale, sub, type ToolPose, unit, type Vec3 } from 'runback';
import type { BenchPlaces } from './places.ts';

export interface Eye {
  readonly from: Vec3;
  readonly target: Vec3;
}

export interface Lens {
  /** Upright angle of view, radians. */
  readonly angle: number;
  /** Width over height of the picture. */
  readonly aspect: number;
  /** Share of the picture left free round it for the words. */
  readonly margin: number;
}

/**
 * From where to look, from the target. Always from the operator's side and from above, and a little from START, so that
 * the way the tube turns is seen as a circle; a flat tool from higher up, or its former would be a line.
 */
export function lookFrom({ pose, inLine }: BenchPlaces): Vec3 {
  if (inLine) return clearer(pose, [RIGHT, LEFT]);
  const start = pose.travel[0] > 0 ? -1 : 1;
  const upright = Math.abs(pose.former[2]) > 0.5;
  return unit([0.34 * start, -1, upright ? 0.68 : 0.9]);
}

const RIGHT = unit([0.6, -1, 0.7]);
const LEFT = unit([-0.6, -1, 0.7]);

/** Of two ways to look along the tube the one in which the former stands clearer of it; the first where it hardly matters. */
function clearer({ travel, former }: ToolPose, [first, second]: readonly [Vec3, Vec3]): Vec3 {
  const clear = (back: Vec3): number => Math.abs(dot(cross(travel, former), back));
  return clear(second) > 1.5 * clear(first) ? second : first;
}

/** The eye that sees all of the places, each inside the picture with its margin. */
export function eyeFor(places: BenchPlaces, lens: Lens): Eye {
  const back = lookFrom(places);
  const right = unit(cross(scale(back, -1), [0, 0, 1]));
  const up = cross(right, scale(back, -1));
  const tall = Math.tan(lens.angle / 2) * (1 - lens.margin);
  const wide = tall * lens.aspect;
  const spans = ([right, up] as const).map((axis) => {
    const along = places.frame.map((place) => dot(place, axis));
    return (Math.min(...along) + Math.max(...along)) / 2;
  });
  const depth = places.frame.map((place) => dot(place, back));
  const middle = (Math.min(...depth) + Math.max(...depth)) / 2;
  const target = addScaled(addScaled(scale(right, spans[0]!), up, spans[1]!), back, middle);
  const far = places.frame.map((place) => {
    const off = sub(place, target);
    return dot(off, back) + Math.max(Math.abs(dot(off, right)) / wide, Math.abs(dot(off, up)) / tall);
  });
  return { from: addScaled(target, back, Math.max(...far)), target };
}
