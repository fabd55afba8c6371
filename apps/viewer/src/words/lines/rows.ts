/** What the list of lines says of each. */
import { formatLength, type LengthStyle, type Verdict, type WorkedJob, type WorkedLine } from 'runback';
import { benchOf } from '../parts/bench.ts';

export interface LineRow {
  readonly id: string;
  readonly name: string;
  readonly verdict: Verdict;
  readonly tube: string;
  /** `4 bends`; for a line that cannot exist, that. */
  readonly bends: string;
  /** `cut 702.5 mm`; as on the sheet, none for a line that fails. */
  readonly cut: string | null;
  readonly quantity: string | null;
  readonly oppositeHand: boolean;
}

export const lineRows = (job: WorkedJob, style: LengthStyle): readonly LineRow[] =>
  job.lines.map((worked) => lineRow(worked, style));

function lineRow(worked: WorkedLine, style: LengthStyle): LineRow {
  const { line, verdict } = worked;
  const bench = benchOf(worked, 'A', style);
  return {
    id: line.id,
    name: line.name,
    verdict,
    tube: line.tube.id,
    bends: bench ? many(bench.rows.length, 'bend', 'bends') : 'cannot exist as drawn',
    cut: bench && verdict !== 'fail' ? `cut ${formatLength(bench.cutLength, style)}` : null,
    quantity: line.quantity > 1 ? `make ${line.quantity}` : null,
    oppositeHand: line.mirror !== null,
  };
}

export interface RunRow {
  readonly id: string;
  readonly name: string;
  readonly verdict: Verdict;
  /** Names of its lines in order. */
  readonly lines: string;
  /** Id of the first. */
  readonly first: string;
}

export function runRows({ runs, lines }: Pick<WorkedJob, 'runs' | 'lines'>): readonly RunRow[] {
  const names = new Map(lines.map(({ line }) => [line.id, line.name]));
  return runs.map(({ run, verdict }) => ({
    id: run.id,
    name: run.name,
    verdict,
    lines: run.lines.map((id) => names.get(id) ?? id).join(' → '),
    first: run.lines[0]!,
  }));
}

const many = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;

/** `5 lines: 1 passes, 2 with notes, 2 fail`. */
export function jobWords({ lines }: WorkedJob): string {
  const count = (verdict: Verdict): number => lines.filter((line) => line.verdict === verdict).length;
  const parts = [
    [count('fail'), 'fail', 'fails'],
    [count('note'), 'have notes', 'has notes'],
    [count('pass'), 'pass', 'passes'],
  ] as const;
  const said = parts.filter(([n]) => n > 0).map(([n, more, one]) => `${n} ${n === 1 ? one : more}`);
  return `${many(lines.length, 'line', 'lines')}: ${said.join(', ')}`;
}

/** Which line an arrow key comes to; it stops at the first and the last. */
export function lineAfter(ids: readonly string[], now: string, key: string): string | null {
  const at = ids.indexOf(now);
  const to = {
    ArrowDown: at + 1,
    ArrowRight: at + 1,
    ArrowUp: at - 1,
    ArrowLeft: at - 1,
    Home: 0,
    End: ids.length - 1,
  }[key];
  return to === undefined ? null : (ids[Math.min(Math.max(to, 0), ids.length - 1)] ?? null);
}
