import { createInterface } from 'node:readline/promises';
import { Command, Option } from 'commander';
import { cornersOf, fromRows, type JobUnit, parseLength } from 'runback';
import { EXIT, Failure } from './failure.ts';
import { readText, writeWhole } from './files.ts';
import { type ReadRows, readRows } from './rows-text.ts';

interface RowsOptions {
  readonly units: JobUnit;
  readonly radius?: string;
  readonly id: string;
  readonly tube: string;
  readonly bender?: string;
  readonly service?: string;
  readonly out?: string;
}

const ABOUT = `
One row a line: straight before the bend, turn, angle, radius; the last line is the last straight alone.
Separate by comma, semicolon or tab. Turn: degrees from the last plane of bend, clockwise positive as seen
looking from A towards Z; the first row has none.

A turn may be measured on a plate instead. Lay the bend before flat so that the next leg rises, and name columns:
  straight,angle,radius,height,along,curves,goes
height   of the centreline of the leg after the bend, above the centreline of the flat part
along    distance from the corner, along that leg, to where the height was taken
curves   left or right: walking from A to Z and looking down, how the flat bend curves
goes     on or back: whether the next bend, seen from above, curves to the same side or the other

Examples:
  runback rows sample.csv --tube cn-4.76 --radius 20
  runback rows sample.csv --units in --tube ss-3-8 --out copied-line.json
  runback rows                                          type the rows, an empty line ends`;

/** Coordinates as they are written: the last digits are rounding noise, not measurement. */
const DIGITS = 9;
const MM_PER_INCH = 25.4;

/** The line of a job file that has these rows: end A at the origin, leaving along X, the first bend toward Y. */
export function lineOf(read: ReadRows, options: RowsOptions): object {
  const inUnits = (mm: number): number => {
    const value = Number((options.units === 'mm' ? mm : mm / MM_PER_INCH).toFixed(DIGITS));
    return value === 0 ? 0 : value;
  };
  const corners = cornersOf(fromRows(read.rows, read.lastStraight));
  const points = corners.map(({ at, radius }, i) => {
    const inner = i > 0 && i < corners.length - 1;
    return inner ? { at: at.map(inUnits), radius: inUnits(radius) } : { at: at.map(inUnits) };
  });
  return {
    id: options.id,
    ...(options.service ? { service: options.service } : {}),
    tube: options.tube,
    ...(options.bender ? { bender: options.bender } : {}),
    points,
  };
}

async function typed(): Promise<string> {
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  const lines: string[] = [];
  process.stderr.write('Straight, turn, angle, radius; the last straight alone; an empty line ends.\n');
  try {
    for (;;) {
      const line = await terminal.question(`row ${lines.length + 1}: `);
      if (line.trim() === '') return lines.join('\n');
      lines.push(line);
    }
  } finally {
    terminal.close();
  }
}

function radiusOf(options: RowsOptions): number | null {
  if (options.radius === undefined) return null;
  try {
    return parseLength(options.radius, options.units);
  } catch (error) {
    throw new Failure(`--radius: ${(error as Error).message}`, EXIT.notUnderstood);
  }
}

export function rowsCommand(done: (code: number) => void): Command {
  return new Command('rows')
    .description('turn rows of straight, turn, angle and radius into a line for a job file')
    .argument('[file]', 'rows as CSV, or - for standard input; typed when left out on a terminal')
    .addOption(new Option('--units <units>', 'units of the lengths').choices(['mm', 'in']).default('mm'))
    .option('--radius <length>', 'radius of rows that give none')
    .option('--id <id>', 'id of the line', 'copied')
    .option('--tube <id>', 'id of its tube in the job', 'tube')
    .option('--bender <id>', 'id of the bender in the job')
    .option('--service <service>', 'what the line is for')
    .option('--out <file>', 'write here instead of the terminal')
    .addHelpText('after', ABOUT)
    .action(async (path: string | undefined, options: RowsOptions) => {
      const text = path === undefined && process.stdin.isTTY ? await typed() : await readText(path ?? '-');
      const read = readRows({ text, file: path ?? 'rows', units: options.units, radius: radiusOf(options) });
      const line = `${JSON.stringify(lineOf(read, options), null, 2)}\n`;
      if (options.out) await writeWhole(options.out, line, { keep: true });
      else process.stdout.write(line);
      done(EXIT.ok);
    });
}
