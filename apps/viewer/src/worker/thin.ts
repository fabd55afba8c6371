/** Only lines that changed are sent to the page: a worked line is large, and copying it is most of an answer's way. */
import type { WorkedJob, WorkedLine } from 'runback';

/** A job in which lines that the other side has already are their ids alone. */
export interface ThinJob extends Omit<WorkedJob, 'lines'> {
  readonly lines: readonly (WorkedLine | string)[];
}

/** What was last sent, or received, by id. Both sides see the same answers in the same order. */
type Known = ReadonlyMap<string, WorkedLine>;

const byId = (lines: readonly WorkedLine[]): Known => new Map(lines.map((line) => [line.line.id, line]));

/** The worker's side: remembers what it sent. */
export class Sender {
  private sent: Known = new Map();

  thin(job: WorkedJob): ThinJob {
    const { sent } = this;
    this.sent = byId(job.lines);
    return {
      ...job,
      lines: job.lines.map((line) => {
        const before = sent.get(line.line.id);
        return before && isSame(before, line) ? line.line.id : line;
      }),
    };
  }
}

/** The page's side: puts the lines it has back in. */
export class Receiver {
  private known: Known = new Map();

  /** @throws RangeError when a line is named that was never sent. */
  whole(job: ThinJob): WorkedJob {
    const lines = job.lines.map((line) => {
      const whole = typeof line === 'string' ? this.known.get(line) : line;
      if (!whole) throw new RangeError(`the worker sent no line ${JSON.stringify(line)}`);
      return whole;
    });
    this.known = byId(lines);
    return { ...job, lines };
  }
}

/** The very same parts. Lists are made anew when lines are compared with each other, and so are some findings in them. */
function isSame(a: WorkedLine, b: WorkedLine): boolean {
  const keys = Object.keys(b) as (keyof WorkedLine)[];
  return a === b || keys.every((key) => a[key] === b[key] || areSame(a[key], b[key]));
}

const areSame = (a: unknown, b: unknown): boolean =>
  Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((one, i) => isAlike(one, b[i]));

const isAlike = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);
