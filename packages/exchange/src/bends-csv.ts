import type { BendPlan, PlanRow } from '@runback/bending';
import type { WorkedJob, WorkedLine } from '@runback/checks';
import { type Cell, csv } from './csv.ts';
import { deg } from './plain.ts';

const LINE_HEADS = [
  'line',
  'name',
  'verdict',
  'tube',
  'OD mm',
  'wall mm',
  'finished length mm',
  'cut length mm',
];

const BEND_HEADS = [
  'bend',
  'points',
  'straight before mm',
  'turn deg (clockwise looking from A to Z)',
  'clock deg',
  'bend deg',
  'radius mm',
  'bend start mm from finished A',
  'bend end mm from finished A',
  'mark mm from sawn A',
  'mark mm from finished A',
  'dial deg',
  'calibrated',
];

const END_HEADS = ['last straight mm'];

/**
 * The bends of a whole job as a table (RFC 4180, CRLF), one row for each bend, exact values in mm and degrees, read
 * from end A; a line without bends has one row, one that cannot exist too, with its verdict and empty cells.
 *
 * @example
 * ```ts
 * import { bendsCsv } from '@runback/exchange';
 * const empty = { title: 'Pump', revision: null, units: 'mm', checksum: '', verdict: 'pass', lines: [], runs: [], surroundings: [] } as const;
 * bendsCsv(empty).split(',')[0]; // => "line"
 * ```
 */
export const bendsCsv = (job: WorkedJob): string =>
  csv([...LINE_HEADS, ...BEND_HEADS, ...END_HEADS], job.lines.flatMap(lineRows));

function lineRows(worked: WorkedLine): Cell[][] {
  const { plan } = worked;
  const head = lineCells(worked);
  if (plan === null) return [[...head, ...BEND_HEADS.map(() => null), null]];
  if (plan.rows.length === 0) return [[...head, ...BEND_HEADS.map(() => null), plan.lastStraight]];
  return plan.rows.map((row) => [...head, ...bendCells(row), plan.lastStraight]);
}

const lineCells = ({ line, verdict, plan }: WorkedLine): Cell[] => [
  line.id,
  line.name,
  verdict,
  line.tube.material.name,
  line.tube.od,
  line.tube.wall,
  ...lengths(plan),
];

const lengths = (plan: BendPlan | null): Cell[] => [plan?.developedLength ?? null, plan?.cutLength ?? null];

const bendCells = (row: PlanRow): Cell[] => [
  row.bendFromA,
  row.points.join(' '),
  row.straightBefore,
  row.turn === null ? null : deg(row.turn),
  deg(row.clock),
  deg(row.angle),
  row.radius,
  row.start,
  row.end,
  row.mark,
  row.markFinished,
  deg(row.dial),
  row.calibrated ? 'yes' : 'no',
];
