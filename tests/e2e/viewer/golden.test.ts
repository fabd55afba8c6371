/** What a person sees, kept: the run profile as a drawing, the bend steps as words and pictures. UPDATE=1 keeps anew. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FIRST_TRY, TENDER } from '../../helpers/run.ts';
import {
  DESK,
  type Opened,
  openChromium,
  openPage,
  PHONE,
  ready,
  type Server,
  serve,
  TABLET,
} from '../../helpers/viewer.ts';
import { keepable, pictureFault } from './pictures.ts';

const FOLDER = join(import.meta.dirname, 'goldens');
const KEEP = process.env.UPDATE === '1' && !process.env.CI;

let browser: Browser;
const servers = new Map<string, Server>();
beforeAll(async () => {
  browser = await openChromium();
  for (const job of [TENDER, FIRST_TRY]) servers.set(job, await serve(job));
});
afterAll(async () => {
  await browser.close();
  for (const { stop } of servers.values()) await stop();
});

/** The kept file of this name; kept anew first when that is asked for. */
function golden(name: string, found: string | Buffer): Buffer {
  const file = join(FOLDER, name);
  if (KEEP) {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(file, found);
  }
  if (!existsSync(file))
    throw new Error(`golden ${name} is missing: run once with UPDATE=1 and look at what it wrote`);
  return readFileSync(file);
}

async function opened(job: string, lineName: string, options: BrowserContextOptions): Promise<Opened> {
  const it = await openPage(browser, servers.get(job)!.url, {
    reducedMotion: 'reduce',
    deviceScaleFactor: 1,
    ...options,
  });
  await it.page.locator('.words-line', { hasText: new RegExp(`${lineName}(?!,)`) }).click();
  await ready(it.page);
  return it;
}

/** One element a line, ids the same in every page, numbers of the drawing to a tenth of a pixel. */
const readable = (svg: string): string =>
  svg
    .replaceAll('><', '>\n<')
    .replace(/\bprofile[A-Z][\w-]*?(?=-[a-z])/g, 'profile')
    .replace(/="[^"]*"/g, (value) =>
      value.replace(/-?\d+\.\d+/g, (n) => String(Math.round(+n * 10) / 10 + 0)),
    )
    .concat('\n');

describe('the run profile', () => {
  const sizes = { desk: DESK, phone: PHONE };
  const lines = {
    'first-try-dipstick': [FIRST_TRY, 'Oil dipstick tube'],
    'tender-7-pump-drain': [TENDER, 'Pump seal drain'],
  } as const;
  const cases = Object.entries(lines).flatMap(([name, line]) =>
    Object.entries(sizes).map(([size, viewport]) => [`${name}-${size}`, line, viewport] as const),
  );
  it.each(cases)('%s', async (name, [job, lineName], viewport) => {
    const { page, close } = await opened(job, lineName, { viewport });
    await page.getByRole('button', { name: 'Look', exact: true }).click();
    const svg = page.locator('.profile-svg');
    await svg.waitFor();
    await ready(page);
    const found = readable(await svg.evaluate((element) => element.outerHTML));
    expect(found).toBe(golden(`profile-${name}.svg.txt`, found).toString('utf8'));
    await close();
  });
});

/** The words on the screen, one block a line: what is shown, not what the document holds. */
const wordsOf = async (page: Page): Promise<string> =>
  // biome-ignore lint/performance/useDomNodeTextContent: only what is rendered is wanted, in its lines
  (await page.locator('.steps').innerText())
    .split('\n')
    .map((line) => line.replace(/\s+/g, ' ').trim())
    .filter((line) => line !== '')
    .join('\n');

/** Until the picture and its labels stand: they follow a change by a frame or two. */
const settled = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    for (let i = 0; i < 4; i++) await new Promise((resolve) => requestAnimationFrame(resolve));
  });

interface Step {
  readonly title: string;
  readonly words: string;
  readonly picture: Buffer | null;
}

async function* steps(page: Page): AsyncGenerator<Step> {
  await page.keyboard.press('Alt+5');
  for (;;) {
    await page.locator('#steps-title').waitFor();
    await settled(page);
    const canvas = page.locator('.bench-canvas');
    const title = (await page.locator('#steps-title').textContent()) ?? '';
    const picture = (await canvas.count()) > 0 ? await canvas.screenshot() : null;
    yield { title, words: await wordsOf(page), picture };
    const skip = page.getByRole('button', { name: /^Skip/ });
    if (await skip.isDisabled()) return;
    await skip.click();
  }
}

const slug = (title: string): string => title.toLowerCase().replace(/[^a-z0-9]+/g, '-');

describe('the bend steps', () => {
  const lines = { dipstick: 'Oil dipstick tube', 'brake-rear': 'Rear brake line' };
  it.each(Object.entries(lines))('%s', async (id, lineName) => {
    const { page, close } = await opened(TENDER, lineName, { viewport: TABLET });
    const words: string[] = [];
    const faults: string[] = [];
    for await (const step of steps(page)) {
      words.push(`## ${step.title}\n${step.words}\n`);
      if (step.picture === null) continue;
      const name = `steps-${id}-${slug(step.title)}.png`;
      const picture = PNG.sync.read(step.picture);
      const fault = pictureFault(picture, PNG.sync.read(golden(name, keepable(picture))));
      if (fault) faults.push(`${name}: ${fault}`);
    }
    const found = words.join('\n');
    expect(found).toBe(golden(`steps-${id}.txt`, found).toString('utf8'));
    expect(faults).toEqual([]);
    await close();
  });

  it('are told from those of the opposite hand by their pictures alone', async () => {
    const kept = PNG.sync.read(readFileSync(join(FOLDER, 'steps-dipstick-bend-2-of-2.png')));
    const { page, close } = await opened(TENDER, 'Oil dipstick tube, right side', { viewport: TABLET });
    const faults: (string | null)[] = [];
    for await (const { title, picture } of steps(page))
      if (title === 'Bend 2 of 2') faults.push(pictureFault(PNG.sync.read(picture!), kept));
    expect(faults).toEqual([expect.stringContaining('differ by')]);
    await close();
  });
});
