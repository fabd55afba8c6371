/** The opposite hand of a line. */
import type { Vec3 } from '@runback/geometry';
import { formatPath } from '../path.ts';
import type { MirroredValues } from '../schema/job.ts';
import type { Stick } from '../stick-types.ts';
import type { Line, LineEnd } from '../types.ts';
import { clearanceOf } from './line.ts';
import type { Shelf } from './shelf.ts';

const AXES = { x: 0, y: 1, z: 2 } as const;

type Axis = (typeof AXES)[keyof typeof AXES];

/** −0 never leaves here. */
const flipped = (value: number, about: number): number => 2 * about - value || 0;

function across(v: Vec3, axis: Axis, offset: number): Vec3 {
  const at = (k: Axis): number => (k === axis ? flipped(v[k], offset) : v[k]);
  return [at(0), at(1), at(2)];
}

/** Only the pan stands somewhere; the rest of a stick goes with its tube. */
function turnedStick(stick: Stick, axis: Axis, offset: number): Stick {
  const { pan } = stick;
  return { ...stick, pan: pan && { ...pan, middle: across(pan.middle, axis, offset) } };
}

export interface MirrorAsk {
  readonly values: MirroredValues;
  readonly i: number;
  readonly source: Line;
}

/**
 * `source` seen in a mirror across the plane axis = offset. Tube, tool, ends and limits are the source's; joins
 * name the same surroundings; the corners' paths lead to the source's points.
 */
export function mirrorOf(shelf: Shelf, { values, i, source }: MirrorAsk): Line {
  const axis = AXES[values.across];
  const offset = values.offset ?? 0;
  const turned = (end: LineEnd): LineEnd => ({
    ...end,
    direction: end.direction && across(end.direction, axis, 0),
  });
  return {
    ...source,
    id: values.id,
    name: values.name ?? `${source.name}, opposite hand`,
    path: formatPath(['lines', i]),
    quantity: values.quantity ?? source.quantity,
    mirror: { of: source.id, axis, offset },
    corners: source.corners.map((corner) => ({ ...corner, at: across(corner.at, axis, offset) })),
    endA: turned(source.endA),
    endZ: turned(source.endZ),
    stick: source.stick && turnedStick(source.stick, axis, offset),
    clearance: clearanceOf(shelf, { values: values.clearance, i, base: source.clearance }),
  };
}
