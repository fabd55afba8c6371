/** What leaves the viewer: paper, PDF, report. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { workUp } from 'runback';
import { sheetPages } from 'runback/sheet';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inFolder, runback, TENDER } from '../../helpers/run.ts';
import { type Opened, openChromium, openPage, ready, type Server, serve } from '../../helpers/viewer.ts';

let browser: Browser;
let server: Server;
beforeAll(async () => {
  browser = await openChromium();
  server = await serve(TENDER);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
});

async function sheet(): Promise<Opened> {
  // No picker: a save is a download, as in most browsers.
  const it = await openPage(browser, server.url, { acceptDownloads: true });
  await it.page.addInitScript(() => {
    for (const name of ['showOpenFilePicker', 'showSaveFilePicker', 'showDirectoryPicker'])
      for (const holder of [window, Window.prototype]) Reflect.deleteProperty(holder, name);
  });
  await it.page.reload();
  await ready(it.page);
  await it.page.getByRole('button', { name: 'Sheet', exact: true }).click();
  await it.page.locator('[class*="sheet"] svg').first().waitFor();
  return it;
}

const DPI = 300;

/** Longest run of black in a row of the lowest sixth of the page, mm: the bar at its foot. */
function longestBar(png: PNG): number {
  let longest = 0;
  for (let y = Math.floor((png.height * 11) / 12); y < png.height; y++) {
    let run = 0;
    for (let x = 0; x < png.width; x++) {
      run = png.data[(y * png.width + x) * 4]! < 100 ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
  }
  return (longest / DPI) * 25.4;
}

/** Engines differ in the last bits of a sine: compared to ten digits, and what is no more than such bits is nothing. */
const NOTHING = 1e-12;
const inDigits = (value: number): number =>
  Math.abs(value) < NOTHING ? 0 : Number(value.toPrecision(10)) + 0;
const rounded = (json: string): unknown =>
  JSON.parse(json, (_, value) => (typeof value === 'number' ? inDigits(value) : value));

async function download(page: Page, press: () => Promise<void>): Promise<Buffer> {
  const [got] = await Promise.all([page.waitForEvent('download'), press()]);
  return readFileSync(await got.path());
}

describe('on paper', () => {
  it('prints every page of the sheet, nothing else, and 100 mm is 100 mm', async () => {
    const { page, close } = await sheet();
    const folder = mkdtempSync(join(tmpdir(), 'runback-print-'));
    const file = join(folder, 'printed.pdf');
    await page.pdf({ path: file, preferCSSPageSize: true });
    const info = execFileSync('pdfinfo', [file], { encoding: 'utf8' });
    const job = workUp(readFileSync(TENDER, 'utf8'));
    const pages = sheetPages(job.lines[0]!, { checksum: job.checksum, runs: job.runs }).length;
    expect(info).toMatch(new RegExp(`Pages:\\s+${pages}\\n`));
    expect(info).toMatch(/Page size:\s+59[45]\.\d+ x 84[12]/);
    execFileSync('pdftoppm', ['-r', String(DPI), '-png', '-f', '1', '-l', '1', file, join(folder, 'page')]);
    const png = PNG.sync.read(
      readFileSync(join(folder, `page-${'1'.padStart(String(pages).length, '0')}.png`)),
    );
    expect(Math.abs(longestBar(png) - 100)).toBeLessThan(0.25);
    const words = execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' });
    expect(words).toContain('SAW');
    expect(words).not.toContain('Work from');
    rmSync(folder, { recursive: true, force: true });
    await close();
  });
});

describe('as files', () => {
  it('gives the PDF that the command writes, byte for byte', async () => {
    const { page, close } = await sheet();
    const bytes = await download(page, () => page.getByRole('button', { name: /Save PDF/ }).click());
    const ours = inFolder((folder) => {
      runback(['sheet', TENDER, '--line', 'dipstick', '--out', folder]);
      return readFileSync(join(folder, 'dipstick.pdf'));
    });
    expect(bytes.equals(ours)).toBe(true);
    await close();
  });

  it('gives the report that the command prints', async () => {
    const { page, close } = await sheet();
    await page.getByRole('button', { name: 'Job', exact: true }).click();
    const bytes = await download(page, () => page.getByRole('button', { name: /Report, JSON/ }).click());
    const printed = runback(['check', TENDER, '--json']).out;
    expect(rounded(bytes.toString('utf8'))).toEqual(rounded(printed));
    await close();
  });
});
