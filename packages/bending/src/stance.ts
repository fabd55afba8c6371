/**
 * How the tool and the tube lie for the person who looks. Axes of the looker: X to the right, Y away, Z up.
 * `travel` runs START→FREE along the tube, `former` from the tube to the former, `plane` = travel × former.
 */
import { addScaled, cross, dot, scale, type Vec3 } from '@runback/geometry';
import type { Bench } from '@runback/job';
import type { Side, TurnWords } from './types.ts';

export interface Stance {
  readonly view: TurnWords['view'];
  readonly travel: Vec3;
  readonly former: Vec3;
  readonly plane: Vec3;
}

const UP: Vec3 = [0, 0, 1];
const AWAY: Vec3 = [0, 1, 0];
const TOWARD: Vec3 = [0, -1, 0];

const FORMER: Readonly<Record<Bench['former'], Vec3>> = {
  far: AWAY,
  near: TOWARD,
  above: UP,
  below: [0, 0, -1],
};

/** Looking from START towards FREE with the former at 12 o'clock: what can be said without knowing the bench. */
const FROM_START: Stance = { view: 'start', travel: AWAY, former: UP, plane: [1, 0, 0] };

/** True when the tool cannot be as the bench says: a flat tool has its former near or far, an upright one above or below. */
export const contradicts = ({ plane, former }: Bench): boolean =>
  (former === 'above' || former === 'below') !== (plane === 'upright');

/**
 * Where travel and former are for this bench. Near and far are always meant from the side, with START on the hand
 * of `startOn`; for somebody at an end of the tube they come out as left or right. Everything is seen from START
 * without a bench, with one that contradicts itself, or when the bender is carried round the tube, so that its
 * plane is not fixed in the room.
 */
export function stanceOf(bench: Bench | null): Stance {
  if (bench === null || bench.moves === 'bender' || contradicts(bench)) return FROM_START;
  const side: Vec3 = bench.startOn === 'left' ? [1, 0, 0] : [-1, 0, 0];
  const travel = bench.stand === 'side' ? side : bench.stand === 'at-start' ? AWAY : TOWARD;
  const former = carried(FORMER[bench.former], side, travel);
  return { view: bench.stand, travel, former, plane: cross(travel, former) };
}

/** `v` carried along when the looker walks round the tool until `from` is seen as `to` (both level). */
function carried(v: Vec3, from: Vec3, to: Vec3): Vec3 {
  const along = scale(to, dot(v, from));
  const across = addScaled(along, cross(UP, to), dot(v, cross(UP, from)));
  return addScaled(across, UP, dot(v, UP));
}

/** The side a vector points to, by its largest part. */
export function sideOf(v: Vec3): Side {
  const [x, y, z] = [Math.abs(v[0]), Math.abs(v[1]), Math.abs(v[2])];
  if (z >= x && z >= y) return v[2] > 0 ? 'above' : 'below';
  if (y >= x) return v[1] > 0 ? 'away' : 'toward';
  return v[0] > 0 ? 'right' : 'left';
}

/**
 * The movement of the tube for a right-hand turn φ: −φ about travel, told as the part of it that goes the way
 * `view` counts from: top away from you (side), clockwise as you look (everywhere else). When the bender is
 * carried instead, it goes +φ about travel.
 */
export function goSign(stance: Stance, moves: Bench['moves']): 1 | -1 {
  const about = moves === 'tube' ? -1 : 1;
  if (stance.view === 'side') return about * -stance.travel[0] > 0 ? 1 : -1;
  return about * stance.travel[1] > 0 ? 1 : -1;
}
