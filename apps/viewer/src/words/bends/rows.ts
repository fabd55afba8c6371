/** What the table of bends says, as texts. */
import {
  type BenchPlan,
  type BenchRow,
  formatDegrees,
  formatLength,
  type TurnWords,
  type WorkedLine,
} from 'runback';

export interface BendRow {
  /** Index of the bend from end A, from 0: what a selection names it by. */
  readonly index: number;
  /** `B2`; worked from Z also which one it is counted from A. */
  readonly name: string;
  readonly fromA: string | null;
  readonly mark: string;
  readonly turn: string;
  /** What to see when the turn is right, and what a plain half turn would cost. */
  readonly seen: string | null;
  /** `null`: not calibrated, there is nothing to set yet. */
  readonly dial: string | null;
  readonly angle: string;
  readonly radius: string;
  readonly straightBefore: string;
}

export const bendRows = (bench: BenchPlan): readonly BendRow[] =>
  bench.rows.map((row) => bendRow(row, bench));

function bendRow(row: BenchRow, { unit, from }: BenchPlan): BendRow {
  const length = (mm: number): string => formatLength(mm, unit, { bare: true });
  const { exact, words } = row;
  return {
    index: row.bendFromA - 1,
    name: from === 'A' ? `B${row.bendFromA}` : String(row.bend),
    fromA: from === 'A' ? null : `B${row.bendFromA}`,
    mark: length(row.mark),
    turn: turnWords(words),
    seen: [words.confirmation, flatWords(row, unit)].filter((text) => text !== null).join('; ') || null,
    dial: row.calibrated ? formatDegrees(row.dial) : null,
    angle: formatDegrees(exact.angle),
    radius: length(exact.radius),
    straightBefore: length(exact.straightBefore),
  };
}

/** What the hands do. */
export function turnWords({ kind, head, amount }: TurnWords): string {
  if (kind === 'first') return 'Pencil line at the former; no turn';
  if (kind === 'none') return head;
  return kind === 'turn' ? `${head} ${amount}` : `${head}${kind === 'half' ? ':' : ','} ${amount}`;
}

const flatWords = ({ words, flatJog }: BenchRow, unit: BenchPlan['unit']): string | null =>
  words.offerFlat && flatJog
    ? `a plain half turn would put the far end ${formatLength(flatJog.distance, unit).replaceAll(' ', '\u00a0')} out`
    : null;

/** Sentences under the table: where marks run from, how turns are seen, what rounding costs. */
export function benchNotes(bench: BenchPlan): readonly string[] {
  const { rows, hook, unit, free, miss } = bench;
  if (rows.length === 0) return [];
  const seen = rows.flatMap(({ words }) => (words.note === null ? [] : [words.note]));
  return [
    `Every mark is measured from the ${hook.words}.`,
    `Mark, turn and dial are rounded for the bench; that moves end ${free} by ${formatLength(miss.distance, unit)}.`,
    ...new Set(seen),
    ...bench.order.notes,
  ];
}

/** Estimates and allowances, each a sentence. */
export function estimates({ findings, plan }: WorkedLine, unit: BenchPlan['unit']): readonly string[] {
  const wall = findings.filter(({ check }) => check === 'wall').map(({ message }) => message);
  if (plan === null || plan.rows.length === 0) return wall;
  const stretch =
    plan.stretch === 0
      ? 'No stretch is given for this tool: the cut length allows for none.'
      : `The bends stretch the tube by ${formatLength(plan.stretch, unit)} in all: the cut length is that much shorter.`;
  return [...wall, stretch];
}
