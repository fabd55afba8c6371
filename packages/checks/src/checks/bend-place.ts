import type { Bend } from '@runback/geometry';
import { placeAt } from '../place.ts';
import type { Work } from '../work.ts';

/** The middle of a bend (index 0, 1, … from A), its number, and where the job says its radius. */
export function bendPlace({ line, centreline }: Work, bend: Bend, index: number) {
  const point = bend.points[0];
  return {
    ...placeAt(centreline, (bend.start + bend.end) / 2),
    bend: index + 1,
    path: point === undefined ? null : `${line.corners[point]!.path}.radius`,
  };
}
