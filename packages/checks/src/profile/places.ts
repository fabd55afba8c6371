/** Which places of a line a profile shows. */
import { type Arc, type Centreline, dot, lowsAndHighs, POINT_MM, type Vec3 } from '@runback/geometry';
import type { WorkedLine } from '../types.ts';

/**
 * Distances from end A, mm, in order: both ends and every joint exactly; every clip, low and high point, place of a
 * finding and closest approach; in bends the steepest and the most level places at rest; and places between them so
 * that no two lie more than `step` apart.
 */
export function placesOf({ line, clearance, findings }: WorkedLine, c: Centreline, step: number): number[] {
  const { up } = line.axes;
  const { lows, highs } = lowsAndHighs(c, up);
  const named = [
    ...(line.clips ?? []),
    ...[...lows, ...highs, ...clearance, ...findings].map(({ at }) => at),
  ];
  const turning = c.pieces.flatMap((piece) => (piece.kind === 'arc' ? quarters(piece, up) : []));
  const joints = [0, ...c.bends.flatMap(({ start, end }) => [start, end]), c.length];
  return filled(merged(joints, [...named, ...turning]), step);
}

/** Where the tangent of an arc is level, and where its rise is steepest: a quarter turn apart. */
function quarters({ u, v, angle, start, radius }: Arc, up: Vec3): number[] {
  const level = Math.atan2(dot(v, up), dot(u, up));
  const inside = [-2, -1, 0, 1, 2, 3].map((quarter) => level + (quarter * Math.PI) / 2);
  return inside.filter((turn) => turn > 0 && turn < angle).map((turn) => start + turn * radius);
}

/** Both lists in order, without any of `others` that coincides with a joint or with one before it. */
function merged(joints: readonly number[], others: readonly (number | null)[]): readonly number[] {
  const length = joints.at(-1)!;
  const on = others.filter((at): at is number => at !== null && at > 0 && at < length);
  const all = [...joints.map((at) => ({ at, joint: true })), ...on.map((at) => ({ at, joint: false }))];
  const kept: { at: number; joint: boolean }[] = [];
  for (const place of all.sort((a, b) => a.at - b.at)) {
    const before = kept.at(-1);
    if (before === undefined || place.at - before.at > POINT_MM) kept.push(place);
    else if (place.joint && !before.joint) kept[kept.length - 1] = place;
  }
  return [...kept.slice(0, -1).map(({ at }) => at), length];
}

/** With places between, each gap in equal parts. */
function filled(places: readonly number[], step: number): number[] {
  const between = places.slice(1).flatMap((to, i) => {
    const from = places[i]!;
    const parts = Math.ceil((to - from) / step);
    return Array.from({ length: parts }, (_, k) => (k === 0 ? from : from + ((to - from) * k) / parts));
  });
  return [...between, places.at(-1)!];
}
