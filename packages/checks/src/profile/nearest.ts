/**
 * What a place of a line comes nearest to, by the rules of the checks.
 *
 * The distance to a thing changes by at most as much as one moves along the line. So a thing whose last measure, less
 * the way since, still leaves more than what is nearest here need not be measured: far things are measured once, and
 * the answer is the same as if everything had been measured everywhere.
 */
import { type Centreline, DISTANCE_MM, pointToPath, signedDistance, type Vec3 } from '@runback/geometry';
import type { Line } from '@runback/job';
import { judgedPath, keepOffOf } from '../clearance-rows.ts';
import { judgedBetween } from '../line-to-line.ts';
import { joinedBy } from '../runs/joined.ts';
import type { WorkedJob, WorkedLine } from '../types.ts';
import type { NearestThing } from './types.ts';

/** A thing to keep off, for a part of the line. */
interface Thing extends Pick<NearestThing, 'kind' | 'to' | 'keepOff'> {
  /** Along the line: where it is judged. */
  readonly from: number;
  readonly end: number;
  readonly distance: (point: Vec3) => number;
  /** What was left of the distance wanted when it was last measured, and where. */
  left: number;
  at: number;
}

export type FindNearest = (at: number, point: Vec3) => NearestThing | null;

/** Finds what is nearest to the places of a line; quick when they are asked for in order. */
export function nearestTo({ line }: WorkedLine, centreline: Centreline, job: WorkedJob): FindNearest {
  const things = [...surroundingsOf(line, centreline), ...linesOf(line, centreline, job)];
  let first = 0;
  return (at, point) => {
    let best = -1;
    const offer = (i: number): void => {
      const thing = things[i]!;
      if (at < thing.from || at > thing.end) return;
      const most = best < 0 ? Number.POSITIVE_INFINITY : things[best]!.left;
      if (thing.left - Math.abs(at - thing.at) > most + DISTANCE_MM) return;
      thing.left = thing.distance(point) - thing.keepOff;
      thing.at = at;
      if (thing.left < most || (thing.left === most && i < best)) best = i;
    };
    // What was nearest at the last place most likely still is: with it for a start, most others need no measuring.
    if (first < things.length) offer(first);
    for (let i = 0; i < things.length; i++) if (i !== first) offer(i);
    if (best < 0) return null;
    first = best;
    const { kind, to, left, keepOff } = things[best]!;
    return { kind, to, distance: left + keepOff, keepOff };
  };
}

/** Not measured yet: less than anything. */
const UNKNOWN = { left: Number.NEGATIVE_INFINITY, at: 0 };

function surroundingsOf(line: Line, centreline: Centreline): Thing[] {
  return line.surroundings.flatMap((surrounding): Thing[] => {
    const path = judgedPath(line, centreline, surrounding.id);
    if (path === null) return [];
    const { id: to, solid } = surrounding;
    const distance = (point: Vec3): number => signedDistance(solid, point) - line.tube.od / 2;
    const keepOff = keepOffOf(line, surrounding).value;
    return [{ kind: 'surrounding', to, keepOff, ...reachOf(path), distance, ...UNKNOWN }];
  });
}

/** Other lines that exist, each by the parts that are judged against each other. */
function linesOf(line: Line, centreline: Centreline, job: WorkedJob): Thing[] {
  const others = job.lines.filter((other) => other.line.id !== line.id && other.centreline !== null);
  const joined = joinedBy(
    job.runs.map(({ run }) => run),
    job.lines,
  );
  return others.flatMap((other) => {
    const theirs = { line: other.line, centreline: other.centreline! };
    const { limit, metal, parts } = judgedBetween({ line, centreline }, theirs, joined(line, other.line));
    return parts.map(
      ([part, across]): Thing => ({
        ...{ kind: 'line', to: other.line.id, keepOff: limit.value },
        ...reachOf(part.path),
        distance: (point) => pointToPath(point, across.path).distance - metal,
        ...UNKNOWN,
      }),
    );
  });
}

const reachOf = (path: readonly { readonly start: number; readonly end: number }[]) => ({
  from: path[0]!.start,
  end: path.at(-1)!.end,
});
