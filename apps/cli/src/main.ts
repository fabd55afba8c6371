import { Command, CommanderError } from 'commander';
import { JobError } from 'runback';
import { VERSION } from 'runback/exchange';
import { checkCommand } from './check.ts';
import { EXIT, Failure } from './failure.ts';
import { newCommand } from './new.ts';
import { rowsCommand } from './rows.ts';
import { schemaCommand } from './schema.ts';
import { sheetCommand } from './sheet.ts';
import { plain } from './terminal.ts';
import { viewCommand } from './view.ts';

const AFTER = `
Examples:
  runback new --service dipstick --out dipstick.job.json   start a job file
  runback check dipstick.job.json                          bend tables and findings
  runback check dipstick.job.json --json                   the same for a machine
  runback sheet dipstick.job.json --out sheets             a sheet to take to the bender
  runback view dipstick.job.json                           look at it and change it in a browser
  runback rows sample.csv --tube ss-12x1                   copy an existing tube into a job line

The command answers 0 when every check passes or notes, 1 when a check failed (sheets are still written,
stamped DO NOT BEND), 2 when the file or the call could not be understood (nothing is written),
3 when the result could not be written.`;

function program(): Command {
  return new Command('runback')
    .description(
      'From measured points to a bend sheet: bent tubes and hard lines that clear, fit and run back.',
    )
    .version(VERSION)
    .showSuggestionAfterError(true)
    .addHelpText('after', AFTER)
    .exitOverride();
}

function explain(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.ok : EXIT.notUnderstood;
  if (error instanceof JobError) {
    for (const line of String(error).split('\n')) process.stderr.write(`${plain(line)}\n`);
    return EXIT.notUnderstood;
  }
  if (error instanceof Failure) {
    process.stderr.write(`runback: ${plain(error.message)}\n`);
    return error.code;
  }
  const words = error instanceof Error ? error.message : String(error);
  process.stderr.write(
    `runback: a fault in Runback itself, please report it with your job file: ${plain(words)}\n`,
  );
  return EXIT.notUnderstood;
}

/** Runs the command line and answers the exit code. Nothing is thrown. */
export async function main(argv: readonly string[]): Promise<number> {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(EXIT.ok);
    throw error;
  });
  let code: number = EXIT.ok;
  const done = (answer: number): void => {
    code = answer;
  };
  const root = program();
  for (const add of [checkCommand, sheetCommand, newCommand, rowsCommand, schemaCommand, viewCommand]) {
    const command = add(done);
    command.copyInheritedSettings(root);
    root.addCommand(command);
  }
  try {
    if (argv.length === 0) root.help();
    await root.parseAsync(argv, { from: 'user' });
    return code;
  } catch (error) {
    return explain(error);
  }
}
