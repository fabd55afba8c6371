/** What the line keeps clear of: the tightest in a table, what is far off named with its distance. */
import type { ClearanceRow } from '@runback/checks';
import { MM_PER_INCH } from '@runback/job';
import { type Block, heading, paragraph, space } from './page-flow.ts';
import { type TableColumn, tableBlocks } from './page-table.ts';
import { exact, exactInTable, placeWords } from './page-words.ts';
import type { SheetContext } from './sheet-context.ts';

const CAP = 2.5;

const KIND: Readonly<Record<ClearanceRow['kind'], string>> = {
  surrounding: 'surrounding',
  line: 'other line',
  self: 'itself',
};

/** Room to spare from which a row tells a fabricator nothing. mm */
const FAR = { mm: 100, in: 4 * MM_PER_INCH } as const;
/** So many stand in the table however far off they are; a shorter list of far ones would save nothing. */
const LEAST_ROWS = 3;

const spare = ({ distance, keepOff }: ClearanceRow): number => distance - keepOff;
const tight = (row: ClearanceRow): boolean => spare(row) < 0;

/** Tightest first, measured by what is left of the distance wanted. */
export function clearanceBlocks(context: SheetContext, width: number): readonly Block[] {
  const { worked, plan } = context;
  const title = heading({ text: 'CLEARANCES, from the surface of the tube', width });
  if (worked.clearance.length === 0)
    return [...title, ...paragraph('The job gives nothing to keep clear of.', width, { cap: CAP }), space(1)];
  const sorted = [...worked.clearance].sort((a, b) => spare(a) - spare(b));
  const from = FAR[plan.unit === 'mm' ? 'mm' : 'in'];
  const near = Math.max(LEAST_ROWS, sorted.filter((row) => spare(row) < from).length);
  const cut = sorted.length - near < LEAST_ROWS ? sorted.length : near;
  const bold = sorted.filter(tight).length;
  const said =
    bold === 0
      ? 'Everything is as far off as it should be. Tightest first.'
      : `${bold} nearer than it should be: see the findings. Tightest first.`;
  return [
    ...title,
    ...paragraph(said, width, { cap: CAP, weight: bold === 0 ? 'regular' : 'bold', keep: true }),
    ...nearTable(context, sorted.slice(0, cut), width),
    ...farWords(context, sorted.slice(cut), width),
    space(1.5),
  ];
}

function nearTable(context: SheetContext, rows: readonly ClearanceRow[], width: number): readonly Block[] {
  const say = (mm: number): string => exactInTable(mm, context.plan.unit);
  const columns: readonly TableColumn[] = [
    { head: 'to', width: width * 0.22 },
    { head: 'what', width: width * 0.12 },
    { head: 'distance', width: width * 0.12, anchor: 'end' },
    { head: 'keep off', width: width * 0.12, anchor: 'end' },
    { head: 'from END A', width: width * 0.13, anchor: 'end' },
    { head: 'where', width: width * 0.29 },
  ];
  const cells = rows.map((row) => [
    row.kind === 'self' ? 'the tube itself' : row.to,
    KIND[row.kind],
    row.distance < 0 ? `OVERLAPS by ${say(-row.distance)}` : say(row.distance),
    say(row.keepOff),
    say(row.at),
    `${tight(row) ? 'TOO NEAR, ' : ''}${placeWords(row.at, context)}`,
  ]);
  return tableBlocks(columns, cells, { cap: CAP, minCap: 2, lines: 2 });
}

function farWords({ plan }: SheetContext, rows: readonly ClearanceRow[], width: number): readonly Block[] {
  if (rows.length === 0) return [];
  const list = rows.map(
    (row) =>
      `${row.kind === 'self' ? 'the tube itself' : row.kind === 'line' ? `line ${row.to}` : row.to} ${exact(row.distance, plan.unit)}`,
  );
  const text = `Farther off, each with ${plan.unit === 'mm' ? '100 mm' : '4 in'} or more to spare: ${list.join(' · ')}.`;
  return [space(1), ...paragraph(text, width, { cap: CAP })];
}
