/** Pages of exact values: what page 1 was rounded from, and all that is known of the line. They flow as long as they need. */
import type { BenchRow } from '@runback/bending';
import { clearanceBlocks } from './page-clearance.ts';
import { factBlocks } from './page-facts.ts';
import { cautionBlocks, findingBlocks } from './page-findings.ts';
import { endBlocks, proofBlocks } from './page-fitting.ts';
import { type Block, flow, heading, paragraph, space } from './page-flow.ts';
import { type Body, bodyZone } from './page-paper.ts';
import { slopeProofBlocks } from './page-slope.ts';
import { type TableColumn, tableBlocks } from './page-table.ts';
import { exact, exactDegrees, exactInTable, leavesWords, placeWords, slopeWords } from './page-words.ts';
import { PAGE_KINDS, type SheetContext } from './sheet-context.ts';

const CAP = 2.5;

/** As many pages as the values need; at least one. */
export function valueBodies(context: SheetContext): readonly Body[] {
  const place = bodyZone(context.options.paper);
  const blocks = [
    ...head(context, place.width),
    ...bendTable(context, place.width),
    ...section('FALL', slopeParagraphs(context), place.width),
    ...slopeProofBlocks(context, place.width),
    ...section('CLIPS', [clipWords(context)], place.width),
    ...clearanceBlocks(context, place.width),
    ...endBlocks(context, place.width),
    ...proofBlocks(context, place.width),
    ...factBlocks(context, place.width),
    ...findingBlocks(context, place.width),
    // Where the bench pages are printed too, they carry every caution.
    ...((context.options.pages ?? PAGE_KINDS).includes('bench') ? [] : cautionBlocks(context, place.width)),
  ];
  return flow(blocks, place).map((part) => ({ name: 'exact values', part }));
}

function section(title: string, texts: readonly string[], width: number): readonly Block[] {
  const said = texts.filter((text) => text !== '');
  if (said.length === 0) return [];
  return [
    ...heading({ text: title, width }),
    ...said.flatMap((text) => paragraph(text, width, { cap: CAP })),
    space(1),
  ];
}

function head({ plan }: SheetContext, width: number): readonly Block[] {
  const unit = plan.unit === 'mm' ? 'mm' : 'inches';
  const text = `Worked exactly, in ${unit} and degrees, before rounding for the bench. Bend by page 1, not by these.`;
  return [
    ...heading({ text: `EXACT VALUES, from END ${plan.from}`, width }),
    ...paragraph(text, width, { cap: CAP }),
  ];
}

/** Shares of the width. */
const BEND_COLUMNS = [
  ['bend', 13],
  ['straight before', 15],
  ['leaves, from the last', 33],
  ['bend angle', 15],
  ['radius', 13],
  ['start', 15],
  ['end', 15],
  ['mark, sawn end', 15],
  ['mark, finished end', 16],
  ['bend and measure, from', 30],
] as const;

function bendTable(context: SheetContext, width: number): readonly Block[] {
  const { plan } = context;
  const last = lastWords(context);
  if (plan.rows.length === 0)
    return [...paragraph(`Straight tube: no bends. ${last}`, width, { cap: CAP }), space(1)];
  const columns = BEND_COLUMNS.map(
    ([text, share], i): TableColumn => ({
      head: text,
      width: (share * width) / 180,
      anchor: i === 0 || i === 2 || i === 9 ? 'start' : 'end',
      ...(i === 0 ? { weight: 'bold' } : {}),
    }),
  );
  const seen = `“Leaves” is where a bend goes off from the last one, as seen from END ${plan.from} looking along the tube. The TUBE in the tool is turned the other way: go by the words of page 1.`;
  return [
    ...tableBlocks(
      columns,
      plan.rows.map((row) => cells(context, row)),
      { cap: CAP, minCap: 2, least: 5 },
    ),
    space(1),
    ...paragraph(seen, width, { cap: 2.2 }),
    ...paragraph(last, width, { cap: CAP }),
    space(1),
  ];
}

function cells({ plan }: SheetContext, { exact: row, bend, bendFromA }: BenchRow): readonly string[] {
  const say = (mm: number): string => exactInTable(mm, plan.unit);
  const { from, distance } = row.measured;
  const behind = { end: `END ${plan.from}`, back: 'back of last bend', corner: 'last corner' };
  return [
    plan.from === 'A' ? String(bend) : `${bend} (B${bendFromA})`,
    say(row.straightBefore),
    leavesWords(row.turn),
    exactDegrees(row.angle),
    exact(row.radius, plan.unit),
    say(row.start),
    say(row.end),
    say(row.mark),
    say(row.markFinished),
    `${say(distance)} · ${behind[from]}`,
  ];
}

function lastWords({ plan, worked }: SheetContext): string {
  const bends = plan.rows.length;
  const length = worked.centreline?.length ?? 0;
  const exactPlan = worked.plan;
  const say = (mm: number): string => exact(mm, plan.unit);
  const straight = worked.centreline?.pieces.at(plan.from === 'A' ? -1 : 0)?.length ?? 0;
  return [
    bends === 0 ? '' : `Last straight, bend ${bends} to END ${plan.free}: ${say(straight)}.`,
    `Finished length ${say(length)}.`,
    exactPlan === null ? '' : `Sawn length ${say(exactPlan.cutLength)}.`,
    exactPlan === null || exactPlan.stretch === 0
      ? ''
      : `The tube grows ${say(exactPlan.stretch)} in its bends.`,
  ]
    .filter((text) => text !== '')
    .join(' ');
}

function slopeParagraphs(context: SheetContext): readonly string[] {
  const { slope } = context.worked;
  const { unit } = context.plan;
  if (slope === null) return [slopeWords(context)];
  const list = (places: readonly { readonly at: number }[]): string =>
    places.map(({ at }) => `${placeWords(at, context)}, ${exact(at, unit)} from END A`).join('; ');
  const low =
    slope.lows.length === 0
      ? 'No low point between the ends at rest.'
      : `Low points at rest, where liquid stays: ${list(slope.lows)}.`;
  const high =
    slope.highs.length === 0
      ? 'No high point between the ends at rest.'
      : `High points at rest, where air stays: ${list(slope.highs)}.`;
  return [slopeWords(context), `${low} ${high}`];
}

function clipWords({ worked, plan }: SheetContext): string {
  const { clips, clipSpacing } = worked.line;
  if (clips === null) return 'The job gives no clips.';
  const list = clips.length === 0 ? 'none' : clips.map((at) => exact(at, plan.unit)).join(' · ');
  const most =
    clipSpacing === null
      ? ''
      : ` At most ${exact(clipSpacing.value, plan.unit)} may hang free (${clipSpacing.source}).`;
  return `From finished END A, along the centreline: ${list}.${most}`;
}
