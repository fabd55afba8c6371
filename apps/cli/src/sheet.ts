import { join } from 'node:path';
import { Command, Option } from 'commander';
import { type WorkedJob, type WorkedLine, workUp } from 'runback';
import { renderSvg, sheetPages } from 'runback/sheet';
import { createSVGWindow } from 'svgdom';
import { EXIT, Failure } from './failure.ts';
import { readText, writeWhole } from './files.ts';
import { plain } from './terminal.ts';

interface SheetOptions {
  readonly out: string;
  readonly line?: readonly string[];
  readonly from: 'a' | 'z';
}

const EXAMPLES = `
Examples:
  runback sheet tender-7.job.json --out sheets
  runback sheet tender-7.job.json --line dipstick --from z --out sheets
A line with a failing check still gets its sheet, stamped DO NOT BEND; a line that cannot exist gets none.`;

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

interface SheetFile {
  readonly path: string;
  readonly svg: string;
}

/** One SVG for each page; a line of one page is named after the line alone. */
function filesOf(worked: WorkedLine, options: SheetOptions, checksum: string): SheetFile[] {
  const from = options.from === 'z' ? 'Z' : 'A';
  const pages = sheetPages(worked, { from, checksum });
  return pages.map((page, i) => {
    const name = `${worked.line.id}${from === 'Z' ? '-from-z' : ''}${pages.length > 1 ? `-${i + 1}` : ''}.svg`;
    return { path: join(options.out, name), svg: renderSvg(page, createSVGWindow()) };
  });
}

async function write(job: WorkedJob, options: SheetOptions): Promise<void> {
  const lines = chosen(job, options.line);
  // All pages are drawn before the first is written: a fault in drawing leaves no half set behind.
  const sets = lines.map((worked) => (worked.centreline ? filesOf(worked, options, job.checksum) : []));
  for (const [i, worked] of lines.entries()) {
    const stamp = worked.verdict === 'fail' ? '  DO NOT BEND' : '';
    if (!worked.centreline)
      process.stdout.write(`${plain(worked.line.id)}: no sheet, this line cannot exist\n`);
    for (const { path, svg } of sets[i] ?? []) {
      await writeWhole(path, svg);
      process.stdout.write(`${plain(path)}${stamp}\n`);
    }
  }
}

export function sheetCommand(done: (code: number) => void): Command {
  return new Command('sheet')
    .description('write the bend sheet of every line, or of the lines named, as SVG (A4, mm)')
    .argument('<job>', 'job file, or - for standard input')
    .option('--out <folder>', 'folder to write into', '.')
    .option('--line <id...>', 'only these lines')
    .addOption(new Option('--from <end>', 'end to work from').choices(['a', 'z']).default('a'))
    .addHelpText('after', EXAMPLES)
    .action(async (path: string, options: SheetOptions) => {
      const job = workUp(await readText(path), { file: path });
      await write(job, options);
      const failed = chosen(job, options.line).some(({ verdict }) => verdict === 'fail');
      done(failed ? EXIT.failed : EXIT.ok);
    });
}
