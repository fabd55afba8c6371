/** Runs the built command as a person would. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export const ROOT = join(import.meta.dirname, '..', '..');
const BIN = join(ROOT, 'apps', 'cli', 'bin', 'runback.js');

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export function runback(
  args: readonly string[],
  options: { input?: string; cwd?: string; env?: object } = {},
): Ran {
  const ran = spawnSync(process.execPath, [BIN, ...args], {
    cwd: options.cwd ?? ROOT,
    input: options.input ?? '',
    encoding: 'utf8',
    timeout: 30_000,
    env: { ...process.env, NO_COLOR: undefined, ...options.env } as NodeJS.ProcessEnv,
  });
  return { code: ran.status, out: ran.stdout, err: ran.stderr };
}

/** A folder that is gone when `use` returns. */
export function inFolder<T>(use: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'runback-'));
  try {
    return use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export const TENDER = join(ROOT, 'docs/examples/tender-7/tender-7.job.json');
export const FIRST_TRY = join(ROOT, 'docs/examples/tender-7/first-try.job.json');
