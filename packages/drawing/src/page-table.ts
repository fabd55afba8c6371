/** Tables of words and figures that flow over pages; the head stands again on each. */
import { fitLines } from './fit.ts';
import { blockHeight, evened } from './lines.ts';
import type { Block } from './page-flow.ts';
import { cell, joined, line, type Part, pen, rect, type Style, zone } from './set.ts';
import type { Anchor, Weight } from './types.ts';

export interface TableColumn {
  readonly head: string;
  /** mm */
  readonly width: number;
  readonly anchor?: Anchor;
  readonly weight?: Weight;
}

export interface TableStyle {
  readonly cap: number;
  readonly minCap: number;
  /** Cells shrink before they take more lines than this; default 1. */
  readonly lines?: number;
  /** Least height of a row, mm. */
  readonly least?: number;
}

/** Air between the columns, mm. */
const GUTTER = 2;
const PAD = 0.75;
const ROW_GREY = 0.93;
/** A table no taller than this stays on one page, mm. */
const TOGETHER = 45;
/** A cell becomes this many lines before words are lost. */
const LINES = 8;

/** A head and rows; every row as tall as its tallest cell needs, every column of one size. */
export function tableBlocks(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
  style: TableStyle,
): readonly Block[] {
  const head = headOf(columns, style);
  const caps = columns.map((column, j) =>
    capOf(
      rows.map((texts) => texts[j] ?? ''),
      column,
      style,
    ),
  );
  const heights = rows.map((texts) => {
    const tall = columns.map((column, j) =>
      tallest(texts[j] ?? '', column, { cap: caps[j]!, minCap: caps[j]! }),
    );
    return Math.max(style.least ?? 0, Math.max(...tall) + 2 * PAD);
  });
  const short = heights.reduce((sum, one) => sum + one, 0) <= TOGETHER;
  return [
    head,
    ...rows.map((texts, i): Block => {
      const height = heights[i]!;
      return {
        height,
        // A short table is not torn; of a long one neither the first row nor the last stands alone on a page.
        keep: i < rows.length - 1 && (short || i === 0 || i === rows.length - 2),
        again: head,
        draw: ({ x, y, width }, name) =>
          joined([
            ...(i % 2 === 1 ? [shade({ x, y, width, height })] : []),
            rowOf({ columns, texts, caps }, { x, y: y + EDGE, height: height - 2 * EDGE, name }),
          ]),
      };
    }),
  ];
}

/** Rows keep this much apart, mm. */
const EDGE = 0.05;

/** The largest size at which no cell of a column needs more lines than asked, down to the least. */
function capOf(texts: readonly string[], column: TableColumn, style: TableStyle): number {
  const few = { ...styleOf(column, style), lines: style.lines ?? 1, width: column.width - GUTTER };
  return Math.min(...texts.map((text) => (text === '' ? style.cap : fitLines(text, few).cap)), style.cap);
}

const shade = (box: Parameters<typeof rect>[0]): Part => ({
  zones: [],
  items: [rect(box, { fill: ROW_GREY })],
});

const styleOf = (
  { anchor = 'start', weight = 'regular' }: TableColumn,
  { cap, minCap }: TableStyle,
): Style => ({
  cap,
  minCap,
  weight,
  anchor,
  lines: LINES,
  first: 'wrap',
});

function tallest(text: string, column: TableColumn, style: TableStyle): number {
  if (text === '') return 0;
  const { cap, lines } = fitLines(text, { ...styleOf(column, style), width: column.width - GUTTER });
  return blockHeight(lines.map(evened)) * cap;
}

interface Row {
  readonly columns: readonly TableColumn[];
  readonly texts: readonly string[];
  readonly caps: readonly number[];
}

interface RowPlace {
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly name: string;
}

function rowOf({ columns, texts, caps }: Row, { x, y, height, name }: RowPlace): Part {
  let left = x;
  return joined(
    columns.map((column, j) => {
      const place = zone(`${name} ${j + 1}`, [left + GUTTER / 2, y], [column.width - GUTTER, height]);
      left += column.width;
      return cell(place, texts[j] ?? '', styleOf(column, { cap: caps[j]!, minCap: caps[j]! }));
    }),
  );
}

function headOf(columns: readonly TableColumn[], style: TableStyle): Block {
  const bold = columns.map((column) => ({ ...column, weight: 'bold' as const }));
  const small = { cap: Math.min(2.1, style.cap), minCap: 1.6 };
  const texts = columns.map((column) => column.head);
  const tall = Math.max(...bold.map((column, j) => tallest(texts[j]!, column, small)));
  const height = tall + 2.4;
  return {
    height,
    keep: true,
    draw: ({ x, y, width }, name) =>
      joined([
        rowOf(
          { columns: bold, texts, caps: bold.map(() => small.cap) },
          { x, y: y + 0.6, height: tall + 0.6, name },
        ),
        { zones: [], items: [line([x, y + height - 0.6], [x + width, y + height - 0.6], pen(0.4))] },
      ]),
  };
}
