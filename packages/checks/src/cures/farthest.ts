import { distance } from '@runback/geometry';
import type { Line } from '@runback/job';

/** Half of the longest leg at a point, mm: farther is another route, not a cure. */
export function farthestMove(line: Line, point: number): number {
  const at = line.corners[point]!.at;
  const legs = [line.corners[point - 1], line.corners[point + 1]].map((c) => (c ? distance(c.at, at) : 0));
  return Math.max(...legs) / 2;
}
