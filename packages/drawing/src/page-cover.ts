/** The cover of a whole job: its lines, what to saw from which tube, what fails, what to be careful about. */
import { type BenchPlan, roundPlan } from '@runback/bending';
import type { WorkedJob, WorkedLine } from '@runback/checks';
import type { LengthStyle } from '@runback/job';
import { HEADER, type PaperName, papers, WIDTH } from './frame.ts';
import { type Block, flow, heading, paragraph, space } from './page-flow.ts';
import { bodyZone } from './page-paper.ts';
import { type TableColumn, tableBlocks } from './page-table.ts';
import { cell, joined, type Part, pen, rect, zone } from './set.ts';
import { foot } from './sheet-foot.ts';
import type { Page } from './types.ts';
import { cautionsOf, length, nameWords, size, tubeWords } from './words.ts';

export interface CoverOptions {
  /** Default A4. */
  readonly paper?: PaperName;
  /** Units printed; default: those of the job. */
  readonly units?: LengthStyle;
  /** BCP 47 language; default `en`. */
  readonly lang?: string;
}

const CAP = 2.8;

interface Covering {
  readonly job: WorkedJob;
  readonly unit: LengthStyle;
  readonly lines: readonly Listed[];
}

interface Listed {
  readonly worked: WorkedLine;
  /** The plan from A as it is sawn; null for a line that cannot exist. */
  readonly plan: BenchPlan | null;
}

/**
 * The cover of a job: as many pages as it needs, at least one.
 *
 * @throws RangeError when a bench of the job contradicts itself (a flat tool with its former above)
 */
export function coverPages(job: WorkedJob, options: CoverOptions = {}): readonly Page[] {
  const unit = options.units ?? job.units;
  const lines = job.lines.map(
    (worked): Listed => ({
      worked,
      plan: worked.plan === null ? null : roundPlan(worked.line, worked.plan, { unit }),
    }),
  );
  const covering = { job, unit, lines };
  const place = bodyZone(options.paper);
  const blocks = [...lineTable(covering), ...cutList(covering), ...failures(covering), ...cautions(covering)];
  const parts = flow(blocks, place);
  return parts.map((part, i) => ({
    ...papers[options.paper ?? 'a4'],
    title: `${job.title}: cover, page ${i + 1} of ${parts.length}`,
    description: `${job.lines.length} lines of ${job.title}, with what to saw and what fails.`,
    lang: options.lang ?? 'en',
    ...joined([
      head(covering),
      part,
      foot({ page: i + 1, pages: parts.length, options: { ...options, checksum: job.checksum }, unit }),
    ]),
  }));
}

const VERDICT_WIDTH = 80;

function head({ job, unit }: Covering): Part {
  const { x, y } = HEADER;
  const box = zone('verdict', [x + WIDTH - VERDICT_WIDTH, y], [VERDICT_WIDTH, 9.8]);
  const facts = [
    job.revision === null ? '' : `rev ${job.revision}`,
    job.lines.length === 1 ? '1 line' : `${job.lines.length} lines`,
    unit === 'mm' ? 'lengths in mm' : 'lengths in inches',
  ];
  return joined([
    cell(zone('name', [x, y], [WIDTH - VERDICT_WIDTH - 4, 10.2]), job.title, {
      cap: 7,
      minCap: 2.6,
      weight: 'bold',
      lines: 3,
    }),
    { zones: [], items: [rect(box, { fill: 0 })] },
    cell({ ...box, x: box.x + 3, width: box.width - 6 }, jobVerdict(job), {
      cap: 6,
      minCap: 3,
      weight: 'bold',
      anchor: 'middle',
      fill: 1,
    }),
    cell(zone('facts', [x, y + 11.4], [WIDTH - 70, 8]), facts.filter((word) => word !== '').join(' · '), {
      cap: 3.4,
      minCap: 2,
    }),
    { zones: [], items: [rect(DATE, { stroke: pen(0.3) })] },
    cell({ ...DATE, x: DATE.x + 1, y: DATE.y + 0.8, width: DATE.width - 2, height: 3 }, 'date, by', {
      cap: 1.9,
      at: 'top',
    }),
  ]);
}

const DATE = zone('date', [HEADER.x + WIDTH - 60, HEADER.y + 10.9], [60, 10.2]);

function jobVerdict({ lines, verdict }: WorkedJob): string {
  const failing = lines.filter((line) => line.verdict === 'fail').length;
  if (failing > 0) return `DO NOT BEND ${failing} of ${lines.length}`;
  return verdict === 'note' ? 'PASS, WITH NOTES' : 'ALL PASS';
}

const VERDICT: Readonly<Record<WorkedLine['verdict'], string>> = {
  pass: 'pass',
  note: 'pass, with notes',
  fail: 'DO NOT BEND',
};

function lineTable({ lines, unit }: Covering): readonly Block[] {
  const share = (part: number): number => (part * WIDTH) / 180;
  const columns: readonly TableColumn[] = [
    { head: '', width: share(8), weight: 'bold' },
    { head: 'line', width: share(52), weight: 'bold' },
    { head: 'hand', width: share(24) },
    { head: 'make', width: share(12), anchor: 'end' },
    { head: 'tube', width: share(36) },
    { head: 'bends', width: share(12), anchor: 'end' },
    { head: 'saw', width: share(16), anchor: 'end' },
    { head: '', width: share(20), weight: 'bold' },
  ];
  const rows = lines.map(({ worked, plan }, i) => [
    String(i + 1),
    nameWords(worked.line),
    worked.line.mirror === null ? 'as drawn' : 'OPPOSITE HAND',
    String(worked.line.quantity),
    tubeWords(worked.line, unit),
    plan === null ? '' : String(plan.rows.length),
    plan === null ? '' : length(plan.cutLength, unit),
    plan === null ? 'CANNOT BE MADE' : VERDICT[worked.verdict],
  ]);
  return [
    ...heading({ text: 'LINES', width: WIDTH }),
    ...tableBlocks(columns, rows, { cap: CAP, minCap: 2.2, lines: 2, least: 6 }),
    space(2),
  ];
}

/** What each tube is sawn into; the widths of saw cuts come on top. */
function cutList({ lines, unit }: Covering): readonly Block[] {
  const tubes = [...new Set(lines.map(({ worked }) => worked.line.tube.id))];
  const columns: readonly TableColumn[] = [
    { head: 'piece', width: WIDTH * 0.5 },
    { head: 'saw', width: WIDTH * 0.15, anchor: 'end' },
    { head: 'how many', width: WIDTH * 0.15, anchor: 'end' },
    { head: 'together', width: WIDTH * 0.2, anchor: 'end' },
  ];
  const made = tubes.flatMap((id) => {
    const own = lines.filter(({ worked }) => worked.line.tube.id === id);
    const rows = own.flatMap(({ worked, plan }) => (plan === null ? [] : [{ worked, saw: plan.cutLength }]));
    if (rows.length === 0) return [];
    const { line } = own[0]!.worked;
    const all = rows.reduce((sum, { worked, saw }) => sum + saw * worked.line.quantity, 0);
    return [
      ...paragraph(`${tubeWords(line, unit)}${stockWords(line.tube.stock, unit)}`, WIDTH, {
        cap: CAP,
        weight: 'bold',
        keep: true,
      }),
      ...tableBlocks(
        columns,
        [
          ...rows.map(({ worked, saw }) => [
            `${nameWords(worked.line)}${worked.verdict === 'fail' ? ' (DO NOT BEND)' : ''}`,
            length(saw, unit),
            `× ${worked.line.quantity}`,
            length(saw * worked.line.quantity, unit),
          ]),
          ['together, saw cuts not counted', '', '', length(all, unit)],
        ],
        { cap: CAP, minCap: 2.2 },
      ),
      space(2),
    ];
  });
  return made.length === 0 ? [] : [...heading({ text: 'TO SAW', width: WIDTH }), ...made];
}

const stockWords = (stock: number | null, unit: LengthStyle): string =>
  stock === null ? '' : `, from lengths of ${size(stock, unit)}`;

function failures({ job, lines }: Covering): readonly Block[] {
  const all = job.lines.flatMap((line) => line.findings);
  const count = (verdict: string): number => all.filter((finding) => finding.verdict === verdict).length;
  const title = `FINDINGS: ${count('fail')} fail, ${count('note')} to note, ${count('pass')} pass`;
  const said = lines.flatMap(({ worked }, i) =>
    worked.findings
      .filter((finding) => finding.verdict === 'fail')
      .flatMap((finding) =>
        paragraph(`${i + 1}: FAIL: ${finding.message}`, WIDTH, { cap: CAP, weight: 'bold' }),
      ),
  );
  const none = paragraph('Nothing fails. What is to note stands on the sheet of each line.', WIDTH, {
    cap: CAP,
  });
  return [...heading({ text: title, width: WIDTH }), ...(said.length === 0 ? none : said), space(2)];
}

function cautions({ lines }: Covering): readonly Block[] {
  const once = cautionsOf(lines.map(({ worked }) => worked.line));
  if (once.length === 0) return [];
  return [
    ...heading({ text: 'CAUTIONS', width: WIDTH }),
    ...once.flatMap((text) => paragraph(text, WIDTH, { cap: CAP })),
  ];
}
