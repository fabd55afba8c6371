/**
 * How long a person waits in the viewer after an edit, beside what would be done instead: writing the file and loading
 * the page again. Both until the run profile is drawn and a frame has passed. Seeded; no assertions.
 */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { editJob } from 'runback';
import { afterAll, type BenchOptions, bench, describe } from 'vitest';
import { seeded } from '../helpers/random-line.ts';
import { TENDER } from '../helpers/run.ts';
import { openChromium, openPage, ready, serve } from '../helpers/viewer.ts';
import { coordinateCell, edited } from './edit-in-page.ts';
import { largeJobText } from './large-job.ts';

const folder = mkdtempSync(join(tmpdir(), 'runback-bench-'));
const large = join(folder, 'large.job.json');
writeFileSync(large, largeJobText(seeded(20), { lines: 20, bends: 6, surroundings: 200 }));
const browser = await openChromium();
const jobs = [
  ['Tender 7, six lines', TENDER],
  ['20 lines, 200 surroundings', large],
] as const;

/** The clock shows what was measured so far: between two edits the viewer looks for cures, and nobody waits for that. */
function ownClock(iterations: number): { readonly options: BenchOptions; add(ms: number): void } {
  let shown = 0;
  return {
    options: { now: () => shown, time: 0, iterations, warmupTime: 0, warmupIterations: 1 },
    add: (ms) => {
      shown += ms;
    },
  };
}

async function loaded(page: Page, load: () => Promise<unknown>): Promise<number> {
  const began = performance.now();
  await load();
  await page.locator('.profile-svg').waitFor();
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0))));
  return performance.now() - began;
}

for (const [name, file] of jobs) {
  const server = await serve(file);
  const text = readFileSync(file, 'utf8');
  const [edits, loads] = [await openPage(browser, server.url), await openPage(browser, server.url)];
  const cell = await coordinateCell(edits.page, 'point 2, up');
  const was = Number(await cell.inputValue());
  let turn = 0;
  describe(`an edit until it is drawn: ${name}`, () => {
    const inPlace = ownClock(10);
    bench(
      'a coordinate typed in the viewer',
      async () => {
        turn += 1;
        const [took] = await edited(cell, [String(was + (turn % 7) / 2 + 0.5)]);
        inPlace.add(took!);
        await ready(edits.page);
      },
      inPlace.options,
    );
    const anew = ownClock(5);
    bench(
      'the file written and the page loaded again',
      async () => {
        turn += 1;
        const value = was + (turn % 7) / 2 + 0.5;
        const changed = editJob(text, [{ path: 'lines[0].points[2].at[2]', value }]);
        const took = await loaded(loads.page, async () => {
          writeFileSync(server.file!, changed);
          await loads.page.reload({ waitUntil: 'commit' });
        });
        anew.add(took);
      },
      anew.options,
    );
    afterAll(server.stop);
  });
}
