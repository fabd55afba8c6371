/** Makes a whole tube in the tool from the exact straights and bends, turning as the given lines say. */
import type { Vec3 } from '@runback/geometry';
import type { Bench } from '@runback/job';
import { bend, feed, finish, freshTube, readLine, type Tool, type Tube, turn } from './tool.ts';

export interface Making {
  readonly straightBefore: number;
  readonly angle: number;
  readonly radius: number;
  /** The printed turn line. */
  readonly line: string;
}

/** The tube in the tool round the turn of one bend, fed so that the bend can be pulled when it is turned. */
export interface Moment {
  readonly before: Tube;
  readonly after: Tube;
  readonly tool: Tool;
}

export interface Run {
  readonly tube: Tube;
  readonly moments: readonly Moment[];
}

export function run(
  rows: readonly Making[],
  lastStraight: number,
  { tool: first, stand }: { readonly tool: Tool; readonly stand: Bench['stand'] },
): Run {
  let [tube, tool] = [freshTube, first];
  const moments: Moment[] = [];
  for (const row of rows) {
    const before = feed(tube, tool, row.straightBefore);
    ({ tube, tool } = turn({ tube: before, tool }, readLine(row.line), stand));
    moments.push({ before, after: tube, tool });
    tube = bend(tube, tool, { straight: row.straightBefore, angle: row.angle, radius: row.radius });
  }
  return { tube: finish(feed(tube, tool, 0), tool, lastStraight), moments };
}

/** Where the made point at distance `s` is: the nearest one made. */
export function madeAt(tube: Tube, s: number): Vec3 {
  const [first, ...rest] = tube.points;
  return rest.reduce((best, point) => (Math.abs(point.s - s) < Math.abs(best.s - s) ? point : best), first!)
    .at;
}
