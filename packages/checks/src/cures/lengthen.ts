import { scale, sub, unit, type Vec3 } from '@runback/geometry';
import type { Line } from '@runback/job';
import type { Cure } from '../types.ts';
import type { Cured, Move, Work } from '../work.ts';
import { farthestMove } from './farthest.ts';

/** The smallest move of a corner that gives the straight after `before` bends its length; ports stay where they are. */
export function lengthen({ line, centreline, tools }: Work, before: number, wanted: number): Cure | null {
  if (tools === null) return null;
  const { bends } = centreline;
  const cured: Cured = (_, c) => {
    if (c.bends.length !== bends.length) return false;
    const [from, to] = [c.bends[before - 1]?.end ?? 0, c.bends[before]?.start ?? c.length];
    return to - from >= wanted;
  };
  const corners = [bends[before - 1]?.points.at(-1), bends[before]?.points[0]];
  return tools.seek(
    corners.flatMap((point) => (point === undefined ? [] : slides(line, point))),
    cured,
  );
}

/** Both ways along both legs of a corner. */
function slides(line: Line, point: number): Move[] {
  const here = line.corners[point]!.at;
  return [line.corners[point - 1], line.corners[point + 1]].flatMap((other) => {
    if (other === undefined) return [];
    const along: Vec3 = unit(sub(other.at, here));
    const farthest = farthestMove(line, point);
    return [along, scale(along, -1)].map((direction) => ({ point, direction, farthest }));
  });
}
