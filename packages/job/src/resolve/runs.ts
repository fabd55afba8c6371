/** Sticks, and the runs they go through. */
import { formatPath, type Segment } from '../path.ts';
import type { RunValues, StickValues } from '../schema/job.ts';
import type { Run, Stick } from '../stick-types.ts';
import { fromJob } from './figures.ts';
import { materialOf, type Shelf } from './shelf.ts';

export function stickOf(shelf: Shelf, values: StickValues | undefined, at: readonly Segment[]): Stick | null {
  if (!values) return null;
  const { kind, tip, friction, material } = values;
  return {
    kind,
    enters: values.enters,
    material: material === undefined ? null : materialOf(shelf, material),
    thickness: values.thickness,
    width: kind === 'cable' ? null : (values.width ?? null),
    link: kind === 'links' ? (values.link ?? null) : null,
    tip: tip ? { length: tip.length, thickness: tip.thickness, width: tip.width ?? null } : null,
    seat: values.seat ?? 0,
    beyond: values.beyond ?? 0,
    friction: friction
      ? {
          low: fromJob(friction[0], [...at, 'friction', 0]),
          high: fromJob(friction[1], [...at, 'friction', 1]),
        }
      : null,
    pan: values.pan ?? null,
    fills: values.fills ?? [],
    levels: values.levels ?? [],
    path: formatPath(at),
  };
}

export function runOf(shelf: Shelf, values: RunValues, i: number): Run {
  const at = ['runs', i];
  return {
    id: values.id,
    name: values.name ?? values.id,
    lines: values.lines,
    drain: values.drain ?? null,
    stick: stickOf(shelf, values.stick, [...at, 'stick']),
    path: formatPath(at),
  };
}
