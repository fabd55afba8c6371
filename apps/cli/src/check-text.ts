/** The words of `check`: a table for each line and its findings. */
import type { Finding, JobUnit, Verdict, WorkedJob, WorkedLine } from 'runback';
import { degrees, length, size, turn } from './numbers.ts';
import { painter, plain, table, wrap } from './terminal.ts';

export interface TextOptions {
  readonly colour: boolean;
  readonly columns: number;
  /** Print the findings that pass too. */
  readonly all: boolean;
}

const STYLE = { pass: 'green', note: 'yellow', fail: 'red' } as const;
const WORD: Readonly<Record<Verdict, string>> = { pass: 'PASS', note: 'NOTE', fail: 'FAIL' };
const MARGIN = '        ';

/** Everything `runback check` prints about a job. */
export function jobText(job: WorkedJob, options: TextOptions): string {
  const paint = painter(options.colour);
  const verdict = paint(STYLE[job.verdict], WORD[job.verdict]);
  const head = `${paint('bold', plain(job.title))}${job.revision ? ` · revision ${plain(job.revision)}` : ''}  ${verdict}`;
  const units = job.units === 'mm' ? 'millimetres and degrees' : 'inches and degrees';
  const about = `Lengths in ${units}. Turns: where the next bend leaves, seen looking from A towards Z.`;
  const lines = job.lines.map((line) => lineText(line, options));
  return [head, wrap(about, options.columns, ''), '', ...lines, total(job)].join('\n');
}

function total(job: WorkedJob): string {
  const count = (verdict: Verdict): number => job.lines.filter((line) => line.verdict === verdict).length;
  const lines = job.lines.length === 1 ? '1 line' : `${job.lines.length} lines`;
  return `${lines}: ${count('pass')} pass, ${count('note')} with notes, ${count('fail')} fail`;
}

function lineText(worked: WorkedLine, options: TextOptions): string {
  const { line } = worked;
  const paint = painter(options.colour);
  const hand = line.mirror ? ' · OPPOSITE HAND' : '';
  const name = line.name === line.id ? plain(line.id) : `${plain(line.id)} · ${plain(line.name)}`;
  const title = `${paint('bold', name)}${hand}  ${paint(STYLE[worked.verdict], WORD[worked.verdict])}`;
  const body = worked.plan
    ? [tubeText(worked), ...bendTable(worked)]
    : ['  This line cannot exist as drawn.'];
  return [title, ...body, ...findingsText(worked, options), ''].join('\n');
}

function tubeText({ line, plan }: WorkedLine): string {
  if (!plan) return '';
  const { units, tube } = line;
  const dimensions = `${size(tube.od, units)} × ${size(tube.wall, units)} ${plain(tube.material.name)}`;
  const bends = plan.rows.length === 1 ? '1 bend' : `${plan.rows.length} bends`;
  const many = line.quantity > 1 ? `make ${line.quantity} · ` : '';
  return `  ${many}tube ${dimensions} · saw ${length(plan.cutLength, units)} · finished ${length(plan.developedLength, units)} · ${bends}`;
}

function bendTable({ plan, line }: WorkedLine): string[] {
  if (!plan || plan.rows.length === 0) return [];
  const { units } = line;
  const head = ['bend', 'straight', 'turn', 'angle', 'radius', 'mark, sawn A', 'mark, finished A', 'dial'];
  const rows = plan.rows.map((row) => [
    `B${row.bendFromA}`,
    length(row.straightBefore, units),
    turn(row.turn),
    degrees(row.angle),
    length(row.radius, units),
    length(row.mark, units),
    length(row.markFinished, units),
    row.calibrated ? degrees(row.dial) : 'not calibr.',
  ]);
  return table(head, [...rows, ['end Z', length(plan.lastStraight, units), '', '', '', '', '', '']]);
}

function findingsText(worked: WorkedLine, options: TextOptions): string[] {
  const order: readonly Verdict[] = options.all ? ['fail', 'note', 'pass'] : ['fail', 'note'];
  const shown = order.flatMap((verdict) => worked.findings.filter((finding) => finding.verdict === verdict));
  const passed = worked.findings.filter((finding) => finding.verdict === 'pass').length;
  const rest =
    options.all || passed === 0 ? [] : [`  ${passed === 1 ? '1 check passes' : `${passed} checks pass`}`];
  return [...shown.map((finding) => findingText(finding, worked.line.units, options)), ...rest];
}

function findingText(finding: Finding, units: JobUnit, options: TextOptions): string {
  const paint = painter(options.colour);
  const told = finding.at === null || finding.message.includes('from end');
  const where = told ? '' : ` At ${length(finding.at, units)} from A.`;
  const say = (text: string): string =>
    wrap(plain(text), Math.max(40, options.columns - MARGIN.length), MARGIN);
  const lines = [
    `  ${paint(STYLE[finding.verdict], WORD[finding.verdict])}  ${say(`${finding.check}: ${finding.message}${where}`)}`,
  ];
  if (finding.cure) lines.push(`${MARGIN}${say(`Cure: ${finding.cure.text}`)}`);
  if (finding.verdict !== 'pass') lines.push(paint('dim', `${MARGIN}${say(`Basis: ${finding.basis}`)}`));
  return lines.join('\n');
}
