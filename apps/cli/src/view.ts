import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { realpath } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import { Command, InvalidArgumentError, Option } from 'commander';
import { EXIT, Failure } from './failure.ts';
import { readText } from './files.ts';
import { type JobFile, jobFile } from './serve/job-file.ts';
import { type Serving, serve } from './serve/server.ts';
import { plain } from './terminal.ts';

interface ViewOptions {
  readonly port?: number;
  readonly open?: boolean;
  readonly dist?: string;
}

const EXAMPLES = `
Examples:
  runback view tender-7.job.json
  runback view tender-7.job.json --open
  runback view                            the demo
Saving in the viewer writes the file, unless it has changed on disk meanwhile: then you choose.
Only this machine can reach it, and only while the command runs.`;

const PORT_MAX = 65_535;
/** Ports that systems do not hand out by themselves. */
const STEADY = { from: 20_000, count: 12_000 } as const;

function portNumber(text: string): number {
  const port = Number(text);
  if (!/^\d+$/.test(text) || port > PORT_MAX) throw new InvalidArgumentError('a whole number, 0 to 65535');
  return port;
}

/** The same for the same job: a browser keeps what was not saved, and how one likes to look, by the address. */
const steadyPort = (path: string): number =>
  STEADY.from + (createHash('sha256').update(path).digest().readUInt32BE(0) % STEADY.count);

async function jobAt(path: string): Promise<{ path: string; job: JobFile }> {
  if (path === '-')
    throw new Failure('view needs a file, to save to and to watch; - will not do', EXIT.notUnderstood);
  // Read once: what is no file or no text is said here, and not in a browser later. Faults in the job are for the viewer.
  await readText(path);
  const real = await realpath(path);
  return { path: real, job: jobFile(real, basename(path)) };
}

function builtViewer(): string {
  const dist = join(dirname(createRequire(import.meta.url).resolve('@runback/viewer/package.json')), 'dist');
  if (existsSync(join(dist, 'index.html'))) return dist;
  throw new Failure('the viewer is not built yet; build it first: npm run build', EXIT.notUnderstood);
}

/** With a port asked for, that one or none; else the steady one, or a free one when that is taken. */
const portOf = ({ port }: ViewOptions, path: string): Pick<Serving, 'port' | 'orFree'> =>
  port === undefined ? { port: steadyPort(path), orFree: true } : { port };

/** Opens the browser of the person; where there is none, the address on the terminal is enough. */
function openBrowser(url: string): void {
  const [command, ...args] = {
    darwin: ['open', url],
    win32: ['cmd', '/c', 'start', '', url],
  }[process.platform as string] ?? ['xdg-open', url];
  spawn(command!, args, { stdio: 'ignore', detached: true })
    .on('error', () => undefined)
    .unref();
}

const toldToEnd = (): Promise<void> =>
  new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
  });

export function viewCommand(done: (code: number) => void): Command {
  return new Command('view')
    .description('look at a job in a browser on this machine, change it there and save it')
    .argument('[job]', 'job file; without one, the demo')
    .addOption(
      new Option(
        '--port <n>',
        'port to serve on, 0 for any free one (default: always the same for a job)',
      ).argParser(portNumber),
    )
    .option('--open', 'open the browser too')
    .addOption(new Option('--dist <folder>', 'folder of a built viewer').hideHelp())
    .addHelpText('after', EXAMPLES)
    .action(async (path: string | undefined, options: ViewOptions) => {
      const found = path === undefined ? null : await jobAt(path);
      const running = await serve({
        dist: options.dist ?? builtViewer(),
        job: found?.job ?? null,
        ...portOf(options, found?.path ?? ''),
      });
      const end = toldToEnd();
      const what = found ? plain(found.job.name) : 'the demo';
      process.stdout.write(`Runback is at ${running.url} with ${what}.  Ctrl-C ends it\n`);
      if (options.open) openBrowser(running.url);
      await end;
      await running.close();
      done(EXIT.ok);
    });
}
