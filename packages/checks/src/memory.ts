import type { Line } from '@runback/job';
import type { Pair, Recall } from './line-to-line.ts';
import { sameData } from './same-data.ts';
import type { WorkedLine, WorkOptions } from './types.ts';
import { workLine } from './work-line.ts';

/** A line with what was worked of it by itself: with cures and without are two results. */
interface Known {
  readonly line: Line;
  readonly worked: { with: WorkedLine | null; without: WorkedLine | null };
}

/**
 * Remembers the lines of the job last worked, so that after an edit only the lines that it changed are worked again
 * (`workJob(job, { memory })`). The result is the same as without; a line counts as unchanged when everything said
 * about it is, its surroundings too. Lines no longer in the job are forgotten. One memory is for one job at a time.
 */
export class WorkMemory {
  private known: ReadonlyMap<string, Known> = new Map();
  /** Of two lines as remembered; gone with either. */
  private readonly pairs = new WeakMap<Line, WeakMap<Line, Pair>>();

  /** Each line by itself, in the job's order; what is not among them is forgotten. */
  lines(lines: readonly Line[], options: WorkOptions): readonly WorkedLine[] {
    const all = lines.map((line) => {
      const known = this.known.get(line.id);
      return known && sameData(known.line, line) ? known : freshOf(line);
    });
    this.known = new Map(all.map((known) => [known.line.id, known]));
    return all.map((known) => workedOf(known, options));
  }

  /** How two of those lines lie to each other: asked of `work` only when one of them is new. */
  readonly pair: Recall = (line, other, work) => {
    const beside = this.pairs.get(line) ?? new WeakMap<Line, Pair>();
    this.pairs.set(line, beside);
    const pair = beside.get(other) ?? work();
    beside.set(other, pair);
    return pair;
  };
}

const freshOf = (line: Line): Known => ({ line, worked: { with: null, without: null } });

function workedOf({ line, worked }: Known, options: WorkOptions): WorkedLine {
  const kind = options.cures === false ? 'without' : 'with';
  worked[kind] ??= workLine(line, options);
  return worked[kind];
}
