/** How two lines of one run face each other along it. */
import type { Line, Run } from '@runback/job';
import type { WorkedLine } from '../types.ts';

export interface Joined {
  /** The end of the first line that faces the second, and that of the second. */
  readonly ours: 'A' | 'Z';
  readonly theirs: 'A' | 'Z';
  /** Length of the run between those ends, mm: 0 for neighbours. */
  readonly between: number;
}

/** Finds how two lines follow each other in a run; `null` when no run has both. */
export type FindJoined = (line: Line, other: Line) => Joined | null;

/** Looks in all the runs of a job; the first that has both lines counts. */
export function joinedBy(runs: readonly Run[], all: readonly WorkedLine[]): FindJoined {
  const lengths = new Map(all.map(({ line, centreline }) => [line.id, centreline?.length ?? 0]));
  return (line, other) => {
    const run = runs.find(({ lines }) => lines.includes(line.id) && lines.includes(other.id));
    if (run === undefined) return null;
    const [i, j] = [run.lines.indexOf(line.id), run.lines.indexOf(other.id)];
    const inside = run.lines.slice(Math.min(i, j) + 1, Math.max(i, j));
    const between = inside.reduce((sum, id) => sum + (lengths.get(id) ?? 0), 0);
    return i < j ? { ours: 'Z', theirs: 'A', between } : { ours: 'A', theirs: 'Z', between };
  };
}
