import { createInterface, type Interface } from 'node:readline/promises';
import { Command, Option } from 'commander';
import { catalogue, type JobUnit, parseJob } from 'runback';
import { EXIT } from './failure.ts';
import { writeWhole } from './files.ts';
import { STARTER_DEFAULTS, type StarterAnswers, starter } from './starter.ts';

interface NewOptions extends Partial<Omit<StarterAnswers, 'units'>> {
  readonly units?: JobUnit;
  readonly out?: string;
  readonly force?: boolean;
}

const EXAMPLES = `
Examples:
  runback new --service dipstick --out dipstick.job.json
  runback new --service brake --units in --od 3/16 --wall 0.028 --die 3/4 --material copper-nickel-90-10
On a terminal it asks for what is not given; otherwise it takes the usual.`;

async function ask(options: NewOptions): Promise<StarterAnswers> {
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  try {
    const units = (options.units ?? (await question(terminal, 'Units, mm or in', 'mm'))) as JobUnit;
    const usual = STARTER_DEFAULTS[units] ?? STARTER_DEFAULTS.mm;
    const get = async (given: string | undefined, what: string, otherwise: string): Promise<string> =>
      given ?? (await question(terminal, what, otherwise));
    return {
      units,
      service: await get(
        options.service,
        `Service (${Object.keys(catalogue.services).join(', ')})`,
        'general',
      ),
      material: await get(options.material, 'Tube material', usual.material),
      od: await get(options.od, `Tube outside diameter, ${units}`, usual.od),
      wall: await get(options.wall, `Tube wall, ${units}`, usual.wall),
      die: await get(options.die, `Radius of your die to the centre of the tube, ${units}`, usual.die),
    };
  } finally {
    terminal.close();
  }
}

async function question(terminal: Interface, what: string, usual: string): Promise<string> {
  return (await terminal.question(`${what} [${usual}]: `)).trim() || usual;
}

function usualAnswers(options: NewOptions): StarterAnswers {
  const units = options.units ?? 'mm';
  const usual = STARTER_DEFAULTS[units];
  return {
    units,
    service: options.service ?? 'general',
    material: options.material ?? usual.material,
    od: options.od ?? usual.od,
    wall: options.wall ?? usual.wall,
    die: options.die ?? usual.die,
  };
}

export function newCommand(done: (code: number) => void): Command {
  return new Command('new')
    .description('write a commented starter job for a service')
    .option('--service <service>', `what the line is for: ${Object.keys(catalogue.services).join(', ')}`)
    .addOption(new Option('--units <units>', 'units of the job').choices(['mm', 'in']))
    .option('--od <length>', 'outside diameter of the tube')
    .option('--wall <length>', 'its wall')
    .option('--material <id>', 'its material')
    .option('--die <length>', 'radius of the die, to the centre of the tube')
    .option('--out <file>', 'write here instead of the terminal')
    .option('--force', 'replace a file that is already there')
    .addHelpText('after', EXAMPLES)
    .action(async (options: NewOptions) => {
      const talk = process.stdin.isTTY === true && process.stderr.isTTY === true;
      const text = starter(talk ? await ask(options) : usualAnswers(options));
      // Read it back before anything is written: a mistyped answer is told with its place.
      parseJob(text, { file: options.out ?? 'starter job' });
      if (options.out) {
        await writeWhole(options.out, text, { keep: options.force !== true });
        process.stderr.write(`${options.out} written; next: runback check ${options.out}\n`);
      } else process.stdout.write(text);
      done(EXIT.ok);
    });
}
