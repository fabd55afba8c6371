import type { Line, Run } from '@runback/job';
import type { Pair, Recall } from './line-to-line.ts';
import type { Joined } from './runs/joined.ts';
import { type RunWork, workRun } from './runs/work-run.ts';
import { sameData } from './same-data.ts';
import type { WorkedLine, WorkOptions } from './types.ts';
import { workLine } from './work-line.ts';

/** A line with what was worked of it by itself: with cures and without are two results. */
interface Known {
  readonly line: Line;
  readonly worked: { with: WorkedLine | null; without: WorkedLine | null };
}

/** Two lines as they lay to each other, and how they were joined then. */
interface KnownPair {
  readonly joined: Joined | null;
  readonly pair: Pair | null;
}

/** A run with the lines it was worked from. */
interface KnownRun {
  readonly run: Run;
  readonly lines: readonly WorkedLine[];
  readonly work: RunWork;
}

/**
 * Remembers the lines of the job last worked, so that after an edit only the lines that it changed are worked again
 * (`workJob(job, { memory })`), and only the runs that have one of them or were changed themselves. The result is the same as without; a line counts as unchanged when everything said
 * about it is, its surroundings too. Lines no longer in the job are forgotten. One memory is for one job at a time.
 */
export class WorkMemory {
  private known: ReadonlyMap<string, Known> = new Map();
  /** Of two lines as remembered; gone with either. */
  private readonly pairs = new WeakMap<Line, WeakMap<Line, KnownPair>>();
  private runsKnown: ReadonlyMap<string, KnownRun> = new Map();

  /** Each line by itself, in the job's order; what is not among them is forgotten. */
  lines(lines: readonly Line[], options: WorkOptions): readonly WorkedLine[] {
    const all = lines.map((line) => {
      const known = this.known.get(line.id);
      return known && sameData(known.line, line) ? known : freshOf(line);
    });
    this.known = new Map(all.map((known) => [known.line.id, known]));
    return all.map((known) => workedOf(known, options));
  }

  /** How two of those lines lie to each other: asked of `work` only when one of them is new, or their run is. */
  readonly pair: Recall = (line, other, { joined, work }) => {
    const beside = this.pairs.get(line) ?? new WeakMap<Line, KnownPair>();
    this.pairs.set(line, beside);
    const known = beside.get(other);
    if (known && sameData(known.joined, joined)) return known.pair;
    const pair = work();
    beside.set(other, { joined, pair });
    return pair;
  };

  /** Each run from its lines as worked by themselves, in the job's order; what is not among them is forgotten. */
  runs(runs: readonly Run[], all: readonly WorkedLine[], options: WorkOptions): readonly RunWork[] {
    const made = runs.map((run): KnownRun => {
      const lines = run.lines.flatMap((id) => all.filter(({ line }) => line.id === id));
      const known = this.runsKnown.get(keyOf(run, options));
      const same = known?.lines.length === lines.length && lines.every((line, i) => line === known.lines[i]);
      return known && same && sameData(known.run, run)
        ? known
        : { run, lines, work: workRun(run, lines, options) };
    });
    this.runsKnown = new Map(made.map((known) => [keyOf(known.run, options), known]));
    return made.map(({ work }) => work);
  }
}

/** Cures or not are two results. */
const keyOf = ({ id }: Run, { cures }: WorkOptions): string => `${cures === false} ${id}`;

const freshOf = (line: Line): Known => ({ line, worked: { with: null, without: null } });

function workedOf({ line, worked }: Known, options: WorkOptions): WorkedLine {
  const kind = options.cures === false ? 'without' : 'with';
  worked[kind] ??= workLine(line, options);
  return worked[kind];
}
