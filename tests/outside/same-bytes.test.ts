/** The whole way from a job's text to its PDF, in Node and in Chromium: the same bytes. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { build, type Rollup } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FONTS } from '../../packages/drawing/test/fonts.ts';
import { openChromium } from '../helpers/chromium.ts';
import { type Ask, sheetsAsPdf } from '../helpers/in-browser.ts';
import { FIRST_TRY, ROOT, TENDER } from '../helpers/run.ts';

const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');
const fonts = { regular: base64(FONTS.regular), bold: base64(FONTS.bold) };
const tender = readFileSync(TENDER, 'utf8');

/** The same source as one script for the browser; its functions become `sheets`. */
async function script(): Promise<string> {
  const built = (await build({
    root: ROOT,
    configFile: false,
    logLevel: 'error',
    resolve: { conditions: ['@runback/source', 'browser', 'import', 'default'] },
    build: {
      write: false,
      minify: false,
      lib: { entry: join(ROOT, 'tests/helpers/in-browser.ts'), formats: ['iife'], name: 'sheets' },
    },
  })) as Rollup.RollupOutput[];
  return built[0]!.output[0].code;
}

describe('the PDF has the same bytes in Node and in Chromium', () => {
  let browser: Browser;
  let inChromium: (ask: Ask) => Promise<string>;
  beforeAll(async () => {
    const [code, opened] = await Promise.all([script(), openChromium()]);
    browser = opened;
    const page = await browser.newPage();
    await page.addScriptTag({ content: code });
    inChromium = (ask) =>
      page.evaluate((asked) => {
        const here = globalThis as unknown as { sheets: { sheetsAsPdf(a: Ask): Promise<string> } };
        return here.sheets.sheetsAsPdf(asked);
      }, ask);
  }, 120_000);
  afterAll(() => browser?.close());

  for (const [name, path] of [
    ['Tender 7', TENDER],
    ['its first try, stamped', FIRST_TRY],
    ['a job in inches', join(ROOT, 'docs/examples/inch/pump-set.job.json')],
  ] as const)
    it(`of ${name}`, async () => {
      const ask = { ...fonts, job: readFileSync(path, 'utf8') };
      const here = await sheetsAsPdf(ask);
      expect(Buffer.from(here, 'base64').subarray(0, 5).toString()).toBe('%PDF-');
      expect(await sheetsAsPdf(ask)).toBe(here);
      expect((await inChromium(ask)) === here).toBe(true);
    });

  it('and other bytes for a job that differs by a tenth of a millimetre', async () => {
    const other = tender.replace('[90, 190, 340]', '[90, 190, 340.1]');
    expect(other).not.toBe(tender);
    expect(await inChromium({ ...fonts, job: other })).not.toBe(await sheetsAsPdf({ ...fonts, job: tender }));
  });
});
