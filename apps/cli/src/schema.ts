import { Command } from 'commander';
import { jobSchema } from 'runback';
import { reportSchema } from 'runback/exchange';
import { EXIT } from './failure.ts';

export function schemaCommand(done: (code: number) => void): Command {
  return new Command('schema')
    .description('print the JSON Schema of the job file, for an editor to check as you type')
    .option('--report', 'the schema of the report that check --json prints, instead')
    .addHelpText(
      'after',
      '\nExamples:\n  runback schema > job.schema.json\n  runback schema --report > report.schema.json',
    )
    .action((options: { report?: boolean }) => {
      process.stdout.write(`${JSON.stringify(options.report ? reportSchema() : jobSchema(), null, 2)}\n`);
      done(EXIT.ok);
    });
}
