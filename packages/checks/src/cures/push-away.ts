import { norm, POINT_MM, unit, type Vec3 } from '@runback/geometry';
import type { Cure } from '../types.ts';
import type { Cured, Move, Work } from '../work.ts';
import { farthestMove } from './farthest.ts';

/** The shortest push of an inner point beside a place, in the direction that leads away from what is too near. */
export function pushAway(work: Work, place: { at: number; away: Vec3 }, cured: Cured): Cure | null {
  const { tools, line } = work;
  if (tools === null || norm(place.away) < POINT_MM) return null;
  const direction = unit(place.away);
  const moves: Move[] = pointsBeside(work, place.at)
    .filter((point) => point > 0 && point < line.corners.length - 1)
    .map((point) => ({ point, direction, farthest: farthestMove(line, point) }));
  return tools.seek(moves, cured);
}

/** The corner a place lies in, or those at the two ends of the straight it lies on. */
function pointsBeside({ centreline }: Work, at: number): readonly number[] {
  const { bends } = centreline;
  const next = bends.findIndex((bend) => at <= bend.end);
  const after = next < 0 ? undefined : bends[next];
  const before = bends[(next < 0 ? bends.length : next) - 1];
  const inside = after !== undefined && at >= after.start;
  return [...(inside ? [] : [before?.points.at(-1)]), after?.points[0]].filter((p) => p !== undefined);
}
