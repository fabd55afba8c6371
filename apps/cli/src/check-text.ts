/** The words of `check`: for each line a table, its findings and its figures; then the runs. */
import type {
  BendPlan,
  FactGroup,
  Finding,
  JobUnit,
  Verdict,
  WorkedJob,
  WorkedLine,
  WorkedRun,
} from 'runback';
import {
  block,
  type Figures,
  factsText,
  leftOut,
  shownFacts,
  type TextOptions,
  type Told,
  toldOnce,
} from './facts-text.ts';
import { degrees, length, size, turn } from './numbers.ts';
import { painter, plain, table, wrap } from './terminal.ts';

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
  const ofLines = job.lines.map((line) => lineFigures(line, options.all));
  const ofRuns = job.runs.map((run) => runFigures(run, options.all));
  const told = toldOnce([...ofLines, ...ofRuns]);
  const lines = job.lines.map((line, i) => lineText(line, { figures: ofLines[i]!, told }, options));
  const runs = job.runs.map((run, i) => runText(run, { figures: ofRuns[i]!, told }, options));
  const more = leftOut([...job.lines, ...job.runs], [...ofLines, ...ofRuns]);
  return [
    head,
    wrap(about, options.columns, ''),
    '',
    ...lines,
    ...runs,
    ...(more === null ? [] : [paint('dim', wrap(more, options.columns, ''))]),
    total(job),
  ].join('\n');
}

/** What is printed of a line or a run, and where what it rests on is told. */
interface Printed {
  readonly figures: Figures;
  readonly told: Told;
}

const lineFigures = ({ line, facts }: WorkedLine, all: boolean): Figures => ({
  of: plain(line.id),
  facts: shownFacts(facts, asked(line), all),
});

const runFigures = ({ run, facts }: WorkedRun, all: boolean): Figures => ({
  of: `run ${plain(run.id)}`,
  facts: shownFacts(facts, [], all),
});

/** A job that names a pressure, a flow or temperatures wants to know what they do. */
function asked({ duty: { pressure, flow, temperature } }: WorkedLine['line']): readonly FactGroup[] {
  const wanted = { pressure, flow, thermal: temperature } as const;
  return (['pressure', 'flow', 'thermal'] as const).filter((group) => wanted[group] !== null);
}

function total(job: WorkedJob): string {
  const count = (verdict: Verdict): number => job.lines.filter((line) => line.verdict === verdict).length;
  const lines = job.lines.length === 1 ? '1 line' : `${job.lines.length} lines`;
  return `${lines}: ${count('pass')} pass, ${count('note')} with notes, ${count('fail')} fail`;
}

function lineText(worked: WorkedLine, { figures, told }: Printed, options: TextOptions): string {
  const { line } = worked;
  const paint = painter(options.colour);
  const hand = line.mirror ? ' · OPPOSITE HAND' : '';
  const title = `${paint('bold', named(line))}${hand}  ${paint(STYLE[worked.verdict], WORD[worked.verdict])}`;
  const body = worked.plan
    ? [
        ...tubeText(worked, worked.plan, options),
        ...bendTable(worked, worked.plan, options),
        ...slopeText(worked, options),
      ]
    : ['  This line cannot exist as drawn.'];
  const words = factsText(figures, told, options);
  return [title, ...body, ...findingsText(worked, options), ...words, ''].join('\n');
}

const named = ({ id, name }: { readonly id: string; readonly name: string }): string =>
  name === id ? plain(id) : `${plain(id)} · ${plain(name)}`;

/** What can be signed for about the fall of the line. */
function slopeText({ slope }: WorkedLine, { columns }: TextOptions): string[] {
  return slope === null || slope.proof.text === ''
    ? []
    : [block(`Slope: ${slope.proof.text}`, '  ', columns)];
}

/** A run of lines. What was found of it stands with its lines, where it can be cured. */
function runText({ run, verdict }: WorkedRun, { figures, told }: Printed, options: TextOptions): string {
  const paint = painter(options.colour);
  const title = `${paint('bold', `run ${named(run)}`)}  ${paint(STYLE[verdict], WORD[verdict])}`;
  const lines = block(`lines from A to Z: ${run.lines.join(', ')}`, '  ', options.columns);
  const found = verdict === 'pass' ? [] : ['  What was found stands with these lines.'];
  return [title, lines, ...found, ...factsText(figures, told, options), ''].join('\n');
}

/** A length to saw is given only for a line that may be sawn. */
function tubeText({ line, verdict }: WorkedLine, plan: BendPlan, options: TextOptions): string[] {
  const { units, tube } = line;
  const dimensions = `${size(tube.od, units)} × ${size(tube.wall, units)} ${tube.material.name}`;
  const bends = plan.rows.length === 1 ? '1 bend' : `${plan.rows.length} bends`;
  const many = line.quantity > 1 ? `make ${line.quantity} · ` : '';
  const fails = verdict === 'fail';
  const lengths = fails
    ? ''
    : ` · saw ${length(plan.cutLength, units)} · finished ${length(plan.developedLength, units)}`;
  const about = block(`${many}tube ${dimensions}${lengths} · ${bends}`, '  ', options.columns);
  if (!fails) return [about];
  const drawn = plan.rows.length === 0 ? '' : ' The bends below are those of the line as drawn.';
  const stop = block(`DO NOT SAW, DO NOT BEND: a check of this line fails.${drawn}`, '  ', options.columns);
  return [about, painter(options.colour)('red', stop)];
}

function bendTable({ line }: WorkedLine, plan: BendPlan, { columns }: TextOptions): string[] {
  if (plan.rows.length === 0) return [];
  // The head of the print-out says the unit of every length in a table.
  const cell = (mm: number): string => length(mm, line.units).replace(/ in$/, '');
  const head = [
    ['bend', 'straight', 'turn', 'angle', 'radius', 'mark,', 'mark,', 'dial'],
    ['', '', '', '', '', 'sawn A', 'finished A', ''],
  ];
  const rows = plan.rows.map((row) => [
    `B${row.bendFromA}`,
    cell(row.straightBefore),
    turn(row.turn),
    degrees(row.angle),
    cell(row.radius),
    cell(row.mark),
    cell(row.markFinished),
    row.calibrated ? degrees(row.dial) : 'not calibr.',
  ]);
  return table([...head, ...rows, ['end Z', cell(plan.lastStraight)]], columns);
}

function findingsText(worked: WorkedLine, options: TextOptions): string[] {
  const order: readonly Verdict[] = options.all ? ['fail', 'note', 'pass'] : ['fail', 'note'];
  const shown = order.flatMap((verdict) => worked.findings.filter((finding) => finding.verdict === verdict));
  const passed = worked.findings.filter((finding) => finding.verdict === 'pass').length;
  const rest =
    options.all || passed === 0 ? [] : [`  ${passed === 1 ? '1 check passes' : `${passed} checks pass`}`];
  const words = shown.map((finding, i) => {
    const again = i > 0 && shown[i - 1]!.basis === finding.basis && shown[i - 1]!.verdict !== 'pass';
    return findingText(again ? { ...finding, basis: 'as above' } : finding, worked.line.units, options);
  });
  return [...words, ...rest];
}

function findingText(finding: Finding, units: JobUnit, { colour, columns }: TextOptions): string {
  const paint = painter(colour);
  const told = finding.at === null || finding.message.includes('from end');
  const where = told ? '' : ` At ${length(finding.at, units)} from A.`;
  const say = (text: string): string =>
    wrap(plain(text), Math.max(40, columns) - MARGIN.length, '').replaceAll('\n', `\n${MARGIN}`);
  const lines = [
    `  ${paint(STYLE[finding.verdict], WORD[finding.verdict])}  ${say(`${finding.check}: ${finding.message}${where}`)}`,
  ];
  if (finding.cure) lines.push(`${MARGIN}${say(`Cure: ${finding.cure.text}`)}`);
  if (finding.verdict !== 'pass') lines.push(paint('dim', `${MARGIN}${say(`Basis: ${finding.basis}`)}`));
  return lines.join('\n');
}
