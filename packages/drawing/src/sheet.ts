import { type BenchPlan, bendPlan, roundPlan } from '@runback/bending';
import type { WorkedLine } from '@runback/checks';
import type { Centreline } from '@runback/geometry';
import { papers } from './frame.ts';
import { detailBodies } from './page-detail.ts';
import { pageOf } from './page-paper.ts';
import { slopeProofWords } from './page-slope.ts';
import { cell, joined, line, type Part, pen, zone } from './set.ts';
import { after } from './sheet-after.ts';
import { before } from './sheet-before.ts';
import { cautions } from './sheet-cautions.ts';
import { frameOf, PAGE_KINDS, type SheetContext, type SheetOptions } from './sheet-context.ts';
import { foot } from './sheet-foot.ts';
import { header } from './sheet-header.ts';
import { stand } from './sheet-stand.ts';
import { table } from './sheet-table.ts';
import { ON_A_LATER_PAGE, type Paragraph, type Stacked, stack } from './stack.ts';
import { stamp } from './stamp.ts';
import type { Page, Zone } from './types.ts';

/**
 * The bend sheet of a worked line: A4 pages to pin over the bender, worked from either end. A line with a failing
 * finding is stamped DO NOT BEND; a line whose geometry cannot exist has no pages.
 *
 * @throws RangeError when the job's bench contradicts itself (a flat tool with its former above)
 */
export function sheetPages(worked: WorkedLine, options: SheetOptions): readonly Page[] {
  if (worked.centreline === null) return [];
  const plan = benchPlan(worked, worked.centreline, options);
  const kinds = options.pages ?? PAGE_KINDS;
  const context: SheetContext = { worked, plan, options, page: 1, pages: 1 };
  const bench = kinds.includes('bench') ? benchBodies(context) : [];
  const details = detailBodies(context).filter(({ kind }) => kinds.includes(kind));
  const pages = bench.length + details.length;
  return [
    ...bench.map((body, i) => assembled({ ...context, page: i + 1, pages }, body)),
    ...details.map(({ body }, i) => pageOf({ ...context, page: bench.length + 1 + i, pages }, body)),
  ];
}

/** The pages with rows, and behind them what they had no room for. */
function benchBodies(context: SheetContext): readonly Part[] {
  const count = Math.max(1, Math.ceil(context.plan.rows.length / frameOf(context.options).rowsPerPage));
  const rows = Array.from({ length: count }, (_, i) => bodyOf({ ...context, page: i + 1, pages: count }));
  const left = rows.flatMap((body) => body.left);
  const words = [...new Map(left.map((p) => [p.text, p])).values()];
  return [...rows.map(({ part }) => part), ...(words.length > 0 ? wordBodies(context, words) : [])];
}

function benchPlan({ line }: WorkedLine, centreline: Centreline, options: SheetOptions): BenchPlan {
  const { from = 'A', units = line.units, snap = [] } = options;
  return roundPlan(line, bendPlan(line, centreline, from), { unit: units, snap });
}

/** What stands between header and foot of a page with rows; `context.pages` counts only such pages here. */
function bodyOf(context: SheetContext): Omit<Stacked, 'cap'> {
  const { rows, said } = setTogether(context, slopeProofWords(context));
  const boxes = [before(context), rows, after(context), said];
  const part = joined([stand(context), ...boxes.map((box) => box.part)]);
  return { part, left: boxes.flatMap((box) => box.left) };
}

/** Down to this the cautions stay together in their band. mm */
const LEAST_ALONE = 2.8;
/** What goes on under the table may be this much smaller than the cautions that everybody must read. */
const LEAST_SHARE = 0.65;
/** Least sizes tried for the cautions; below the last they go overleaf. mm */
const CAUTION_CAPS = [3.5, 3, 2.6, 2.1] as const;

type TableAndCautions = Record<'rows' | 'said', Stacked>;

/** Cautions too many for their band go on under a short table, and only then overleaf. */
function setTogether(context: SheetContext, more: readonly Paragraph[]): TableAndCautions {
  const alone = cautions(context, { more, pointer: ON_A_LATER_PAGE, minCap: LEAST_ALONE });
  if (alone.left.length === 0) return { rows: table(context, []), said: alone };
  for (const minCap of CAUTION_CAPS) {
    const said = cautions(context, { more, pointer: pointer(context), minCap });
    const rows = table(context, said.left);
    if (rows.left.length === 0 && rows.cap >= LEAST_SHARE * minCap)
      return { rows, said: { ...said, left: [] } };
  }
  return {
    rows: table(context, []),
    said: cautions(context, { more, pointer: ON_A_LATER_PAGE, minCap: 2.1 }),
  };
}

const pointer = ({ plan }: SheetContext): string =>
  plan.rows.length === 0 ? 'MORE above, under STRAIGHT TUBE.' : 'MORE below the bend table.';

/** Pages of what the pages with rows had no room for. */
function wordBodies(context: SheetContext, words: readonly Paragraph[]): readonly Part[] {
  const band = frameOf(context.options).words;
  const { x, y, width } = band;
  const head = cell(zone('more head', [x, y - 6], [width, 5]), 'MORE CAUTIONS, FINDINGS AND NOTES', {
    cap: 3,
    weight: 'bold',
  });
  const rule = { zones: [], items: [line([x, y - 7], [x + width, y - 7], pen(0.8))] };
  const first = stack(band, words, { cap: 3.5, minCap: 2.2 });
  // A single paragraph longer than a page is cut there rather than never printed.
  const one = first.left.length < words.length ? first : longest(band, words);
  const page = joined([rule, head, one.part]);
  return one.left.length === 0 ? [page] : [page, ...wordBodies(context, one.left)];
}

function longest(band: Zone, words: readonly Paragraph[]): Stacked {
  const part = cell(band, words[0]!.text, { cap: 2.2, lines: 400, at: 'top' });
  return { part, left: words.slice(1), cap: 2.2 };
}

/** Header and foot round a body; grey bands first, the stamp over all. */
function assembled(context: SheetContext, body: Part): Page {
  const { worked, plan, options, page, pages } = context;
  const { zones, items } = joined([header(context), body, foot({ page, pages, options, unit: plan.unit })]);
  return {
    ...papers[options.paper ?? 'a4'],
    title: `${worked.line.name}: bend sheet from END ${plan.from}, page ${page} of ${pages}`,
    description: describe(worked, plan),
    lang: options.lang ?? 'en',
    zones,
    items: worked.verdict === 'fail' ? [...items, stamp(options.paper)] : items,
  };
}

function describe(worked: WorkedLine, plan: BenchPlan): string {
  const bends = plan.rows.length === 1 ? '1 bend' : `${plan.rows.length} bends`;
  const verdict = worked.verdict === 'fail' ? ' Do not bend: a check fails.' : '';
  return `${bends}, worked from END ${plan.from}. ${plan.rows.map((row) => `${row.bend}: ${row.words.line}.`).join(' ')}${verdict}`;
}
