import type { BenchPlan, Park } from '@runback/bending';
import { type Column, column, columns } from './columns.ts';
import { endViewing } from './end-view.ts';
import { ROW_HEIGHT, TABLE_HEAD } from './frame.ts';
import { cell, joined, line, type Part, pen, type Style, zone } from './set.ts';
import { frameOf, type SheetContext } from './sheet-context.ts';
import { figures, type RowPlace, tableRow } from './sheet-row.ts';
import { type Paragraph, type Stacked, stack, stackOrPoint } from './stack.ts';
import type { Zone } from './types.ts';
import { degrees, length, missWords } from './words.ts';

/** The bend table: the rows of one page, what there is to say about them all, and `more` where there is room. */
export function table(context: SheetContext, more: readonly Paragraph[]): Stacked {
  const { plan, page, options } = context;
  const { bands, rowsPerPage } = frameOf(options);
  const rows = plan.rows.slice((page - 1) * rowsPerPage, page * rowsPerPage);
  const { x, y, width } = bands.table;
  const end = y + TABLE_HEAD + Math.max(1, rows.length) * ROW_HEIGHT;
  const rules = [line([x, y], [x + width, y], pen(0.8)), line([x, end], [x + width, end], pen(0.8))];
  const shared = { plan, ...columnsOfFigures(plan) };
  const body = rows.map((row, i) =>
    tableRow(row, { ...shared, top: y + TABLE_HEAD + i * ROW_HEIGHT, grey: i % 2 === 1 }),
  );
  const under = { ...bands.table, y: end, height: y + bands.table.height - end };
  const below = notes(under, [...noteWords(context), ...more]);
  const top = rows.length === 0 ? straight(bands.table) : head(plan, y);
  return { ...below, part: joined([top, ...body, { zones: [], items: rules }, below.part]) };
}

/** Marks and dials are one size down the whole line, so that no row looks more important than another. */
function columnsOfFigures({ rows, unit }: BenchPlan): Pick<RowPlace, 'bends' | 'marks' | 'dials'> {
  const width = (name: Column): number => column(name, '', [0, ROW_HEIGHT]).width;
  return {
    bends: figures(
      rows.map((row) => String(row.bend)),
      { width: width('bend'), decimal: false },
    ).cap,
    marks: figures(
      rows.map((row) => length(row.mark, unit)),
      { width: width('mark'), decimal: unit === 'mm' },
    ),
    dials: figures(
      rows.map((row) => degrees(row.dial)),
      { width: width('dial'), decimal: true },
    ),
  };
}

function straight({ x, y, width }: Zone): Part {
  const place = zone('straight', [x, y + 2], [width, TABLE_HEAD + ROW_HEIGHT - 4]);
  return cell(place, 'STRAIGHT TUBE: no bends', { cap: 6, minCap: 4, weight: 'bold' });
}

const HEADS: Readonly<Record<Column, string>> = {
  bend: '',
  mark: 'MARK',
  picture: '',
  turn: 'TURN',
  flag: 'CHECK TURN',
  dial: 'DIAL °',
  check: 'CHECK BEFORE YOU PULL',
};

/** Without a spring-back the dial shows only what is wanted, and that is not what to set. */
const dialHead = ({ rows }: BenchPlan): string =>
  rows.every((row) => !row.calibrated) ? 'BEND °, DIAL NOT SET' : HEADS.dial;

function head(plan: BenchPlan, y: number): Part {
  const span = [y + 0.8, TABLE_HEAD - 1.6] as const;
  const style: Style = { cap: 3, minCap: 2, weight: 'bold', lines: 2, at: 'bottom', first: 'wrap' };
  const right = new Set<Column>(['mark', 'dial']);
  return joined([
    ...columns.map((name) =>
      cell(column(name, 'head', span), name === 'dial' ? dialHead(plan) : HEADS[name], {
        ...style,
        anchor: right.has(name) ? 'end' : 'start',
      }),
    ),
    cell(column('picture', 'head', span), `seen from ${endViewing(plan.bench).from}`, {
      ...style,
      cap: 2.2,
      minCap: 1.8,
      anchor: 'middle',
      weight: 'regular',
    }),
  ]);
}

/** Under the last row: where marks run from, what rounding costs, where nuts wait, where the rest is. */
function notes({ x, y, width, height }: Zone, words: readonly Paragraph[]): Stacked {
  const place = zone('below table', [x, y + 1.4], [width, height - 2.4]);
  const list = stack(place, words, { cap: 3, minCap: 2.2, columns: 2 });
  if (list.left.length === 0) return list;
  const close = stack(place, words, { cap: 2.3, minCap: 1.9, columns: 2, gap: 0.3 });
  if (close.left.length === 0) return close;
  // Under seven rows there is little room: one running text holds more than a list.
  const loud = words.filter(({ weight }) => weight === 'bold');
  const rest = words.filter((word) => !loud.includes(word)).map(({ text }) => text);
  const running = stack(place, [...loud, { text: rest.join(' • ') }], { cap: 2.2, minCap: 1.9, gap: 0.3 });
  return running.left.length === 0
    ? running
    : stackOrPoint(place, words, { cap: 2.2, minCap: 2.2, columns: 2 });
}

function noteWords({ plan, page, pages, options }: SheetContext): Paragraph[] {
  const { order, hook, miss, free, rows, unit } = plan;
  const marks = rows.length === 0 ? [] : [`Every mark is measured from the ${hook.words}.`];
  if (page < pages) {
    const next = `Bends ${page * frameOf(options).rowsPerPage + 1} to ${rows.length} follow on page ${page + 1}.`;
    return [{ text: next, weight: 'bold' }, ...marks.map((text) => ({ text }))];
  }
  const last =
    rows.length === 0
      ? []
      : [
          `Rounding moves END ${free} by ${missWords(miss.distance, unit)}.`,
          `Straight after the last bend: ${length(plan.lastStraight, unit)}.`,
        ];
  const flag = rows.length > 1 ? [FLAG] : [];
  return [...marks, ...last, ...parkWords(order.parks), ...order.notes, ...flag].map((text) => ({ text }));
}

const FLAG =
  'Flag: a plate clamped square on the tube in the plane of the last bend; zero its gauge before each turn.';

/** Where nuts and sleeves wait; those of one end that share a place are said together. */
function parkWords(parks: readonly Park[]): string[] {
  const places = new Map<string, string[]>();
  for (const { words } of parks) {
    const [name = '', place = ''] = words.split(': ');
    places.set(place, [...(places.get(place) ?? []), name]);
  }
  return [...places].map(([place, names]) => `${names.join(' and ')}: ${place}.`);
}
