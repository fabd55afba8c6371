import { Command, InvalidArgumentError, Option } from 'commander';
import { type JobUnit, type LengthStyle, type WorkedJob, type WorkedLine, workUp } from 'runback';
import {
  AIDS,
  type Aid,
  aidPages,
  coverPages,
  PAGE_KINDS,
  type Page,
  type PageKind,
  sheetPages,
} from 'runback/sheet';
import { EXIT, Failure } from './failure.ts';
import { readText, writeWhole } from './files.ts';
import { jobPdf, type LinePages, linePdf, type SheetFile, svgFiles } from './sheet-files.ts';
import { plain } from './terminal.ts';

interface SheetOptions {
  readonly out: string;
  readonly line?: readonly string[];
  readonly from: 'a' | 'z';
  readonly format: 'pdf' | 'svg';
  readonly one?: boolean;
  readonly paper: 'a4' | 'letter';
  readonly units?: JobUnit;
  readonly inch: '32' | '16' | 'decimal';
  readonly projection?: 'first' | 'third';
  readonly pages: readonly PageKind[];
  readonly aids: readonly Aid[];
}

/** A list as a person types it: `bench,views`, `all` or `none`. */
function listOf<T extends string>(known: readonly T[]): (text: string) => readonly T[] {
  return (text) => {
    if (text === 'all') return known;
    if (text === 'none') return [];
    const words = text.split(',').map((word) => word.trim());
    const unknown = words.filter((word) => !known.includes(word as T));
    if (unknown.length > 0)
      throw new InvalidArgumentError(
        `expected all, none or a list out of ${known.join(', ')}; found "${unknown.join('", "')}".`,
      );
    return known.filter((one) => words.includes(one));
  };
}

const EXAMPLES = `
Examples:
  runback sheet tender-7.job.json --out sheets
  runback sheet tender-7.job.json --one --out sheets
  runback sheet tender-7.job.json --line dipstick --from z --out sheets
  runback sheet tender-7.job.json --format svg --out sheets
  runback sheet tender-7.job.json --pages bench --paper letter --units in --out sheets
  runback sheet tender-7.job.json --aids tape,wheel --out sheets
  runback sheet tender-7.job.json --line dipstick --pages none --aids stick --out sheets
A line with a failing check still gets its sheet, stamped DO NOT BEND; a line that cannot exist gets none.
Print at 100 %, then lay a rule on the bar at the foot.`;

function chosen(job: WorkedJob, ids: readonly string[] | undefined): readonly WorkedLine[] {
  if (!ids) return job.lines;
  const unknown = ids.filter((id) => !job.lines.some(({ line }) => line.id === id));
  if (unknown.length > 0) {
    const have = job.lines.map(({ line }) => line.id).join(', ');
    throw new Failure(
      `there is no line "${unknown.join('", "')}" in this job; it has ${have}`,
      EXIT.notUnderstood,
    );
  }
  return job.lines.filter(({ line }) => ids.includes(line.id));
}

/** Everything that will be written, drawn before the first file is: a fault in drawing leaves no half set behind. */
async function drawn(
  lines: readonly LinePages[],
  job: WorkedJob,
  options: SheetOptions,
): Promise<SheetFile[]> {
  if (options.one) {
    const cover = coverPages(job, { paper: options.paper, units: styleOf(job, options) });
    return lines.length > 0 ? [await jobPdf(lines, job, { ...options, cover })] : [];
  }
  if (options.format === 'svg') return lines.flatMap((line) => svgFiles(line, options));
  const files: SheetFile[] = [];
  for (const line of lines) files.push(await linePdf(line, job, options));
  return files;
}

const styleOf = (job: WorkedJob, { units = job.units, inch }: SheetOptions): LengthStyle =>
  units === 'mm' ? 'mm' : ({ 32: 'in', 16: 'in-16', decimal: 'in-decimal' } as const)[inch];

function pagesOf(worked: WorkedLine, job: WorkedJob, options: SheetOptions): readonly Page[] {
  const { paper, projection, pages, aids } = options;
  const units = styleOf(job, options);
  const shared = {
    from: options.from === 'z' ? 'Z' : 'A',
    checksum: job.checksum,
    runs: job.runs,
    paper,
    pages,
    units,
    ...(projection ? { projection } : {}),
  } as const;
  return [...sheetPages(worked, shared), ...(aids.length > 0 ? aidPages(worked, { ...shared, aids }) : [])];
}

/** Jobs of more lines than this take long enough for a person to wonder. */
const SHORT_JOB = 3;

/** On a terminal, one line that counts and goes away again. */
function progress(line: number, of: number): void {
  if (of <= SHORT_JOB || !process.stderr.isTTY) return;
  process.stderr.write(line < of ? `\rdrawing line ${line} of ${of} ` : '\r\u001b[K');
}

async function write(job: WorkedJob, options: SheetOptions): Promise<void> {
  const lines = chosen(job, options.line);
  const possible = lines
    .filter((worked) => worked.centreline !== null)
    .map((worked, i, all): LinePages => {
      progress(i + 1, all.length);
      return { worked, pages: pagesOf(worked, job, options) };
    });
  const files = await drawn(possible, job, options);
  for (const worked of lines)
    if (!possible.some((line) => line.worked === worked))
      process.stdout.write(`${plain(worked.line.id)}: no sheet, this line cannot exist\n`);
  for (const { path, content, failed, missing } of files) {
    await writeWhole(path, content);
    process.stdout.write(`${plain(path)}${failed ? '  DO NOT BEND' : ''}\n`);
    if (missing.length > 0)
      process.stderr.write(
        `${plain(path)}: the sheet cannot print ${plain(missing.join(' '))}: boxes stand there\n`,
      );
  }
}

export function sheetCommand(done: (code: number) => void): Command {
  return new Command('sheet')
    .description('write the bend sheet of every line, or of the lines named, as PDF, true to scale')
    .argument('<job>', 'job file, or - for standard input')
    .option('--out <folder>', 'folder to write into', '.')
    .option('--line <id...>', 'only these lines')
    .addOption(new Option('--from <end>', 'end to work from').choices(['a', 'z']).default('a'))
    .addOption(
      new Option('--format <format>', 'pdf: a file for each line; svg: a file for each page')
        .choices(['pdf', 'svg'])
        .default('pdf'),
    )
    .option('--one', 'one PDF with a cover and the sheets of all lines, named after the job')
    .addOption(new Option('--paper <paper>', 'paper to print on').choices(['a4', 'letter']).default('a4'))
    .addOption(
      new Option('--inch <step>', 'inches in thirty-seconds, sixteenths or decimals')
        .choices(['32', '16', 'decimal'])
        .default('32'),
    )
    .addOption(
      new Option('--units <units>', 'units to print; left out: those of the job').choices(['mm', 'in']),
    )
    .addOption(
      new Option(
        '--projection <angle>',
        'order of the views; left out: first in mm, third in inches',
      ).choices(['first', 'third']),
    )
    .option(
      '--pages <list>',
      `pages to print: all, or a list out of ${PAGE_KINDS.join(', ')}`,
      listOf(PAGE_KINDS),
      PAGE_KINDS,
    )
    .option(
      '--aids <list>',
      `aids at 1:1 to print behind them: all, none, or a list out of ${AIDS.join(', ')}`,
      listOf(AIDS),
      [],
    )
    .addHelpText('after', EXAMPLES)
    .action(async (path: string, options: SheetOptions, command: Command) => {
      if (options.pages.length === 0 && options.aids.length === 0)
        command.error('--pages none and no --aids leave nothing to print');
      if (options.one && options.format === 'svg') command.error('--one makes a PDF: leave out --format svg');
      const job = workUp(await readText(path), { file: path });
      await write(job, options);
      const failed = chosen(job, options.line).some(({ verdict }) => verdict === 'fail');
      done(failed ? EXIT.failed : EXIT.ok);
    });
}
