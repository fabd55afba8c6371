/** The viewer as a person meets it: served by the command, in the Chromium of the machine. */
import { type ChildProcess, spawn } from 'node:child_process';
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { openChromium, openPersistent } from './chromium.ts';
import { ROOT } from './run.ts';

const BIN = join(ROOT, 'apps', 'cli', 'bin', 'runback.js');
const LISTENING = /(http:\/\/127\.0\.0\.1:\d+\/)/;

export interface Server {
  readonly url: string;
  /** The job file served: a copy of its own in a temporary folder; null when the demo is served. */
  readonly file: string | null;
  stop(): Promise<void>;
}

/** `runback view` on a copy of a job, so that a test may save. */
export async function serve(job: string | null = null): Promise<Server> {
  const folder = mkdtempSync(join(tmpdir(), 'runback-view-'));
  const file = job === null ? null : join(folder, basename(job));
  if (job !== null && file !== null) copyFileSync(job, file);
  const child = spawn(process.execPath, [BIN, 'view', ...(file === null ? [] : [file])], { cwd: folder });
  return { url: await addressOf(child), file, stop: () => stopped(child, folder) };
}

function addressOf(child: ChildProcess): Promise<string> {
  let said = '';
  return new Promise((resolve, reject) => {
    const hear = (chunk: Buffer): void => {
      said += String(chunk);
      const match = LISTENING.exec(said);
      if (match) resolve(match[1]!);
    };
    child.stdout!.on('data', hear);
    child.stderr!.on('data', hear);
    child.on('exit', (code) => reject(new Error(`runback view ended with ${code}: ${said}`)));
  });
}

function stopped(child: ChildProcess, folder: string): Promise<void> {
  return new Promise((resolve) => {
    child.on('exit', () => {
      rmSync(folder, { recursive: true, force: true });
      resolve();
    });
    child.kill('SIGTERM');
  });
}

/** A page with everything that went wrong in it written down. */
export interface Opened {
  readonly page: Page;
  /** Errors of the page, of its console, and breaches of its Content-Security-Policy. */
  readonly faults: readonly string[];
  close(): Promise<void>;
}

export const DESK = { width: 1440, height: 900 };
export const TABLET = { width: 1024, height: 768 };
export const PHONE = { width: 390, height: 844 };

export async function openPage(
  browser: Browser,
  url: string,
  options: BrowserContextOptions = {},
): Promise<Opened> {
  const context = await browser.newContext({ viewport: DESK, ...options });
  const page = await context.newPage();
  const faults: string[] = [];
  listen(page, faults);
  await page.goto(url);
  await ready(page);
  return { page, faults, close: () => context.close() };
}

/** Writes down what goes wrong in a page from now on. */
export function listen(page: Page, faults: string[]): void {
  page.on('pageerror', (error) => faults.push(`page: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error' || /Content Security Policy/i.test(message.text()))
      faults.push(`console: ${message.text()}`);
  });
}

/** The job is worked, its cures are looked for, and nothing is loading any more. */
export async function ready(page: Page): Promise<void> {
  await page.locator('.app').waitFor();
  await page.waitForFunction(
    () => document.documentElement.dataset.working === 'no' && document.querySelector('.app-wait') === null,
  );
}

export { openChromium, openPersistent };
