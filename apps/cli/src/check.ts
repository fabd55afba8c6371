import { Command } from 'commander';
import { workUp } from 'runback';
import { bendsCsv, report } from 'runback/exchange';
import { jobText } from './check-text.ts';
import { EXIT } from './failure.ts';
import { readText } from './files.ts';
import { coloured } from './terminal.ts';

interface CheckOptions {
  readonly json?: boolean;
  readonly csv?: boolean;
  readonly all?: boolean;
}

const COLUMNS = 100;

const EXAMPLES = `
Examples:
  runback check tender-7.job.json
  runback check tender-7.job.json --all
  runback check tender-7.job.json --json > report.json
  runback check tender-7.job.json --csv > bends.csv`;

export function checkCommand(done: (code: number) => void): Command {
  return new Command('check')
    .description('work up a job: the bend table, the findings and the figures of every line')
    .argument('<job>', 'job file, or - for standard input')
    .option('--json', 'print the report for machines instead')
    .option('--csv', 'print the bend tables as CSV with exact values instead')
    .option('--all', 'print the checks that pass and every figure too')
    .addHelpText('after', EXAMPLES)
    .action(async (path: string, options: CheckOptions, command: Command) => {
      if (options.json && options.csv) command.error('give --json or --csv, not both');
      const job = workUp(await readText(path), { file: path });
      if (options.json) process.stdout.write(`${JSON.stringify(report(job), null, 2)}\n`);
      else if (options.csv) process.stdout.write(bendsCsv(job));
      else {
        const columns = Math.min(process.stdout.columns ?? COLUMNS, 120);
        process.stdout.write(`${jobText(job, { colour: coloured(), columns, all: options.all === true })}\n`);
      }
      done(job.verdict === 'fail' ? EXIT.failed : EXIT.ok);
    });
}
